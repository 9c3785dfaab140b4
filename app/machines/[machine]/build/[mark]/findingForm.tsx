"use client";

import { useWatch } from "react-hook-form";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { SelectField } from "@/app/ui/selectField";
import { StepperField } from "@/app/ui/stepperField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { recordFindingSchema } from "@/lib/positions/schema";
import { ORIGIN_OPTIONS } from "../../../originOptions";
import { recordFindingAction } from "../actions";

const STATES = [
	{ value: "there", label: "There" },
	{ value: "wrong", label: "There, but wrong", hint: "it does not belong there" },
	{ value: "missing", label: "Missing" },
	{ value: "unseen", label: "Not seen yet" },
] as const;

/** What was found here. `known` names the part that the finding will speak of; without one it is described here. */
export function FindingForm({
	positionId,
	positionName,
	stamped,
	known,
	last,
}: {
	readonly positionId: string;
	readonly positionName: string;
	readonly stamped: boolean;
	readonly known: string | null;
	readonly last: "there" | "wrong" | "missing" | "unseen" | null;
}) {
	const form = useActionForm({
		schema: recordFindingSchema,
		defaults: {
			positionId,
			state: last === "unseen" || last === null ? "there" : last,
			words: "",
			partId: "",
			part: { name: "", count: 1, maker: "", type: "", material: "", made: "", origin: "unknown", works: "unknown", condition: "" },
			evidence: [],
		},
		action: (raw) =>
			recordFindingAction({ ...raw, part: known === null && (raw.state === "there" || raw.state === "wrong") ? raw.part : null }),
		onDone: (_, { reset }) => reset(),
	});
	const state = useWatch({ control: form.form.control, name: "state" });
	const isThere = state === "there" || state === "wrong";
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<ChoiceField
				label="What was found"
				hint={
					stamped
						? "As found is stamped: this is added as later knowledge, with today's date."
						: "The as found record is open: the latest word counts, earlier ones stay readable."
				}
				options={[...STATES]}
				{...form.field("state")}
			/>
			{isThere && known !== null ? <p className="mb-3">It speaks of {known}.</p> : null}
			{isThere && known === null ? (
				<>
					<FormRow>
						<TextField label="The part" optional placeholder={positionName} {...form.field("part.name")} />
						<StepperField label="How many" min={1} {...form.field("part.count")} />
					</FormRow>
					<SelectField label="What it is" options={[...ORIGIN_OPTIONS]} {...form.field("part.origin")} />
					<FormRow>
						<TextField label="Maker" optional {...form.field("part.maker")} />
						<TextField label="Type" optional {...form.field("part.type")} />
					</FormRow>
					<TextArea label="Its condition" optional rows={2} {...form.field("part.condition")} />
				</>
			) : null}
			<TextArea label="In words" optional rows={2} {...form.field("words")} />
			<Button type="submit" pending={form.pending}>
				{stamped ? "Add what is known" : "Record what was found"}
			</Button>
		</form>
	);
}
