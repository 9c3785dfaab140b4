import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayHoursInWords, minutesOfWeek, parseDayHours, storedWeek, type Week, weekInWords, weekToStore } from "@/lib/calendar/week";

const read = (text: string) => {
	const hours = parseDayHours(text);
	return hours.ok ? hours.value : hours.error.code;
};

describe("a day's hours as they are typed", () => {
	it.each([
		[
			"8:00-12:00 12:30-16:30",
			[
				[480, 720],
				[750, 990],
			],
		],
		["9-17", [[540, 1020]]],
		[
			" 8 - 12,  13:15 – 17 ",
			[
				[480, 720],
				[795, 1020],
			],
		],
		[
			"8 to 12 and 13 to 17",
			[
				[480, 720],
				[780, 1020],
			],
		],
		["8-12 12-16", [[480, 960]]],
		["0-24", [[0, 1440]]],
		["", []],
	])("%j", (text, hours) => expect(read(text)).toEqual(hours));

	it.each([
		["nine to five", "hours-unreadable"],
		["8:00-12:00 and then some", "hours-unreadable"],
		["8-25", "hours-not-on-the-clock"],
		["8:75-9", "hours-not-on-the-clock"],
		["22-6", "hours-backwards"],
		["8-8", "hours-backwards"],
		["8-12 11-16", "hours-overlap"],
		["13-17 8-12", "hours-overlap"],
	])("%j is refused with words", (text, code) => expect(read(text)).toBe(code));

	it("read again they are the same", () => {
		const spans = fc
			.uniqueArray(fc.integer({ min: 0, max: 1440 }), { minLength: 0, maxLength: 8 })
			.map((ends) => ends.sort((a, b) => a - b))
			.map((ends) => Array.from({ length: Math.floor(ends.length / 2) }, (_, at) => [ends[2 * at] ?? 0, ends[2 * at + 1] ?? 0]));
		fc.assert(
			fc.property(spans, (hours) => {
				expect(read(dayHoursInWords(hours.map(([from = 0, until = 0]) => [from, until])))).toEqual(hours);
			}),
		);
	});
});

it("a week is said with alike days together", () => {
	const office = [
		[480, 720],
		[750, 990],
	] as const;
	const week: Week = [office, office, office, office, [[480, 720]], [], []];
	expect(weekInWords(week)).toBe("Mon-Thu 8:00-12:00 12:30-16:30, Fri 8:00-12:00");
	expect(minutesOfWeek(week)).toBe(4 * 480 + 240);
	expect(weekInWords([[], [], [], [], [], [], []])).toBe("no hours");
	expect(storedWeek(weekToStore(week))).toEqual(week);
	expect(() => storedWeek("[[1]]")).toThrow();
});
