// The simulation where the answer is known.

import { describe, expect, it } from "vitest";
import { instant } from "@/lib/core/instants";
import { seededRandom } from "@/lib/core/random";
import { betaVariance, type ThreePoint } from "@/lib/money/pert";
import { betaPert } from "@/lib/schedule/betaPert";
import { finishCurve } from "@/lib/schedule/finishCurve";
import { summaryOf } from "@/lib/schedule/sample";
import { shopPlanOf } from "@/lib/schedule/shopPlan";
import type { ShopProblem, ShopTask } from "@/lib/schedule/shopProblem";
import { type ShopSimulation, type SimulatedMachine, simulateShop } from "@/lib/schedule/shopSimulate";
import { PLANNED } from "@/tests/money/machine12";
import reference from "@/tests/outside/data/quantiles/beta-pert.json";
import { makeShop } from "@/tests/schedule/makeShop";
import { ALWAYS_IN, officeHours, skerryShop } from "@/tests/schedule/skerryPlan";

const RUNS = 40_000;
const three = (low: number, likely: number, high: number): ThreePoint => ({ low, likely, high });
const fixed = (minutes: number) => three(minutes, minutes, minutes);
const mean = ({ low, likely, high }: ThreePoint): number => (low + 4 * likely + high) / 6;

/** A step of machine 1 done by nobody in particular, unless said otherwise. */
const step = (estimate: ThreePoint, more: Partial<ShopTask> = {}): ShopTask => ({
	id: "step",
	machine: 0,
	estimate,
	spent: 0,
	wait: fixed(0),
	after: [],
	release: 0,
	parcels: [],
	crews: [[]],
	holds: [],
	...more,
});
const shop = (tasks: readonly ShopTask[], more: Partial<ShopProblem> = {}): ShopProblem => ({
	people: [{ id: "A", windows: ALWAYS_IN }],
	equipment: [],
	arrivals: [],
	machines: [{ id: "1", promised: null }],
	tasks,
	...more,
});
function ran(problem: ShopProblem, seed: number, runs = RUNS, costAMinute: readonly number[] = []): ShopSimulation {
	return simulateShop(problem, shopPlanOf(problem, 1).tasks, costAMinute, runs, seededRandom(seed));
}
function only(simulation: ShopSimulation): SimulatedMachine {
	const [machine] = simulation.machines;
	if (machine === undefined) throw new Error("no machine");
	return machine;
}

describe("one step", () => {
	it.each(reference.cases)(
		"of $a, $m, $b has the quantiles of the beta distribution (SciPy 1.17.1)",
		({ a, m, b, mean, varianceBeta, quantiles }) => {
			const { finish } = only(ran(shop([step(three(a, m, b))]), 1));
			for (const { percent, value, low, high } of finish.quantiles) {
				const exact = quantiles[String(percent / 100) as keyof typeof quantiles];
				// Four standard errors on either side: by chance alone it fails once in 16,000 looks.
				expect(exact).toBeGreaterThanOrEqual(value - 4 * (value - low));
				expect(exact).toBeLessThanOrEqual(value + 4 * (high - value));
			}
			expect(Math.abs(finish.mean - mean)).toBeLessThanOrEqual(4 * finish.meanError);
			expect(Math.abs(finish.deviation ** 2 / varianceBeta - 1)).toBeLessThan(0.04);
		},
	);

	it("without spread takes what it takes, and is always critical", () => {
		const { finish, critical } = only(ran(shop([step(fixed(35), { wait: fixed(10) })]), 1, 50));
		expect([finish.mean, finish.deviation, critical]).toEqual([45, 0, [1]]);
	});

	it("that has taken 40 minutes and is not done takes longer than 40: what is left follows the rest of the distribution", () => {
		const estimate = three(20, 50, 100);
		const { finish } = only(ran(shop([step(estimate, { spent: 40 })]), 5));
		const draw = betaPert(estimate, seededRandom(77));
		const longer = Array.from({ length: RUNS * 3 }, draw).filter((whole) => whole > 40);
		const expected = summaryOf(longer.map((whole) => whole - 40));
		expect(Math.abs(finish.mean - expected.mean)).toBeLessThan(4 * (finish.meanError + expected.meanError));
		expect(Math.abs((finish.quantiles[3]?.value ?? 0) - (expected.quantiles[3]?.value ?? 0))).toBeLessThan(1);
	});
});

it("two side by side are over as late as the later one: the distribution of a maximum is the product of the two", () => {
	const estimate = three(10, 20, 30);
	const { finish, critical } = only(ran(shop([step(estimate), step(estimate)]), 2));
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
	expect((critical[0] ?? 0) + (critical[1] ?? 0)).toBe(1);
});

it("many in a row add up: means and variances", () => {
	const estimates = Array.from({ length: 20 }, (_, at) => three(5 + at, 10 + 2 * at, 30 + 3 * at));
	const steps = estimates.map((estimate, at) => step(estimate, { after: at === 0 ? [] : [at - 1] }));
	const costs = steps.map(() => 2);
	const { finish, cost, critical } = only(ran(shop(steps), 3, RUNS, costs));
	const sum = estimates.reduce((total, estimate) => total + mean(estimate), 0);
	const variance = estimates.reduce((total, estimate) => total + betaVariance(estimate), 0);
	expect(Math.abs(finish.mean - sum)).toBeLessThan(4 * finish.meanError);
	expect(Math.abs(finish.deviation ** 2 / variance - 1)).toBeLessThan(0.04);
	expect(Math.abs(cost.mean - 2 * sum)).toBeLessThan(4 * cost.meanError);
	expect(critical.every((share) => share === 1)).toBe(true);
});

it("one person who is past the likely time of a step goes on with it before the next: nobody is at two things at once", () => {
	const estimate = three(60, 120, 480);
	const steps = [step(estimate, { spent: 150, crews: [[0]] }), step(fixed(60), { crews: [[0]] })];
	const { finish } = only(ran(shop(steps), 9, 5000));
	const draw = betaPert(estimate, seededRandom(78));
	const longer = summaryOf(Array.from({ length: RUNS }, draw).flatMap((whole) => (whole > 150 ? [whole - 150 + 60] : [])));
	expect(Math.abs(finish.mean - longer.mean)).toBeLessThan(4 * (finish.meanError + longer.meanError));
});

it("where the hours may run out, some runs have no end; the others are counted, and the curve stops below 1", () => {
	const problem = shop([step(three(60, 90, 300), { crews: [[0]] })], { people: [{ id: "A", windows: [{ from: 0, until: 120 }] }] });
	const { finish, ends } = only(ran(problem, 9, 2000));
	const share = ends.filter(Number.isFinite).length / ends.length;
	expect(share).toBeGreaterThan(0.3);
	expect(share).toBeLessThan(0.9);
	expect(finish.quantiles[0]?.value).toBeLessThanOrEqual(120);
	expect(finish.quantiles[3]?.value).toBe(Number.POSITIVE_INFINITY);
	const curve = finishCurve(ends, { from: instant("2026-03-02T08:00:00.000Z"), timeZone: "Europe/Amsterdam", quantiles: finish.quantiles });
	expect(curve.points.at(-1)?.y).toBeCloseTo(share, 1);
	expect(curve.points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
	expect(curve.marks.length).toBeLessThan(4);
});

it("what has no time in the plan is left out, and the others are run", () => {
	const steps = [step(fixed(30), { crews: [[0]] }), step(fixed(100_000_000), { machine: 1, crews: [[0]] })];
	const machines = [
		{ id: "1", promised: null },
		{ id: "2", promised: null },
	];
	const { machines: ends } = ran(shop(steps, { machines }), 9, 10);
	expect(ends[0]?.finish.mean).toBe(30);
});

it("two that need the same person are done one after the other, and both are critical", () => {
	const steps = [step(three(10, 20, 30), { crews: [[0]] }), step(three(10, 20, 30), { crews: [[0]] })];
	const { finish, critical } = only(ran(shop(steps), 4, 5000));
	expect(Math.abs(finish.mean - 40)).toBeLessThan(4 * finish.meanError);
	expect(critical).toEqual([1, 1]);
});

it("three that share two benches are done two and one: the third begins when the first of the two is done", () => {
	const holds = [{ equipment: 0, count: 1, throughWait: false }];
	const steps = [10, 30, 15].map((minutes) => step(fixed(minutes), { holds }));
	const { finish } = only(ran(shop(steps, { equipment: [{ id: "bench", count: 2 }] }), 4, 10));
	expect([finish.mean, finish.deviation]).toEqual([30, 0]);
});

describe("a parcel", () => {
	const ordered = -3 * 1440;
	const lead = three(5 * 1440, 7 * 1440, 14 * 1440);
	const problem = shop([step(fixed(0), { parcels: [0] })], { arrivals: [{ id: "order 7", ordered, lead }] });
	it("comes when its lead time is over, and the machine's end hangs on it", () => {
		const simulation = ran(problem, 6);
		const { finish } = only(simulation);
		expect(Math.abs(finish.mean - (mean(lead) + ordered))).toBeLessThan(4 * finish.meanError);
		expect(only(simulation).parcels).toEqual([1]);
	});
	it("that is overdue is counted as there in a day, in every run", () => {
		const { finish } = only(ran({ ...problem, arrivals: [{ id: "order 7", ordered: -30 * 1440, lead }] }, 6, 20));
		expect([finish.mean, finish.deviation]).toEqual([1440, 0]);
	});
});

it("without spread every run is the plan, in random shops with hours, days off, equipment and post", () => {
	let machines = 0;
	for (let seed = 1; seed <= 200; seed++) {
		const { problem } = makeShop(seededRandom(3000 + seed), 14);
		const sure: ShopProblem = {
			...problem,
			tasks: problem.tasks.map((task) => ({ ...task, estimate: fixed(Math.max(task.spent, task.estimate.likely)) })),
			arrivals: problem.arrivals.map((arrival) => ({ ...arrival, lead: fixed(arrival.lead.likely) })),
		};
		const plan = shopPlanOf(sure, 1, 40);
		if (plan.without.length > 0) continue;
		const { machines: simulated } = simulateShop(sure, plan.tasks, [], 2, seededRandom(seed));
		for (const [at, { finish }] of simulated.entries()) {
			if (plan.machines[at]?.end === null) continue;
			expect({ seed, machine: at, mean: finish.mean }).toEqual({ seed, machine: at, mean: plan.machines[at]?.end });
			machines += 1;
		}
	}
	expect(machines).toBeGreaterThan(200);
});

describe("machine 12 of the acceptance scenario, with one of each person", () => {
	it("without spread is the plan itself: 16,975 minutes round the clock", () => {
		const sure = PLANNED.map((row) => ({ ...row, low: row.likely, high: row.likely }));
		const { finish } = only(ran(skerryShop(sure, ALWAYS_IN), 1, 3));
		expect([finish.mean, finish.deviation]).toEqual([16_975, 0]);
	});

	it("with its estimates is over later than the likely times say, and the same seed says the same", () => {
		const problem = skerryShop(PLANNED, ALWAYS_IN);
		const one = ran(problem, 7, 2000);
		expect(ran(problem, 7, 2000)).toEqual(one);
		const { finish, critical } = only(one);
		const [p10, p50, , p90] = finish.quantiles.map(({ value }) => value);
		expect(p50).toBeGreaterThan(16_975);
		expect([p10, p50, p90].toSorted((a, b) => (a ?? 0) - (b ?? 0))).toEqual([p10, p50, p90]);
		// What the critical chain of the plan has is nearly always critical.
		const share = (id: string) => critical[PLANNED.findIndex((row) => row.id === id)] ?? 0;
		expect(share("S01")).toBe(1);
		expect(share("S36")).toBeGreaterThan(0.9);
	});

	it("costs what its labour costs on average, whoever waits for whom: 1,152.33 at the cost rates", () => {
		const rate = { A: 60, B: 80, C: 40 } as const;
		const costs = PLANNED.map(({ who }) => who.reduce((sum, one) => sum + rate[one], 0));
		const { cost } = only(ran(skerryShop(PLANNED, officeHours(20)), 8, 10_000, costs));
		// The expected minutes of A, B and C in TRADE's table, 758 1/3, 591 2/3 and 560, unrounded.
		const expected = 60 * (758 + 1 / 3) + 80 * (591 + 2 / 3) + 40 * 560;
		expect(Math.abs(cost.mean - expected)).toBeLessThan(4 * cost.meanError);
	});
});
