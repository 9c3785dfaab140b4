// Worlds that are hard to choose in, within the size that is promised and beyond it.

import { describe, expect, it } from "vitest";
import { planReversal } from "@/lib/reversal/plan";
import { carriedOut } from "@/tests/reversal/carryOut";
import { hardWorld } from "@/tests/reversal/hardWorld";
import { makeWorld } from "@/tests/reversal/makeWorld";

describe("hard worlds", () => {
	it("of 300 positions, 40 with two or three sides and a third on assemblies, are settled: the opening is proved least", () => {
		for (let seed = 1; seed <= 9; seed++) {
			const minutes = (["ties", "none", "spread"] as const)[seed % 3] ?? "ties";
			const problem = hardWorld({
				positions: 300,
				multiSided: 40,
				minutes,
				blocking: 2 + (seed % 2),
				band: 20,
				hosted: 0.3,
				changed: 8,
				seed,
			});
			const plan = planReversal(problem);
			expect(plan.leastProved, `seed ${seed}`).toBe(true);
			expect(plan.openedOnly.length, `seed ${seed}`).toBeGreaterThan(10);
		}
	});

	it("beyond that may end unproved, but with a plan that can be carried out, and as soon as the budget is used up", () => {
		const dense = makeWorld({ positions: 120, multiSided: 120, seed: 1, blocking: 1.6, hosted: 0.1, changed: 0.03 });
		// A few looks, some, and more: each finds an opening that is no dearer than the one before.
		const plans = [0, 100_000, 2_000_000].map((looks) => planReversal(dense, looks));
		expect(plans.map(({ leastProved }) => leastProved)).toEqual([false, false, false]);
		for (const plan of plans) expect(Object.fromEntries(carriedOut(dense, plan.operations).build)).toEqual(plan.attains);
		const minutes = plans.map((plan) => plan.minutes.likely);
		expect(minutes).toEqual([...minutes].sort((a, b) => b - a));
	});
});
