"use client";

import { useWatch } from "react-hook-form";
import type { z } from "zod";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { SelectField } from "@/app/ui/selectField";
import { StepperField } from "@/app/ui/stepperField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { describePartSchema } from "@/lib/parts/schema";
import { MadeField } from "../../../madeField";
import { ORIGIN_OPTIONS } from "../../../originOptions";
import { describePartAction } from "../actions";

const WORKS = [
	{ value: "works", label: "Works" },
	{ value: "faulty", label: "Faulty" },
	{ value: "unknown", label: "Not known" },
] as const;

/** What is said of a part. Its origin wants evidence beside it. */
export function PartForm({ part, seen }: { readonly part: z.input<typeof describePartSchema>; readonly seen: number }) {
	const form = useActionForm({ schema: describePartSchema, defaults: part, seen, action: describePartAction });
	const made = useWatch({ control: form.form.control, name: "made" });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<FormRow>
				<TextField label="Name" {...form.field("name")} />
				<StepperField label="How many" min={1} {...form.field("count")} />
			</FormRow>
			<SelectField label="What it is" hint="Say below how it is known." options={[...ORIGIN_OPTIONS]} {...form.field("origin")} />
			<ChoiceField label="Does it work" options={[...WORKS]} {...form.field("works")} />
			<FormRow>
				<TextField label="Maker" optional {...form.field("maker")} />
				<TextField label="Type" optional {...form.field("type")} />
			</FormRow>
			<TextField label="Material" optional {...form.field("material")} />
			<MadeField
				typed={typeof made === "string" ? made : ""}
				onTake={(edtf) => form.form.setValue("made", edtf, { shouldDirty: true, shouldValidate: form.form.formState.isSubmitted })}
				{...form.field("made")}
			/>
			<TextArea label="Condition" optional rows={2} {...form.field("condition")} />
			<Button type="submit" pending={form.pending}>
				Record what is said of it
			</Button>
		</form>
	);
}
