// That the small worlds have in them what they are there for: a generator that lost something would make every property easy.

import fc from "fast-check";
import { expect, it } from "vitest";
import { planReversal } from "@/lib/reversal/plan";
import type { Problem } from "@/lib/reversal/problem";
import { aSmallWorld } from "@/tests/reversal/smallWorld";

const placeOf = (build: Readonly<Record<string, string>>, part: string | undefined): string | undefined =>
	Object.keys(build).find((at) => part !== undefined && build[at] === part);
const hostOf = (problem: Problem, at: string | undefined): string | undefined => problem.positions.find(({ id }) => id === at)?.host;
const heightOf = (problem: Problem, at: string): number => {
	let height = 0;
	for (let host = hostOf(problem, at); host !== undefined; host = hostOf(problem, placeOf(problem.now, host))) height++;
	return height;
};

/** Each thing that can be in a world, and whether it is. */
function inWorld(problem: Problem): Record<string, boolean> {
	const { now, target, positions, parts, obstructions, alterations = [], times = {} } = problem;
	const plan = planReversal(problem);
	const holds = Object.entries(now);
	const isFitted = (part: string | undefined): boolean => placeOf(now, part) !== undefined;
	const guests = holds.filter(([at]) => hostOf(problem, at) !== undefined);
	const kinds = new Set(plan.staysDifferent.map(({ code }) => code));
	return {
		"several sides": positions.some(({ sides }) => sides !== undefined),
		"assemblies three deep": holds.some(([at]) => heightOf(problem, at) >= 3),
		"a loose assembly with a build of its own": guests.some(([at]) => !isFitted(hostOf(problem, at))),
		"a part taken off a loose assembly": plan.operations.some(
			({ kind, position, bench }) => kind === "take-out" && bench !== undefined && position !== undefined && !isFitted(bench),
		),
		"an assembly that moves with what is on it": guests.some(([at]) => {
			const host = hostOf(problem, at);
			const [from, to] = [placeOf(now, host), placeOf(plan.attains, host)];
			return from !== undefined && to !== undefined && from !== to;
		}),
		"a position on the same part that the target does not know": plan.travels.length > 0,
		"two parts that change places": holds.some(([at, part]) => {
			const to = placeOf(plan.attains, part);
			return to !== undefined && to !== at && now[to] !== undefined && now[to] === plan.attains[at];
		}),
		"a part wanted elsewhere": holds.some(([at, part]) => (placeOf(target, part) ?? at) !== at),
		"parts that exclude each other on different wholes": parts.some(({ id, excludes }) =>
			excludes?.some(
				(other) => isFitted(id) && isFitted(other) && hostOf(problem, placeOf(now, id)) !== hostOf(problem, placeOf(now, other)),
			),
		),
		"a part that cannot be had": parts.some(({ unavailable }) => unavailable !== undefined),
		"an alteration at a position": alterations.some(({ position }) => position !== undefined),
		"an alteration on a fitted part": alterations.some(({ part }) => isFitted(part)),
		"an alteration on a part that is not fitted": alterations.some(({ part }) => part !== undefined && !isFitted(part)),
		"an alteration that cannot be undone": alterations.some(({ undo }) => undo === null),
		"a new part in the way where the old one is not": obstructions.some(
			({ part, position }) => isFitted(part) && placeOf(target, part) === undefined && placeOf(now, part) !== position,
		),
		"only some positions": problem.scope !== undefined && problem.scope.length < positions.length,
		"no minutes": Object.values(times).some(({ out }) => out?.likely === 0),
		"minutes that nobody knows": Object.values(times).some((one) => one.out === undefined || one.in === undefined),
		"something opened only to reach the rest": plan.openedOnly.length > 0,
		"an access loop": plan.loops.length > 0,
		"stays different: unavailable": kinds.has("unavailable"),
		"stays different: stands elsewhere": kinds.has("stands-elsewhere"),
		"stays different: excluded": kinds.has("excluded"),
		"stays different: its host cannot be had": kinds.has("host-unavailable"),
		"stays different: its host is not in the target": kinds.has("host-not-in-target"),
		"stays different: would hold itself": kinds.has("would-hold-itself"),
	};
}

it("small worlds have everything in them that can go wrong", () => {
	const worlds = fc.sample(aSmallWorld(10), { numRuns: Number(process.env.ASFOUND_WORLDS ?? 1500), seed: 1944 });
	const counts = new Map<string, number>();
	for (const world of worlds)
		for (const [thing, is] of Object.entries(inWorld(world))) counts.set(thing, (counts.get(thing) ?? 0) + (is ? 1 : 0));
	if (process.env.ASFOUND_WORLDS !== undefined)
		console.log([...counts].map(([thing, count]) => `${thing}: ${count} of ${worlds.length}`).join("\n"));
	expect([...counts].filter(([, count]) => count === 0)).toEqual([]);
}, 3_600_000);
