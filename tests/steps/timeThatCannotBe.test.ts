// Time as it is typed: what cannot have been is refused at its field, and what stands beside other time is said on the spot.

import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { instant } from "@/lib/core/instants";
import { addTime, planStep, startClock, stopClock, voidTime } from "@/lib/steps/changes";
import { addTimeSchema, planStepSchema } from "@/lib/steps/schema";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { aCrew, done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("time typed from memory", () => {
	let shop: FreshShop;
	let machine: AMachine;
	let stepId: string;
	const step = async (title: string, of: AMachine = machine) =>
		done(await planStep(planStepSchema.parse({ machineId: of.id, kind: "repair", title }), shop.env())).id;
	const add = (more: object) => addTime(addTimeSchema.parse({ stepId, personId: shop.person, ...more }), shop.env());
	const wrongAt = async (more: object) => Object.keys(refused(await add(more)).fields ?? {});

	beforeEach(async () => {
		shop = await freshShop();
		// The machine came in on 2 March; it is noon of the 10th in Amsterdam.
		machine = await aMachine(shop, { k01: {} });
		stepId = await step("sand the panel");
		shop.setClock("2026-03-10T11:00:00.000Z");
	});
	afterEach(() => shop.close());

	it("that would end after now is refused at how long it took, and one that ends by now is taken", async () => {
		const began = { startedAt: "2026-03-10T10:00:00.000Z" };
		expect(await wrongAt({ minutes: "5 h", ...began })).toEqual(["minutes"]);
		expect(await shop.store.read.work.count()).toBe(0);
		done(await add({ minutes: "60", ...began }));
	});

	it("that began before the machine came in is refused at when it began, with the day it came", async () => {
		const early = { minutes: "30", startedAt: "2026-03-01T22:59:00.000Z" };
		expect(await wrongAt(early)).toEqual(["began"]);
		expect(refused(await add(early)).say).toContain("came in on 2 March 2026");
		// Midnight of the 2nd in Amsterdam is 23:00 of the 1st in UTC.
		done(await add({ ...early, startedAt: "2026-03-01T23:00:00.000Z" }));
	});

	it("so long that it would have begun before the machine came in is refused at how long it took", async () => {
		expect(await wrongAt({ minutes: "220 h" })).toEqual(["minutes"]);
	});

	it("beside other time of the same person is taken, and says beside which and for how long", async () => {
		const elsewhere = await aMachine(shop, { k01: {} }, 13);
		const paint = await step("paint", elsewhere);
		const at = (time: string) => instant(`2026-03-09T${time}:00.000Z`);
		done(await add({ stepId: paint, minutes: "60", startedAt: at("09:00") }));
		const { beside } = done(await add({ minutes: "60", startedAt: at("09:40") }));
		expect(beside).toEqual([{ machine: 13, step: 1, title: "paint", startedAt: at("09:00"), minutes: 20 }]);
		expect(await shop.store.read.work.count({ where: { minutes: 60 } })).toBe(2);
	});

	it("that touches other time, stands beside what was taken back, or beside another person's, is beside nothing", async () => {
		const { B } = await aCrew(shop);
		const at = (time: string) => instant(`2026-03-09T${time}:00.000Z`);
		done(await add({ minutes: "60", startedAt: at("08:00") }));
		done(await add({ personId: B, minutes: "60", startedAt: at("09:00") }));
		const wrong = done(await add({ minutes: "60", startedAt: at("09:00") }));
		done(await voidTime({ workId: wrong.workId, why: "another day" }, shop.env()));
		expect(done(await add({ minutes: "60", startedAt: at("09:00") })).beside).toEqual([]);
	});

	it("beside a clock that runs says so, too", async () => {
		const other = await step("paint");
		done(await startClock({ stepId: other, personId: shop.person, at: instant("2026-03-10T10:30:00.000Z") }, shop.env()));
		shop.setClock("2026-03-10T11:30:00.000Z");
		const { beside } = done(await add({ minutes: "40", startedAt: "2026-03-10T10:40:00.000Z" }));
		expect(beside).toMatchObject([{ step: 2, minutes: 40 }]);
	});

	it("a clock does not stop before it started or later than now, and that stands at when it stopped", async () => {
		const at = instant("2026-03-10T10:00:00.000Z");
		const { workId } = done(await startClock({ stepId, personId: shop.person, at }, shop.env()));
		const stop = (on: string) => stopClock({ workId, at: instant(on), note: "" }, shop.env());
		for (const on of ["2026-03-10T09:59:00.000Z", "2026-03-10T18:00:00.000Z"])
			expect(Object.keys(refused(await stop(on)).fields ?? {}), on).toEqual(["stopped"]);
		expect(done(await stop("2026-03-10T10:30:00.000Z"))).toEqual({ minutes: 30 });
	});
});
