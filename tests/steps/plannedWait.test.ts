import { describe, expect, it } from "vitest";
import { day, instantAt } from "@/lib/core/days";
import { plannedWait } from "@/lib/steps/plannedWait";

describe("the wait of a step as it was planned", () => {
	const wait = (low: number | null, likely: number, high: number | null, waitWhy = "paint dries") =>
		plannedWait({ waitLowMinutes: low, waitMinutes: likely, waitHighMinutes: high, waitWhy });
	it.each([
		["has three points where the least and the most were said", wait(1080, 1440, 4320), "paint dries, 18 h / 1 day / 3 days"],
		["is one figure where it takes what it takes", wait(null, 1440, null), "paint dries, 1 day"],
		["needs no words", wait(null, 90, null, ""), "1 h 30"],
		["that is likely none may still take long", wait(0, 0, 60), "paint dries, 0 min / 0 min / 1 h"],
		["is not said where there is none", wait(null, 0, null), ""],
	])("%s", (_, said, words) => {
		expect(said).toBe(words);
	});
});

it("a time that the clocks skipped is said with the day as the shop writes it", () => {
	const skipped = instantAt(day("2026-03-29"), "02:30", "Europe/Amsterdam");
	expect(skipped.ok === false && skipped.error.say).toContain("on 29 March 2026");
});
