import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatMinutes, formatWait, LONGEST_MINUTES, parseMinutes } from "@/lib/core/minutes";

describe("a duration", () => {
	it.each([
		["155", 155],
		["2:35", 155],
		["2h35", 155],
		["2 h 35", 155],
		["2 h 35 min", 155],
		["2hours 35minutes", 155],
		["35 min", 35],
		["2h", 120],
		["90 min", 90],
		["1.5 h", 90],
		["1,1 h", 66],
		["0", 0],
		["0:05", 5],
		["3 days", 4320],
		["1 day 2 h 5", 1565],
		["1d", 1440],
	])("%s is %i minutes", (typed, minutes) => {
		expect(parseMinutes(typed)).toEqual({ ok: true, value: minutes });
	});

	it.each([
		["", "minutes-missing"],
		["abc", "minutes-unreadable"],
		["2.5", "minutes-unreadable"],
		["h", "minutes-unreadable"],
		["2:5", "minutes-unreadable"],
		["1e3", "minutes-unreadable"],
		["2:60", "minutes-over-59"],
		["2 h 75", "minutes-over-59"],
		["-5", "minutes-negative"],
		["1.33 h", "minutes-not-whole"],
		["99999999", "minutes-too-many"],
		["9".repeat(400), "minutes-too-many"],
	])("%s is refused: %s", (typed, code) => {
		const read = parseMinutes(typed);
		expect(read.ok === false && read.error.code).toBe(code);
		expect(read.ok === false && read.error.say).toMatch(/\.$/);
	});

	it.each([
		[0, "0 min"],
		[35, "35 min"],
		[120, "2 h"],
		[155, "2 h 35"],
		[125, "2 h 05"],
		[1440, "24 h"],
		[-95, "-1 h 35"],
	])("%i minutes are written %s", (minutes, text) => {
		expect(formatMinutes(minutes)).toBe(text);
	});

	it("a wait is told in days once it is longer than one", () => {
		expect([260, 1440, 10_080, 4445].map(formatWait)).toEqual(["4 h 20", "1 day", "7 days", "3 days 2 h 05"]);
	});

	it("what was written is read back", () => {
		fc.assert(
			fc.property(fc.integer({ min: 0, max: LONGEST_MINUTES }), (minutes) => {
				expect(parseMinutes(formatMinutes(minutes))).toEqual({ ok: true, value: minutes });
				expect(parseMinutes(formatWait(minutes))).toEqual({ ok: true, value: minutes });
				expect(parseMinutes(String(minutes))).toEqual({ ok: true, value: minutes });
			}),
			{ seed: 5 },
		);
	});

	it("no text whatever gives anything but whole minutes or a sentence", () => {
		fc.assert(
			fc.property(fc.string(), (typed) => {
				const read = parseMinutes(typed);
				if (read.ok) expect(Number.isSafeInteger(read.value) && read.value >= 0).toBe(true);
				else expect(read.error.say.length).toBeGreaterThan(20);
			}),
			{ seed: 6 },
		);
	});

	it("half minutes are a bug", () => {
		expect(() => formatMinutes(0.5)).toThrow("not whole minutes");
	});
});
