// A reversal that is half done, planned from where the machine stands.
//
// The planner compares states, and what cannot come back "keeps what it holds now". Half-way that is not enough: what came out
// only to open the way must go in again, whether or not it is in scope or could ever be as it was. So a position that has been
// emptied since the reversal began keeps what it held then. One that holds something keeps that, whoever put it there.

import { SEARCH_LOOKS } from "@/lib/reversal/leastOpening";
import { type Plan, planReversal } from "@/lib/reversal/plan";
import type { Problem } from "@/lib/reversal/problem";

/**
 * The plan for what is left. Requires a problem that `readProblem` let through. `start` is the build when the reversal began,
 * position to part; positions in `leftOut` stay as they are.
 */
export function planOnTheWay(problem: Problem, start: Readonly<Record<string, string>>, leftOut: ReadonlySet<string> = new Set()): Plan {
	const emptied = Object.entries(start).filter(([position]) => problem.now[position] === undefined && !leftOut.has(position));
	return planReversal(problem, SEARCH_LOOKS, Object.fromEntries(emptied));
}
