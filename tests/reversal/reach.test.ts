// "What must come off first?", and the next best way.

import { describe, expect, it } from "vitest";
import { openingFor, type Reach } from "@/lib/reversal/reach";
import { makeWorld } from "@/tests/reversal/makeWorld";

/** Many ways to everything, and three positions deep inside. */
const hard = makeWorld({ positions: 32, multiSided: 25, seed: 5, changed: 0, hosted: 0, blocking: 1.6, backwards: 0 });
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
		/** About the fewest looks with which the answer has what is asked for. */
		const fewest = (has: (reach: Reach) => boolean): number => {
			let looks = 4096;
			while (!has(openingFor(hard, inside, looks))) looks = Math.ceil(looks * 1.4);
			return looks;
		};
		const best = fewest(({ leastProved }) => leastProved);
		const nextBest = fewest(({ secondBestProved }) => secondBestProved);
		expect(openingFor(hard, inside).openedOnly.length).toBeGreaterThan(8);
		// No search for one of them is dearer than that for the best; all of them together are.
		expect(nextBest).toBeGreaterThan(3 * best);
	});
});
