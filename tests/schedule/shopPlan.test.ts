// The plan of the whole shop: it can be worked, nothing better exists where everything can be tried, its bounds hold.

import { describe, expect, it } from "vitest";
import { seededRandom } from "@/lib/core/random";
import { shopPlanOf } from "@/lib/schedule/shopPlan";
import type { ShopProblem, ShopTask } from "@/lib/schedule/shopProblem";
import { wrongsOfShopPlan } from "@/tests/schedule/checkShopPlan";
import { bestWorth, compare, type Worth } from "@/tests/schedule/everyShopPlan";
import { makeShop } from "@/tests/schedule/makeShop";

const SHOPS = Number(process.env.ASFOUND_SHOPS ?? 60);

const worthOf = (problem: ShopProblem, plan: ReturnType<typeof shopPlanOf>): Worth => {
	const ends = problem.machines.map((_, machine) =>
		Math.max(0, ...plan.tasks.filter((_, task) => problem.tasks[task]?.machine === machine).map(({ over }) => over)),
	);
	return [
		ends.reduce((sum, end, machine) => sum + Math.max(0, end - (problem.machines[machine]?.promised ?? end)), 0),
		ends.reduce((sum, end) => sum + end, 0),
		Math.max(0, ...ends),
	];
};

describe("random shops", () => {
	it("of up to six tasks: the plan can be worked, and no order of the tasks gives a better one", () => {
		for (let seed = 1; seed <= SHOPS; seed++) {
			const { problem, horizon } = makeShop(seededRandom(seed), 6);
			const plan = shopPlanOf(problem, 1, 800);
			expect({ seed, wrongs: wrongsOfShopPlan(problem, plan) }).toEqual({ seed, wrongs: [] });
			const best = bestWorth(problem, horizon);
			const worth = worthOf(problem, plan);
			if (best.includes(Number.POSITIVE_INFINITY)) expect(worth[2]).toBe(Number.POSITIVE_INFINITY);
			else expect({ seed, off: compare(worth, best) }).toEqual({ seed, off: 0 });
		}
	});

	it("of up to thirty tasks: the plan can be worked, and its bounds lie before its ends", () => {
		for (let seed = 1; seed <= SHOPS / 3; seed++) {
			const { problem } = makeShop(seededRandom(1000 + seed), 30);
			const plan = shopPlanOf(problem, 1, 60);
			expect({ seed, wrongs: wrongsOfShopPlan(problem, plan) }).toEqual({ seed, wrongs: [] });
			expect(plan.lowerBound).toBeLessThanOrEqual(plan.makespan);
			for (const { end, notBefore } of plan.machines) if (end !== null) expect(notBefore).toBeLessThanOrEqual(end);
		}
	});

	it("a small shop's bound is not above the best last end that there is", () => {
		for (let seed = 1; seed <= SHOPS / 3; seed++) {
			const { problem, horizon } = makeShop(seededRandom(5000 + seed), 5);
			// One machine and no promise: then the last end is all that counts.
			const alone = {
				...problem,
				machines: [{ id: "one", promised: null }],
				tasks: problem.tasks.map((task) => ({ ...task, machine: 0 })),
			};
			const [, , last] = bestWorth(alone, horizon);
			expect({ seed, isBelow: shopPlanOf(alone, 1, 0).lowerBound <= last }).toEqual({ seed, isBelow: true });
		}
	});

	it("what a machine's end hangs on is a chain without a gap: each begins when what it waited for lets it", () => {
		let links = 0;
		for (let seed = 1; seed <= SHOPS; seed++) {
			const { problem } = makeShop(seededRandom(2000 + seed), 20);
			const plan = shopPlanOf(problem, 1, 30);
			for (const { chain, end } of plan.machines) {
				if (end === null) continue;
				expect(plan.tasks[chain.at(-1) ?? -1]?.over).toBe(end);
				for (const [at, task] of chain.slice(1).entries()) {
					const before = plan.tasks[chain[at] ?? -1];
					const begun = plan.tasks[task]?.start ?? 0;
					expect([before?.finish, before?.over].some((moment) => moment !== undefined && moment <= begun)).toBe(true);
					links += 1;
				}
				const first = plan.tasks[chain[0] ?? -1]?.waitedFor.why;
				expect(["nothing", "hours", "rest", "parcel"]).toContain(first);
			}
		}
		expect(links).toBeGreaterThan(SHOPS);
	});
});

const fixed = (minutes: number) => ({ low: minutes, likely: minutes, high: minutes });
const task = (id: string, more: Partial<ShopTask> = {}): ShopTask => ({
	id,
	machine: 0,
	estimate: fixed(60),
	spent: 0,
	wait: fixed(0),
	after: [],
	release: 0,
	parcels: [],
	crews: [[0]],
	holds: [],
	...more,
});
/** Eight to twelve and one to five, from the first midnight on, so many days. */
const office = (days: number, without: readonly number[] = []) =>
	Array.from({ length: days }, (_, day) => day)
		.filter((day) => !without.includes(day))
		.flatMap((day) => [
			{ from: day * 1440 + 480, until: day * 1440 + 720 },
			{ from: day * 1440 + 780, until: day * 1440 + 1020 },
		]);
const shop = (tasks: readonly ShopTask[], more: Partial<ShopProblem> = {}): ShopProblem => ({
	people: [
		{ id: "A", windows: office(30) },
		{ id: "C", windows: office(30, [0]) },
	],
	equipment: [{ id: "booth", count: 1 }],
	arrivals: [],
	machines: [{ id: "12", promised: null }],
	tasks,
	...more,
});

describe("steps for whoever is free", () => {
	it("in random shops are planned so that they can be worked, each by one of those who may", () => {
		let chosen = 0;
		for (let seed = 1; seed <= SHOPS; seed++) {
			const { problem } = makeShop(seededRandom(7000 + seed), 12);
			const open = {
				...problem,
				tasks: problem.tasks.map((one, at) => (at % 2 === 0 ? { ...one, crews: problem.people.map((_, person) => [person]) } : one)),
			};
			const plan = shopPlanOf(open, 1, 40);
			expect({ seed, wrongs: wrongsOfShopPlan(open, plan) }).toEqual({ seed, wrongs: [] });
			chosen += plan.tasks.filter(({ crew }, at) => at % 2 === 0 && (crew[0] ?? 0) > 0).length;
		}
		expect(chosen).toBeGreaterThan(SHOPS);
	});
});

describe("a day's work", () => {
	it("breaks off at noon and in the evening, and goes on", () => {
		const plan = shopPlanOf(shop([task("long", { estimate: fixed(540) })]), 1);
		expect(plan.tasks[0]).toMatchObject({ start: 480, finish: 1440 + 480 + 60 });
	});

	it("waits go by the clock, over the night", () => {
		const plan = shopPlanOf(shop([task("paint", { wait: fixed(900) }), task("fit", { after: [0] })]), 1);
		expect(plan.tasks[1]).toMatchObject({ start: 1440 + 480, waitedFor: { why: "need", task: 0 } });
		expect(plan.machines[0]?.end).toBe(1440 + 540);
	});

	it("two begin together only when both are in, and are not parted before they are done", () => {
		const late = shop([task("lift", { crews: [[0, 1]], estimate: fixed(120) })], {
			people: [
				{ id: "A", windows: office(30) },
				{ id: "C", windows: [{ from: 480, until: 550 }, ...office(30, [0])] },
			],
		});
		// C leaves after 70 minutes: so not today.
		expect(shopPlanOf(late, 1).tasks[0]).toMatchObject({ start: 1440 + 480 });
	});

	it("of two people who may do it, the one who is done first does it", () => {
		const plan = shopPlanOf(shop([task("first", { estimate: fixed(300) }), task("any", { crews: [[0], [1]] })]), 1);
		expect(plan.tasks.map(({ crew }) => crew)).toEqual([[0], [0]]);
		const both = shop([task("first", { estimate: fixed(1200) }), task("any", { crews: [[0], [1]], release: 500 })]);
		expect([...shopPlanOf(both, 1, 0).tasks.map(({ crew }) => crew)]).toContainEqual([1]);
	});

	it("paint dries in the booth, and the next has to wait for it", () => {
		const holds = [{ equipment: 0, count: 1, throughWait: true }];
		const plan = shopPlanOf(shop([task("paint one", { holds, wait: fixed(1440) }), task("paint two", { holds, wait: fixed(1440) })]), 1);
		expect(plan.tasks.map(({ start }) => start).sort((a, b) => a - b)).toEqual([480, 1440 + 540]);
		expect(plan.tasks.some(({ waitedFor }) => waitedFor.why === "equipment")).toBe(true);
	});

	it("nobody's hours left is said, and not a date; what needs it has none either, and nobody else's plan is the worse for it", () => {
		const machines = [
			{ id: "12", promised: null },
			{ id: "14", promised: null },
		];
		const others = [task("a", { machine: 1, estimate: fixed(300) }), task("b", { machine: 1, crews: [[1]], after: [0] })];
		const never = [task("never", { estimate: fixed(100_000) }), task("after it", { after: [2] })];
		const plan = shopPlanOf(shop([...others, ...never], { machines }), 1);
		expect(plan).toMatchObject({ without: [2, 3], machines: [{ end: null, chain: [] }, { end: 1440 + 540 }] });
		expect([plan.makespan, plan.lowerBound].every(Number.isFinite)).toBe(true);
		expect(plan.tasks.slice(0, 2)).toEqual(shopPlanOf(shop(others, { machines }), 1).tasks);
	});

	it("a step for two that is longer than what they share in two weeks is begun and gone on with; a longer day next year is not waited for", () => {
		const mornings = office(400).filter((_, at) => at % 2 === 0);
		const later = Array.from({ length: 30 }, (_, day) => ({ from: (300 + day) * 1440 + 480, until: (300 + day) * 1440 + 1020 }));
		const people = [
			{ id: "A", windows: office(400) },
			{ id: "B", windows: [...mornings.filter(({ from }) => from < 300 * 1440), ...later] },
		];
		const both = (minutes: number) =>
			shopPlanOf(shop([task("lift", { crews: [[0, 1]], estimate: fixed(minutes) })], { people }), 1).tasks[0];
		expect(both(300)).toMatchObject({ start: 480, finish: 1440 + 540 });
		// What they can do in a morning is not broken off.
		expect(both(240)).toMatchObject({ start: 480, finish: 720 });
	});

	it("of a step past its likely time what is left on average is planned, and of one that has begun not less", () => {
		const estimate = { low: 60, likely: 120, high: 480 };
		const left = (spent: number) => {
			const [row] = shopPlanOf(
				shop([task("on", { estimate, spent })], { people: [{ id: "A", windows: [{ from: 0, until: 10_000 }] }] }),
				1,
			).tasks;
			return (row?.finish ?? 0) - (row?.start ?? 0);
		};
		const minutes = [0, 30, 119, 120, 121, 300, 479, 480, 600].map(left);
		expect(minutes.slice(0, 2)).toEqual([120, 90]);
		expect(minutes[2]).toBe(minutes[3]);
		for (const [at, one] of minutes.slice(3).entries()) expect(one).toBeLessThanOrEqual(minutes[at + 2] ?? 0);
		expect(minutes.slice(-2)).toEqual([0, 0]);
		expect(left(150)).toBeGreaterThan(60);
	});
});

describe("a person's day off", () => {
	const two = (without: readonly number[]): ShopProblem => ({
		people: [
			{ id: "A", windows: office(30, without) },
			{ id: "B", windows: office(30) },
		],
		equipment: [],
		arrivals: [],
		machines: [
			{ id: "12", promised: null },
			{ id: "14", promised: null },
		],
		tasks: [task("A's", { estimate: fixed(600) }), task("B's", { machine: 1, crews: [[1]], estimate: fixed(600) })],
	});
	it("moves the machines that the person works on, and no other", () => {
		const ends = (without: readonly number[]) => shopPlanOf(two(without), 1).machines.map(({ end }) => end);
		expect(ends([])).toEqual([1440 + 600, 1440 + 600]);
		expect(ends([1])).toEqual([2 * 1440 + 600, 1440 + 600]);
	});
});

it("what was promised comes first", () => {
	const machines = [
		{ id: "12", promised: null },
		{ id: "14", promised: 540 },
	];
	const plan = shopPlanOf(shop([task("long", { estimate: fixed(30) }), task("due", { machine: 1 })], { machines }), 1);
	expect(plan.tasks.map(({ start }) => start)).toEqual([540, 480]);
	expect(plan.machines.map(({ late }) => late)).toEqual([0, 0]);
});
