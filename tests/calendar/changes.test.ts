// Hours, days off and equipment as they are entered, corrected and taken back.

import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { addDayOff, addEquipment, changeEquipment, setHours, takeBackDayOff } from "@/lib/calendar/changes";
import { allEquipment, daysOffFrom, hoursOfPeople } from "@/lib/calendar/queries";
import { changeEquipmentSchema, dayOffSchema, equipmentSchema, hoursSchema } from "@/lib/calendar/schema";
import { storedWeek, weekInWords } from "@/lib/calendar/week";
import { done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
beforeEach(async () => {
	shop = await freshShop();
});
afterEach(() => shop.close());

const OFFICE = ["8-12 13-17", "8-12 13-17", "8-12 13-17", "8-12 13-17", "8-12", "", ""];
const set = (fromDay: string, week: readonly string[] = OFFICE) =>
	setHours(hoursSchema.parse({ personId: shop.person, fromDay, week }), shop.env());
const hours = async () =>
	(await hoursOfPeople(shop.store.read))[0]?.hours.map(({ fromDay, week }) => [fromDay, weekInWords(storedWeek(week))]);

describe("hours", () => {
	it("hold from a day on; the same day again corrects them", async () => {
		done(await set("2026-03-02"));
		done(await set("2026-06-01", ["9-12", "", "", "", "", "", ""]));
		done(await set("2026-03-02", ["8-16", "8-16", "", "", "", "", ""]));
		expect(await hours()).toEqual([
			["2026-06-01", "Mon 9:00-12:00"],
			["2026-03-02", "Mon-Tue 8:00-16:00"],
		]);
	});
	it("that cannot be read stand at their day, and nothing is kept", async () => {
		const read = hoursSchema.safeParse({ personId: shop.person, fromDay: "2026-03-02", week: ["8-12", "late", "", "", "", "", ""] });
		expect(read.error?.issues.map(({ path }) => path)).toEqual([["week", 1]]);
		expect(hoursSchema.safeParse({ personId: shop.person, fromDay: "2026-02-30", week: OFFICE }).error?.issues[0]?.path).toEqual([
			"fromDay",
		]);
	});
	it("of nobody in the book are refused", async () => {
		expect(refused(await setHours(hoursSchema.parse({ personId: "nobody", fromDay: "2026-03-02", week: OFFICE }), shop.env())).code).toBe(
			"no-such-person",
		);
	});
});

describe("days off", () => {
	const off = (more: object) => addDayOff(dayOffSchema.parse({ fromDay: "2026-03-09", ...more }), shop.env());
	const ahead = async (today: string) =>
		(await daysOffFrom(shop.store.read, today)).map(({ fromDay, untilDay, person }) => [fromDay, untilDay, person?.name ?? "all"]);
	it("are of one person or of the whole shop, and count until their last day", async () => {
		done(await off({ personId: shop.person, untilDay: "2026-03-11" }));
		done(await off({ personId: "", words: "closed" }));
		expect(await ahead("2026-03-09")).toEqual([
			["2026-03-09", "2026-03-11", "Tester"],
			["2026-03-09", "2026-03-09", "all"],
		]);
		expect(await ahead("2026-03-11")).toHaveLength(1);
		expect(await ahead("2026-03-12")).toEqual([]);
	});
	it("are taken back once, and stay readable", async () => {
		const id = done(await off({ personId: shop.person }));
		done(await takeBackDayOff({ dayOffId: id }, shop.env()));
		expect(await ahead("2026-03-01")).toEqual([]);
		expect(refused(await takeBackDayOff({ dayOffId: id }, shop.env())).code).toBe("day-off-taken-back");
		expect(await shop.store.read.dayOff.count()).toBe(1);
	});
	it("that end before they begin are refused at the last day", () => {
		expect(dayOffSchema.safeParse({ fromDay: "2026-03-09", untilDay: "2026-03-08" }).error?.issues[0]?.path).toEqual(["untilDay"]);
	});
});

describe("equipment", () => {
	it("has a name of its own and a count, and may be gone", async () => {
		const booth = done(await addEquipment(equipmentSchema.parse({ name: "spray booth", count: "1" }), shop.env()));
		expect(refused(await addEquipment(equipmentSchema.parse({ name: "spray booth", count: "2" }), shop.env())).fields).toHaveProperty(
			"name",
		);
		done(
			await changeEquipment(
				changeEquipmentSchema.parse({ equipmentId: booth, name: "paint booth", count: "2", state: "gone" }),
				shop.env(),
			),
		);
		expect(await allEquipment(shop.store.read)).toMatchObject([{ name: "paint booth", count: 2, state: "gone" }]);
		expect(equipmentSchema.safeParse({ name: "bench", count: "0" }).error?.issues[0]?.path).toEqual(["count"]);
	});
});
