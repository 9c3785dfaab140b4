// When people are in, against the clock on the wall as Node's own Intl reads it.

import { describe, expect, it } from "vitest";
import type { Week } from "@/lib/calendar/week";
import { daysAhead, type HoursFrom, type Off, windowsOf } from "@/lib/calendar/windows";
import { day } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";

const ZONE = "Europe/Amsterdam";
const office = [
	[480, 720],
	[750, 990],
] as const;
const WEEK: Week = [office, office, office, office, office, [], []];
const from = (fromDay: string, week: Week = WEEK): HoursFrom => ({ fromDay: day(fromDay), week });
const off = (fromDay: string, untilDay: string): Off => ({ fromDay: day(fromDay), untilDay: day(untilDay) });
const windows = (now: string, hours: readonly HoursFrom[], away: readonly Off[] = [], days = 20, zone = ZONE) =>
	windowsOf(daysAhead(instant(now), zone, days), hours, away);

/** The clock on the wall at so many minutes from a moment, by Intl. */
const wall = (now: string, minutes: number, zone = ZONE): string =>
	new Intl.DateTimeFormat("en-GB", { timeZone: zone, weekday: "short", hour: "2-digit", minute: "2-digit", hourCycle: "h23" }).format(
		new Date(Date.parse(now) + minutes * 60_000),
	);

describe("the windows of a week", () => {
	// Monday 23 March 2026; on Sunday 29 March the clocks go forward, on Sunday 25 October back.
	it.each([
		["in spring", "2026-03-23T05:00:00.000Z"],
		["in autumn", "2026-10-19T05:00:00.000Z"],
	])("begin and end by the clock on the wall, also when the clocks change: %s", (_, now) => {
		const all = windows(now, [from("2026-01-01")]);
		expect(all.length).toBe(2 * 14 + 2);
		for (const [at, window] of all.entries()) {
			expect(wall(now, window.from)).toMatch(at % 2 === 0 ? /08:00$/ : /12:30$/);
			expect(wall(now, window.until)).toMatch(at % 2 === 0 ? /12:00$/ : /16:30$/);
			expect(wall(now, window.from)).not.toMatch(/Sat|Sun/);
		}
	});

	it("on the day of the change itself, hours over it are shorter or longer by an hour", () => {
		const night: Week = [[], [], [], [], [], [], [[0, 1440]]];
		expect(windows("2026-03-27T12:00:00.000Z", [from("2026-01-01", night)], [], 7).map(({ from, until }) => until - from)).toEqual([1380]);
		expect(windows("2026-10-23T12:00:00.000Z", [from("2026-01-01", night)], [], 7).map(({ from, until }) => until - from)).toEqual([1500]);
	});

	it("in the middle of a day begin now", () => {
		const [first] = windows("2026-03-23T09:15:30.000Z", [from("2026-01-01")]);
		// Half past ten and a bit: until noon 105 minutes, the begun one counted.
		expect(first).toEqual({ from: 0, until: 105 });
	});

	it("days off are left out, the last one included, and hours change on their day", () => {
		const now = "2026-03-02T05:00:00.000Z";
		const days = (all: ReturnType<typeof windows>) => [...new Set(all.map(({ from }) => wall(now, from).slice(0, 3)))];
		expect(days(windows(now, [from("2026-01-01")], [off("2026-03-03", "2026-03-04")], 7))).toEqual(["Mon", "Thu", "Fri"]);
		const half: Week = [[[480, 720]], [[480, 720]], [], [], [], [], []];
		const changed = windows(now, [from("2026-01-01"), from("2026-03-09", half)], [], 14);
		expect(changed.filter(({ from }) => from >= 7 * 1440 - 60).map(({ from, until }) => until - from)).toEqual([240, 240]);
		expect(windows(now, [from("2026-03-05")], [], 5).map(({ from }) => wall(now, from).slice(0, 3))).toEqual(["Thu", "Thu", "Fri", "Fri"]);
		expect(windows(now, [])).toEqual([]);
	});

	it("hours to midnight and from midnight are one window", () => {
		const night: Week = [[[1320, 1440]], [[0, 120]], [], [], [], [], []];
		expect(windows("2026-03-02T05:00:00.000Z", [from("2026-01-01", night)], [], 7)).toHaveLength(1);
	});
});
