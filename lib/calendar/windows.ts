// From hours and days off to the windows in which somebody is in, in minutes from a moment on. Pure.

import { storedWeek, type Week } from "@/lib/calendar/week";
import { addDays, type Day, dayOf, startOfDay, timeAt, weekdayOf } from "@/lib/core/days";
import { type Instant, millisOf } from "@/lib/core/instants";
import type { Windows } from "@/lib/schedule/workingTime";

export type HoursFrom = { readonly fromDay: Day; readonly week: Week };
/** The last day included. */
export type Off = { readonly fromDay: Day; readonly untilDay: Day };

/** So far ahead hours are looked up. */
export const DAYS_AHEAD = 730;

/** Hours in force, from rows as they are stored. */
export const hoursOf = (rows: readonly { readonly fromDay: string; readonly week: string }[]): HoursFrom[] =>
	rows.map(({ fromDay, week }) => ({ fromDay: fromDay as Day, week: storedWeek(week) }));

/** A day ahead: which weekday it is, and the minutes from now to a clock time of it. */
export type DayAhead = { readonly day: Day; readonly weekday: number; readonly minutesTo: (clock: number) => number };

/** Today and the days after it. Worked out once for everybody: time zones are slow to ask. */
export function daysAhead(now: Instant, timeZone: string, days = DAYS_AHEAD): DayAhead[] {
	const zero = millisOf(now);
	const fromNow = (at: Instant): number => Math.ceil((millisOf(at) - zero) / 60_000);
	const ahead: DayAhead[] = [];
	let day = dayOf(now, timeZone);
	let start = fromNow(startOfDay(day, timeZone));
	for (let count = 0; count < days; count++) {
		const next = addDays(day, 1);
		const end = fromNow(startOfDay(next, timeZone));
		const [on, begins] = [day, start];
		// Only a day on which the clocks change has its clock times looked up one by one.
		const minutesTo = (clock: number): number =>
			end - begins === 1440 ? begins + clock : clock === 1440 ? end : fromNow(timeAt(on, clock, timeZone));
		ahead.push({ day, weekday: weekdayOf(day), minutesTo });
		[day, start] = [next, end];
	}
	return ahead;
}

/**
 * When somebody is in, from now on: whole minutes from then. A day whose clocks are changed has its hours by the clock on the wall.
 * Days before the first row of hours have none.
 */
export function windowsOf(ahead: readonly DayAhead[], hours: readonly HoursFrom[], off: readonly Off[]): Windows {
	const byDay = [...hours].sort((a, b) => (a.fromDay < b.fromDay ? -1 : 1));
	const windows: { from: number; until: number }[] = [];
	let inForce = -1;
	for (const { day, weekday, minutesTo } of ahead) {
		for (let next = byDay[inForce + 1]; next !== undefined && next.fromDay <= day; next = byDay[inForce + 1]) inForce += 1;
		const week = byDay[inForce]?.week;
		if (week === undefined || off.some(({ fromDay, untilDay }) => fromDay <= day && day <= untilDay)) continue;
		for (const [from, until] of week[weekday] ?? []) {
			const [start, end] = [Math.max(0, minutesTo(from)), minutesTo(until)];
			if (end <= start) continue;
			const last = windows.at(-1);
			if (last !== undefined && last.until >= start) last.until = end;
			else windows.push({ from: start, until: end });
		}
	}
	return windows;
}
