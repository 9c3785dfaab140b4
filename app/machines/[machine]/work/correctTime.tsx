"use client";

import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { correctTimeFormSchema } from "@/lib/steps/schema";
import { correctTimeAction } from "./actions";
import { MomentField } from "./momentField";

type Right = {
	readonly workId: string;
	/** How long it should be, as it is typed ("25 min"), or "" when nobody can say. */
	readonly minutes: string;
	readonly began: string;
	readonly why: string;
};

/**
 * Puts a piece of time right: the wrong one is taken back, and the right one added as from memory. Where what it should be
 * can be worked out, one press does it; what else it was can be written.
 */
export function CorrectTime({
	known,
	...right
}: Right & { /** How the one press is called; null where nobody can say. */ readonly known: string | null }) {
	return (
		<div className="no-print">
			{known === null ? null : <OnePress {...right} words={known} />}
			<details className="mt-1">
				<summary>{known === null ? "Put it right" : "It was otherwise"}</summary>
				<CorrectTimeForm {...right} />
			</details>
		</div>
	);
}

function OnePress({ words, ...right }: Right & { readonly words: string }) {
	const form = useActionForm({ schema: correctTimeFormSchema, defaults: right, action: correctTimeAction });
	return (
		<form className="mt-1" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Button type="submit" pending={form.pending}>
				{words}
			</Button>
		</form>
	);
}

function CorrectTimeForm(right: Right) {
	const form = useActionForm({ schema: correctTimeFormSchema, defaults: right, action: correctTimeAction });
	return (
		<form className="af-form pt-2" {...form.formProps}>
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
