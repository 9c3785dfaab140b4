// A reversal that is half done, planned from where the machine stands.
//
// The planner compares states, and what cannot come back "keeps what it holds now". Half-way that is not enough: what came out
// only to open the way must go in again, whether or not it is in scope or could ever be as it was. So a position that the
// reversal itself touched keeps what it held when the reversal began.

import { SEARCH_LOOKS } from "@/lib/reversal/leastOpening";
import { type Plan, planReversal } from "@/lib/reversal/plan";
import type { Problem } from "@/lib/reversal/problem";

/**
 * The plan for what is left. Requires a problem that `readProblem` let through. `start` is the build when the reversal began,
 * position to part; `touched` are the positions that it has taken something out of or put something into since.
 */
export const planOnTheWay = (problem: Problem, start: Readonly<Record<string, string>>, touched: ReadonlySet<string>): Plan =>
	planReversal(problem, SEARCH_LOOKS, Object.fromEntries([...touched].map((position) => [position, start[position] ?? null])));
