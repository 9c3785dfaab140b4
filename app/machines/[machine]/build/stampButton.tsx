"use client";

import { FormProblem } from "@/app/ui/formProblem";
import { SureButton } from "@/app/ui/sureButton";
import { useActionForm } from "@/app/ui/useActionForm";
import { counted } from "@/lib/machines/rules";
import { stampAsFoundSchema } from "@/lib/machines/schema";
import { stampAsFoundAction } from "../../actions";

/** Closes the as found record, once and for ever; the button says so before it does. */
export function StampButton({
	machineId,
	positions,
	unseen,
}: {
	readonly machineId: string;
	readonly positions: number;
	readonly unseen: number;
}) {
	const form = useActionForm({ schema: stampAsFoundSchema, defaults: { machineId }, action: stampAsFoundAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SureButton
				kind="plain"
				type="submit"
				pending={form.pending}
				question={`Close the as found record with ${counted(positions, "position")}${unseen === 0 ? "" : `, ${unseen} of them not seen yet`}? It is never written over: what you learn later is added to it.`}
				yes="Stamp as found"
			>
				Stamp as found
			</SureButton>
		</form>
	);
}
