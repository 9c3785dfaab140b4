"use client";

import { useRouter } from "next/navigation";
import { useMemo, useState } from "react";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { Buttons, FormRow } from "@/app/ui/layouts";
import { MoneyField } from "@/app/ui/moneyField";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { recordDecisionFormSchema } from "@/lib/decisions/schema";
import type { CurrencyCode } from "@/lib/money/currency";
import { MomentField } from "../work/momentField";
import { recordDecisionAction } from "./actions";

const MOST = 4;
const EMPTY = { words: "", cost: "", minutes: "", loses: "", state: "open" as const };

/** Options side by side, with what each costs and what reversal would lose by it; one may be chosen. */
export function DecideForm({
	machineId,
	changesHref,
	currency,
	stepId,
	steps,
}: {
	readonly machineId: string;
	readonly changesHref: string;
	readonly currency: CurrencyCode;
	readonly stepId: string;
	readonly steps: readonly Option[];
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
			<div className="grid gap-4 pb-3 md:grid-cols-2">
				{Array.from({ length: count }, (_, index) => index).map((index) => (
					<fieldset key={index} className="min-w-0 rounded-plain border border-line p-4">
						<legend className="px-1 font-bold">{`Option ${index + 1}`}</legend>
						<TextField label="What it is" {...form.field(`options.${index}.words`)} />
						<FormRow>
							<MoneyField label="Cost" optional currency={currency} {...form.field(`options.${index}.cost`)} />
							<TextField label="Time" optional hint="35, or 2 h 35" {...form.field(`options.${index}.minutes`)} />
						</FormRow>
						<TextField
							label="What reversal would lose"
							hint="Empty is nothing: it can be put back as it was."
							optional
							{...form.field(`options.${index}.loses`)}
						/>
						<ChoiceField
							label="Decided"
							options={[
								{ value: "open", label: "open" },
								{ value: "chosen", label: "chosen" },
								{ value: "refused", label: "refused" },
							]}
							{...form.field(`options.${index}.state`)}
						/>
					</fieldset>
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
