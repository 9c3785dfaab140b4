// What must not change a plan, and what must change it in a known way: properties that need no second planner.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Plan, planReversal } from "@/lib/reversal/plan";
import type { Problem } from "@/lib/reversal/problem";
import { afterwards, carriedOut } from "@/tests/reversal/carryOut";
import { randomFrom } from "@/tests/reversal/random";
import { aSmallWorld, aWorldOfChoices } from "@/tests/reversal/smallWorld";

const settings = { numRuns: Number(process.env.ASFOUND_WORLDS ?? 300), seed: Number(process.env.ASFOUND_SEED ?? 1914) };
const LONG = 1000 * 60 * 60;

const shuffled = <T>(list: readonly T[], random: () => number): T[] => {
	const left = [...list];
	const found: T[] = [];
	while (left.length > 0) found.push(...left.splice(Math.floor(random() * left.length), 1));
	return found;
};
const shuffledBuild = <T>(build: Readonly<Record<string, T>>, random: () => number): Record<string, T> =>
	Object.fromEntries(shuffled(Object.entries(build), random));

/** The same problem, each list of it in another order. */
const inAnotherOrder = (problem: Problem, random: () => number): Problem => ({
	...problem,
	positions: shuffled(problem.positions, random),
	parts: shuffled(problem.parts, random).map((part) => (part.excludes ? { ...part, excludes: shuffled(part.excludes, random) } : part)),
	now: shuffledBuild(problem.now, random),
	target: shuffledBuild(problem.target, random),
	...(problem.scope === undefined ? {} : { scope: shuffled(problem.scope, random) }),
	obstructions: shuffled(problem.obstructions, random),
	alterations: shuffled(problem.alterations ?? [], random),
	times: shuffledBuild(problem.times ?? {}, random),
});

/** Every id of the problem by another one, so that their order is another one as well. */
function renamed(problem: Problem, nameOf: (id: string) => string): Problem {
	const build = (of: Readonly<Record<string, string>>) =>
		Object.fromEntries(Object.entries(of).map(([at, part]) => [nameOf(at), nameOf(part)]));
	return {
		...problem,
		positions: problem.positions.map(({ id, host, ...rest }) => ({
			...rest,
			id: nameOf(id),
			...(host === undefined ? {} : { host: nameOf(host) }),
		})),
		parts: problem.parts.map(({ id, excludes, ...rest }) => ({
			...rest,
			id: nameOf(id),
			...(excludes === undefined ? {} : { excludes: excludes.map(nameOf) }),
		})),
		now: build(problem.now),
		target: build(problem.target),
		...(problem.scope === undefined ? {} : { scope: problem.scope.map(nameOf) }),
		obstructions: problem.obstructions.map((one) => ({ ...one, part: nameOf(one.part), position: nameOf(one.position) })),
		alterations: (problem.alterations ?? []).map(({ position, part, ...rest }) => ({
			...rest,
			...(position === undefined ? {} : { position: nameOf(position) }),
			...(part === undefined ? {} : { part: nameOf(part) }),
		})),
		times: Object.fromEntries(Object.entries(problem.times ?? {}).map(([at, times]) => [nameOf(at), times])),
	};
}

/** A bijection of all ids of a problem that turns their order about. */
function otherNames(problem: Problem, random: () => number): ReadonlyMap<string, string> {
	const ids = [...problem.positions, ...problem.parts].map(({ id }) => id);
	const numbers = shuffled([...ids.keys()], random);
	return new Map(ids.map((id, n) => [id, `r${String(numbers[n]).padStart(3, "0")}`]));
}

const staying = (plan: Plan, nameOf: (id: string) => string): string[] =>
	plan.staysDifferent.map(({ position, code, alteration }) => `${nameOf(position)} ${code} ${alteration ?? ""}`).sort();

describe("a plan", () => {
	it(
		"is the same in whatever order the problem lists things",
		() => {
			fc.assert(
				fc.property(aSmallWorld(10), fc.integer(), (problem, seed) => {
					expect(planReversal(inAnotherOrder(problem, randomFrom(seed)))).toEqual(planReversal(problem));
				}),
				settings,
			);
		},
		LONG,
	);

	it(
		"does not depend on what things are called, but for ties: it takes as long, opens as many and leaves the same behind",
		() => {
			fc.assert(
				fc.property(aSmallWorld(10), fc.integer(), (problem, seed) => {
					const names = otherNames(problem, randomFrom(seed));
					const nameOf = (id: string): string => names.get(id) ?? id;
					const plan = planReversal(problem);
					// Which position of a knot gives way is a tie that goes by id.
					fc.pre(plan.staysDifferent.every(({ code }) => code !== "would-hold-itself"));
					const other = planReversal(renamed(problem, nameOf));
					expect(other.attains).toEqual(Object.fromEntries(Object.entries(plan.attains).map(([at, part]) => [nameOf(at), nameOf(part)])));
					// Of two openings that take as long, one may take longer to come out and less to go in.
					expect([other.minutes.likely, other.opened.length]).toEqual([plan.minutes.likely, plan.opened.length]);
					expect(staying(other, (id) => id)).toEqual(staying(plan, nameOf));
				}),
				settings,
			);
		},
		LONG,
	);

	it(
		"is not touched by positions and parts that have nothing to do with the rest",
		() => {
			fc.assert(
				fc.property(aSmallWorld(9), (problem) => {
					const plan = planReversal(problem);
					// One sorts before everything else, one after it.
					const more: Problem = {
						...problem,
						positions: [...problem.positions, { id: "a apart", sides: ["front", "rear"] }, { id: "z apart", host: "a part apart" }],
						parts: [...problem.parts, { id: "a part apart" }, { id: "z part apart" }],
						now: { ...problem.now, "a apart": "a part apart", "z apart": "z part apart" },
						target: { ...problem.target, "a apart": "a part apart", "z apart": "z part apart" },
						obstructions: [...problem.obstructions, { part: "z part apart", position: "a apart" }],
						times: { ...problem.times, "a apart": { out: { low: 0, likely: 0, high: 0 } } },
					};
					expect(planReversal(more)).toEqual({
						...plan,
						attains: { "a apart": "a part apart", ...plan.attains, "z apart": "z part apart" },
					});
				}),
				settings,
			);
		},
		LONG,
	);

	it(
		"made anew after any of its operations ends in the same build, and has no more minutes before it than were left",
		() => {
			fc.assert(
				fc.property(aWorldOfChoices(8), fc.nat(), (problem, stop) => {
					const plan = planReversal(problem);
					// Of two that shut each other out, what is in stays in; half-way both may be out, and then either could go in.
					fc.pre(plan.loops.length === 0);
					const done = stop % (plan.operations.length + 1);
					const half = afterwards(problem, carriedOut(problem, plan.operations.slice(0, done)));
					const left = planReversal(half);
					expect(Object.fromEntries(carriedOut(half, left.operations).build)).toEqual(plan.attains);
					expect(left.minutes.likely).toBeLessThanOrEqual(
						plan.operations
							.slice(done)
							.filter(({ kind }) => kind !== "check" && kind !== "make-safe")
							.reduce((sum, { minutes }) => sum + minutes.likely, 0),
					);
				}),
				settings,
			);
		},
		LONG,
	);
});
