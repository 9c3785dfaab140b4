// Access: what must be out of the way before the part in a position can be taken out, or a part put in.

import { partersOf, type Wholes, wholesOf } from "@/lib/reversal/whole";
import { type Build, NONE, partIn, placeOfPart, type World } from "@/lib/reversal/world";

/**
 * The ways to get at a position: one for each side. A way is a list of clauses, and of each clause at least one position
 * must have been emptied before. A way without clauses is free. Null: nothing is done there in this direction.
 */
export type Clause = readonly number[];
export type Way = { readonly side: number; readonly clauses: readonly Clause[] };
export type Ways = readonly Way[] | null;

/**
 * One direction of the work. "out": the present build is emptied, and what a position waits for must be out
 * before it. "in": the target build is emptied backwards, and what a position waits for goes in after it.
 */
export type Direction = "out" | "in";

/**
 * The ways to position `p` in one build.
 *
 * Taking out (`direction` "out"): a part that sits on what `p` holds and stands in the way has to come off
 * first. Putting in ("in"): that same part comes in together with its host and does not matter. A part on record as in the
 * way of the very position it is in never is (`lib/fittings/reach.ts` says the same).
 */
export function waysTo(world: World, build: Build, wholes: Wholes, p: number, direction: Direction): Way[] {
	const ways: Way[] = [];
	(world.obstructors[p] ?? []).forEach((obstructors, side) => {
		const clauses: number[][] = [];
		for (const part of obstructors) {
			// What is in a position is what hands want there, not what keeps them from it.
			if (placeOfPart(build, part) === p) continue;
			const parters = partersOf(build, wholes, p, part);
			if (parters === null) continue;
			if (parters.includes(p)) {
				if (direction === "in") continue;
				clauses.push(parters.filter((q) => q !== p));
			} else clauses.push(parters);
		}
		ways.push({ side, clauses: withoutWeaker(clauses) });
	});
	return ways;
}

/** Drops each clause that another one already implies (it has all of that one's positions, and perhaps more). */
function withoutWeaker(clauses: readonly Clause[]): Clause[] {
	const kept: Clause[] = [];
	for (const clause of [...clauses].sort((a, b) => a.length - b.length)) {
		if (!kept.some((strong) => strong.every((q) => clause.includes(q)))) kept.push(clause);
	}
	return kept;
}

export type Access = { readonly out: readonly Ways[]; readonly in: readonly Ways[] };

/**
 * The ways to every position, out of the present build and back into the one to be reached. `undoAt` are the
 * positions with an alteration to undo: one that is empty now and stays empty still has to be got at.
 */
export function accessOf(world: World, to: Build, undoAt: ReadonlySet<number>): Access {
	const nowWholes = wholesOf(world, world.now);
	const toWholes = wholesOf(world, to);
	const out: Ways[] = [];
	const back: Ways[] = [];
	for (let p = 0; p < world.positions.length; p++) {
		const holdsNow = partIn(world.now, p) !== NONE;
		const holdsThen = partIn(to, p) !== NONE;
		out.push(holdsNow || (undoAt.has(p) && !holdsThen) ? waysTo(world, world.now, nowWholes, p, "out") : null);
		back.push(holdsThen ? waysTo(world, to, toWholes, p, "in") : null);
	}
	return { out, in: back };
}
