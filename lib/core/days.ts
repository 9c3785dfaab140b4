// A day is not an instant: it is a date on a paper, in the shop's time zone. All calendar arithmetic is date-fns'.
import { TZDate } from "@date-fns/tz";
import { addDays as addCalendarDays, differenceInCalendarDays, format } from "date-fns";
import { type Instant, instantOf, millisOf } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";

declare const dayMark: unique symbol;

/** A calendar day, `2026-03-02`. Text order is time order. */
export type Day = string & { readonly [dayMark]: "Day" };

const SHAPE = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Whether the text is a day that exists in the calendar. */
export function isDay(text: string): text is Day {
	if (!SHAPE.test(text)) return false;
	const millis = Date.parse(`${text}T00:00:00.000Z`);
	return !Number.isNaN(millis) && new Date(millis).toISOString().startsWith(text);
}

/** The text as a day. For text that the program itself wrote: anything else is a bug and throws. */
export function day(text: string): Day {
	if (!isDay(text)) throw new Error(`not a day: ${JSON.stringify(text)}`);
	return text;
}

/** Reads a day that a person typed or picked. */
export function parseDay(text: string): Result<Day> {
	const trimmed = text.trim();
	if (isDay(trimmed)) return ok(trimmed);
	if (SHAPE.test(trimmed)) return refuse("day-not-in-calendar", `${trimmed} is not in the calendar: check the month and the day.`);
	return refuse("day-unreadable", "Write the day as year-month-day, like 2026-03-02.");
}

/** Whether this is a time zone that the computer knows, like `Europe/Berlin`. */
export function isTimeZone(name: string): boolean {
	// TZDate alone would also take GMT+25, and Intl alone a bare offset on some versions.
	if (!/^[A-Za-z]/.test(name) || Number.isNaN(new TZDate(0, name).getTime())) return false;
	try {
		return new Intl.DateTimeFormat("en", { timeZone: name }).resolvedOptions().timeZone !== "";
	} catch {
		return false; // Intl has no question to ask, it only throws for a zone that it does not know
	}
}

/** The day on which an instant falls, in the given time zone (IANA name). */
export const dayOf = (at: Instant, timeZone: string): Day => day(format(zoned(at, timeZone), "yyyy-MM-dd"));

/** The clock time of an instant, `14:05`, in the given time zone. */
export const timeOf = (at: Instant, timeZone: string): string => format(zoned(at, timeZone), "HH:mm");

/** The first instant of a day in the given time zone (not always midnight: some zones change their clocks then). */
export function startOfDay(on: Day, timeZone: string): Instant {
	const { year, month, date } = partsOf(on);
	const start = new TZDate(year, month - 1, date, timeZone);
	requireZone(start, timeZone);
	return instantOf(start.getTime());
}

/**
 * The instant at a clock time of a day, in the given time zone: what a person means by "2 March, half past two".
 * A time that the clocks skipped in spring is refused; of a time that came twice in autumn the first is meant.
 */
export function instantAt(on: Day, time: string, timeZone: string): Result<Instant> {
	const clock = /^([01]?\d|2[0-3])[:.]([0-5]\d)$/.exec(time.trim());
	if (clock === null) return refuse("time-unreadable", "Write the time with hours and minutes, like 14:05.");
	const { year, month, date } = partsOf(on);
	const hours = Number(clock[1]);
	const minutes = Number(clock[2]);
	const meant = new TZDate(year, month - 1, date, hours, minutes, timeZone);
	requireZone(meant, timeZone);
	if (meant.getHours() !== hours || meant.getMinutes() !== minutes) {
		return refuse(
			"time-skipped",
			`The clocks were put forward on ${formatDay(on)} and ${time.trim()} never came: write the time that the clock showed.`,
		);
	}
	return ok(instantOf(firstOfTwo(meant, timeZone)));
}

/**
 * The instant at so many minutes after midnight by the clock on the wall, in the given time zone. Of a time that the clocks skip the
 * moment after the skip, of one that comes twice the first.
 */
export function timeAt(on: Day, minutes: number, timeZone: string): Instant {
	const { year, month, date } = partsOf(on);
	const at = new TZDate(year, month - 1, date, Math.floor(minutes / 60), minutes % 60, timeZone);
	requireZone(at, timeZone);
	return instantOf(firstOfTwo(at, timeZone));
}

/** The first moment of that day with the same clock reading: an hour (or half of one) may come twice in autumn. */
function firstOfTwo(meant: TZDate, timeZone: string): number {
	for (const minutesEarlier of [120, 60, 30]) {
		const earlier = new TZDate(meant.getTime() - minutesEarlier * 60_000, timeZone);
		const isSame = earlier.getHours() === meant.getHours() && earlier.getMinutes() === meant.getMinutes();
		if (isSame && earlier.getDate() === meant.getDate()) return earlier.getTime();
	}
	return meant.getTime();
}

/** 0 for Monday to 6 for Sunday. */
export const weekdayOf = (on: Day): number => (calendar(on).getDay() + 6) % 7;

/** So many days later (earlier when negative). */
export function addDays(on: Day, days: number): Day {
	if (!Number.isSafeInteger(days)) throw new Error(`not whole days: ${days}`);
	return day(format(addCalendarDays(calendar(on), days), "yyyy-MM-dd"));
}

/** Days from one day to another; negative when `until` is earlier. */
export const daysBetween = (from: Day, until: Day): number => differenceInCalendarDays(calendar(until), calendar(from));

/** For sorting: earlier first. */
export const compareDays = (a: Day, b: Day): number => (a < b ? -1 : a > b ? 1 : 0);

/** A day as it stands on a paper: `2 March 2026`. */
export const formatDay = (on: Day): string => format(calendar(on), "d MMMM yyyy");

/** A day where room is short, on labels and in lists: `2 Mar 2026`. */
export const formatDayShort = (on: Day): string => format(calendar(on), "d MMM yyyy");

/** An instant as it stands on a screen or a paper, in the shop's zone: `2 March 2026, 14:05`. */
export const formatInstant = (at: Instant, timeZone: string): string => format(zoned(at, timeZone), "d MMMM yyyy, HH:mm");

/** A moment in a plan, where the weekday says more than the year: `Mon 2 Mar, 14:05`. */
export const formatMoment = (at: Instant, timeZone: string): string => format(zoned(at, timeZone), "EEE d MMM, HH:mm");

/** A day in a plan: `Mon 2 Mar`. */
export const formatWeekday = (on: Day): string => format(calendar(on), "EEE d MMM");

/** A day lives in no zone; UTC is used to count with it because its days all have 24 hours. */
function calendar(on: Day): TZDate {
	const { year, month, date } = partsOf(on);
	return new TZDate(year, month - 1, date, "UTC");
}

function zoned(at: Instant, timeZone: string): TZDate {
	const date = new TZDate(millisOf(at), timeZone);
	requireZone(date, timeZone);
	return date;
}

function requireZone(date: TZDate, timeZone: string): void {
	if (Number.isNaN(date.getTime()) || timeZone === "") throw new Error(`not a time zone: ${JSON.stringify(timeZone)}`);
}

function partsOf(on: Day): { year: number; month: number; date: number } {
	return { year: Number(on.slice(0, 4)), month: Number(on.slice(5, 7)), date: Number(on.slice(8, 10)) };
}
