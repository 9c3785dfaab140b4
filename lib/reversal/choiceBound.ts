// A lower bound on what the open needs cost, and what every answer to a need has in common.

import type { Need } from "@/lib/reversal/choiceNeeds";
import { UNDECIDED } from "@/lib/reversal/choiceNeeds";

type With = readonly (readonly number[])[];

/** The undecided openings that every option of a need brings with it. */
export function commonToAllOptions(need: Need, bring: With, status: Uint8Array): number[] {
	let common: Set<number> | null = null;
	for (const option of need.options) {
		const inOption = new Set<number>();
		for (const clause of option.clauses) for (const q of commonToClause(clause, bring)) if (status[q] === UNDECIDED) inOption.add(q);
		if (common === null) common = inOption;
		else for (const q of common) if (!inOption.has(q)) common.delete(q);
		if (common.size === 0) return [];
	}
	return [...(common ?? [])];
}

function commonToClause(clause: readonly number[], bring: With): readonly number[] {
	const [first, ...others] = clause;
	let common: readonly number[] = bring[first ?? 0] ?? [];
	for (const q of others) {
		const these = new Set(bring[q] ?? []);
		common = common.filter((r) => these.has(r));
		if (common.length === 0) break;
	}
	return common;
}

export type Bound = {
	/** No answer costs less than this. */
	readonly least: number;
	/** By need, its share of `least`. */
	readonly shares: readonly number[];
	/** By opening, what it adds to `least` at the very least when it is opened. */
	readonly extra: readonly number[];
};

/**
 * Dual ascent. For each need take one clause of each option: whatever the answer, one of the openings listed there is
 * opened, with all it brings. So the cheapest of them is owed; it is paid out of the weights of what each of them would bring, and
 * what remains of the weights bounds what the other needs owe. An opening that serves several needs is never paid twice.
 */
export function lowerBound(needs: readonly Need[], bring: With, weight: readonly number[], status: Uint8Array): Bound {
	const rest = weight.map((w, q) => (status[q] === UNDECIDED ? w : 0));
	const cost = (q: number): number => {
		let sum = 0;
		for (const r of bring[q] ?? []) sum += rest[r] ?? 0;
		return sum;
	};
	const shares = needs.map(() => 0);
	const order = needs
		.map((need, at) => ({ need, at, size: need.options.reduce((sum, { clauses }) => sum + clauses.length, 0) }))
		.filter(({ need }) => need.options.every(({ free }) => !free))
		.sort((a, b) => a.size - b.size || a.at - b.at);
	let least = 0;
	for (let paid = true; paid; ) {
		paid = false;
		for (const { need, at } of order) {
			let owed = Number.POSITIVE_INFINITY;
			const listed = new Set<number>();
			for (const { clauses } of need.options) {
				let dearest = -1;
				let chosen: readonly number[] = [];
				for (const clause of clauses) {
					const cheapest = Math.min(...clause.map(cost));
					if (cheapest > dearest) {
						dearest = cheapest;
						chosen = clause;
					}
				}
				owed = Math.min(owed, dearest);
				if (owed <= 0) break;
				for (const q of chosen) listed.add(q);
			}
			if (owed <= 0 || owed === Number.POSITIVE_INFINITY) continue;
			pay(owed, [...listed], bring, rest);
			least += owed;
			shares[at] = (shares[at] ?? 0) + owed;
			paid = true;
		}
	}
	return { least, shares, extra: weight.map((_, q) => (status[q] === UNDECIDED ? cost(q) : 0)) };
}

/** Takes `owed` from what each listed opening brings, first from what most of them bring, as that is taken once for all of them. */
function pay(owed: number, listed: readonly number[], bring: With, rest: number[]): void {
	const times = new Map<number, number>();
	for (const q of listed) for (const r of bring[q] ?? []) times.set(r, (times.get(r) ?? 0) + 1);
	const taken = new Map<number, number>();
	for (const q of listed) {
		let left = owed;
		const from = [...(bring[q] ?? [])].filter((r) => (rest[r] ?? 0) > 0).sort((a, b) => (times.get(b) ?? 0) - (times.get(a) ?? 0) || a - b);
		for (const r of from) {
			if (left === 0) break;
			const part = Math.min(left, rest[r] ?? 0);
			taken.set(r, Math.max(taken.get(r) ?? 0, part));
			left -= part;
		}
	}
	for (const [r, part] of taken) rest[r] = (rest[r] ?? 0) - part;
}
