"use client";

import { useRouter } from "next/navigation";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { useActionForm } from "@/app/ui/useActionForm";
import { startReversalSchema } from "@/lib/reversal/carryingOut/schema";
import { startReversalAction } from "./actions";

/** Begins to carry out the plan that the page shows. */
export function StartForm({
	machine,
	question,
}: {
	readonly machine: { readonly id: string; readonly number: number };
	readonly question: {
		readonly target: "asFound" | "asMade" | "moment";
		readonly targetAt: string | null;
		readonly conversionIds: readonly string[];
		readonly positionIds: readonly string[];
		readonly reason: string;
	};
}) {
	const router = useRouter();
	const form = useActionForm({
		schema: startReversalSchema,
		defaults: {
			machineId: machine.id,
			...question,
			conversionIds: [...question.conversionIds],
			positionIds: [...question.positionIds],
		},
		action: startReversalAction,
		onDone: ({ number }) => router.push(`/machines/${machine.number}/reversal/${number}`),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Button type="submit" kind="main" pending={form.pending}>
				Carry it out
			</Button>
		</form>
	);
}
