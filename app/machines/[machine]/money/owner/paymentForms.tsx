"use client";

import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { MoneyField } from "@/app/ui/moneyField";
import { TakeBack } from "@/app/ui/takeBack";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { CurrencyCode } from "@/lib/money/currency";
import { addPaymentSchema, PAYMENT_KIND_WORDS, PAYMENT_KINDS, takeBackPaymentSchema } from "@/lib/owner/schema";
import { addPaymentAction, takeBackPaymentAction } from "./actions";

export function AddPaymentForm({ machineId, today, currency }: { machineId: string; today: string; currency: CurrencyCode }) {
	const form = useActionForm({
		schema: addPaymentSchema(currency),
		defaults: { machineId, kind: "deposit", day: today, amount: "", words: "" },
		action: addPaymentAction,
		onDone: (_, { reset }) => reset(),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<ChoiceField
				label="It is"
				options={PAYMENT_KINDS.map((kind) => ({ value: kind, label: PAYMENT_KIND_WORDS[kind] }))}
				{...form.field("kind")}
			/>
			<FormRow>
				<MoneyField label="How much" currency={currency} {...form.field("amount")} />
				<DayField label="Day" {...form.field("day")} />
			</FormRow>
			<TextField label="How" hint="By bank, in cash, for which paper" {...form.field("words")} />
			<Button type="submit" kind="main" pending={form.pending}>
				Enter it
			</Button>
		</form>
	);
}

export function TakeBackPaymentForm({ paymentId, what }: { paymentId: string; what: string }) {
	const form = useActionForm({ schema: takeBackPaymentSchema, defaults: { paymentId, why: "" }, action: takeBackPaymentAction });
	return (
		<TakeBack
			says={`Take back the ${what}`}
			formProps={form.formProps}
			problem={form.problem}
			pending={form.pending}
			why={form.field("why")}
		/>
	);
}
