"use client";

import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { SureButton } from "@/app/ui/sureButton";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { markUndoneFormSchema, voidAlterationSchema } from "@/lib/alterations/schema";
import { MomentField } from "../work/momentField";
import { markUndoneAction, voidAlterationAction } from "./actions";

export function MarkUndoneForm({ alterationId, leavesTrace }: { readonly alterationId: string; readonly leavesTrace: boolean }) {
	const form = useActionForm({
		schema: markUndoneFormSchema,
		defaults: { alterationId, words: "", undone: "" },
		action: markUndoneAction,
	});
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField
				label="How it went"
				optional
				hint={leavesTrace ? "Say what trace is left, and where." : undefined}
				{...form.field("words")}
			/>
			<MomentField label="When it was undone" {...form.field("undone")} />
			<Button type="submit" kind="main" className="sm:self-start" pending={form.pending}>
				It is undone
			</Button>
		</form>
	);
}

export function VoidAlterationForm({ alterationId }: { readonly alterationId: string }) {
	const form = useActionForm({ schema: voidAlterationSchema, defaults: { alterationId, why: "" }, action: voidAlterationAction });
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Why it never was" {...form.field("why")} />
			<SureButton
				type="submit"
				kind="plain"
				pending={form.pending}
				question="It stays readable and counts for nothing. A hole that is there must not be taken back."
				yes="Take it back"
			>
				Take it back
			</SureButton>
		</form>
	);
}
