import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { costOfMinutes, rateOn } from "@/lib/money/labour";
import { minor, sumMinor } from "@/lib/money/money";
import {
	betaVariance,
	costOfExpected,
	expectedSixths,
	formatSixths,
	parseThreePoint,
	sigmaOfLabour,
	sixthsToMinutes,
	variance36ths,
} from "@/lib/money/pert";
import { anHourOf, costSummary, inTheBooks, marginOf, overLimit } from "@/lib/money/summary";

const estimate = fc
	.tuple(fc.nat(5000), fc.nat(5000), fc.nat(5000))
	.map((three) => [...three].sort((a, b) => a - b))
	.map(([low = 0, likely = 0, high = 0]) => ({ low, likely, high }));

describe("a three-point estimate", () => {
	it("expects something between low and high, and nothing is lost in sixths", () => {
		fc.assert(
			fc.property(estimate, (steps) => {
				const sixths = expectedSixths(steps);
				expect(sixths).toBeGreaterThanOrEqual(6 * steps.low);
				expect(sixths).toBeLessThanOrEqual(6 * steps.high);
				expect(Math.abs(sixthsToMinutes(sixths) * 6 - sixths)).toBeLessThanOrEqual(3);
			}),
			{ seed: 20 },
		);
	});

	it.each([
		[4550, "758 1/3"],
		[3550, "591 2/3"],
		[3360, "560"],
		[333, "55 1/2"],
		[1, "1/6"],
		[5, "5/6"],
		[0, "0"],
	])("%i sixths are %s", (sixths, words) => {
		expect(formatSixths(sixths)).toBe(words);
	});

	it("costs the exact expected time, rounded half up once", () => {
		expect(costOfExpected(1, minor(3600))).toBe(10);
		expect(costOfExpected(3, minor(60))).toBe(1); // half a minute at a unit a minute
		expect(costOfExpected(4550, minor(3600))).toBe(45500);
	});

	it("that is out of order or not whole is refused with the remedy", () => {
		const codeOf = (low: number, likely: number, high: number) => {
			const read = parseThreePoint({ low, likely, high });
			return read.ok ? "taken" : read.error.code;
		};
		expect(codeOf(1, 2, 3)).toBe("taken");
		expect(codeOf(2, 2, 2)).toBe("taken");
		expect(codeOf(3, 2, 4)).toBe("estimate-out-of-order");
		expect(codeOf(1, 5, 4)).toBe("estimate-out-of-order");
		expect([codeOf(-1, 2, 3), codeOf(1, 2.5, 3), codeOf(1, 2, Number.NaN)]).toEqual(Array(3).fill("estimate-not-whole"));
		expect(() => formatSixths(-1)).toThrow("not sixths");
	});

	it("has two variances that are not the same, and certainty has none", () => {
		const wide = { low: 30, likely: 45, high: 120 };
		expect(variance36ths(wide) / 36).toBe(225);
		expect(betaVariance(wide)).toBeCloseTo(232.142857, 6);
		expect(betaVariance({ low: 5, likely: 5, high: 5 })).toBe(0);
		expect(sigmaOfLabour([{ estimate: wide, people: 1 }])).toBe(15);
		expect(sigmaOfLabour([{ estimate: wide, people: 2 }])).toBe(30);
	});
});

describe("labour", () => {
	const rates = [
		{ from: day("2026-07-01"), costPerHour: minor(4000), chargePerHour: minor(7000) },
		{ from: day("2026-01-01"), costPerHour: minor(3600), chargePerHour: minor(6600) },
	];

	it.each([
		["2026-01-01", 3600],
		["2026-06-30", 3600],
		["2026-07-01", 4000],
		["2030-01-01", 4000],
	])("on %s costs %i an hour", (on, perHour) => {
		expect(rateOn(rates, day(on))).toMatchObject({ ok: true, value: { costPerHour: perHour } });
	});

	it("before the first rate is refused, with the day", () => {
		const rate = rateOn(rates, day("2025-12-31"));
		expect(rate.ok === false && rate.error.code).toBe("rate-missing");
		expect(rate.ok === false && rate.error.say).toContain("2025-12-31");
		expect(rateOn([], day("2026-01-01")).ok).toBe(false);
	});

	it("is rounded half up for each entry of work", () => {
		expect([1, 2, 5].map((minutes) => costOfMinutes(minutes, minor(30)))).toEqual([1, 1, 3]);
		expect(costOfMinutes(90, minor(3333))).toBe(5000);
		expect(() => costOfMinutes(1.5, minor(3600))).toThrow("not whole minutes");
	});
});

describe("the books", () => {
	it("every total is the sum of the lines shown", () => {
		const cost = fc.integer({ min: -1_000_000, max: 10_000_000 }).map(minor);
		fc.assert(
			fc.property(fc.array(fc.record({ what: fc.string(), estimated: cost, spent: cost, toCome: cost })), (rows) => {
				const { lines, total } = costSummary(rows);
				expect(total.atCompletion).toBe(sumMinor(lines.map((line) => line.atCompletion)));
				expect(total.atCompletion).toBe(total.spent + total.toCome);
				expect(total.estimated).toBe(sumMinor(rows.map((row) => row.estimated)));
			}),
			{ seed: 21 },
		);
	});

	it("a machine stands for what it was bought for, carried home for and worked on", () => {
		expect(inTheBooks({ bought: minor(62000), carriage: minor(8500), spent: minor(191179) })).toBe(261679);
	});

	it("a loss is shown as one, and without recorded time there is no margin an hour", () => {
		expect(marginOf({ price: minor(1000), books: minor(1600), labour: minor(300), minutes: 60 })).toEqual({
			margin: -600,
			anHour: -600,
			anHourBeforeLabour: -300,
		});
		expect(marginOf({ price: minor(1000), books: minor(600), labour: minor(0), minutes: 0 })).toEqual({
			margin: 400,
			anHour: null,
			anHourBeforeLabour: null,
		});
		expect(() => anHourOf(minor(1), -1)).toThrow("not whole minutes");
	});

	it("a limit agreed with the owner is passed by what lies over it, and only then", () => {
		expect(overLimit(minor(536100), minor(536000))).toBe(100);
		expect(overLimit(minor(536000), minor(536000))).toBe(0);
	});
});
