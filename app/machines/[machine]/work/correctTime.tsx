"use client";

import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { correctTimeFormSchema } from "@/lib/steps/schema";
import { correctTimeAction } from "./actions";
import { MomentField } from "./momentField";

/**
 * Puts a piece of time right with one press, where what it should be can be worked out: the wrong one is taken back, and
 * the right one added as from memory. Otherwise it asks how long it was.
 */
export function CorrectTimeForm({
	workId,
	minutes,
	began,
	why,
}: {
	readonly workId: string;
	/** What it should be, or "" when nobody can say. */
	readonly minutes: string;
	readonly began: string;
	readonly why: string;
}) {
	const form = useActionForm({ schema: correctTimeFormSchema, defaults: { workId, minutes, began, why }, action: correctTimeAction });
	return (
		<form className="af-form no-print pt-2" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<FormRow>
				<TextField label="How long it really was" hint="35, or 2 h 35" {...form.field("minutes")} />
				<MomentField label="When it began" hint="Left empty, as before." {...form.field("began")} />
			</FormRow>
			<TextField label="Why it was wrong" {...form.field("why")} />
			<Button type="submit" className="sm:self-start" pending={form.pending}>
				Put it right
			</Button>
		</form>
	);
}
