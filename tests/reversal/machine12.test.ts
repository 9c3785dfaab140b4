// The acceptance scenario: the reversal of machine 12 as it was worked out by hand, and the questions asked beforehand.

import { describe, expect, it } from "vitest";
import { countAttained } from "@/lib/reversal/beforehand";
import { planReversal } from "@/lib/reversal/plan";
import { openingFor } from "@/lib/reversal/reach";
import { readProblem } from "@/lib/reversal/readProblem";
import { carriedOut } from "./carryOut";
import { machine12, machine12Whole, ORIGINALS } from "./machine12";

describe("machine 12, its drive and its light taken back, its mains safety kept", () => {
	const read = readProblem(machine12);
	if (!read.ok) throw new Error(read.error.say);
	const plan = planReversal(read.value);

	it("opens 17 positions, five of them only to reach the others", () => {
		expect(plan.opened).toHaveLength(17);
		expect(plan.openedOnly).toEqual(["k01", "k02", "k04", "k17", "k20"]);
		expect(plan.leastProved).toBe(true);
	});

	it("takes 61 minutes out, 95 to undo and 89 in, 245 in all, and one day's wait", () => {
		const { takeOut, undo, putIn, likely } = plan.minutes;
		expect([takeOut.likely, undo.likely, putIn.likely, likely]).toEqual([61, 95, 89, 245]);
		expect(plan.waitMinutes).toBe(1440);
	});

	it("ends with 31 of 40 positions holding their original, and can be carried out", () => {
		expect(countAttained(plan, ORIGINALS)).toBe(31);
		expect(Object.fromEntries(carriedOut(machine12, plan.operations).build)).toEqual(plan.attains);
	});

	describe("beside the order written by hand", () => {
		// Step by step as the scenario has it, with the lamp holders, starter and tube of step 7 before the lantern of step 8.
		const BY_HAND = [
			"make-safe",
			...["out:k02", "out:k01", "out:n1", "out:k04"],
			...["out:n4", "undo:a4", "undo:a7", "in:k08", "in:k06", "in:k05"],
			...["out:k17", "out:k18", "out:k22", "out:k21", "out:k20", "out:k23", "out:k24"],
			...["undo:a1", "out:k25", "undo:a2", "in:k25", "in:k24", "in:k23"],
			...["in:k20", "in:k21", "in:k22", "in:k18", "in:k17", "in:k04", "in:k01", "in:k02"],
			"check",
		];
		const ops = new Map(plan.operations.map((operation) => [operation.id, operation]));
		const inHandOrder = (ids: readonly string[]) => ids.flatMap((id) => ops.get(id) ?? []);

		it("they are the same operations, so the same 245 minutes", () => {
			expect([...ops.keys()].sort()).toEqual([...BY_HAND].sort());
		});

		it("the order by hand can be carried out, and keeps everything that the plan says must come before", () => {
			expect(Object.fromEntries(carriedOut(machine12, inHandOrder(BY_HAND)).build)).toEqual(plan.attains);
			const rank = new Map(BY_HAND.map((id, at) => [id, at]));
			const broken = plan.operations.flatMap(({ id, after }) =>
				after.filter((before) => (rank.get(before) ?? 0) > (rank.get(id) ?? 0)).map((before) => `${before} before ${id}`),
			);
			expect(broken).toEqual([]);
		});

		it("where two neighbours of it cannot change places, the plan has them in the same order", () => {
			const rank = new Map(plan.operations.map(({ id }, at) => [id, at]));
			const free = plan.operations.map((operation) => ({ ...operation, after: [] }));
			const freeOps = new Map(free.map((operation) => [operation.id, operation]));
			const forced = BY_HAND.slice(1, -2).flatMap((first, at): [string, string][] => {
				const then = BY_HAND[at + 2] ?? "";
				const swapped = BY_HAND.with(at + 1, then).with(at + 2, first);
				try {
					// Only the bench itself says what cannot be done: no "after" of the plan is looked at.
					carriedOut(
						machine12,
						swapped.flatMap((id) => freeOps.get(id) ?? []),
					);
					return [];
				} catch {
					return [[first, then]];
				}
			});
			expect(forced.length).toBeGreaterThan(5);
			expect(forced.filter(([first, then]) => (rank.get(first) ?? 0) > (rank.get(then) ?? 0))).toEqual([]);
		});
	});

	it("the whole machine attains no more originals than that", () => {
		const whole = readProblem(machine12Whole);
		if (!whole.ok) throw new Error(whole.error.say);
		expect(countAttained(planReversal(whole.value), ORIGINALS)).toBe(31);
	});

	it("the lantern is reached from the rear, by the upper rear panel alone", () => {
		expect(openingFor(read.value, ["k17"]).opened).toEqual(["k02", "k17"]);
	});
});
