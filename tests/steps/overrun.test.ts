import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { corrected, type DoneStep, factorOf, NO_CORRECTION_WEIGHS, overruns } from "@/lib/steps/overrun";
import { HAPPENED } from "@/tests/money/machine12";

const three = (likely: number) => ({ low: likely, likely, high: likely });
const done = (minutes: number, more: Partial<DoneStep> = {}): DoneStep => ({
	kind: "clean",
	estimate: three(60),
	crew: 1,
	minutes,
	workers: 1,
	...more,
});

describe("what the record says of a kind of step", () => {
	it("by hand: three steps of an hour that took 90 minutes each; three parts in eight of the half more", () => {
		expect(overruns([done(90), done(90), done(90)])).toEqual([
			{ kind: "clean", steps: 3, expectedSixths: 3 * 360, actual: 270, ratio: 1.5, factor: expect.closeTo(1 + (3 / 8) * 0.5, 12) },
		]);
	});
	it("a step for two is expected to take both their time; a step for nobody named, that of who did it", () => {
		expect(overruns([done(120, { crew: 2 })])[0]?.ratio).toBe(1);
		expect(overruns([done(120, { crew: 0, workers: 2 })])[0]?.ratio).toBe(1);
	});
	it("without an estimate or without time a step says nothing", () => {
		expect(overruns([done(90, { estimate: three(0) }), done(0)])).toEqual([]);
		expect(factorOf([], "clean")).toBe(1);
	});
	it("is between no correction and the record, the nearer to it the more steps there are", () => {
		fc.assert(
			fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 40 }), (minutes, count) => {
				const factorAfter = (steps: number) => factorOf(overruns(Array.from({ length: steps }, () => done(minutes))), "clean");
				const [fewer, more, ratio] = [factorAfter(count), factorAfter(count + 1), minutes / 60];
				expect(Math.abs(more - ratio)).toBeLessThanOrEqual(Math.abs(fewer - ratio) + 1e-12);
				expect(Math.min(1, ratio) - 1e-12 <= fewer && fewer <= Math.max(1, ratio) + 1e-12).toBe(true);
			}),
		);
	});
	it("is the mean after the steps were seen, when no correction was thought as sure as five steps (normal, known spread)", () => {
		// Conjugate normal: weights are precisions. Prior 1 with the precision of five steps; n steps with mean r.
		const ratios = [1.2, 0.9, 1.7, 1.1];
		const posterior = (NO_CORRECTION_WEIGHS * 1 + ratios.reduce((sum, ratio) => sum + ratio, 0)) / (NO_CORRECTION_WEIGHS + ratios.length);
		expect(factorOf(overruns(ratios.map((ratio) => done(60 * ratio))), "clean")).toBeCloseTo(posterior, 12);
	});
	it("in machine 12: 2,210 minutes where 2,035 were expected (TRADE's totals)", () => {
		const [all] = overruns(
			HAPPENED.map(({ who, low, likely, high, actual }) =>
				done(actual * who.length, { estimate: { low, likely, high }, crew: who.length }),
			),
		);
		expect(all).toMatchObject({ steps: 43, expectedSixths: 6 * 2035, actual: 2210 });
		expect(corrected({ low: 40, likely: 60, high: 100 }, all?.factor ?? 0)).toEqual({ low: 43, likely: 65, high: 108 });
	});
});
