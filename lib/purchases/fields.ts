// Fields that every form about buying has: counts, amounts. Pure.

import { z } from "zod";
import type { CurrencyCode } from "@/lib/money/currency";
import { type MinorUnits, minor, parseAmount } from "@/lib/money/money";

const HOW_MANY = "Write how many, a whole number from 1 to 100000.";

/** How many of a line, at least one. */
export const countField = z.union([z.number(), z.string().max(20, HOW_MANY)]).transform((typed, check): number => {
	const number = typeof typed === "number" ? typed : /^\s*\d{1,6}\s*$/.test(typed) ? Number(typed) : Number.NaN;
	if (Number.isInteger(number) && number >= 1 && number <= 100_000) return number;
	check.addIssue({ code: "custom", message: HOW_MANY });
	return z.NEVER;
});

const HOW_MANY_OR_NONE = "Write how many, a whole number up to 100000; empty if none.";

/** How many of a line, perhaps none: empty is none. */
export const countOrNone = z
	.union([z.number(), z.string().max(20, HOW_MANY_OR_NONE)])
	.default("")
	.transform((typed, check): number => {
		if (typeof typed === "string" && typed.trim() === "") return 0;
		const number = typeof typed === "number" ? typed : /^\s*\d{1,6}\s*$/.test(typed) ? Number(typed) : Number.NaN;
		if (Number.isInteger(number) && number >= 0 && number <= 100_000) return number;
		check.addIssue({ code: "custom", message: HOW_MANY_OR_NONE });
		return z.NEVER;
	});

/** Amounts come typed from a form, or as minor units from a program. */
export const typedAmount = z.union([z.number(), z.string().max(60, "Write the amount in figures.")]).default("");

/** Whether nothing at all was typed: blanks are nothing, and nothing is not 0. */
export const isUntyped = (typed: string | number): boolean => typeof typed === "string" && typed.trim() === "";

/** The amount that was typed, or what is wrong with it. Nothing typed is nothing; a form that needs an amount asks `isUntyped` first. */
export function readAmount(
	typed: string | number,
	currency: CurrencyCode,
): { readonly value: MinorUnits } | { readonly code: string; readonly say: string } {
	if (typeof typed === "number")
		return Number.isSafeInteger(typed) && typed >= 0
			? { value: minor(typed) }
			: { code: "amount-not-whole", say: "Whole minor units, not below zero." };
	if (isUntyped(typed)) return { value: minor(0) };
	const amount = parseAmount(typed, currency);
	return amount.ok ? { value: amount.value } : { code: amount.error.code, say: amount.error.say };
}

/** An amount that must be typed; `missing` is the sentence where it is not. */
export const neededAmount = (currency: CurrencyCode, missing: string) =>
	typedAmount.transform((typed, check): MinorUnits => {
		if (isUntyped(typed)) {
			check.addIssue({ code: "custom", message: missing });
			return z.NEVER;
		}
		const amount = readAmount(typed, currency);
		if ("value" in amount) return amount.value;
		check.addIssue({ code: "custom", message: amount.say });
		return z.NEVER;
	});
