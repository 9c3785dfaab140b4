import { z } from "zod";
import { parseDay } from "@/lib/core/days";
import { chosen, line, optionalChosen } from "@/lib/core/words";
import type { CurrencyCode } from "@/lib/money/currency";
import { type MinorUnits, minor, parseAmount } from "@/lib/money/money";

export const COST_KINDS = ["consumable", "outside", "disposal", "carriage", "inspection", "deposit", "other"] as const;

export const COST_KIND_WORDS: Readonly<Record<(typeof COST_KINDS)[number], string>> = {
	consumable: "consumables",
	outside: "outside work",
	disposal: "disposal",
	carriage: "carriage",
	inspection: "inspection",
	deposit: "deposit",
	other: "other",
};

/** An amount typed in the shop's currency, or minor units from a program. Empty is nothing. */
const amount = (currency: CurrencyCode) =>
	z
		.union([z.number(), z.string().max(60, "Write the amount in figures.")])
		.default("")
		.transform((typed, check): MinorUnits => {
			if (typeof typed === "number" && Number.isSafeInteger(typed) && typed >= 0) return minor(typed);
			if (typeof typed === "string" && typed.trim() === "") return minor(0);
			const read = parseAmount(String(typed), currency);
			if (read.ok) return read.value;
			check.addIssue({ code: "custom", message: read.error.say });
			return z.NEVER;
		});

const costFields = (currency: CurrencyCode) => ({
	kind: z.enum(COST_KINDS, "Say what kind of cost it is."),
	state: z.enum(["planned", "spent", "forgone"], "Say whether it is spent, still to come, or was let go."),
	words: line("what it was for", 200),
	day: z.string("Write the day, like 2026-03-02.").transform((text, check) => {
		const day = parseDay(text);
		if (day.ok) return day.value;
		check.addIssue({ code: "custom", message: day.error.say });
		return z.NEVER;
	}),
	partyId: optionalChosen,
	/** What the first plan had for it. */
	estimated: amount(currency),
	spent: amount(currency),
});

export const addCostSchema = (currency: CurrencyCode) => z.object({ machineId: chosen("the machine"), ...costFields(currency) });
export const changeCostSchema = (currency: CurrencyCode) =>
	z.object({ costId: chosen("the cost"), ...costFields(currency), state: z.enum(["planned", "spent", "forgone", "void"]) });

export type AddCost = z.output<ReturnType<typeof addCostSchema>>;
export type ChangeCost = z.output<ReturnType<typeof changeCostSchema>>;
