"use client";

import type { z } from "zod";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { MinutesField } from "@/app/ui/minutesField";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { describePositionSchema } from "@/lib/positions/schema";
import { describePositionAction } from "../actions";

/** What is said of a position: its name, what carries it, its sides, how long it takes, what the next person must know. */
export function PositionForm({
	position,
	carriedBy,
	seen,
	others,
	areas,
}: {
	readonly position: z.input<typeof describePositionSchema>;
	/** What carries it when that is out of the machine, and so at no mark that could be chosen. */
	readonly carriedBy: string | null;
	/** The entry that describes it, as the page shows it. */
	readonly seen: number;
	/** Other positions of the machine; `carries` when a part is fitted that could carry this one. */
	readonly others: readonly { readonly mark: string; readonly name: string; readonly carries: boolean }[];
	readonly areas: readonly string[];
}) {
	const form = useActionForm({ schema: describePositionSchema, defaults: position, seen, action: describePositionAction });
	const named = (list: typeof others) => list.map(({ mark, name }) => ({ value: mark, label: `${mark} ${name}` }));
	const { onChange: _, ...sides } = form.field("sides");
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<FormRow>
				<TextField label="Name" {...form.field("name")} />
				<TextField label="Area" optional suggest={areas} {...form.field("area")} />
			</FormRow>
			<ChoiceField
				label="What it is"
				options={[
					{ value: "seat", label: "Holds a part" },
					{ value: "place", label: "A place", hint: "with no part of its own: a panel that gets drilled" },
				]}
				{...form.field("kind")}
			/>
			<FormRow>
				<SelectField
					label="Sits on"
					none={carriedBy === null ? "The machine itself" : `As it is: ${carriedBy}, which is out`}
					options={named(others.filter((other) => other.carries || other.mark === position.hostMark))}
					{...form.field("hostMark")}
				/>
				<SelectField label="Mirror image of" none="Nothing" options={named(others)} {...form.field("mirrorMark")} />
			</FormRow>
			<TextField
				label="Sides it can be reached from"
				optional
				hint="Separated by commas: front, rear. One free side is enough. Empty: one side, without a name."
				name={sides.name}
				ref={sides.ref}
				error={sides.error}
				defaultValue={(position.sides ?? []).join(", ")}
				onChange={(event) =>
					form.form.setValue(
						"sides",
						event.currentTarget.value
							.split(",")
							.map((side) => side.trim())
							.filter(Boolean),
						{ shouldDirty: true },
					)
				}
			/>
			<MinutesField
				label="Minutes to take it out"
				optional
				low={form.field("out.low")}
				likely={form.field("out.likely")}
				high={form.field("out.high")}
				error={form.errorOf("out")}
			/>
			<MinutesField
				label="Minutes to put it in"
				optional
				low={form.field("in.low")}
				likely={form.field("in.likely")}
				high={form.field("in.high")}
				error={form.errorOf("in")}
			/>
			<TextArea
				label="What the next person must know"
				optional
				hint="Which way round, what hides behind, dangers."
				{...form.field("note")}
			/>
			<Button type="submit" pending={form.pending}>
				Record what is said of it
			</Button>
		</form>
	);
}
