import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addMinutes, compareInstants, instant, instantOf, isInstant, millisOf, minutesBetween, parseInstant } from "@/lib/core/instants";

describe("an instant", () => {
	it.each([
		["2026-03-02T08:00:00Z", "2026-03-02T08:00:00.000Z"],
		["2026-03-02T09:00:00+01:00", "2026-03-02T08:00:00.000Z"],
		["2026-03-02t13:45+05:45", "2026-03-02T08:00:00.000Z"],
		["2026-03-02 08:00:00.5z", "2026-03-02T08:00:00.500Z"],
	])("%s is written in UTC", (sent, stored) => {
		expect(parseInstant(sent)).toEqual({ ok: true, value: stored });
	});

	it.each([
		"",
		"2026-03-02",
		"2026-03-02T08:00:00",
		"2026-02-30T08:00:00Z",
		"2026-13-01T08:00:00Z",
		"2026-03-02T25:00:00Z",
		"yesterday",
		"1772438400000",
		"x".repeat(500),
	])("%s names no moment", (sent) => {
		const read = parseInstant(sent);
		expect(read.ok === false && read.error.code).toBe("instant-unreadable");
		expect(read.ok === false && read.error.say.length < 200).toBe(true);
	});

	it("is kept in one form only", () => {
		expect(isInstant("2026-03-02T08:00:00.000Z")).toBe(true);
		for (const text of ["2026-03-02T08:00:00Z", "2026-02-30T08:00:00.000Z", "2026-03-02T24:00:00.000Z"]) {
			expect(isInstant(text)).toBe(false);
			expect(() => instant(text)).toThrow("not an instant");
		}
		expect(() => instantOf(0.5)).toThrow("not whole milliseconds");
	});

	it("sorts as text the way it sorts in time, and minutes added come back", () => {
		const anyMillis = fc.integer({ min: 0, max: Date.parse("2200-01-01T00:00:00Z") });
		fc.assert(
			fc.property(anyMillis, anyMillis, fc.integer({ min: -1e6, max: 1e6 }), (a, b, minutes) => {
				expect(Math.sign(compareInstants(instantOf(a), instantOf(b)))).toBe(Math.sign(a - b));
				fc.pre(a + minutes * 60_000 >= 0);
				expect(minutesBetween(instantOf(a), addMinutes(instantOf(a), minutes))).toBe(minutes);
				expect(millisOf(instantOf(a))).toBe(a);
			}),
			{ seed: 1 },
		);
	});

	it("a begun minute does not count", () => {
		expect(minutesBetween(instant("2026-03-02T08:00:00.000Z"), instant("2026-03-02T08:34:59.999Z"))).toBe(34);
		expect(() => addMinutes(instant("2026-03-02T08:00:00.000Z"), 0.5)).toThrow("not whole minutes");
	});
});
