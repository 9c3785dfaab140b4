// Every cost of one machine as a line for the bookkeeper: what the page's sums are made of. Pure.

import { compareDays, type Day } from "@/lib/core/days";
import type { Credited, SentBack } from "@/lib/credits/rules";
import { costOfMinutes, type Rate, rateOn } from "@/lib/money/labour";
import { type MinorUnits, minor, sumMinor } from "@/lib/money/money";

/** One cost that was spent, or that came back (below zero). An amount is null where a rate is missing: it is in no sum. */
export type SheetLine = {
	readonly day: Day;
	readonly kind: string;
	readonly words: string;
	readonly purchase: number | null;
	readonly person: string;
	readonly minutes: number | null;
	/** Cost rate an hour. */
	readonly rate: MinorUnits | null;
	readonly amount: MinorUnits | null;
};

export type WorkToCost = {
	readonly day: Day;
	readonly person: { readonly name: string; readonly rates: readonly Rate[] };
	readonly step: string;
	readonly minutes: number;
};
export type UseToCost = { readonly day: Day; readonly words: string; readonly purchase: number; readonly cost: MinorUnits };
export type ReturnToCost = UseToCost & Pick<SentBack, "id">;
export type CreditToCost = Credited & { readonly day: Day; readonly words: string; readonly purchase: number };
export type OtherToCost = { readonly day: Day; readonly kind: string; readonly words: string; readonly spent: MinorUnits };

/** All lines, by day, and what they add up to. */
export function costSheet(costs: {
	readonly work: readonly WorkToCost[];
	readonly uses: readonly UseToCost[];
	readonly returns: readonly ReturnToCost[];
	readonly credits: readonly CreditToCost[];
	readonly others: readonly OtherToCost[];
}): { readonly lines: readonly SheetLine[]; readonly total: MinorUnits } {
	const plain = { purchase: null, person: "", minutes: null, rate: null };
	const lines: SheetLine[] = [
		...costs.work.map(({ day, person, step, minutes }): SheetLine => {
			const found = rateOn(person.rates, day);
			const rate = found.ok ? found.value.costPerHour : null;
			return {
				day,
				kind: "labour",
				words: rate === null ? `${step} (no rate was in force on this day: not in the sum)` : step,
				purchase: null,
				person: person.name,
				minutes,
				rate,
				amount: rate === null ? null : costOfMinutes(minutes, rate),
			};
		}),
		...costs.uses.map(
			({ day, words, purchase, cost }): SheetLine => ({ ...plain, day, kind: "parts and materials", words, purchase, amount: cost }),
		),
		...costs.returns.map(
			({ day, words, purchase, cost }): SheetLine => ({ ...plain, day, kind: "sent back", words, purchase, amount: cost }),
		),
		...costs.credits.map(
			({ day, useId, words, purchase, amount }): SheetLine => ({
				...plain,
				day,
				kind: useId === null ? "taken off the price" : "credited for what was sent back",
				words,
				purchase,
				amount: minor(-amount),
			}),
		),
		...costs.others.map(({ day, kind, words, spent }): SheetLine => ({ ...plain, day, kind, words, amount: spent })),
	];
	return {
		lines: [...lines].sort((a, b) => compareDays(a.day, b.day)),
		total: sumMinor(lines.flatMap(({ amount }) => (amount === null ? [] : [amount]))),
	};
}
