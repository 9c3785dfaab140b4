import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	addDays,
	compareDays,
	type Day,
	day,
	dayOf,
	daysBetween,
	formatDay,
	formatDayShort,
	formatInstant,
	instantAt,
	isDay,
	isTimeZone,
	parseDay,
	startOfDay,
	timeAt,
	timeOf,
	weekdayOf,
} from "@/lib/core/days";
import { instant, instantOf, millisOf } from "@/lib/core/instants";

const anyDay = fc.integer({ min: 0, max: 80_000 }).map((days) => addDays(day("1950-01-01"), days));

describe("a day in the shop", () => {
	it("is the shop's day, not the computer's and not Greenwich's", () => {
		const lateEvening = instant("2026-03-02T23:30:00.000Z");
		expect(dayOf(lateEvening, "Europe/Berlin")).toBe("2026-03-03");
		expect(dayOf(lateEvening, "UTC")).toBe("2026-03-02");
		expect(dayOf(lateEvening, "America/New_York")).toBe("2026-03-02");
		expect(dayOf(lateEvening, "Asia/Kathmandu")).toBe("2026-03-03");
		expect(timeOf(lateEvening, "Asia/Kathmandu")).toBe("05:15");
		expect(formatInstant(lateEvening, "Europe/Berlin")).toBe("3 March 2026, 00:30");
	});

	it.each([
		["2026-03-02", true],
		["2024-02-29", true],
		["2026-02-29", false],
		["2026-13-01", false],
		["2026-3-2", false],
		["0000-00-00", false],
		["2026-03-02T00:00", false],
	])("%s stands in the calendar: %s", (text, stands) => {
		expect(isDay(text)).toBe(stands);
	});

	it("a day that is not in the calendar is refused in other words than one that cannot be read", () => {
		expect(parseDay(" 2026-03-02 ")).toEqual({ ok: true, value: "2026-03-02" });
		const [missing, unreadable] = [parseDay("2026-02-30"), parseDay("2 March")];
		expect(missing.ok === false && missing.error.code).toBe("day-not-in-calendar");
		expect(unreadable.ok === false && unreadable.error.code).toBe("day-unreadable");
		expect(() => day("2026-02-30")).toThrow("not a day");
	});

	it("is written out for people", () => {
		expect(formatDay(day("2026-03-02"))).toBe("2 March 2026");
		expect(formatDayShort(day("2026-12-31"))).toBe("31 Dec 2026");
	});

	it("days added come back, and text order is the order of days", () => {
		fc.assert(
			fc.property(anyDay, fc.integer({ min: -20_000, max: 20_000 }), (from, count) => {
				const until = addDays(from, count);
				expect(daysBetween(from, until)).toBe(count);
				expect(addDays(until, -count)).toBe(from);
				expect(Math.sign(compareDays(until, from))).toBe(Math.sign(count));
			}),
			{ seed: 2 },
		);
	});

	const ZONES = ["Europe/Berlin", "America/New_York", "Asia/Kathmandu", "Australia/Lord_Howe", "America/Sao_Paulo", "Pacific/Apia", "UTC"];

	it("begins where the day before ends, in every zone and across every change of the clocks", () => {
		fc.assert(
			fc.property(anyDay, fc.constantFrom(...ZONES), (on, zone) => {
				const start = startOfDay(on, zone);
				expect(dayOf(instantOf(millisOf(start) - 1), zone) < on).toBe(true);
				// Apia left out 30 December 2011, so the day that starts there is the next one.
				expect(dayOf(start, zone) >= on).toBe(true);
				if (!(zone === "Pacific/Apia" && on === "2011-12-30")) expect(dayOf(start, zone)).toBe(on);
			}),
			{ seed: 3, numRuns: 1000 },
		);
	});

	it("a clock time of a day is found again from its instant", () => {
		fc.assert(
			fc.property(anyDay, fc.integer({ min: 0, max: 1439 }), fc.constantFrom(...ZONES), (on, minute, zone) => {
				const time = `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
				const at = instantAt(on, time, zone);
				if (at.ok) expect([dayOf(at.value, zone), timeOf(at.value, zone)]).toEqual([on, time]);
				else expect(at.error.code).toBe("time-skipped");
			}),
			{ seed: 4, numRuns: 1000 },
		);
	});

	it("a time that the clocks skipped is refused, of one that came twice the first is meant", () => {
		const zone = "Europe/Berlin";
		const skipped = instantAt(day("2026-03-29"), "02:30", zone);
		expect(skipped.ok === false && skipped.error.code).toBe("time-skipped");
		expect(instantAt(day("2026-10-25"), "02:30", zone)).toEqual({ ok: true, value: "2026-10-25T00:30:00.000Z" });
		expect(instantAt(day("2026-03-02"), "9:05", zone)).toEqual({ ok: true, value: "2026-03-02T08:05:00.000Z" });
		const junk = instantAt(day("2026-03-02"), "half past", zone);
		expect(junk.ok === false && junk.error.code).toBe("time-unreadable");
	});

	it("knows the zones of the world and no others", () => {
		for (const zone of ZONES) expect([zone, isTimeZone(zone)]).toEqual([zone, true]);
		for (const zone of ["", "Nowhere/X", "berlin", "GMT+25", "+05:45", "Europe/Berlin; x"])
			expect([zone, isTimeZone(zone)]).toEqual([zone, false]);
		expect(() => dayOf(instant("2026-03-02T08:00:00.000Z"), "Nowhere/X")).toThrow("not a time zone");
		expect(() => startOfDay(day("2026-03-02"), "")).toThrow("not a time zone");
	});

	it("is no instant, and no plain text is a day", () => {
		// @ts-expect-error plain text has not been looked up in the calendar
		const unread: Day = "2026-03-02";
		// @ts-expect-error an instant is not a day
		const moment: Day = instant("2026-03-02T08:00:00.000Z");
		expect([isDay(unread), isDay(moment)]).toEqual([true, false]);
	});
});

describe("minutes after midnight on the clock", () => {
	it("are the moment that the clock shows, the first of two where it comes twice, and after the skip where it never comes", () => {
		for (const zone of ["Europe/Berlin", "America/New_York", "Asia/Kathmandu"])
			expect(timeOf(timeAt(day("2026-03-02"), 8 * 60 + 15, zone), zone)).toBe("08:15");
		// Berlin: the clocks go back at 3:00 on 25 October, so 2:30 comes at 0:30 and at 1:30 UTC.
		expect(timeAt(day("2026-10-25"), 150, "Europe/Berlin")).toBe("2026-10-25T00:30:00.000Z");
		// New York: back at 2:00 on 1 November; 1:30 comes at 5:30 and at 6:30 UTC.
		expect(timeAt(day("2026-11-01"), 90, "America/New_York")).toBe("2026-11-01T05:30:00.000Z");
		// Berlin: from 2:00 to 3:00 on 29 March.
		expect(timeAt(day("2026-03-29"), 150, "Europe/Berlin")).toBe("2026-03-29T01:30:00.000Z");
	});
	it("weekdays begin with Monday", () => {
		expect(["2026-03-02", "2026-03-07", "2026-03-08"].map((text) => weekdayOf(day(text)))).toEqual([0, 5, 6]);
	});
});
