// The demo shop's machines in work on one timeline, read from its book.

import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { addDayOff } from "@/lib/calendar/changes";
import { dayOffSchema } from "@/lib/calendar/schema";
import { type Instant, instant } from "@/lib/core/instants";
import type { Store } from "@/lib/db/store";
import { envNow } from "@/lib/ledger/edge";
import { stepsOfDoubt } from "@/lib/schedule/doubtSteps";
import { shopAhead } from "@/lib/schedule/shopQueries";
import { changeStep } from "@/lib/steps/changes";
import { changeStepSchema } from "@/lib/steps/schema";
import { wrongsOfShopPlan } from "@/tests/schedule/checkShopPlan";
import { done } from "@/tests/steps/aCrew";
import { demoCopy } from "@/tests/support/demoCopy";

// A Sunday evening, after everything that the demo tells.
const SUNDAY: Instant = instant("2026-05-31T18:00:00.000Z");
let demo: Awaited<ReturnType<typeof demoCopy>>;
let store: Store;
let people: Map<string, string>;

beforeAll(async () => {
	demo = await demoCopy();
	store = demo.store;
	people = new Map((await store.read.person.findMany({ select: { id: true, initials: true } })).map(({ id, initials }) => [initials, id]));
}, 120_000);
afterAll(() => demo.close());

const ahead = () => shopAhead(store.read, SUNDAY, false);
const numbered = async () => {
	const { machines, plan } = await ahead();
	return new Map(machines.map(({ number }, at) => [number, plan.machines[at]?.end ?? null]));
};

describe("the plan of the demo shop", () => {
	it("has the open steps of all three machines in work, can be worked, and says what is not there yet", async () => {
		const { asked, plan, machines, steps, simulation } = await ahead();
		const kinds = new Set(asked.doubts.map(({ what }) => what));
		// The motor is at the rewinder, the cord is in the post, some things are on the list to be bought: all of that is said.
		expect([...kinds].sort()).toEqual(["not-bought", "outside", "overdue"].filter((what) => kinds.has(what as never)));
		expect(asked.doubts).toContainEqual(expect.objectContaining({ what: "outside", tag: "14-0022-J" }));
		expect(asked.doubts.filter(({ what }) => what === "not-bought").length).toBeGreaterThan(2);
		const cord = asked.problem.tasks.find(({ parcels }) => parcels.length > 0);
		expect(steps.find(({ id }) => id === cord?.id)?.number).toBe(18);
		// Each of it is about a step that is open, so that a page of the machine shows it.
		const { facts } = await ahead();
		for (const doubt of asked.doubts) expect(stepsOfDoubt(facts, doubt).length).toBeGreaterThan(0);
		// Half a year on the cord is overdue, and that is about the step that wants it.
		const late = await shopAhead(store.read, instant("2026-11-29T18:00:00.000Z"), false);
		const overdue = late.asked.doubts.find(({ what }) => what === "overdue");
		expect(overdue).toMatchObject({ purchase: 8 });
		expect(overdue && stepsOfDoubt(late.facts, overdue)).toEqual([cord?.id]);
		expect(plan.tasks.length).toBe(steps.length);
		const planned = new Set(asked.problem.tasks.map(({ machine }) => machines[machine]?.number));
		expect([...planned]).toEqual([14, 15, 16]);
		expect(wrongsOfShopPlan(asked.problem, plan)).toEqual([]);
		expect(simulation?.machines.length).toBe(machines.length);
	});

	it("asked again it is the same plan, and by the record it is another", async () => {
		expect(await ahead()).toBe(await ahead());
		const byRecord = await shopAhead(store.read, SUNDAY, true);
		expect(byRecord.plan.makespan).not.toBe((await ahead()).plan.makespan);
	});

	it("days off move the machines that the person works on", async () => {
		const off = async (who: string, fromDay: string, untilDay = "") => {
			const input = dayOffSchema.parse({ personId: people.get(who), fromDay, untilDay, words: "dentist" });
			done(await addDayOff(input, envNow(store, people.get("MO") ?? "")));
		};
		const before = await numbered();
		// The finisher does not come on Fridays: nothing of hers lies there.
		await off("TW", "2026-06-05");
		expect(await numbered()).toEqual(before);
		// Her other days are machine 14's, the only one that she works on: without them it waits a week, and the others do not.
		await off("TW", "2026-06-01", "2026-06-04");
		const without = await numbered();
		expect(without.get(14) ?? 0).toBeGreaterThan((before.get(14) ?? 0) + 4 * 1440);
		for (const number of [15, 16]) expect(without.get(number) ?? 0).toBeLessThanOrEqual(before.get(number) ?? 0);
		// The electrician works on all three: a week without him moves all of them by more than half of it.
		await off("JT", "2026-06-01", "2026-06-07");
		const later = await numbered();
		for (const number of [15, 16]) expect(later.get(number) ?? 0).toBeGreaterThan((without.get(number) ?? 0) + 4 * 1440);
		expect(later.get(14) ?? 0).toBeGreaterThan(without.get(14) ?? 0);
	});

	it("a step that nobody here can do is named, and what needs it has no date", async () => {
		const { steps } = await ahead();
		const step = steps.find(({ kind }) => kind === "document");
		const whole = await store.read.step.findUniqueOrThrow({ where: { id: step?.id ?? "" } });
		const env = () => envNow(store, people.get("MO") ?? "");
		done(
			await changeStep(
				changeStepSchema.parse({
					stepId: whole.id,
					kind: whole.kind,
					title: whole.title,
					minutes: { low: String(whole.lowMinutes), likely: String(whole.likelyMinutes), high: String(whole.highMinutes) },
					skill: "clockmaker",
					crew: [],
				}),
				env(),
			),
		);
		const { asked } = await ahead();
		expect(asked.doubts).toContainEqual({ what: "nobody", step: whole.id, skill: "clockmaker" });
		expect(asked.undated.length).toBeGreaterThan(0);
	});
});
