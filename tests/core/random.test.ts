import { describe, expect, it } from "vitest";
import { seededBytes, seededRandom, shuffled, wholeBelow, xoshiro128 } from "@/lib/core/random";

describe("random numbers that can be repeated", () => {
	it("the same seed gives the same numbers for ever", () => {
		// Pinned: simulated dates and the demo shop change when these do.
		const random = seededRandom(12);
		expect([random(), random(), random()]).toEqual([0.1760911804802554, 0.20159505518037213, 0.7387736333519759]);
		expect(Array.from(seededBytes(12)(8))).toEqual([45, 42, 51, 72, 189, 147, 21, 56]);
	});

	it("different seeds, also large and negative ones, give different numbers", () => {
		const firsts = [0, 1, -1, 2, 2 ** 32, 2 ** 32 + 1, -(2 ** 40), Number.MAX_SAFE_INTEGER].map((seed) => seededRandom(seed)());
		expect(new Set(firsts).size).toBe(firsts.length);
	});

	it("lies from 0 to below 1, evenly: mean, spread and ten equal parts", () => {
		const random = seededRandom(2026);
		const drawn = Array.from({ length: 100_000 }, random);
		expect(drawn.every((value) => value >= 0 && value < 1)).toBe(true);
		const mean = drawn.reduce((sum, value) => sum + value, 0) / drawn.length;
		// Four standard errors of a uniform mean.
		expect(Math.abs(mean - 0.5)).toBeLessThan((4 * Math.sqrt(1 / 12)) / Math.sqrt(drawn.length));
		const parts = Array.from({ length: 10 }, (_, part) => drawn.filter((value) => Math.floor(value * 10) === part).length);
		const chiSquare = parts.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0);
		expect(chiSquare).toBeLessThan(27.9); // 9 degrees of freedom, one in a thousand
	});

	it("every whole number below the limit comes up, and none above", () => {
		const random = seededRandom(3);
		const seen = new Set(Array.from({ length: 500 }, () => wholeBelow(random, 7)));
		expect([...seen].sort()).toEqual([0, 1, 2, 3, 4, 5, 6]);
		expect(() => wholeBelow(random, 0)).toThrow("no whole number below 0");
	});

	it("a shuffled tray holds what was in it, and the tray given is left alone", () => {
		const tray = Array.from({ length: 50 }, (_, place) => place);
		const mixed = shuffled(seededRandom(4), tray);
		expect(mixed).not.toEqual(tray);
		expect([...mixed].sort((a, b) => a - b)).toEqual(tray);
	});

	it("a seed that is no whole number is a bug, and so is a dead state", () => {
		expect(() => seededRandom(0.5)).toThrow("a seed is a whole number");
		expect(() => xoshiro128([0, 0, 0, 0])).toThrow("all zeros");
	});
});
