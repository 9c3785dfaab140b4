import { z } from "zod";
import { parseDay } from "@/lib/core/days";
import { decimalText } from "@/lib/core/decimals";
import { chosen, line, optionalChosen, optionalLine, words } from "@/lib/core/words";
import { type CurrencyCode, parseCurrency } from "@/lib/money/currency";
import { parseRate } from "@/lib/money/exchange";
import { type MinorUnits, minor, parseAmount } from "@/lib/money/money";
import { partDetailsSchema } from "@/lib/parts/schema";

/** A day that must be there. */
const dayField = (what: string) =>
	z.string(`Write the day ${what}, like 2026-03-02.`).transform((text, check) => {
		const day = parseDay(text);
		if (day.ok) return day.value;
		check.addIssue({ code: "custom", message: day.error.say });
		return z.NEVER;
	});

/** A day that may be empty. */
const optionalDay = z
	.string()
	.nullish()
	.transform((text, check) => {
		if (!text) return null;
		const day = parseDay(text);
		if (day.ok) return day.value;
		check.addIssue({ code: "custom", message: day.error.say });
		return z.NEVER;
	});

const HOW_MANY = "Write how many, a whole number from 1 to 100000.";
const count = z.union([z.number(), z.string().max(20, HOW_MANY)]).transform((typed, check): number => {
	const number = typeof typed === "number" ? typed : /^\s*\d{1,6}\s*$/.test(typed) ? Number(typed) : Number.NaN;
	if (Number.isInteger(number) && number >= 1 && number <= 100_000) return number;
	check.addIssue({ code: "custom", message: HOW_MANY });
	return z.NEVER;
});

const HOW_HEAVY = "Write the weight in whole grams.";
const grams = z
	.union([z.number(), z.string().max(20, HOW_HEAVY)])
	.nullish()
	.transform((typed, check): number | null => {
		if (typed === null || typed === undefined || typed === "") return null;
		const number = typeof typed === "number" ? typed : /^\s*\d{1,7}\s*$/.test(typed) ? Number(typed) : Number.NaN;
		if (Number.isInteger(number) && number >= 0) return number;
		check.addIssue({ code: "custom", message: HOW_HEAVY });
		return z.NEVER;
	});

/** Amounts come typed from a form, or as minor units from a program. Empty is nothing. */
const typedAmount = z.union([z.number(), z.string().max(60, "Write the amount in figures.")]).default("");

function readAmount(typed: string | number, currency: CurrencyCode): { readonly value: MinorUnits } | { readonly say: string } {
	if (typeof typed === "number")
		return Number.isSafeInteger(typed) && typed >= 0 ? { value: minor(typed) } : { say: "Whole minor units, not below zero." };
	if (typed.trim() === "") return { value: minor(0) };
	const amount = parseAmount(typed, currency);
	return amount.ok ? { value: amount.value } : { say: amount.error.say };
}

export const buyLineSchema = z.object({
	what: line("what was bought", 200),
	count,
	unit: optionalLine("the unit", 20).transform((unit) => unit || "piece"),
	net: typedAmount,
	weightGrams: grams,
});

/**
 * A purchase as a form sends it. Goods, discount and freight are in the purchase's currency; duty, handling, tax and what
 * was paid in all are in the shop's. Gives every amount in minor units.
 */
export const buySchema = (home: CurrencyCode) =>
	z
		.object({
			supplierId: optionalChosen,
			supplierName: optionalLine("the supplier's name"),
			orderedDay: dayField("it was ordered"),
			arrivedDay: optionalDay,
			currency: z.string().max(10, "Write the currency's three letters, like EUR.").default(home),
			rate: z.string().max(40, "Write the rate shorter, like 1.0845.").default("1"),
			spreadBy: z.enum(["value", "weight"]).default("value"),
			discount: typedAmount,
			freight: typedAmount,
			duty: typedAmount,
			handling: typedAmount,
			tax: typedAmount,
			/** Empty: not checked against what left the account. */
			paid: typedAmount,
			addedWhy: optionalLine("why it was not in the plan", 200),
			note: words("the note", 1000),
			lines: z.array(buyLineSchema).min(1, "Write at least one line.").max(200, "At most 200 lines a purchase."),
		})
		.transform((typed, check) => {
			const problem = (path: (string | number)[], message: string): void => {
				check.addIssue({ code: "custom", path, message });
			};
			if (typed.supplierId === null && typed.supplierName === "") problem(["supplierName"], "Say who sold it.");
			const currency = parseCurrency(typed.currency || home);
			if (!currency.ok) problem(["currency"], currency.error.say);
			const bought = currency.ok ? currency.value : home;
			const rate = parseRate(bought === home ? "1" : typed.rate);
			if (!rate.ok) problem(["rate"], rate.error.say);
			const read = (path: (string | number)[], value: string | number, unit: CurrencyCode): MinorUnits => {
				const amount = readAmount(value, unit);
				if ("value" in amount) return amount.value;
				problem(path, amount.say);
				return minor(0);
			};
			const purchase = {
				...typed,
				currency: bought,
				rate: rate.ok ? decimalText(rate.value) : "1",
				discount: read(["discount"], typed.discount, bought),
				freight: read(["freight"], typed.freight, bought),
				duty: read(["duty"], typed.duty, home),
				handling: read(["handling"], typed.handling, home),
				tax: read(["tax"], typed.tax, home),
				paid: typed.paid === "" ? null : read(["paid"], typed.paid, home),
				lines: typed.lines.map((one, index) => {
					if (one.net === "") problem(["lines", index, "net"], "Write what the line cost; 0 if it came free.");
					return { ...one, net: read(["lines", index, "net"], one.net, bought) };
				}),
			};
			return purchase;
		});

export const arriveSchema = z.object({
	purchaseId: chosen("the purchase"),
	arrivedDay: dayField("it arrived"),
	locationId: optionalChosen,
});

const use = {
	lineId: chosen("the line"),
	machineId: chosen("the machine"),
	count,
	day: optionalDay,
	words: optionalLine("what for", 200),
};
export const drawFromLineSchema = z.object({ ...use, partId: optionalChosen });
export const returnLineSchema = z.object({
	lineId: chosen("the line"),
	machineId: chosen("the machine"),
	count,
	day: optionalDay,
	words: line("why it went back", 200),
});
export const voidUseSchema = z.object({ useId: chosen("the use"), why: line("why it was entered in error", 200) });

/** A line, or some of it, becomes a part of a machine, on the bench, with its source. */
export const partFromLineSchema = z.object({ ...use, details: partDetailsSchema });

export type Buy = z.output<ReturnType<typeof buySchema>>;
export type Arrive = z.output<typeof arriveSchema>;
export type DrawFromLine = z.output<typeof drawFromLineSchema>;
export type ReturnLine = z.output<typeof returnLineSchema>;
export type VoidUse = z.output<typeof voidUseSchema>;
export type PartFromLine = z.output<typeof partFromLineSchema>;
