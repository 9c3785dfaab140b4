// "What must come off first?", and the next best way.

import { describe, expect, it, vi } from "vitest";
import type * as ChoiceSearch from "@/lib/reversal/choiceSearch";
import { openingFor } from "@/lib/reversal/reach";
import { makeWorld } from "@/tests/reversal/makeWorld";

const spent: number[] = [];
vi.mock("@/lib/reversal/choiceSearch", async (original) => {
	const real = await original<typeof ChoiceSearch>();
	return {
		...real,
		cheapestOpening: (...[start, budget]: Parameters<typeof real.cheapestOpening>) => {
			const before = budget.left;
			const found = real.cheapestOpening(start, budget);
			spent.push(before - budget.left);
			return found;
		},
	};
});

/** Many ways to everything, and three positions deep inside. */
const hard = makeWorld({ positions: 40, multiSided: 32, seed: 5, changed: 0, hosted: 0, blocking: 1.6, backwards: 0 });
const inside = hard.positions.slice(-3).map(({ id }) => id);

describe("the opening that reaches a position", () => {
	it("comes with the next best way, proved when there was time for it", () => {
		const reach = openingFor(hard, inside);
		expect([reach.leastProved, reach.secondBestProved]).toEqual([true, true]);
		expect(reach.secondBest?.dearerBy).toBeGreaterThanOrEqual(0);
		expect(reach.openedOnly).toContain(reach.secondBest?.without);
		expect(reach.secondBest?.opened).not.toContain(reach.secondBest?.without);
	});

	it("looks for the next best way within one budget, however many positions it could do without", () => {
		spent.length = 0;
		openingFor(hard, inside);
		const [best = 0, ...others] = spent;
		const all = others.reduce((sum, steps) => sum + steps, 0);
		const dearest = Math.max(...others);
		const steps = Math.max(best, dearest) + 1;
		// Each of the searches alone could be finished in so many steps; all of them together cannot.
		expect(all).toBeGreaterThan(2 * steps);
		spent.length = 0;
		const reach = openingFor(hard, inside, steps);
		expect([reach.leastProved, reach.secondBestProved]).toEqual([true, false]);
		expect(spent.slice(1).reduce((sum, one) => sum + one, 0)).toBe(steps);
	});
});
