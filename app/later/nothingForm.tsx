"use client";

import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { withdrawSeveralAction } from "./actions";

/** Withdraws what shows nothing, with the reason. */
export function NothingForm({ captureIds, onDone }: { readonly captureIds: readonly string[]; readonly onDone: (words: string) => void }) {
	const form = useActionForm({
		defaults: { why: "Taken by mistake: it shows nothing" },
		action: (raw) => withdrawSeveralAction({ ...raw, captureIds: [...captureIds] }),
		onDone: ({ count }) => onDone(count === 1 ? "Withdrawn." : `${count} withdrawn.`),
	});
	return (
		<form {...form.formProps} className="af-later-form" data-short="">
			<FormProblem problem={form.problem} />
			<TextField label="Why" hint="It stays in the book; only the lists leave it out." {...form.field("why")} />
			<Button type="submit" kind="danger" pending={form.pending}>
				Withdraw {captureIds.length === 1 ? "it" : `all ${captureIds.length}`}
			</Button>
		</form>
	);
}
