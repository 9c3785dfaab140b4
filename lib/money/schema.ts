import { z } from "zod";
import { dayField } from "@/lib/core/dayFields";
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

/** An amount typed in the shop's currency, or minor units from a program. Empty is null: whoever needs it must ask. */
const amount = (currency: CurrencyCode) =>
	z
		.union([z.number(), z.string().max(60, "Write the amount in figures.")])
		.default("")
		.transform((typed, check): MinorUnits | null => {
			if (typeof typed === "number" && Number.isSafeInteger(typed) && typed >= 0) return minor(typed);
			if (typeof typed === "string" && typed.trim() === "") return null;
			const read = parseAmount(String(typed), currency);
			if (read.ok) return read.value;
			check.addIssue({ code: "custom", message: read.error.say });
			return z.NEVER;
		});

const costFields = (currency: CurrencyCode) => ({
	kind: z.enum(COST_KINDS, "Say what kind of cost it is."),
	state: z.enum(["planned", "spent", "forgone"], "Say whether it is spent, still to come, or was let go."),
	words: line("what it was for", 200),
	day: dayField("of the cost"),
	partyId: optionalChosen,
	/** What the first plan had for it. */
	estimated: amount(currency),
	spent: amount(currency),
});

type Said = { readonly state: string; readonly estimated: MinorUnits | null; readonly spent: MinorUnits | null };

/** Nothing typed is no amount where one is what the cost is about: 0 has to be written. */
function withAmounts<Cost extends Said>(cost: Cost, check: z.RefinementCtx): Cost & { estimated: MinorUnits; spent: MinorUnits } {
	const missing = (path: string, message: string) => check.addIssue({ code: "custom", path: [path], message });
	if (cost.state === "spent" && cost.spent === null) missing("spent", "Write what was spent; 0 if it came free.");
	if (cost.state === "planned" && cost.estimated === null && cost.spent === null)
		missing("estimated", "Write what it will cost, as far as you can say.");
	if (cost.state === "forgone" && cost.estimated === null) missing("estimated", "Write what was let go.");
	return { ...cost, estimated: cost.estimated ?? minor(0), spent: cost.spent ?? minor(0) };
}

export const addCostSchema = (currency: CurrencyCode) =>
	z.object({ machineId: chosen("the machine"), ...costFields(currency) }).transform(withAmounts);
export const changeCostSchema = (currency: CurrencyCode) =>
	z
		.object({ costId: chosen("the cost"), ...costFields(currency), state: z.enum(["planned", "spent", "forgone", "void"]) })
		.transform(withAmounts);

export type AddCost = z.output<ReturnType<typeof addCostSchema>>;
export type ChangeCost = z.output<ReturnType<typeof changeCostSchema>>;
