// What cannot be fitted together, and what only lies beside it.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planReversal } from "@/lib/reversal/plan";
import { PROBLEM_FORMAT, type Problem } from "@/lib/reversal/problem";
import { anyOrder } from "@/tests/reversal/anyOrder";
import { byDefinition } from "@/tests/reversal/byDefinition";
import { afterwards, carriedOut } from "@/tests/reversal/carryOut";
import { randomFrom } from "@/tests/reversal/random";
import { aSmallWorld } from "@/tests/reversal/smallWorld";

/** A modern board with a plug on it, and the old motor that cannot stand beside the plug. */
const board: Problem = {
	format: PROBLEM_FORMAT,
	positions: [{ id: "A" }, { id: "B" }, { id: "n", host: "board" }],
	parts: [{ id: "board" }, { id: "plug" }, { id: "motor", excludes: ["plug"] }],
	now: { B: "board", n: "plug" },
	target: { A: "motor" },
	obstructions: [],
};
const settings = { numRuns: Number(process.env.ASFOUND_WORLDS ?? 300), seed: Number(process.env.ASFOUND_SEED ?? 1707) };

describe("parts that exclude each other", () => {
	it("are no hindrance when one of them leaves on the assembly that it is on", () => {
		const plan = planReversal(board);
		expect(plan.staysDifferent).toEqual([]);
		expect(plan.attains).toEqual({ A: "motor", n: "plug" });
		for (let seed = 1; seed < 10; seed++) {
			const order = anyOrder(plan.operations, randomFrom(seed));
			expect(Object.fromEntries(carriedOut(board, order).build)).toEqual(plan.attains);
		}
	});

	it("are no hindrance when one of them lies on the shelf, on its assembly", () => {
		const plan = planReversal({ ...board, now: { n: "plug" } });
		expect(plan.staysDifferent).toEqual([]);
		expect(plan.attains).toEqual({ A: "motor", n: "plug" });
	});

	it("keep each other out while the assembly stays in the machine, or when both are on the same loose one", () => {
		const stays = planReversal({ ...board, scope: ["A"] });
		expect(stays.staysDifferent.map(({ position, code, because }) => [position, code, because.positions])).toEqual([
			["A", "excluded", ["n"]],
		]);
		const loose: Problem = {
			...board,
			positions: [{ id: "A", host: "board" }, { id: "B" }, { id: "n", host: "board" }],
			now: { n: "plug" },
			target: { A: "motor", B: "board" },
			scope: ["A"],
		};
		expect(planReversal(loose).staysDifferent.map(({ position, code }) => [position, code])).toEqual([["A", "excluded"]]);
	});

	it("keep an assembly out that one of them is on, and let it in once the other is out", () => {
		const tray: Problem = {
			format: PROBLEM_FORMAT,
			positions: [{ id: "A" }, { id: "B" }, { id: "n", host: "tray" }],
			parts: [
				{ id: "tray", name: "Tray" },
				{ id: "motor", name: "Motor", excludes: ["plug"] },
				{ id: "plug", name: "Plug" },
			],
			now: { A: "plug", n: "motor" },
			target: { B: "tray", n: "motor" },
			obstructions: [],
		};
		const stays = planReversal({ ...tray, scope: ["B"] }).staysDifferent;
		expect(stays.map(({ position, code, why }) => [position, code, why])).toEqual([
			["B", "excluded", "Plug (plug) stays at A, and cannot be fitted together with Motor (motor), which is on it"],
		]);
		const plan = planReversal(tray);
		expect(plan.attains).toEqual(tray.target);
		for (let seed = 1; seed < 10; seed++) carriedOut(tray, anyOrder(plan.operations, randomFrom(seed)));
	});

	it("hinder nothing where both ride on the same assembly: they were together before", () => {
		const both: Problem = { ...board, positions: [...board.positions, { id: "o", host: "board" }], now: { n: "plug", o: "motor" } };
		expect(planReversal({ ...both, target: { B: "board" }, scope: ["B"] }).attains).toEqual({ B: "board", n: "plug", o: "motor" });
	});

	it("regression: what is excluded hinders an assembly that it comes onto at the bench as much as one that it is on", () => {
		const nested: Problem = {
			format: PROBLEM_FORMAT,
			positions: [{ id: "p0", host: "frame" }, { id: "p2", host: "tray" }, { id: "p3" }],
			parts: [{ id: "frame", excludes: ["plug"] }, { id: "plug" }, { id: "tray" }],
			now: { p2: "plug" },
			target: { p0: "tray", p3: "frame" },
			scope: ["p0", "p3"],
			obstructions: [],
		};
		const plan = planReversal(nested);
		expect(plan.attains).toEqual({ p0: "tray", p2: "plug" });
		const again = planReversal(afterwards(nested, carriedOut(nested, plan.operations)));
		expect([again.attains, again.operations]).toEqual([plan.attains, []]);
	});

	it("are kept apart in every order, and stay out where the definition says so, in any small world with many of them", () => {
		fc.assert(
			fc.property(aSmallWorld(7, 8), fc.integer(), (problem, seed) => {
				const plan = planReversal(problem);
				const bench = carriedOut(problem, anyOrder(plan.operations, randomFrom(seed)));
				expect(Object.fromEntries(bench.build)).toEqual(plan.attains);
				const answer = byDefinition(problem);
				expect(plan.attains).toEqual(Object.fromEntries(answer.attains));
				expect(plan.opened).toEqual(answer.opened);
				expect(planReversal(afterwards(problem, bench)).operations).toEqual([]);
			}),
			settings,
		);
	}, 3_600_000);
});
