"use client";

import { useRouter } from "next/navigation";
import { useMemo, useState } from "react";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { Buttons, FormRow } from "@/app/ui/layouts";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { recordDecisionFormSchema } from "@/lib/decisions/schema";
import type { CurrencyCode } from "@/lib/money/currency";
import { MomentField } from "../work/momentField";
import { recordDecisionAction } from "./actions";
import { DecideOption, type Things } from "./decideOption";

const MOST = 4;
const EMPTY = { words: "", cost: "", minutes: "", does: "other" as const, thing: "", loses: "", state: "open" as const };

/** Options side by side, with what each costs and what reversal would lose by it; one may be chosen. */
export function DecideForm({
	machineId,
	changesHref,
	currency,
	stepId,
	steps,
	things,
}: {
	readonly machineId: string;
	readonly changesHref: string;
	readonly currency: CurrencyCode;
	readonly stepId: string;
	readonly steps: readonly Option[];
	readonly things: Things;
}) {
	const router = useRouter();
	const [count, setCount] = useState(2);
	const schema = useMemo(() => recordDecisionFormSchema(currency), [currency]);
	const form = useActionForm({
		schema,
		defaults: { machineId, question: "", options: [EMPTY, EMPTY], stepId, agreedBy: "", words: "", decided: "" },
		action: recordDecisionAction,
		onDone: (id) => router.push(`${changesHref}#decision-${id}`),
	});
	const { getValues, setValue } = form.form;
	const add = () => {
		setValue("options", [...(getValues("options") ?? []), EMPTY]);
		setCount(count + 1);
	};
	const drop = () => {
		setValue("options", (getValues("options") ?? []).slice(0, -1));
		setCount(count - 1);
	};
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="What is to be decided" hint="Cross-drill the original shaft, or make a new one?" {...form.field("question")} />
			<div className="grid grid-cols-[repeat(auto-fit,minmax(min(100%,18rem),1fr))] gap-4 pb-3">
				{Array.from({ length: count }, (_, index) => (
					// biome-ignore lint/suspicious/noArrayIndexKey: options have no other name than their place, and only the last one goes
					<DecideOption key={index} index={index} form={form} machineId={machineId} currency={currency} things={things} />
				))}
			</div>
			<p className="af-error">{form.errorOf("options")}</p>
			<Buttons>
				{count < MOST ? (
					<Button kind="quiet" onClick={add}>
						Add an option
					</Button>
				) : null}
				{count > 2 ? (
					<Button kind="quiet" onClick={drop}>
						Take the last option away
					</Button>
				) : null}
			</Buttons>
			<div className="mt-4" />
			<FormRow>
				<TextField label="Who agreed" hint="Not one person alone; stays out of public papers." optional {...form.field("agreedBy")} />
				<MomentField label="When" {...form.field("decided")} />
			</FormRow>
			<TextArea label="Why" optional {...form.field("words")} />
			<SelectField label="Step" optional none="none" options={steps} {...form.field("stepId")} />
			<Button type="submit" kind="main" className="sm:self-start" pending={form.pending}>
				Record the decision
			</Button>
		</form>
	);
}
