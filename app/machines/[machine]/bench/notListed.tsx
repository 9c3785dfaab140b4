"use client";

import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { TextField } from "@/app/ui/textField";
import { typesOf, useActionForm } from "@/app/ui/useActionForm";
import type { addPositionsSchema } from "@/lib/positions/schema";
import { addPositionsAction } from "../build/actions";

/** Something sits in the machine that the list does not have: named in a word, it was there all along, and can come out. */
export function NotListed({ machineId, onAdded }: { machineId: string; onAdded: (positionId: string) => void }) {
	const form = useActionForm({
		schema: typesOf<typeof addPositionsSchema>(),
		defaults: { machineId, wasThere: true, positions: [{ name: "", part: { origin: "unknown" } }] },
		action: addPositionsAction,
		onDone: ({ positions: [added] }) => {
			if (added) onAdded(added.id);
		},
	});
	return (
		<details className="af-details">
			<summary>It is not on the list</summary>
			<form {...form.formProps} className="pt-2">
				<FormProblem problem={form.problem} />
				<TextField label="What it is" hint="Lamp holder, left" {...form.field("positions.0.name")} />
				<Button type="submit" pending={form.pending}>
					Add it, and take it out
				</Button>
			</form>
		</details>
	);
}
