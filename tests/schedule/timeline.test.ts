// The picture of a plan: nothing lies outside it, nothing over another thing in a lane, and everything of these days is in it.

import { describe, expect, it } from "vitest";
import { daysAhead, windowsOf } from "@/lib/calendar/windows";
import { day } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { seededRandom } from "@/lib/core/random";
import { shopPlanOf } from "@/lib/schedule/shopPlan";
import type { ShopProblem } from "@/lib/schedule/shopProblem";
import { timelineOf } from "@/lib/schedule/timeline";
import { leftOfStep } from "@/tests/schedule/leftOfStep";
import { makeShop } from "@/tests/schedule/makeShop";

const NOW = instant("2026-03-02T05:00:00.000Z");
const ZONE = "Europe/Amsterdam";
const office = [
	[480, 720],
	[750, 990],
] as const;
const hours = [{ fromDay: day("2026-01-01"), week: [office, office, office, office, office, [], []] }];
const ahead = daysAhead(NOW, ZONE, 14);
const fixed = (minutes: number) => ({ low: minutes, likely: minutes, high: minutes });

/** A random shop's tasks with people who keep office hours. */
function officeShop(seed: number): ShopProblem {
	const { problem } = makeShop(seededRandom(seed), 12);
	return {
		...problem,
		people: problem.people.map(({ id }, at) => ({
			id,
			windows: windowsOf(ahead, hours, at === 0 ? [{ fromDay: day("2026-03-04"), untilDay: day("2026-03-04") }] : []),
		})),
		tasks: problem.tasks.map((task) => ({ ...task, estimate: fixed(task.estimate.likely * 10), wait: fixed(task.wait.likely * 40) })),
	};
}

describe("random plans", () => {
	it("lie within the picture and do not overlap in a lane; a person's work is as long as it is", () => {
		let compared = 0;
		for (let seed = 1; seed <= 60; seed++) {
			const problem = officeShop(seed);
			const plan = shopPlanOf(problem, 1, 30);
			const picture = timelineOf(problem, plan, ahead);
			expect(picture.columns[0]?.from).toBe(0);
			expect(picture.columns.at(-1)?.until).toBeCloseTo(1, 9);
			for (const { lanes } of picture.rows)
				for (const lane of lanes) {
					for (const { from, until } of lane) expect(0 <= from && from < until && until <= 1 + 1e-9).toBe(true);
					for (const [at, slice] of lane.slice(1).entries()) expect(slice.from).toBeGreaterThanOrEqual((lane[at]?.until ?? 0) - 1e-9);
				}
			// One open day is 510 minutes wide, noon included; work stops at noon, so widths and minutes agree.
			const width = picture.columns.find(({ isShut }) => !isShut);
			const perMinute = ((width?.until ?? 0) - (width?.from ?? 0)) / 510;
			const last = ahead.at(-1)?.minutesTo(1440) ?? 0;
			for (const [person] of problem.people.entries()) {
				const row = picture.rows.find(({ of, at }) => of === "person" && at === person);
				const drawn = (row?.lanes ?? [])
					.flat()
					.filter(({ kind }) => kind === "work")
					.reduce((sum, { from, until }) => sum + until - from, 0);
				const mine = plan.tasks
					.map((task, at) => ({ ...task, at }))
					.filter(({ crew, finish }) => crew.includes(person) && finish < Number.POSITIVE_INFINITY);
				if (mine.some(({ finish }) => finish > last)) continue;
				const minutes = mine.reduce(
					(sum, { at }) => sum + leftOfStep(problem.tasks[at]?.estimate ?? fixed(0), problem.tasks[at]?.spent ?? 0),
					0,
				);
				expect(drawn).toBeCloseTo(minutes * perMinute, 6);
				compared += 1;
			}
		}
		expect(compared).toBeGreaterThan(60);
	});
});

it("nights are left out, days without anybody are narrow, a day off is shown, and now is where it is", () => {
	const windows = windowsOf(ahead, hours, []);
	const problem: ShopProblem = {
		people: [
			{ id: "A", windows },
			{ id: "B", windows: windowsOf(ahead, hours, [{ fromDay: day("2026-03-03"), untilDay: day("2026-03-03") }]) },
		],
		equipment: [{ id: "booth", count: 1 }],
		arrivals: [],
		machines: [{ id: "12", promised: null }],
		tasks: [
			{
				id: "paint",
				machine: 0,
				estimate: fixed(60),
				spent: 0,
				wait: fixed(1440),
				after: [],
				release: 0,
				parcels: [],
				crews: [[0]],
				holds: [{ equipment: 0, count: 1, throughWait: true }],
			},
		],
	};
	const week = ahead.slice(0, 7);
	const { columns, rows, now } = timelineOf(problem, shopPlanOf(problem, 1), week);
	expect(columns.map(({ isShut }) => isShut)).toEqual([false, false, false, false, false, true, true]);
	// Two in the morning of the first day: at its left edge.
	expect(now).toBe(0);
	const slices = (of: string, at = 0) => rows.find((row) => row.of === of && row.at === at)?.lanes.flat() ?? [];
	const [monday, tuesday] = columns;
	const hour = ((monday?.until ?? 0) - (monday?.from ?? 0)) / 8.5;
	expect(slices("person").map(({ kind, from, until }) => [kind, from, until])).toEqual([["work", 0, expect.closeTo(hour, 9)]]);
	// It dries from nine to nine, and the night takes no room.
	expect(slices("machine")).toMatchObject([
		{ kind: "wait", from: expect.closeTo(hour, 9), until: expect.closeTo((tuesday?.from ?? 0) + hour, 9) },
	]);
	expect(slices("equipment")).toMatchObject([{ kind: "held", from: 0, until: expect.closeTo((tuesday?.from ?? 0) + hour, 9) }]);
	expect(slices("person", 1)).toMatchObject([{ kind: "off", from: tuesday?.from, until: tuesday?.until }]);
	expect(timelineOf(problem, shopPlanOf(problem, 1), ahead.slice(7)).now).toBeNull();
});
