"use client";

import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { SelectField } from "@/app/ui/selectField";
import { useActionForm } from "@/app/ui/useActionForm";
import { fileUnderAction } from "./actions";

/** Files what is of no machine yet under one; what it shows can be said after that. */
export function MachineForm({
	captureIds,
	machines,
	onDone,
}: {
	readonly captureIds: readonly string[];
	readonly machines: readonly { readonly value: string; readonly label: string }[];
	readonly onDone: (words: string) => void;
}) {
	const form = useActionForm({
		defaults: { machineId: "" },
		action: (raw) => fileUnderAction({ ...raw, captureIds: [...captureIds] }),
		onDone: ({ count }) => onDone(`${count} filed under the machine.`),
	});
	return (
		<form {...form.formProps} className="af-later-form" data-short="">
			<FormProblem problem={form.problem} />
			<SelectField
				label={captureIds.length === 1 ? "Which machine it is of" : `Which machine these ${captureIds.length} are of`}
				none="choose a machine"
				options={machines}
				{...form.field("machineId")}
			/>
			<Button type="submit" pending={form.pending}>
				File
			</Button>
		</form>
	);
}
