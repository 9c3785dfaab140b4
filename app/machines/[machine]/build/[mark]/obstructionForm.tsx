"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button } from "@/app/ui/button";
import { CheckField } from "@/app/ui/checkField";
import { clientId } from "@/app/ui/clientId";
import { FormProblem } from "@/app/ui/formProblem";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { sayObstructionSchema } from "@/lib/positions/schema";
import { sayObstructionAction, withdrawObstructionAction } from "../actions";

/** What must come off first: one part, from all sides or from those named. */
export function ObstructionForm({
	positionId,
	sides,
	parts,
}: {
	readonly positionId: string;
	readonly sides: readonly string[];
	readonly parts: readonly { readonly id: string; readonly label: string }[];
}) {
	const form = useActionForm({
		schema: sayObstructionSchema,
		defaults: { positionId, partId: "", sides: [], note: "" },
		action: sayObstructionAction,
		onDone: (_, { reset }) => reset(),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField
				label="What must come off first"
				none="Choose a part"
				options={parts.map(({ id, label }) => ({ value: id, label }))}
				{...form.field("partId")}
			/>
			{sides.length === 0 ? null : (
				<fieldset>
					<legend className="af-label">From which side is it in the way</legend>
					<p className="af-hint">None ticked means from every side.</p>
					{sides.map((side) => (
						<CheckField key={side} label={side} value={side} {...form.field("sides")} error={undefined} />
					))}
					<p className="af-error">{form.errorOf("sides")}</p>
				</fieldset>
			)}
			<TextField label="Note" optional {...form.field("note")} />
			<Button type="submit" pending={form.pending}>
				It comes off first
			</Button>
		</form>
	);
}

/** It turned out that nothing is in the way there. */
export function WithdrawObstruction({ obstructionId }: { readonly obstructionId: string }) {
	const router = useRouter();
	const [problem, setProblem] = useState<string | null>(null);
	return (
		<>
			<Button
				kind="quiet"
				onClick={async () => {
					const done = await withdrawObstructionAction({ obstructionId, why: "", deed: clientId() });
					setProblem(done.ok ? null : done.error.say);
					router.refresh();
				}}
			>
				Not in the way
			</Button>
			<span role="alert">{problem}</span>
		</>
	);
}
