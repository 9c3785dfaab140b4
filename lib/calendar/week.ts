// A person's week: for each day when they are in, in minutes after midnight by the shop's clock. Pure.

import { ok, type Result, refuse } from "@/lib/core/result";

/** When somebody is in on a day: from and until, in minutes after midnight; in order, not touching. */
export type DayHours = readonly (readonly [from: number, until: number])[];
/** Monday first. */
export type Week = readonly DayHours[];

export const WEEKDAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"] as const;

const HOW = "Write the hours like 8:00-12:00 12:30-16:30, or leave the day empty.";
const SPAN = /^(\d{1,2})(?::(\d{2}))?\s*(?:-|\u2013|to)\s*(\d{1,2})(?::(\d{2}))?/;

/** Reads what a person typed for a day: `8:00-12:00 12:30-16:30`, `9-17`, or nothing. Over midnight is written on both days. */
export function parseDayHours(text: string): Result<DayHours> {
	const hours: [number, number][] = [];
	let rest = text.trim().replace(/\s*(-|\u2013)\s*/g, "$1");
	while (rest !== "") {
		const found = SPAN.exec(rest);
		if (found === null) return refuse("hours-unreadable", HOW);
		const from = minutesOf(found[1], found[2]);
		const until = minutesOf(found[3], found[4]);
		if (from === null || until === null) return refuse("hours-not-on-the-clock", `A day has 24 hours of 60 minutes. ${HOW}`);
		if (until <= from)
			return refuse("hours-backwards", `"${found[0]}" ends before it begins: write what comes after midnight on the next day.`);
		const last = hours.at(-1);
		if (last !== undefined && from < last[1]) return refuse("hours-overlap", `"${found[0]}" begins before the hours before it end.`);
		if (last !== undefined && from === last[1]) last[1] = until;
		else hours.push([from, until]);
		rest = rest.slice(found[0].length).replace(/^\s*[,;]?\s*(and\s+)?/, "");
	}
	return ok(hours);
}

function minutesOf(hours: string | undefined, minutes: string | undefined): number | null {
	const [h, m] = [Number(hours), Number(minutes ?? 0)];
	return m > 59 || h * 60 + m > 1440 ? null : h * 60 + m;
}

const clock = (minutes: number): string => `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;

/** A day's hours as they are typed and read: `8:00-12:00 12:30-16:30`. */
export const dayHoursInWords = (hours: DayHours): string => hours.map(([from, until]) => `${clock(from)}-${clock(until)}`).join(" ");

/** A week in a line, alike days together: `Mon-Fri 8:00-12:00 12:30-16:30`; "no hours" when it is empty. */
export function weekInWords(week: Week): string {
	const said: string[] = [];
	for (let from = 0; from < 7; ) {
		const hours = dayHoursInWords(week[from] ?? []);
		let until = from;
		while (until < 6 && dayHoursInWords(week[until + 1] ?? []) === hours) until += 1;
		const days = [from, until].map((day) => (WEEKDAYS[day] ?? "").slice(0, 3));
		if (hours !== "") said.push(`${from === until ? days[0] : days.join("-")} ${hours}`);
		from = until + 1;
	}
	return said.length === 0 ? "no hours" : said.join(", ");
}

/** Minutes of a week. */
export const minutesOfWeek = (week: Week): number => week.flat().reduce((sum, [from, until]) => sum + until - from, 0);

/** A week as it is stored. Text that the program itself wrote: anything else is a bug and throws. */
export function storedWeek(text: string): Week {
	const read: unknown = JSON.parse(text);
	const isSpan = (span: unknown): span is [number, number] =>
		Array.isArray(span) && span.length === 2 && span.every((minutes) => Number.isInteger(minutes));
	if (!Array.isArray(read) || read.length !== 7 || !read.every((day) => Array.isArray(day) && day.every(isSpan)))
		throw new Error(`not a week: ${text}`);
	return read as Week;
}

export const weekToStore = (week: Week): string => JSON.stringify(week);
