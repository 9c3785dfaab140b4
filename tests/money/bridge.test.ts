import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placeBridge } from "@/app/ui/bridgePlaces";
import { type BridgeRow, bridgeOf, liftOf } from "@/lib/money/bridge";
import { minor } from "@/lib/money/money";
import { costSummary } from "@/lib/money/summary";

const amount = fc.integer({ min: -50_000, max: 500_000 }).map(minor);
const rows: fc.Arbitrary<BridgeRow[]> = fc.array(
	fc.record({ what: fc.string({ minLength: 1 }), estimated: amount, atCompletion: amount }),
	{
		maxLength: 15,
	},
);

describe("the bridge from the estimate to completion", () => {
	it("of a job whose labour ran 60.00 over and whose parts came 8.03 under goes by those two steps", () => {
		const steps = bridgeOf([
			{ what: "Labour", estimated: minor(115_236), atCompletion: minor(121_236) },
			{ what: "Parts and materials", estimated: minor(42_000), atCompletion: minor(41_197) },
			{ what: "Disposal", estimated: minor(2_200), atCompletion: minor(2_200) },
		]);
		expect(steps.map(({ what, kind, from, to }) => [what, kind, from, to])).toEqual([
			["Estimated", "estimate", 0, 159_436],
			["Labour", "over", 159_436, 165_436],
			["Parts and materials", "under", 165_436, 164_633],
			["At completion", "completion", 0, 164_633],
		]);
	});

	it("adds up from the estimate, step by step, to the total of the table", () => {
		fc.assert(
			fc.property(rows, (all) => {
				const steps = bridgeOf(all);
				const lifts = steps.slice(1, -1).map(liftOf);
				const estimated = all.reduce((sum, row) => sum + row.estimated, 0);
				const end = all.reduce((sum, row) => sum + row.atCompletion, 0);
				expect(steps[0]?.to).toBe(estimated);
				expect(lifts.reduce((sum: number, lift) => sum + lift, estimated)).toBe(end);
				expect(steps.at(-1)?.to).toBe(end);
				expect(lifts).not.toContain(0);
			}),
			{ seed: 61, numRuns: 300 },
		);
	});

	it("has each step begin where the one before it ended, and rise exactly where it is over", () => {
		fc.assert(
			fc.property(rows, (all) => {
				const steps = bridgeOf(all);
				for (const [index, step] of steps.slice(1, -1).entries()) {
					expect(step.from).toBe(steps[index]?.to);
					expect(step.kind).toBe(step.to > step.from ? "over" : "under");
				}
			}),
			{ seed: 62, numRuns: 200 },
		);
	});

	it("ends where the machine's summary does", () => {
		const summary = costSummary([
			{ what: "Labour", estimated: minor(1000), spent: minor(700), toCome: minor(450) },
			{ what: "Sent back, less what was credited", estimated: minor(0), spent: minor(300), toCome: minor(-300) },
		]);
		expect(bridgeOf(summary.lines).at(-1)?.to).toBe(summary.total.atCompletion);
	});
});

describe("its drawing", () => {
	const bars = fc.array(fc.record({ from: amount, to: amount }), { minLength: 1, maxLength: 15 });

	it("keeps every bar within its width, and as long as its amount on the one scale", () => {
		fc.assert(
			fc.property(bars, (all) => {
				const places = placeBridge(all);
				const values = all.flatMap(({ from, to }) => [from, to]);
				const span = Math.max(0, ...values) - Math.min(0, ...values);
				for (const [index, { from, to }] of all.entries()) {
					const { start = -1, length = -1 } = places[index] ?? {};
					expect(start).toBeGreaterThanOrEqual(0);
					expect(start + length).toBeLessThanOrEqual(1 + 1e-9);
					expect(length * span).toBeCloseTo(Math.abs(to - from), 4);
				}
			}),
			{ seed: 63, numRuns: 200 },
		);
	});

	it("of 100 that becomes 150 by 70 up and 20 down hangs each bar on the one before it", () => {
		const places = placeBridge([
			{ from: 0, to: 100 },
			{ from: 100, to: 170 },
			{ from: 170, to: 150 },
			{ from: 0, to: 150 },
		]);
		const shares = places.map(({ start, length, joins }) => [start, length, joins].map((share) => Math.round(share * 170)));
		expect(shares).toEqual([
			[0, 100, 0],
			[100, 70, 100],
			[150, 20, 170],
			[0, 150, 150],
		]);
	});

	it("of nothing is a point, and below nothing moves the scale to the right", () => {
		expect(placeBridge([{ from: 0, to: 0 }])).toEqual([{ start: 0, length: 0, joins: 0 }]);
		expect(
			placeBridge([
				{ from: 0, to: -50 },
				{ from: 0, to: 50 },
			]).map(({ start }) => start),
		).toEqual([0, 0.5]);
	});
});
