// A reversal that stops anywhere and is planned again from there ends where it would have ended.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planOnTheWay } from "@/lib/reversal/onTheWay";
import { planReversal } from "@/lib/reversal/plan";
import type { Part, Problem } from "@/lib/reversal/problem";
import { readProblem } from "@/lib/reversal/readProblem";
import { afterwards, carriedOut } from "@/tests/reversal/carryOut";
import { aSmallWorld } from "@/tests/reversal/smallWorld";

const RUNS = Number(process.env.ASFOUND_WORLDS ?? 300);
const SEED = Number(process.env.ASFOUND_SEED ?? 1958);
const LONG = 1000 * 60 * 60;

/** Where the book contradicts the build, the build is right: what is fitted can be had, and two that are fitted can be. */
const asTheyAre = (part: Part, fitted: ReadonlySet<string>): Part =>
	fitted.has(part.id) ? { ...part, unavailable: undefined, excludes: part.excludes?.filter((other) => !fitted.has(other)) } : part;

describe(`small worlds, ${RUNS} of seed ${SEED}`, () => {
	test(
		"planned anew after every operation, a reversal ends in what the first plan said it attains",
		() => {
			fc.assert(
				fc.property(aSmallWorld(10), (world) => {
					const problem = { ...world, parts: world.parts.map((part) => asTheyAre(part, new Set(Object.values(world.now)))) };
					const first = planReversal(problem);
					let here: Problem = problem;
					// Each operation is one less; a plan that never got there would go on for ever.
					for (let left = first.operations.length; left >= 0; left--) {
						const plan = planOnTheWay(here, problem.now);
						const next = plan.operations.find(({ kind }) => kind !== "make-safe" && kind !== "check");
						if (next === undefined) break;
						expect(left, "more operations than were planned at first").toBeGreaterThan(0);
						// Making safe, then the first one.
						const bench = carriedOut(here, plan.operations.slice(0, 2));
						here = afterwards(here, bench);
					}
					expect(here.now).toEqual(first.attains);
				}),
				{ numRuns: RUNS, seed: SEED },
			);
		},
		LONG,
	);
});

describe("what came out only to open the way", () => {
	const problem = (now: Record<string, string>): Problem => {
		const read = readProblem({
			format: "asfound.reversal-problem/1",
			positions: [{ id: "panel" }, { id: "lamp" }, { id: "lens" }],
			parts: [{ id: "p" }, { id: "old" }, { id: "new" }, { id: "glass", unavailable: "lost" }, { id: "plastic" }],
			now,
			target: { panel: "p", lamp: "old", lens: "glass" },
			scope: ["lamp", "lens"],
			obstructions: [
				{ part: "p", position: "lamp" },
				{ part: "plastic", position: "lamp" },
			],
		});
		if (!read.ok) throw new Error(JSON.stringify(read.error));
		return read.value;
	};
	const start = { panel: "p", lamp: "new", lens: "plastic" };

	test("goes in again, though it is not in scope, or not what it should be and that is lost", () => {
		const first = planReversal(problem(start));
		expect(first.openedOnly).toEqual(["lens", "panel"]);
		expect(first.attains).toEqual({ panel: "p", lamp: "old", lens: "plastic" });
		const half = problem({ lamp: "old" });
		// Seen from there alone nobody could know.
		expect(planReversal(half).attains).toEqual({ lamp: "old" });
		const left = planOnTheWay(half, start);
		expect(left.attains).toEqual(first.attains);
		expect(left.operations.flatMap(({ kind, position }) => (position ? [`${kind} ${position}`] : []))).toEqual([
			"put-in lens",
			"put-in panel",
		]);
		expect(left.staysDifferent.map(({ position, code, holds }) => [position, code, holds])).toEqual([["lens", "unavailable", "plastic"]]);
	});

	test("stays out where it was out before, or is left out on purpose", () => {
		expect(planOnTheWay(problem({ lamp: "new" }), { lamp: "new" }).attains).toEqual({ lamp: "old" });
		expect(planOnTheWay(problem({ lamp: "old" }), start, new Set(["panel"])).attains).toEqual({ lamp: "old", lens: "plastic" });
	});

	test("keeps what somebody put there meanwhile", () => {
		expect(planOnTheWay(problem({ lamp: "old", panel: "new" }), { ...start, lamp: "old" }).attains).toEqual({
			lamp: "old",
			panel: "new",
			lens: "plastic",
		});
	});
});
