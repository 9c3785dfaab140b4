// Step 3: the least opening. What has to come out, and no more, so that all the work can be done.

import type { Access, Ways } from "@/lib/reversal/access";
import { type NetWays, netDirection } from "@/lib/reversal/choiceNet";
import { type Budget, cheapestOpening } from "@/lib/reversal/choiceSearch";
import { type Moment, OPENED, UNDECIDED } from "@/lib/reversal/choiceStatus";
import { NONE, partIn, type World } from "@/lib/reversal/world";

/** Looks of the search before it settles for the best it has: three seconds or so. A machine needs a thousandth of them. */
export const SEARCH_LOOKS = 120_000_000;

export type LeastOpening = {
	/** O, ascending. */
	readonly positions: readonly number[];
	/** False when the search ran out of looks: O can be carried out, but a cheaper one may exist. */
	readonly proved: boolean;
};

/**
 * O: the cheapest superset of the work set, in likely minutes out and in, for which every part in it can be taken
 * out of the present build, every undo reached, and every part of T' put in. Ties: fewer positions, then the
 * first by id. Null when there is none. Requires `work` to lie within `mayOpen`. Takes its looks out of `budget`, which
 * several searches may share.
 *
 * A position can be got at from one of its sides, and where it is or on the bench with one of its hosts, so this is
 * a choice with shared costs. `choiceSearch` settles it exactly.
 */
export function leastOpening(
	world: World,
	access: Access,
	work: readonly number[],
	mayOpen: (position: number) => boolean,
	budget: Budget = { left: SEARCH_LOOKS },
): LeastOpening | null {
	const start = choiceOf(world, access, work, mayOpen);
	const found = cheapestOpening(start, budget);
	if (found === null) return null;
	return { positions: [...new Set([...work, ...found.opened])].sort((a, b) => a - b), proved: budget.left > 0 };
}

/** The choice over every position that the work may lead to. One position more weighs less than any minute. */
function choiceOf(world: World, access: Access, work: readonly number[], mayOpen: (position: number) => boolean): Moment {
	const relevant = new Set(work);
	for (const p of relevant) {
		for (const ways of [access.out[p], access.in[p]]) {
			for (const way of ways ?? []) for (const clause of way.clauses) for (const q of clause) if (mayOpen(q)) relevant.add(q);
		}
	}
	const labels = [...relevant].sort((a, b) => a - b);
	const number = new Map(labels.map((label, at) => [label, at]));
	const inWork = new Set(work);
	const minute = world.positions.length + 1;
	const weight = labels.map((p) => (inWork.has(p) ? 0 : likelyMinutes(world, p) * minute + 1));
	const cut = (ways: readonly Ways[]) =>
		netDirection(
			labels.map((p): NetWays => {
				const all = ways[p] ?? null;
				if (all === null) return null;
				const kept: number[][][] = [];
				for (const { clauses } of all) {
					const live = clauses.map((clause) => clause.map((q) => number.get(q)).filter((q) => q !== undefined));
					if (live.every((clause) => clause.length > 0)) kept.push(live);
				}
				return kept;
			}),
		);
	return {
		net: {
			labels,
			weight,
			directions: [cut(access.out), cut(access.in)],
			bring: labels.map((_, at) => [at]),
			sharpAt: Number.POSITIVE_INFINITY,
		},
		status: Uint8Array.from(labels, (p) => (inWork.has(p) ? OPENED : UNDECIDED)),
		cuts: [],
	};
}

/** What it takes to open a position that goes back unchanged: out and in again. */
function likelyMinutes(world: World, p: number): number {
	if (partIn(world.now, p) === NONE) return 0;
	return (world.outMinutes[p]?.likely ?? 0) + (world.inMinutes[p]?.likely ?? 0);
}
