import { describe, expect, it } from "vitest";
import { instant } from "@/lib/core/instants";
import { seededRandom } from "@/lib/core/random";
import { finishCurve } from "@/lib/schedule/finishCurve";
import { summaryOf } from "@/lib/schedule/sample";

const from = instant("2026-03-02T08:00:00.000Z");
const timeZone = "Europe/Amsterdam";
const curveOf = (ends: Float64Array) => finishCurve(ends, { from, timeZone, quantiles: summaryOf(ends).quantiles });

describe("the curve of how likely by when", () => {
	const random = seededRandom(3);
	const ends = Float64Array.from({ length: 5000 }, () => 3000 + 6000 * random() ** 2).sort();
	const curve = curveOf(ends);

	it("never falls, from nothing at the left to all at the right", () => {
		for (const [at, point] of curve.points.slice(1).entries()) {
			expect(point.x).toBeGreaterThanOrEqual(curve.points[at]?.x ?? 0);
			expect(point.y).toBeGreaterThanOrEqual(curve.points[at]?.y ?? 0);
		}
		expect(curve.points[0]).toEqual({ x: 0, y: 0 });
		expect(curve.points.at(-1)).toEqual({ x: 1, y: 1 });
	});

	it("has its marks on itself, and its days where they begin by the shop's clock", () => {
		for (const { percent, x, y, minutes } of curve.marks) {
			expect(y).toBe(percent / 100);
			const isBelow = ends.filter((end) => end <= minutes).length / ends.length;
			expect(isBelow).toBeCloseTo(percent / 100, 2);
			const near = curve.points.find((point) => point.y === y);
			expect(x).toBeCloseTo(near?.x ?? -1, 6);
		}
		// 2 March, 9:00 by the clock, and 50 hours: from 4 March on, midnight by midnight.
		expect(curve.ticks.map(({ label }) => label)).toEqual(
			["Thu 5 Mar", "Fri 6 Mar", "Sat 7 Mar", "Sun 8 Mar"].slice(0, curve.ticks.length),
		);
		expect(curve.ticks.length).toBeGreaterThan(2);
		expect(curve.lineAt(Number.MAX_SAFE_INTEGER, "promised")).toEqual({ x: 1, label: "promised" });
	});

	it("is drawn also where nothing is unsure", () => {
		const sure = curveOf(Float64Array.from({ length: 10 }, () => 500));
		expect(sure.points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
		expect(sure.marks.map(({ x }) => x)).toEqual([0.5, 0.5, 0.5, 0.5]);
	});
});
