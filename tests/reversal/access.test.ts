// What is in the way of a position, and what is not.

import { describe, expect, it } from "vitest";
import { planReversal } from "@/lib/reversal/plan";
import { PROBLEM_FORMAT, type Problem } from "@/lib/reversal/problem";
import { openingFor } from "@/lib/reversal/reach";
import { carriedOut } from "@/tests/reversal/carryOut";

/** A cover that covers k05, and is later fitted in k05 itself. */
const ownPlace: Problem = {
	format: PROBLEM_FORMAT,
	positions: [{ id: "k04" }, { id: "k05" }],
	parts: [{ id: "cover" }, { id: "lamp" }],
	now: { k05: "cover" },
	target: { k04: "cover", k05: "lamp" },
	obstructions: [{ part: "cover", position: "k05" }],
};

describe("a part in the position that it covers", () => {
	it("comes out of it like any other", () => {
		const plan = planReversal(ownPlace);
		expect([plan.loops, plan.staysDifferent]).toEqual([[], []]);
		expect(Object.fromEntries(carriedOut(ownPlace, plan.operations).build)).toEqual(ownPlace.target);
		expect(openingFor(ownPlace, ["k05"]).outOfReach).toEqual([]);
	});

	it("goes back into it like any other", () => {
		const back: Problem = { ...ownPlace, now: ownPlace.target, target: ownPlace.now };
		const plan = planReversal(back);
		expect([plan.loops, plan.staysDifferent]).toEqual([[], []]);
		expect(Object.fromEntries(carriedOut(back, plan.operations).build)).toEqual(back.target);
	});

	it("does not keep an alteration there from being undone", () => {
		const altered: Problem = {
			...ownPlace,
			target: ownPlace.now,
			alterations: [{ id: "a1", position: "k05", undo: { low: 1, likely: 2, high: 3 } }],
		};
		const plan = planReversal(altered);
		expect([plan.loops, plan.staysDifferent]).toEqual([[], []]);
		expect(carriedOut(altered, plan.operations).undone).toEqual(new Set(["a1"]));
	});
});

describe("what is on a part that cannot be had", () => {
	const board: Problem = {
		format: PROBLEM_FORMAT,
		positions: [{ id: "k1" }, { id: "k2" }, { id: "n1", host: "board" }],
		parts: [{ id: "board", unavailable: "scrapped" }, { id: "chip" }, { id: "lamp" }, { id: "old" }],
		now: { k2: "lamp", n1: "chip" },
		target: { k2: "old" },
		obstructions: [],
	};

	it("travels with it when the target knows nothing of it: the machine misses nothing", () => {
		const plan = planReversal(board);
		expect(plan.staysDifferent).toEqual([]);
		expect(plan.travels).toEqual([{ position: "n1", part: "chip", with: "board" }]);
	});

	it("is lost with it when the target wants it elsewhere", () => {
		const wanted: Problem = { ...board, target: { k2: "chip" } };
		expect(planReversal(wanted).staysDifferent.map(({ position, code }) => [position, code])).toEqual([["k2", "stands-elsewhere"]]);
	});

	it("comes off while the part is fitted all the same; only nothing new is put on it", () => {
		const fitted: Problem = { ...board, now: { k1: "board", n1: "chip" }, target: { k1: "board", n1: "lamp", k2: "chip" } };
		const plan = planReversal(fitted);
		expect(plan.attains).toEqual({ k1: "board", k2: "chip" });
		expect(plan.staysDifferent.map(({ position, code }) => [position, code])).toEqual([["n1", "host-unavailable"]]);
		carriedOut(fitted, plan.operations);
	});
});
