// The simulation where the answer is known.

import { describe, expect, it } from "vitest";
import { seededRandom } from "@/lib/core/random";
import { betaVariance, type ThreePoint } from "@/lib/money/pert";
import { betaPert } from "@/lib/schedule/betaPert";
import { summaryOf } from "@/lib/schedule/sample";
import { type SimulatedStep, simulate } from "@/lib/schedule/simulate";
import { HAPPENED, PLANNED } from "@/tests/money/machine12";
import reference from "@/tests/outside/data/quantiles/beta-pert.json";

const RUNS = 40_000;
const step = (estimate: ThreePoint, more: Partial<SimulatedStep> = {}): SimulatedStep => ({
	estimate,
	wait: 0,
	after: [],
	uses: [],
	costAMinute: 0,
	...more,
});
const three = (low: number, likely: number, high: number): ThreePoint => ({ low, likely, high });
const fixed = (minutes: number) => three(minutes, minutes, minutes);
const mean = ({ low, likely, high }: ThreePoint): number => (low + 4 * likely + high) / 6;

describe("one step", () => {
	it.each(reference.cases)(
		"of $a, $m, $b has the quantiles of the beta distribution (SciPy 1.17.1)",
		({ a, m, b, mean, varianceBeta, quantiles }) => {
			const { finish } = simulate({ capacity: [], steps: [step(three(a, m, b))], planned: [0] }, RUNS, seededRandom(1));
			for (const { percent, value, low, high } of finish.quantiles) {
				const exact = quantiles[String(percent / 100) as keyof typeof quantiles];
				// Four standard errors on either side: by chance alone it fails once in 16,000 looks; half a second is the rounding.
				expect(exact).toBeGreaterThan(value - 4 * (value - low) - 1 / 120);
				expect(exact).toBeLessThan(value + 4 * (high - value) + 1 / 120);
			}
			expect(Math.abs(finish.mean - mean)).toBeLessThan(4 * finish.meanError + 1 / 120);
			expect(Math.abs(finish.deviation ** 2 / varianceBeta - 1)).toBeLessThan(0.04);
		},
	);

	it("without spread takes what it takes, and is always critical", () => {
		const { finish, critical } = simulate({ capacity: [], steps: [step(fixed(35), { wait: 10 })], planned: [0] }, 50, seededRandom(1));
		expect([finish.mean, finish.deviation, critical]).toEqual([45, 0, [1]]);
	});
});

it("two side by side are over as late as the later one: the distribution of a maximum is the product of the two", () => {
	const estimate = three(10, 20, 30);
	const { finish, critical } = simulate({ capacity: [], steps: [step(estimate), step(estimate)], planned: [0, 0] }, RUNS, seededRandom(2));
	const draw = betaPert(estimate, seededRandom(99));
	const single = summaryOf(
		Array.from({ length: RUNS * 4 }, draw),
		[10, 50, 80, 90].map((percent) => 100 * Math.sqrt(percent / 100)),
	);
	finish.quantiles.forEach(({ value, low, high }, at) => {
		const alone = single.quantiles[at];
		expect(Math.abs(value - (alone?.value ?? 0))).toBeLessThan(4 * (high - low + (alone?.high ?? 0) - (alone?.low ?? 0)));
	});
	expect(critical[0]).toBeCloseTo(0.5, 1);
});

it("many in a row add up: means and variances", () => {
	const estimates = Array.from({ length: 20 }, (_, at) => three(5 + at, 10 + 2 * at, 30 + 3 * at));
	const steps = estimates.map((estimate, at) => step(estimate, { after: at === 0 ? [] : [at - 1], costAMinute: 2 }));
	const { finish, cost, critical } = simulate({ capacity: [], steps, planned: steps.map((_, at) => at) }, RUNS, seededRandom(3));
	const sum = estimates.reduce((total, estimate) => total + mean(estimate), 0);
	const variance = estimates.reduce((total, estimate) => total + betaVariance(estimate), 0);
	expect(Math.abs(finish.mean - sum)).toBeLessThan(4 * finish.meanError);
	expect(Math.abs(finish.deviation ** 2 / variance - 1)).toBeLessThan(0.04);
	expect(Math.abs(cost.mean - 2 * sum)).toBeLessThan(4 * cost.meanError);
	expect(critical.every((share) => share === 1)).toBe(true);
});

it("two that need the same person are done one after the other, and both are critical", () => {
	const steps = [step(three(10, 20, 30), { uses: [1] }), step(three(10, 20, 30), { uses: [1] })];
	const { finish, critical } = simulate({ capacity: [1], steps, planned: [0, 20] }, 5000, seededRandom(4));
	expect(Math.abs(finish.mean - 40)).toBeLessThan(4 * finish.meanError);
	expect(critical).toEqual([1, 1]);
});

describe("machine 12 of the acceptance scenario, with one of each person", () => {
	const stepsOf = (rows: typeof PLANNED, estimateOf: (row: (typeof PLANNED)[number]) => ThreePoint): SimulatedStep[] =>
		rows.map((row) =>
			step(estimateOf(row), {
				wait: row.wait,
				after: row.after.map((need) => rows.findIndex(({ id }) => id === need)),
				uses: (["A", "B", "C"] as const).map((who) => Number(row.who.includes(who))),
			}),
		);

	it("without spread is the plan itself", () => {
		const steps = stepsOf(PLANNED, ({ likely }) => fixed(likely));
		const planned = steps.map((_, at) => at);
		const { finish } = simulate({ capacity: [1, 1, 1], steps, planned }, 3, seededRandom(1));
		expect([finish.mean, finish.deviation]).toEqual([16_975, 0]);
	});

	it("with its estimates is over later than the likely times say, and the same seed says the same", () => {
		const steps = stepsOf(PLANNED, ({ low, likely, high }) => ({ low, likely, high }));
		const input = { capacity: [1, 1, 1], steps, planned: steps.map((_, at) => at) };
		const one = simulate(input, 2000, seededRandom(7));
		expect(simulate(input, 2000, seededRandom(7))).toEqual(one);
		const [p10, p50, , p90] = one.finish.quantiles.map(({ value }) => value);
		expect(p50).toBeGreaterThan(16_975);
		expect([p10, p50, p90].toSorted((a, b) => (a ?? 0) - (b ?? 0))).toEqual([p10, p50, p90]);
		// What the critical chain of the plan has is nearly always critical.
		const share = (id: string) => one.critical[PLANNED.findIndex((row) => row.id === id)] ?? 0;
		expect(share("S01")).toBe(1);
		expect(share("S36")).toBeGreaterThan(0.9);
		expect(HAPPENED.length).toBe(PLANNED.length + 2);
	});
});
