// What was sent back, what the seller gave for it, and what of it stays a cost. Pure.
//
// Until the seller credits a return, what it cost is out of the shop's account and awaited: it counts as spent, and as so
// much less still to come. With the first credit nothing is awaited any more: what it leaves (freight, restocking) stays a
// cost of the machine that it was bought for. A second credit for the same return lessens that further.

import { ok, type Result, refuse } from "@/lib/core/result";
import type { CurrencyCode } from "@/lib/money/currency";
import { formatMoney, type MinorUnits, minor, NOTHING, sumMinor } from "@/lib/money/money";

/** Something sent back, with its share of the landed cost. */
export type Returned = { readonly id: string; readonly cost: MinorUnits };

/** What a seller gave: for a return, or off the price of what was kept (`useId` null). Only those that stand. */
export type Credited = { readonly useId: string | null; readonly amount: MinorUnits };

export type SentBack = Returned & {
	readonly credited: MinorUnits;
	/** Credit still to be had; nothing once the seller gave any. */
	readonly awaited: MinorUnits;
	/** What stays a cost. */
	readonly kept: MinorUnits;
};

/** One return against the credits given. */
export function sentBack(returned: Returned, credits: readonly Credited[]): SentBack {
	const given = credits.filter(({ useId }) => useId === returned.id);
	const credited = sumMinor(given.map(({ amount }) => amount));
	const left = minor(returned.cost - credited);
	return given.length === 0
		? { ...returned, credited, awaited: returned.cost, kept: NOTHING }
		: { ...returned, credited, awaited: NOTHING, kept: left };
}

/** What returns come to on a machine: out of the account so far, and still to come back (below zero). */
export function sumOfSentBack(returns: readonly Returned[], credits: readonly Credited[]): { spent: MinorUnits; toCome: MinorUnits } {
	const all = returns.map((returned) => sentBack(returned, credits));
	return {
		spent: sumMinor(all.map(({ cost, credited }) => minor(cost - credited))),
		toCome: minor(-sumMinor(all.map(({ awaited }) => awaited))),
	};
}

/** What sellers took off the price of what was kept. */
export const takenOff = (credits: readonly Credited[]): MinorUnits =>
	sumMinor(credits.flatMap(({ useId, amount }) => (useId === null ? [amount] : [])));

/** Whether a credit of this amount may stand beside those given: none is more than what it is for cost, nor all together than was paid. */
export function mayCredit(
	amount: MinorUnits,
	{ returned, given, paid }: { readonly returned: Returned | null; readonly given: readonly Credited[]; readonly paid: MinorUnits },
	currency: CurrencyCode,
): Result<null> {
	const wrong = (code: string, say: string, facts: Readonly<Record<string, number>> = {}) =>
		refuse(code, say, { fields: { amount: say }, facts });
	const left = minor(paid - sumMinor(given.map((credit) => credit.amount)));
	if (returned !== null) {
		const { credited } = sentBack(returned, given);
		const most = minor(returned.cost - credited);
		if (amount > most)
			return wrong(
				"credit-over-cost",
				`What was sent back cost ${formatMoney(returned.cost, currency)}${credited > 0 ? `, and ${formatMoney(credited, currency)} of it is credited already` : ""}: write ${formatMoney(most, currency)} at most. Enter what the seller gave beyond that as off the price.`,
				{ most, amount },
			);
	}
	if (returned === null && amount === 0)
		return wrong("credit-of-nothing", "Write what was taken off. Only for something sent back may it be 0.");
	if (amount <= left) return ok(null);
	return wrong(
		"credit-over-paid",
		`The purchase cost ${formatMoney(paid, currency)}, and no more than ${formatMoney(left, currency)} of it is left to be given back. Check the amount${returned === null ? "" : ", or take back first what was entered as off the price"}.`,
		{ most: left, amount },
	);
}
