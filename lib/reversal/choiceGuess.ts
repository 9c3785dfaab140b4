// A good opening without a search, so that the search has something to beat.

import { sizeOf } from "@/lib/reversal/choiceNet";
import type { Budget, Opening } from "@/lib/reversal/choiceSearch";
import { type Moment, OPENED, supported, UNDECIDED } from "@/lib/reversal/choiceStatus";

/**
 * Takes what the cuts have paid for in full, as what is owed anyway costs nothing more (a primal-dual guess), or everything when that
 * is not enough; then gives up one after the other, the dearest first, what the rest can do without. Null when there is no opening. On a budget that is used up it gives up no more.
 */
export function guessOpening({ net, status, cuts }: Moment, budget: Budget): Opening | null {
	const rest = Float64Array.from(net.weight);
	for (const { cut, cost } of cuts) for (const q of cut) rest[q] = (rest[q] ?? 0) - cost;
	const paid = status.map((s, q) => (s === OPENED || (s === UNDECIDED && rest[q] === 0) ? 1 : 0));
	const all = status.map((s) => (s === OPENED || s === UNDECIDED ? 1 : 0));
	let chosen: Uint8Array | null = supported(net, paid, status) ?? supported(net, all, status);
	if (chosen === null) return null;
	const weightOf = (q: number): number => net.weight[q] ?? 0;
	const dearestFirst = [...status.keys()].filter((q) => status[q] === UNDECIDED).sort((a, b) => weightOf(b) - weightOf(a) || a - b);
	for (const q of dearestFirst) {
		if (chosen[q] === 0) continue;
		if (budget.left <= 0) break;
		budget.left -= sizeOf(net);
		const fewer: Uint8Array = Uint8Array.from(chosen);
		fewer[q] = 0;
		chosen = supported(net, fewer, status) ?? chosen;
	}
	const kept = dearestFirst.filter((q) => chosen?.[q] === 1);
	return { weight: kept.reduce((sum, q) => sum + weightOf(q), 0), opened: kept.map((q) => net.labels[q] ?? 0) };
}
