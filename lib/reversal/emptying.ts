// Emptying a build step by step: which of the positions that may be opened can be got at, and in what order.

import type { Ways } from "@/lib/reversal/access";

/** How one position was got at: its place in the order, and which of its ways was open by then. */
export type Got = { readonly rank: number; readonly way: number };

/**
 * Empties what can be emptied, opening only positions that `mayOpen` allows: position to how it was got at, in the
 * order in which it happened. Taking out never closes a way, so the result is the one largest set.
 * Runs in time proportional to the sizes of all clauses.
 */
export function emptyingOrder(ways: readonly Ways[], mayOpen: (position: number) => boolean): Map<number, Got> {
	const got = new Map<number, Got>();
	// For each position, the clauses that wait for it.
	const waiting: Waiting[][] = ways.map(() => []);
	let ready: { position: number; way: number }[] = [];
	for (let p = 0; p < ways.length; p++) {
		if (!mayOpen(p)) continue;
		const all = ways[p];
		if (all === null || all === undefined) {
			ready.push({ position: p, way: 0 });
			continue;
		}
		all.forEach((way, n) => {
			const left = { position: p, way: n, clauses: way.clauses.length };
			if (left.clauses === 0) ready.push({ position: p, way: n });
			for (const clause of way.clauses) {
				const one: Waiting = { met: false, left };
				for (const q of clause) waiting[q]?.push(one);
			}
		});
	}
	while (ready.length > 0) {
		const next: typeof ready = [];
		for (const { position, way } of ready) {
			if (got.has(position)) continue;
			got.set(position, { rank: got.size, way });
			for (const clause of waiting[position] ?? []) {
				if (clause.met) continue;
				clause.met = true;
				clause.left.clauses--;
				if (clause.left.clauses === 0) next.push(clause.left);
			}
		}
		ready = next.sort((a, b) => a.position - b.position || a.way - b.way);
	}
	return got;
}

type Waiting = { met: boolean; readonly left: { readonly position: number; readonly way: number; clauses: number } };
