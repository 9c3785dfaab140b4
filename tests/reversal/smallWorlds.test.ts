import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planReversal } from "@/lib/reversal/plan";
import { anyOrder } from "@/tests/reversal/anyOrder";
import { byDefinition } from "@/tests/reversal/byDefinition";
import { afterwards, carriedOut } from "@/tests/reversal/carryOut";
import { randomFrom } from "@/tests/reversal/random";
import { aSmallWorld, aWorldOfChoices } from "@/tests/reversal/smallWorld";

/** ASFOUND_WORLDS=20000 for a long run, with another ASFOUND_SEED for other worlds. */
const RUNS = Number(process.env.ASFOUND_WORLDS ?? 300);
const SEED = Number(process.env.ASFOUND_SEED ?? 1958);
const settings = { numRuns: RUNS, seed: SEED };
const LONG = 1000 * 60 * 60;

describe(`small worlds, ${RUNS} of seed ${SEED}`, () => {
	it(
		"a plan, carried out one operation at a time, ends in exactly what it says it attains",
		() => {
			fc.assert(
				fc.property(aSmallWorld(10), (problem) => {
					const plan = planReversal(problem);
					const bench = carriedOut(problem, plan.operations);
					expect(Object.fromEntries(bench.build)).toEqual(plan.attains);
				}),
				settings,
			);
		},
		LONG,
	);

	it(
		"any order that keeps what each operation must come after can be carried out as well",
		() => {
			fc.assert(
				fc.property(aSmallWorld(10), fc.integer(), (problem, seed) => {
					const plan = planReversal(problem);
					const random = randomFrom(seed);
					for (let n = 0; n < 5; n++) {
						const bench = carriedOut(problem, anyOrder(plan.operations, random));
						expect(Object.fromEntries(bench.build)).toEqual(plan.attains);
					}
				}),
				settings,
			);
		},
		LONG,
	);

	it(
		"what is attained, what stays different and the least opening are what trying everything finds",
		() => {
			fc.assert(
				fc.property(aSmallWorld(8), (problem) => {
					const plan = planReversal(problem);
					const answer = byDefinition(problem);
					expect(plan.attains).toEqual(Object.fromEntries(answer.attains));
					expect(plan.staysDifferent.map(({ position, alteration }) => `${position}/${alteration ?? ""}`).sort()).toEqual(
						answer.staysDifferent,
					);
					expect(plan.leastProved).toBe(true);
					expect(plan.opened).toEqual(answer.opened);
				}),
				settings,
			);
		},
		LONG,
	);

	it(
		"where there is a choice of ways, no opening is cheaper than the one chosen, and a tie goes to fewer positions, then to the first by id",
		() => {
			fc.assert(
				fc.property(aWorldOfChoices(8), (problem) => {
					const plan = planReversal(problem);
					const answer = byDefinition(problem);
					expect(Object.fromEntries(carriedOut(problem, plan.operations).build)).toEqual(plan.attains);
					expect(plan.attains).toEqual(Object.fromEntries(answer.attains));
					expect(plan.leastProved).toBe(true);
					expect(plan.opened).toEqual(answer.opened);
				}),
				settings,
			);
		},
		LONG,
	);

	it(
		"a machine that was taken back has nothing left to take back",
		() => {
			fc.assert(
				fc.property(aSmallWorld(10), (problem) => {
					const plan = planReversal(problem);
					const again = planReversal(afterwards(problem, carriedOut(problem, plan.operations)));
					expect(again.operations).toEqual([]);
					expect(again.opened).toEqual([]);
					expect(again.attains).toEqual(plan.attains);
				}),
				settings,
			);
		},
		LONG,
	);
});
