"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { MoneyField } from "@/app/ui/moneyField";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { CurrencyCode } from "@/lib/money/currency";
import { addCostSchema, COST_KIND_WORDS, COST_KINDS, changeCostSchema } from "@/lib/money/schema";
import { addCostAction, changeCostAction } from "./actions";

const KINDS = COST_KINDS.map((kind) => ({ value: kind, label: COST_KIND_WORDS[kind] }));
const STATES = [
	{ value: "spent", label: "spent" },
	{ value: "planned", label: "still to come" },
	{ value: "forgone", label: "forgone", hint: "shown, not summed" },
];

export function AddCostForm({ machineId, today, currency }: { machineId: string; today: string; currency: CurrencyCode }) {
	const form = useActionForm({
		schema: addCostSchema(currency),
		defaults: { machineId, kind: "consumable", state: "spent", words: "", day: today, partyId: "", estimated: "", spent: "" },
		action: addCostAction,
		onDone: (_, { reset }) => reset(),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="What for" {...form.field("words")} />
			<SelectField label="Kind" options={KINDS} {...form.field("kind")} />
			<ChoiceField label="It is" options={STATES} {...form.field("state")} />
			<FormRow>
				<MoneyField label="Spent" optional currency={currency} {...form.field("spent")} />
				<MoneyField label="Estimated" optional currency={currency} {...form.field("estimated")} />
			</FormRow>
			<DayField label="Day" {...form.field("day")} />
			<Button type="submit" kind="main" pending={form.pending}>
				Add the cost
			</Button>
		</form>
	);
}

type Cost = {
	readonly entry: number;
	readonly id: string;
	readonly kind: (typeof COST_KINDS)[number];
	readonly state: "planned" | "spent" | "forgone" | "void";
	readonly words: string;
	readonly day: string;
	readonly partyId: string | null;
	readonly estimated: string;
	readonly spent: string;
};

export function ChangeCostForm({ cost, currency }: { cost: Cost; currency: CurrencyCode }) {
	const [open, setOpen] = useState(false);
	const { id, entry, ...said } = cost;
	const form = useActionForm({
		schema: changeCostSchema(currency),
		seen: entry,
		defaults: { ...said, costId: id, partyId: cost.partyId ?? "" },
		action: changeCostAction,
		onDone: () => setOpen(false),
	});
	if (!open)
		return (
			<Button kind="quiet" onClick={() => setOpen(true)} aria-label={`Correct ${cost.words}`}>
				Correct
			</Button>
		);
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="What for" {...form.field("words")} />
			<FormRow>
				<MoneyField label="Spent" currency={currency} {...form.field("spent")} />
				<MoneyField label="Estimated" currency={currency} {...form.field("estimated")} />
			</FormRow>
			<DayField label="Day" {...form.field("day")} />
			<ChoiceField label="It is" options={[...STATES, { value: "void", label: "entered in error" }]} {...form.field("state")} />
			<Button type="submit" kind="main" pending={form.pending}>
				Keep the correction
			</Button>
			<Button kind="quiet" onClick={() => setOpen(false)}>
				Leave it
			</Button>
		</form>
	);
}
