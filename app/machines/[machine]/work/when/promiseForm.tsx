"use client";

import { useState } from "react";
import { promiseReadyAction } from "@/app/machines/actions";
import { Button } from "@/app/ui/button";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { Notice } from "@/app/ui/notice";
import { useActionForm } from "@/app/ui/useActionForm";
import { promiseSchema } from "@/lib/machines/schema";

/** The day on which the machine is promised to be ready. */
export function PromiseForm({ machineId, promisedDay }: { readonly machineId: string; readonly promisedDay: string | null }) {
	const [done, setDone] = useState(false);
	const form = useActionForm({
		schema: promiseSchema,
		defaults: { machineId, promisedDay: promisedDay ?? "" },
		action: promiseReadyAction,
		onDone: () => setDone(true),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<DayField
				label="Promised for"
				optional
				hint="What is promised comes first in the plan. Empty: nothing is."
				{...form.field("promisedDay")}
			/>
			<Button type="submit" pending={form.pending}>
				Set the day
			</Button>
			{done ? <Notice means="original">Kept. By the plan beside you see whether it holds.</Notice> : null}
		</form>
	);
}
