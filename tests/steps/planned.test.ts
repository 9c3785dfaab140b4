// What a step's plan says of its wait, its equipment, its parcels and what it takes, from the form to the planner.

import { afterEach, beforeEach, expect, it } from "vitest";
import { addEquipment, setHours } from "@/lib/calendar/changes";
import { equipmentSchema, hoursSchema } from "@/lib/calendar/schema";
import { promiseReady } from "@/lib/machines/changes";
import { promiseSchema } from "@/lib/machines/schema";
import { buy } from "@/lib/purchases/changes";
import { buySchema } from "@/lib/purchases/schema";
import { shopAhead } from "@/lib/schedule/shopQueries";
import { changeStep, planStep } from "@/lib/steps/changes";
import { stepOfMachine } from "@/lib/steps/queries";
import { changeStepSchema, planStepFormSchema, planStepSchema } from "@/lib/steps/schema";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { done } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
let machine: AMachine;
let booth: string;
beforeEach(async () => {
	shop = await freshShop();
	machine = await aMachine(shop, { k01: {} });
	booth = done(await addEquipment(equipmentSchema.parse({ name: "spray booth", count: 1 }), shop.env()));
	// Monday, 2 March 2026, 9:00 by the shop's clock in Amsterdam.
	done(
		await setHours(
			hoursSchema.parse({ personId: shop.person, fromDay: "2026-03-01", week: ["8-16", "8-16", "8-16", "8-16", "8-16", "", ""] }),
			shop.env(),
		),
	);
});
afterEach(() => shop.close());

const plan = async (title: string, more: object = {}) =>
	done(
		await planStep(
			planStepSchema.parse({
				machineId: machine.id,
				kind: "repair",
				title,
				minutes: { likely: 60, low: 60, high: 60 },
				crew: [shop.person],
				...more,
			}),
			shop.env(),
		),
	);
const ahead = () => shopAhead(shop.store.read, shop.now(), false);

it("a painted part keeps the booth until it is dry, and the next one waits for it", async () => {
	const paint = { equipment: [booth], keepsThroughWait: "yes", wait: "1 day", waitWhy: "paint dries" };
	const first = await plan("paint one", paint);
	await plan("paint two", paint);
	expect((await ahead()).plan.tasks[1]?.waitedFor).toMatchObject({ why: "equipment", equipment: 0 });
	// Said anew: it is free as soon as the work is done.
	done(
		await changeStep(
			changeStepSchema.parse({
				stepId: first.id,
				kind: "repair",
				title: "paint one",
				minutes: { likely: 60 },
				crew: [shop.person],
				...paint,
				keepsThroughWait: "no",
			}),
			shop.env(),
		),
	);
	const { plan: later, asked } = await ahead();
	expect(asked.problem.tasks.map(({ holds }) => holds.map(({ throughWait }) => throughWait))).toEqual([[false], [true]]);
	expect(later.tasks.map(({ start }) => start).sort((a, b) => a - b)[1]).toBeLessThan(1440);
	// And taken off it.
	done(
		await changeStep(
			changeStepSchema.parse({ stepId: first.id, kind: "repair", title: "paint one", minutes: { likely: 60 }, crew: [shop.person] }),
			shop.env(),
		),
	);
	const step = await stepOfMachine(shop.store.read, machine.id, first.number, shop.now());
	expect(step?.equipment).toEqual([]);
	expect(await shop.store.read.stepEquipment.count()).toBe(2);
});

it("what waits for the post has no date until somebody says how long it takes, and then the likely one", async () => {
	const bought = done(
		await buy(
			buySchema("EUR").parse({ supplierName: "Somebody", orderedDay: "2026-03-02", lines: [{ what: "motor", count: 1, net: 5000 }] }),
			shop.env(),
		),
	);
	await plan("fit the motor", { parcels: [bought.id] });
	expect((await ahead()).asked.doubts).toEqual([{ what: "no-lead", purchase: 1 }]);
	const timed = done(
		await buy(
			buySchema("EUR").parse({
				supplierName: "Somebody",
				orderedDay: "2026-03-02",
				lead: { low: "2", likely: "3", high: "9" },
				lines: [{ what: "belt", count: 1, net: 500 }],
			}),
			shop.env(),
		),
	);
	await plan("fit the belt", { parcels: [timed.id] });
	const { plan: planned, asked, simulation } = await ahead();
	expect(asked.problem.tasks.length).toBe(1);
	// Ordered on the 2nd, three days: at noon of the 5th, 75 hours after nine o'clock on the 2nd; the minutes since nine are taken off.
	const [task] = planned.tasks;
	expect(task).toMatchObject({ waitedFor: { why: "parcel" } });
	expect(Math.abs((task?.start ?? 0) - 75 * 60)).toBeLessThan(30);
	expect(simulation?.machines[0]?.parcels.reduce((sum, share) => sum + share, 0)).toBe(1);
});

it("a wait in three points is kept in order, each problem at its field", async () => {
	const read = (more: object) =>
		planStepFormSchema
			.safeParse({ machineId: machine.id, kind: "repair", title: "fill", minutes: { likely: "60" }, ...more })
			.error?.issues.map(({ path }) => path.join("."));
	expect(read({ wait: "7 days", waitLow: "5 days", waitHigh: "14 days" })).toBeUndefined();
	expect(read({ waitLow: "5 days", waitHigh: "14 days" })).toEqual(["wait"]);
	expect(read({ wait: "7 days", waitHigh: "14 days" })).toEqual(["waitLow"]);
	expect(read({ wait: "7 days", waitLow: "5 days" })).toEqual(["waitHigh"]);
	expect(read({ wait: "7 days", waitLow: "8 days", waitHigh: "14 days" })).toEqual(["waitLow"]);
	expect(read({ wait: "7 days", waitLow: "5 days", waitHigh: "6 days" })).toEqual(["waitHigh"]);
	await plan("fill", { wait: "7 days", waitLow: "5 days", waitHigh: "14 days" });
	expect((await ahead()).asked.problem.tasks[0]?.wait).toEqual({ low: 7200, likely: 10_080, high: 20_160 });
});

it("a step for nobody in particular is done by whoever is able, and one that nobody is able to do is named", async () => {
	await plan("anybody's", { crew: [] });
	const wired = await plan("wire it", { crew: [], skill: "electrically skilled" });
	const { plan: planned, people, asked } = await ahead();
	expect(planned.tasks.map(({ crew }) => crew.map((person) => people[person]?.name))).toEqual([["Tester"]]);
	expect(asked.doubts.filter(({ what }) => what === "nobody")).toEqual([{ what: "nobody", step: wired.id, skill: "electrically skilled" }]);
});

it("a machine that is promised comes first", async () => {
	const other = await aMachine(shop, { q01: {} }, 13);
	await plan("long", { minutes: { low: 300, likely: 300, high: 300 } });
	done(
		await planStep(
			planStepSchema.parse({
				machineId: other.id,
				kind: "repair",
				title: "due",
				minutes: { low: 400, likely: 400, high: 400 },
				crew: [shop.person],
			}),
			shop.env(),
		),
	);
	const first = async () => {
		const { plan: planned, steps } = await ahead();
		const task = [...planned.tasks].sort((a, b) => a.start - b.start)[0];
		return steps.find(({ id }) => id === task?.id)?.title;
	};
	expect(await first()).toBe("long");
	done(await promiseReady(promiseSchema.parse({ machineId: other.id, promisedDay: "2026-03-02" }), shop.env()));
	expect(await first()).toBe("due");
	done(await promiseReady(promiseSchema.parse({ machineId: other.id, promisedDay: "" }), shop.env()));
	expect(await first()).toBe("long");
});
