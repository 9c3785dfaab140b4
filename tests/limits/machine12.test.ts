// The tests of machine 12, SKERRY LIGHT, as they were written down before and after the work.
import { describe, expect, it } from "vitest";
import { judgeText, type Limit, limitInWords } from "@/lib/tests/limits";
import { fuseLimit, protectiveConductorLimit, railLimit } from "@/lib/tests/usualLimits";

const earth = protectiveConductorLimit("3");
const fuse = fuseLimit("1");
const rail = railLimit("2.5");
if (!earth.ok || !fuse.ok || !rail.ok) throw new Error("a limit of the acceptance scenario was refused");

/** id, unit, limit in words, limit, then value and verdict before and after; "" where it was not measured. */
const TESTS: readonly [string, string, string, Limit, string, string, string, string][] = [
	[
		"t01 torque of two turns by hand",
		"N m",
		"at most 0.25 N m",
		{ kind: "at most", value: "0.25", unit: "N m" },
		"one tight spot",
		"unjudged",
		"0.12",
		"pass",
	],
	[
		"t02 protective earth to door / k23 / k03 / k27",
		"\u03a9",
		"at most 0.3 \u03a9",
		earth.value.limit,
		"none",
		"fail",
		"0.07 / 0.08 / 0.09 / 0.07",
		"pass",
	],
	[
		"t03 insulation, 500 V",
		"M\u03a9",
		"at least 1 M\u03a9",
		{ kind: "at least", value: "1", unit: "M\u03a9" },
		"0.4",
		"fail",
		"210",
		"pass",
	],
	["t04 polarity: line at fuse", "", '"right"', { kind: "words", words: ["right"] }, "unmarked", "fail", "right", "pass"],
	["t05 fuse", "A", "at most 1 A", fuse.value.limit, "foil", "unjudged", "T1A", "pass"],
	[
		"t06 supply, no load",
		"V",
		"24.0 \u00b1 0.5 V",
		{ kind: "nominal", value: "24.0", tolerance: "0.5", unit: "V" },
		"",
		"unjudged",
		"24.1",
		"pass",
	],
	["t07 24 V rail running", "A", "at most 2 A", rail.value.limit, "", "unjudged", "1.28", "pass"],
	[
		"t08 lamp winding, no load / lamp on",
		"V",
		"at most 7.5 V / 6.0 to 7.0 V",
		{
			kind: "in turn",
			limits: [
				{ kind: "at most", value: "7.5", unit: "V" },
				{ kind: "between", low: "6.0", high: "7.0", unit: "V" },
			],
		},
		"",
		"unjudged",
		"6.9 / 6.7",
		"pass",
	],
	["t09 lantern speed", "rpm", "27 to 29 rpm", { kind: "between", low: "27", high: "29", unit: "rpm" }, "", "unjudged", "28.3", "pass"],
	[
		"t10 coins: good accepted / wrong rejected",
		"",
		"at least 98 of 100 / at least 19 of 20",
		{
			kind: "in turn",
			limits: [
				{ kind: "count", atLeast: 98, of: 100 },
				{ kind: "count", atLeast: 19, of: 20 },
			],
		},
		"",
		"unjudged",
		"100 of 100 / 20 of 20",
		"pass",
	],
	[
		"t11 200 plays, their length",
		"s",
		"all 200 of 200 / 75 \u00b1 2 s",
		{
			kind: "in turn",
			limits: [
				{ kind: "count", atLeast: 200, of: 200 },
				{ kind: "nominal", value: "75", tolerance: "2", unit: "s" },
			],
		},
		"130 of 131 / 75",
		"fail",
		"200 of 200 / 74.6-75.3",
		"pass",
	],
	[
		"t12 same run: motor case / supply",
		"\u00b0C",
		"at most 40 K above the air around / at most 70 \u00b0C",
		{
			kind: "in turn",
			limits: [
				{ kind: "rise", value: "40" },
				{ kind: "at most", value: "70", unit: "\u00b0C" },
			],
		},
		"",
		"unjudged",
		"41 at 21 / 47",
		"pass",
	],
	[
		"t13 protective conductor current",
		"mA",
		"at most 3.5 mA",
		{ kind: "at most", value: "3.5", unit: "mA" },
		"",
		"unjudged",
		"0.24",
		"pass",
	],
	[
		"t14 cord pull 100 N, 25 times",
		"mm",
		"at most 2 mm",
		{ kind: "at most", value: "2", unit: "mm" },
		"cord slid",
		"unjudged",
		"0.5",
		"pass",
	],
];

describe("tests of machine 12", () => {
	it.each(TESTS)("%s is judged before and after as it was then", (_id, unit, words, limit, before, verdictBefore, after, verdictAfter) => {
		expect(limitInWords(limit)).toBe(words);
		expect(judgeText(before, unit, limit).verdict).toBe(verdictBefore);
		expect(judgeText(after, unit, limit).verdict).toBe(verdictAfter);
	});

	it("names value, limit and unit, and never more than that", () => {
		for (const [, unit, , limit, before, , after] of TESTS) {
			for (const value of [before, after]) {
				const { say } = judgeText(value, unit, limit);
				expect(say.length).toBeGreaterThan(10);
				expect(say).not.toMatch(/\bsafe/i);
			}
		}
		expect(judgeText("0.09", "\u03a9", earth.value.limit).say).toBe("0.09 \u03a9 keeps the limit: at most 0.3 \u03a9.");
		expect(judgeText("0.4", "M\u03a9", { kind: "at least", value: "1", unit: "M\u03a9" }).say).toBe(
			"0.4 M\u03a9 does not keep the limit: at least 1 M\u03a9.",
		);
	});
});
