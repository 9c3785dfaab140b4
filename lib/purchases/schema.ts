import { z } from "zod";
import { dayField, optionalDay } from "@/lib/core/dayFields";
import { decimalText } from "@/lib/core/decimals";
import { chosen, line, optionalChosen, optionalLine, words } from "@/lib/core/words";
import { type CurrencyCode, parseCurrency } from "@/lib/money/currency";
import { parseRate } from "@/lib/money/exchange";
import { type MinorUnits, minor } from "@/lib/money/money";
import { partDetailsSchema } from "@/lib/parts/schema";
import { countField, isUntyped, readAmount, typedAmount } from "@/lib/purchases/fields";
import { leadField } from "@/lib/purchases/lead";

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

export const buyLineSchema = z.object({
	what: line("what was bought", 200),
	count: countField,
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
			/** Days from the order to the door, in three points. */
			lead: leadField,
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
			if (!rate.ok)
				problem(
					["rate"],
					typed.rate.trim() === ""
						? `Write the rate of the day: what one ${bought} costs in ${home}, like 0.9240. Without it nothing can be landed.`
						: rate.error.say,
				);
			const read = (path: (string | number)[], value: string | number, unit: CurrencyCode, otherwise = ""): MinorUnits => {
				const amount = readAmount(value, unit);
				if ("value" in amount) return amount.value;
				problem(path, amount.code === "amount-other-currency" ? `${amount.say}${otherwise}` : amount.say);
				return minor(0);
			};
			/** What stands on the supplier's paper. */
			const onPaper = (path: (string | number)[], value: string | number): MinorUnits =>
				read(path, value, bought, " Or change the currency of the purchase.");
			const purchase = {
				...typed,
				currency: bought,
				rate: rate.ok ? decimalText(rate.value) : "1",
				discount: onPaper(["discount"], typed.discount),
				freight: onPaper(["freight"], typed.freight),
				duty: read(["duty"], typed.duty, home),
				handling: read(["handling"], typed.handling, home),
				tax: read(["tax"], typed.tax, home),
				paid: isUntyped(typed.paid) ? null : read(["paid"], typed.paid, home),
				lines: typed.lines.map((one, index) => {
					if (isUntyped(one.net)) problem(["lines", index, "net"], "Write what the line cost; 0 if it came free.");
					return { ...one, net: onPaper(["lines", index, "net"], one.net) };
				}),
			};
			return purchase;
		});

/** How long it is thought to take, corrected on the purchase's own page. */
export const changeLeadSchema = z.object({ purchaseId: chosen("the purchase"), lead: leadField });

const use = {
	lineId: chosen("the line"),
	machineId: chosen("the machine"),
	count: countField,
	day: optionalDay,
	words: optionalLine("what for", 200),
};
export const drawFromLineSchema = z.object({ ...use, partId: optionalChosen });
export const returnLineSchema = z.object({
	lineId: chosen("the line"),
	machineId: chosen("the machine"),
	count: countField,
	day: optionalDay,
	words: line("why it went back", 200),
});
export const voidUseSchema = z.object({ useId: chosen("the use"), why: line("why it was entered in error", 200) });

/** A line, or some of it, becomes a part of a machine, on the bench, with its source. */
export const partFromLineSchema = z.object({ ...use, details: partDetailsSchema });

/** A period in an address, both days included. */
export const periodSchema = z
	.object({ from: dayField("from which purchases are listed"), until: dayField("until which purchases are listed") })
	.refine(({ from, until }) => from <= until, { path: ["until"], message: "The period ends before it begins: swap the two days." });

export type Buy = z.output<ReturnType<typeof buySchema>>;
export type ChangeLead = z.output<typeof changeLeadSchema>;
export type DrawFromLine = z.output<typeof drawFromLineSchema>;
export type ReturnLine = z.output<typeof returnLineSchema>;
export type VoidUse = z.output<typeof voidUseSchema>;
export type PartFromLine = z.output<typeof partFromLineSchema>;
