"use client";

import { useRouter } from "next/navigation";
import type { KeyboardEvent } from "react";
import { useFieldArray, useWatch } from "react-hook-form";
import { Button } from "@/app/ui/button";
import { Card } from "@/app/ui/card";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { Buttons, Columns, FormRow, Stack } from "@/app/ui/layouts";
import { MinutesField } from "@/app/ui/minutesField";
import { MoneyField } from "@/app/ui/moneyField";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { decimalFrom } from "@/lib/core/decimals";
import { type CurrencyCode, parseCurrency } from "@/lib/money/currency";
import { landed } from "@/lib/money/landed";
import { formatAmount, minor, parseAmount } from "@/lib/money/money";
import { isUntyped } from "@/lib/purchases/fields";
import { buySchema } from "@/lib/purchases/schema";
import { buyAction } from "../actions";
import { LEAD_HINT } from "../leadHint";

const EMPTY_LINE = { what: "", count: "1", unit: "piece", net: "", weightGrams: "" };

export function BuyForm({
	home,
	today,
	suppliers,
	currencies,
}: {
	home: CurrencyCode;
	today: string;
	suppliers: readonly Option[];
	currencies: readonly Option[];
}) {
	const router = useRouter();
	const form = useActionForm({
		schema: buySchema(home),
		defaults: {
			supplierId: "",
			supplierName: "",
			orderedDay: today,
			arrivedDay: "",
			lead: { low: "", likely: "", high: "" },
			currency: home,
			rate: "",
			spreadBy: "value",
			discount: "",
			freight: "",
			duty: "",
			handling: "",
			tax: "",
			paid: "",
			addedWhy: "",
			note: "",
			lines: [EMPTY_LINE],
		},
		action: buyAction,
		onDone: ({ number }) => router.push(`/buying/${number}`),
	});
	const lines = useFieldArray({ control: form.form.control, name: "lines" });
	const typed = useWatch({ control: form.form.control });
	const currency = parseCurrency(String(typed.currency ?? home));
	const code = currency.ok ? currency.value : home;
	const foreign = code !== home;
	// Enter in a line goes on with the next one: the freight and the tax are still to be typed.
	const nextLine = (index: number) => (event: KeyboardEvent) => {
		if (event.key !== "Enter") return;
		event.preventDefault();
		if (index === lines.fields.length - 1) lines.append(EMPTY_LINE);
		else form.form.setFocus(`lines.${index + 1}.what`);
	};
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Columns>
				<Stack>
					<Card title="The paper">
						<FormRow>
							<SelectField label="Supplier" none="A new one" options={suppliers} {...form.field("supplierId")} />
							{typed.supplierId ? null : <TextField label="Name of the new supplier" {...form.field("supplierName")} />}
						</FormRow>
						<FormRow>
							<DayField label="Ordered" {...form.field("orderedDay")} />
							<DayField label="Arrived" hint="Whole. Empty while any of it is in the post" optional {...form.field("arrivedDay")} />
						</FormRow>
						{typed.arrivedDay ? null : (
							<MinutesField
								label="Days until it is here"
								hint={LEAD_HINT}
								optional
								low={form.field("lead.low")}
								likely={form.field("lead.likely")}
								high={form.field("lead.high")}
							/>
						)}
						<FormRow>
							<SelectField label="Currency" options={currencies} {...form.field("currency")} />
							{foreign ? (
								<TextField
									label={`Rate: ${home} for 1 ${code}`}
									hint="Of the day it was paid, like 0.9240"
									inputMode="decimal"
									{...form.field("rate")}
								/>
							) : null}
						</FormRow>
					</Card>
					<Card title="Lines" aside={`${code}, before tax`}>
						{lines.fields.map((line, index) => (
							<fieldset key={line.id} className="af-line">
								<legend className="af-label">Line {index + 1}</legend>
								<TextField label="What" onKeyDown={nextLine(index)} {...form.field(`lines.${index}.what`)} />
								<FormRow>
									<TextField label="How many" inputMode="numeric" onKeyDown={nextLine(index)} {...form.field(`lines.${index}.count`)} />
									<TextField label="Unit" hint="piece, m, ml" onKeyDown={nextLine(index)} {...form.field(`lines.${index}.unit`)} />
									<MoneyField label="The whole line" currency={code} onKeyDown={nextLine(index)} {...form.field(`lines.${index}.net`)} />
									{typed.spreadBy === "weight" ? (
										<TextField
											label="Weight, g"
											inputMode="numeric"
											onKeyDown={nextLine(index)}
											{...form.field(`lines.${index}.weightGrams`)}
										/>
									) : null}
								</FormRow>
								{lines.fields.length > 1 ? (
									<Button kind="quiet" onClick={() => lines.remove(index)} aria-label={`Leave out line ${index + 1}`}>
										Leave it out
									</Button>
								) : null}
							</fieldset>
						))}
						<Button onClick={() => lines.append(EMPTY_LINE)}>Add a line</Button>
					</Card>
				</Stack>
				<Stack>
					<Card title="Costs of the whole">
						<MoneyField label="Discount" optional currency={code} {...form.field("discount")} />
						<MoneyField label="Freight" optional currency={code} {...form.field("freight")} />
						<MoneyField label="Duty" optional currency={home} {...form.field("duty")} />
						<MoneyField label="Handling" hint="What the bank or the carrier took" optional currency={home} {...form.field("handling")} />
						<MoneyField label="Tax" optional currency={home} {...form.field("tax")} />
						<ChoiceField
							label="Freight and handling go by"
							options={[
								{ value: "value", label: "value" },
								{ value: "weight", label: "weight" },
							]}
							{...form.field("spreadBy")}
						/>
						<MoneyField
							label="Paid in all"
							hint="Held against the sum of the lines. Empty: not checked."
							optional
							currency={home}
							{...form.field("paid")}
						/>
						<TextField label="Why it was not in the plan" optional {...form.field("addedWhy")} />
						<TextField label="Note" hint="Their order number, the invoice" optional {...form.field("note")} />
						<WhatItComesTo typed={typed} home={home} code={code} />
						<Buttons>
							<Button type="submit" kind="main" pending={form.pending}>
								Enter the purchase
							</Button>
						</Buttons>
					</Card>
				</Stack>
			</Columns>
		</form>
	);
}

type Typed = {
	lines?: readonly ({ net?: string | number; weightGrams?: string | number | null } | undefined)[];
	discount?: string | number;
	freight?: string | number;
	duty?: string | number;
	handling?: string | number;
	tax?: string | number;
	paid?: string | number;
	rate?: string;
	spreadBy?: string;
};

/** The sum so far, by the same function that spreads it when it is entered; nothing while something cannot be read. */
function WhatItComesTo({ typed, home, code }: { typed: Typed; home: CurrencyCode; code: CurrencyCode }) {
	const amount = (value: string | number | undefined, unit: CurrencyCode) => {
		if (value === undefined || value === "") return minor(0);
		const read = parseAmount(String(value), unit);
		return read.ok ? read.value : null;
	};
	const [discount, freight] = [amount(typed.discount, code), amount(typed.freight, code)];
	const [duty, handling, tax] = [amount(typed.duty, home), amount(typed.handling, home), amount(typed.tax, home)];
	const nets = (typed.lines ?? []).map((line) => amount(line?.net, code));
	const rate = decimalFrom(code === home ? "1" : (typed.rate ?? ""));
	if (rate === null || rate.digits <= 0n)
		return <p className="af-hint">{`What it comes to stands here once the rate is written: ${home} for 1 ${code}.`}</p>;
	if ([discount, freight, duty, handling, tax, ...nets].includes(null))
		return <p className="af-hint">What it comes to stands here once every amount can be read.</p>;
	const pot = (value: number | null, where: "purchase" | "shop") => ({ minor: minor(value ?? 0), in: where, by: "value" as const });
	const whole = {
		shopCurrency: home,
		currency: code,
		rate,
		lines: nets.map((net, index) => ({ id: String(index), net: minor(net ?? 0) })),
		pots: {
			discount: pot(discount, "purchase"),
			freight: pot(freight, "purchase"),
			duty: pot(duty, "shop"),
			handling: pot(handling, "shop"),
			tax: pot(tax, "shop"),
		},
	};
	const paid = amount(typed.paid, home);
	const toPaid = isUntyped(typed.paid ?? "") ? null : landed({ ...whole, paid });
	const all = toPaid?.ok ? toPaid : landed(whole);
	if (!all.ok) return null;
	const { rounding } = all.value.total;
	return (
		<p className="af-lead" aria-live="polite">
			It comes to <strong>{formatAmount(all.value.total.landed, home)}</strong> {home}
			{rounding === 0 ? null : `, with ${formatAmount(rounding, home)} of rounding: each amount is converted by itself`}
		</p>
	);
}
