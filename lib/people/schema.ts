import { z } from "zod";
import { dayField } from "@/lib/core/dayFields";
import { chosen, line, optionalLine } from "@/lib/core/words";
import type { CurrencyCode } from "@/lib/money/currency";
import { parseAmount } from "@/lib/money/money";

export const personSchema = z.object({
	name: line("the name"),
	initials: line("the initials", 4),
	skills: optionalLine("what they do"),
});

export const describePersonSchema = personSchema.extend({ id: chosen("a person"), state: z.enum(["here", "left"]) });

/** An amount typed in a currency; gives minor units. */
export const amountField = (currency: CurrencyCode) =>
	z.string("Write the amount in figures.").transform((text, check) => {
		const amount = parseAmount(text, currency);
		if (amount.ok) return amount.value;
		check.addIssue({ code: "custom", message: amount.error.say });
		return z.NEVER;
	});

export const rateSchema = (currency: CurrencyCode) =>
	z.object({
		personId: chosen("a person"),
		fromDay: dayField("from which it holds"),
		cost: amountField(currency),
		charge: amountField(currency),
	});

export type NewPerson = z.output<typeof personSchema>;
export type DescribePerson = z.output<typeof describePersonSchema>;
export type NewRate = z.output<ReturnType<typeof rateSchema>>;
