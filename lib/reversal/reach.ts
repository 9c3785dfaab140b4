// "What must come off first?" The least opening that reaches given positions in the present build.

import { accessOf } from "@/lib/reversal/access";
import { largestOpening, loopsBehind } from "@/lib/reversal/accessLoops";
import { attainableTarget, isBarred } from "@/lib/reversal/attainable";
import { leastOpening, SEARCH_LOOKS } from "@/lib/reversal/leastOpening";
import { type Operation, operationsIn, type PlanLoop, planLoop } from "@/lib/reversal/plan";
import type { Problem } from "@/lib/reversal/problem";
import { NONE, partIn, type World, worldOf } from "@/lib/reversal/world";

/** One way to reach the positions. Minutes are likely labour, out and in again. */
export type Way = { readonly opened: readonly string[]; readonly openedOnly: readonly string[]; readonly minutes: number };

export type Reach = Way & {
	/** Take-outs and put-ins in an order that can be carried out. */
	readonly operations: readonly Operation[];
	/** Positions asked for that no opening reaches, and the loops that keep them shut. */
	readonly outOfReach: readonly string[];
	readonly loops: readonly PlanLoop[];
	readonly leastProved: boolean;
	/** The next best way, without one of the positions that the best one opens, and how many likely minutes dearer it is. Null: there is none. */
	readonly secondBest: (Way & { readonly without: string; readonly dearerBy: number }) | null;
	/** False when the search ran out of looks: a cheaper second way may exist, or one where none was found. */
	readonly secondBestProved: boolean;
};

/**
 * The least opening to reach `positions` as the machine stands now: what is in them, and what is in their way, out and
 * in again. Requires a problem that `readProblem` let through; its target is not looked at. Positions that the
 * problem does not know are out of reach.
 */
export function openingFor(problem: Problem, positions: readonly string[], looks: number = SEARCH_LOOKS): Reach {
	const world = worldOf({ ...problem, target: problem.now, scope: undefined, alterations: undefined });
	const attainable = attainableTarget(world, new Set());
	const asked = [...new Set(positions)].map((id) => ({ id, at: world.positionNumber.get(id) ?? NONE }));
	const access = accessOf(world, world.now, new Set(asked.map(({ at }) => at)));
	const largest = largestOpening(access, (p) => isBarred(world, attainable, p));
	const within = asked
		.map(({ at }) => at)
		.filter((at) => largest.has(at))
		.sort((a, b) => a - b);
	// One budget for all searches: an opening may have hundreds of positions, and somebody waits for the answer.
	const budget = { left: looks };
	const best = leastOpening(world, access, within, (p) => largest.has(p), budget);
	if (best === null) throw new Error("no opening for positions that lie within the largest one");
	const stuck = asked.map(({ at }) => at).filter((at) => at !== NONE && !largest.has(at));
	const work = { positions: within, undos: [], undoAt: new Set<number>(), staying: [] };
	const way = wayOf(world, within, best.positions);

	let second: Reach["secondBest"] = null;
	for (const p of best.positions) {
		if (within.includes(p)) continue;
		if (budget.left <= 0) break;
		const without = largestOpening(access, (q) => isBarred(world, attainable, q) || q === p);
		if (!within.every((q) => without.has(q))) continue;
		const other = leastOpening(world, access, within, (q) => without.has(q), budget);
		if (other === null) continue;
		const found = wayOf(world, within, other.positions);
		if (second !== null && found.minutes >= second.minutes) continue;
		second = { ...found, without: world.positions[p]?.id ?? "", dearerBy: found.minutes - way.minutes };
	}
	return {
		...way,
		operations: operationsIn(world, { attainable, access, work }, best.positions),
		outOfReach: asked.filter(({ at }) => !largest.has(at)).map(({ id }) => id),
		loops: loopsBehind(stuck, access, largest).map((loop) => planLoop(world, loop, attainable)),
		leastProved: best.proved,
		secondBest: second,
		secondBestProved: best.proved && budget.left > 0,
	};
}

function wayOf(world: World, asked: readonly number[], opened: readonly number[]): Way {
	const id = (p: number): string => world.positions[p]?.id ?? "";
	const held = opened.filter((p) => partIn(world.now, p) !== NONE);
	return {
		opened: opened.map(id),
		openedOnly: opened.filter((p) => !asked.includes(p)).map(id),
		minutes: held.reduce((sum, p) => sum + (world.outMinutes[p]?.likely ?? 0) + (world.inMinutes[p]?.likely ?? 0), 0),
	};
}
