"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { PaperKind } from "@/lib/owner/account";
import { answerPaperFormSchema, withdrawPaperSchema } from "@/lib/owner/schema";
import { MomentField } from "../../../work/momentField";
import { answerPaperAction, withdrawPaperAction } from "../actions";

export type Answer = { readonly answer: "agreed" | "refused"; readonly by: string; readonly how: string; readonly answered: string };

/** The owner's answer; one that stands can be corrected. */
export function AnswerForm({ paperId, kind, given }: { paperId: string; kind: PaperKind; given: Answer | null }) {
	const [open, setOpen] = useState(given === null);
	const form = useActionForm({
		schema: answerPaperFormSchema,
		defaults: given === null ? { paperId, answer: undefined, by: "", how: "", answered: "" } : { paperId, ...given },
		action: answerPaperAction,
		onDone: () => setOpen(false),
	});
	if (!open) return <Button onClick={() => setOpen(true)}>Correct the answer</Button>;
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<ChoiceField
				label="The owner"
				options={[
					{ value: "agreed", label: kind === "statement" ? "accepted it" : "agreed" },
					{ value: "refused", label: kind === "statement" ? "disputes it" : "refused" },
				]}
				{...form.field("answer")}
			/>
			<TextField label="Who answered" {...form.field("by")} />
			<TextField label="How" hint="On the phone, by letter, signed it" {...form.field("how")} />
			<MomentField label="When" {...form.field("answered")} />
			<Button type="submit" kind="main" pending={form.pending}>
				{given === null ? "Keep the answer" : "Keep the correction"}
			</Button>
			{given === null ? null : (
				<Button kind="quiet" onClick={() => setOpen(false)}>
					Leave it
				</Button>
			)}
		</form>
	);
}

export function WithdrawForm({ paperId }: { paperId: string }) {
	const form = useActionForm({ schema: withdrawPaperSchema, defaults: { paperId, why: "" }, action: withdrawPaperAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Why it is taken back" {...form.field("why")} />
			<Button type="submit" pending={form.pending}>
				Take it back
			</Button>
		</form>
	);
}
