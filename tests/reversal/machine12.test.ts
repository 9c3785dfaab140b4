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

	it("the whole machine attains no more originals than that", () => {
		const whole = readProblem(machine12Whole);
		if (!whole.ok) throw new Error(whole.error.say);
		expect(countAttained(planReversal(whole.value), ORIGINALS)).toBe(31);
	});

	it("the lantern is reached from the rear, by the upper rear panel alone", () => {
		expect(openingFor(read.value, ["k17"]).opened).toEqual(["k02", "k17"]);
	});
});
