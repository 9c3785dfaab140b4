"use client";

import { useWatch } from "react-hook-form";
import { Button } from "@/app/ui/button";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { MoneyField } from "@/app/ui/moneyField";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TakeBack } from "@/app/ui/takeBack";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { creditSchema, voidCreditSchema } from "@/lib/credits/schema";
import type { CurrencyCode } from "@/lib/money/currency";
import { giveCreditAction, voidCreditAction } from "../actions";

/** What the seller gave back: for something sent back, or off the price of what was kept. */
export function CreditForm({
	purchaseId,
	today,
	currency,
	returns,
	machines,
}: {
	readonly purchaseId: string;
	readonly today: string;
	readonly currency: CurrencyCode;
	readonly returns: readonly Option[];
	readonly machines: readonly Option[];
}) {
	const form = useActionForm({
		schema: creditSchema(currency),
		defaults: { purchaseId, useId: returns[0]?.value ?? "", machineId: "", day: today, amount: "", words: "" },
		action: giveCreditAction,
		onDone: (_, { reset }) => reset(),
	});
	const forReturn = useWatch({ control: form.form.control, name: "useId" });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField label="What it is for" none="off the price of what was kept" options={returns} {...form.field("useId")} />
			{forReturn ? null : (
				<SelectField label="Lessens the costs of" none="the shop, no machine" options={machines} {...form.field("machineId")} />
			)}
			<FormRow>
				<MoneyField
					label="Credited"
					hint={forReturn ? "0 if nothing is given. What it leaves stays a cost." : ""}
					currency={currency}
					{...form.field("amount")}
				/>
				<DayField label="Credited on" {...form.field("day")} />
			</FormRow>
			<TextField label="Their words" hint="The credit note, and why they keep some of it" {...form.field("words")} />
			<Button type="submit" pending={form.pending}>
				Enter the credit
			</Button>
		</form>
	);
}

export function VoidCreditForm({ creditId, what }: { readonly creditId: string; readonly what: string }) {
	const form = useActionForm({ schema: voidCreditSchema, defaults: { creditId, why: "" }, action: voidCreditAction });
	return (
		<TakeBack
			says={`Take back the credit: ${what}`}
			formProps={form.formProps}
			problem={form.problem}
			pending={form.pending}
			why={form.field("why")}
		/>
	);
}
