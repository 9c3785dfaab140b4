"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { Buttons, FormRow } from "@/app/ui/layouts";
import { MinutesField } from "@/app/ui/minutesField";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { SureButton } from "@/app/ui/sureButton";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { recordAlterationFormSchema, UNDO_WORDS } from "@/lib/alterations/schema";
import { thoughtOf } from "@/lib/reversal/thought";
import { MomentField } from "../work/momentField";
import { recordAlterationAction } from "./actions";
import { Beforehand } from "./beforehand";

type Target = "position" | "part" | "place";
type OfOriginal = Option & { readonly original: boolean };

/** Records a lasting change. What can never be undone says so before, on the button's own line, and asks. */
export function AlterForm({
	machineId,
	changesHref,
	stepId,
	positions,
	parts,
	steps,
	conversions,
}: {
	readonly machineId: string;
	readonly changesHref: string;
	readonly stepId: string;
	readonly positions: readonly OfOriginal[];
	readonly parts: readonly OfOriginal[];
	readonly steps: readonly Option[];
	readonly conversions: readonly Option[];
}) {
	const router = useRouter();
	const [target, setTarget] = useState<Target>(positions.length > 0 ? "position" : "place");
	const form = useActionForm({
		schema: recordAlterationFormSchema,
		defaults: {
			machineId,
			what: "",
			partId: "",
			positionId: "",
			place: "",
			undoHow: "",
			undoMinutes: { low: "", likely: "", high: "" },
			undoWait: "",
			reason: "",
			agreedBy: "",
			stepId,
			conversionId: "",
			done: "",
		},
		action: recordAlterationAction,
		onDone: ({ number }) => router.push(`${changesHref}/${number}`),
	});
	const { setValue, watch } = form.form;
	const undo = watch("undo");
	const never = undo === "never";
	const chosen = parts.find(({ value }) => value === watch("partId")) ?? positions.find(({ value }) => value === watch("positionId"));
	const turnTo = (next: Target) => {
		setTarget(next);
		setValue("partId", "");
		setValue("positionId", "");
		setValue("place", "");
	};
	const altered = { partId: watch("partId") || null, positionId: watch("positionId") || null };
	const whereError = form.errorOf("place");
	const thing = chosen?.label ?? (watch("place") || "this place");
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<ChoiceField
				label="What is changed"
				name="target"
				options={[
					...(positions.length > 0 ? [{ value: "position", label: "a position", hint: "its seat, its hole" }] : []),
					...(parts.length > 0 ? [{ value: "part", label: "a part", hint: "wherever it is" }] : []),
					{ value: "place", label: "a place", hint: "rear wall, cabinet" },
				]}
				defaultValue={target}
				onChange={(event) => {
					const next = event.currentTarget.value;
					if (next === "position" || next === "part" || next === "place") turnTo(next);
				}}
			/>
			{target === "position" ? (
				<SelectField
					label="Position"
					none="choose"
					options={positions}
					{...form.field("positionId")}
					error={form.errorOf("positionId") ?? whereError}
				/>
			) : target === "part" ? (
				<SelectField label="Part" none="choose" options={parts} {...form.field("partId")} error={form.errorOf("partId") ?? whereError} />
			) : (
				<TextField label="Place" {...form.field("place")} />
			)}
			<TextField label="What is done to it" hint="cable hole 12 to 16 mm" {...form.field("what")} />
			<ChoiceField
				label="Undoing it"
				options={[
					{ value: "clean", label: UNDO_WORDS.clean, hint: "nothing is left of it" },
					{ value: "trace", label: UNDO_WORDS.trace, hint: "it works as before, and shows" },
					{ value: "never", label: UNDO_WORDS.never, hint: "no reversal brings it back" },
				]}
				{...form.field("undo")}
			/>
			{undo && !never ? (
				<>
					<TextField label="How it is undone" hint="inserts out, dowel, re-drill" optional {...form.field("undoHow")} />
					<MinutesField
						label="How long undoing takes"
						low={form.field("undoMinutes.low")}
						likely={form.field("undoMinutes.likely")}
						high={form.field("undoMinutes.high")}
					/>
					<TextField label="Wait while undoing" hint="glue sets: 24 h" optional className="af-short" {...form.field("undoWait")} />
				</>
			) : null}
			{undo && target !== "place" ? <Beforehand machineId={machineId} thought={thoughtOf({ does: "alter", ...altered, undo })} /> : null}
			<TextField label={never ? "Why it has to be" : "Reason"} optional={!never} {...form.field("reason")} />
			<FormRow>
				<TextField label="Who agreed" hint="The owner; stays out of public papers." optional {...form.field("agreedBy")} />
				<MomentField label="When it was done" {...form.field("done")} />
			</FormRow>
			<FormRow>
				<SelectField label="Step" optional none="none" options={steps} {...form.field("stepId")} />
				<SelectField label="Conversion" optional none="none" options={conversions} {...form.field("conversionId")} />
			</FormRow>
			{/* Said before the press, on the button itself. */}
			<Buttons>
				{never ? (
					<SureButton
						type="submit"
						pending={form.pending}
						question={
							chosen?.original
								? `No reversal can undo this. ${thing} holds an original: it comes back altered for ever, or not at all.`
								: `No reversal can undo this: ${thing} stays as it is now, whatever is put back.`
						}
						yes="Record it for good"
					>
						{`Record it: ${UNDO_WORDS.never}`}
					</SureButton>
				) : (
					<Button type="submit" kind="main" pending={form.pending}>
						{undo === "trace" ? `Record it: ${UNDO_WORDS.trace}` : "Record the alteration"}
					</Button>
				)}
			</Buttons>
		</form>
	);
}
