import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkedLimit, judge, judgeAll, judgeText, type Limit, readLimit } from "@/lib/tests/limits";
import { readingIn } from "@/lib/tests/readings";
import { unitAsWritten } from "@/lib/tests/units";
import { fuseLimit, noLoadLimit, protectiveConductorLimit, railLimit, USUAL_LIMITS } from "@/lib/tests/usualLimits";

const ohms = (value: string): Limit => ({ kind: "at most", value, unit: "\u03a9" });

describe("a reading against a limit", () => {
	it.each([
		["0.3", "\u03a9", ohms("0.3"), "pass"],
		["0.30", "\u03a9", ohms("0.3"), "pass"],
		["0.300000000000000000001", "\u03a9", ohms("0.3"), "fail"],
		["300 mohm", "\u03a9", ohms("0.3"), "pass"],
		["301 m\u03a9", "\u03a9", ohms("0.3"), "fail"],
		["0,29", "Ohm", ohms("0.3"), "pass"],
		["1000", "k\u03a9", { kind: "at least", value: "1", unit: "M\u03a9" }, "pass"],
		["999.9 kohm", "M\u03a9", { kind: "at least", value: "1", unit: "M\u03a9" }, "fail"],
		["240 uA", "mA", { kind: "at most", value: "3.5", unit: "mA" }, "pass"],
		["2 min", "s", { kind: "at most", value: "120", unit: "s" }, "pass"],
		["23.5", "V", { kind: "nominal", value: "24.0", tolerance: "0.5", unit: "V" }, "pass"],
		["23.49", "V", { kind: "nominal", value: "24.0", tolerance: "0.5", unit: "V" }, "fail"],
		["24.51", "V", { kind: "nominal", value: "24.0", tolerance: "0.5", unit: "V" }, "fail"],
		["27", "rpm", { kind: "between", low: "27", high: "29", unit: "rpm" }, "pass"],
		["26.9", "rpm", { kind: "between", low: "27", high: "29", unit: "rpm" }, "fail"],
		["74.6-77.1", "s", { kind: "nominal", value: "75", tolerance: "2", unit: "s" }, "fail"],
		["0.5 N m", "N cm", { kind: "at most", value: "25", unit: "N cm" }, "fail"],
		["1 in", "mm", { kind: "at most", value: "25.4", unit: "mm" }, "pass"],
	] as const)("%s %s is compared exactly, whatever the unit", (text, unit, limit, verdict) => {
		expect(judgeText(text, unit, limit).verdict).toBe(verdict);
	});

	it.each<[string, string, string, Limit]>([
		["volts are not held against ohms", "0.2 V", "\u03a9", ohms("0.3")],
		["a number without a unit is not held against ohms", "0.2", "", ohms("0.3")],
		["words are not held against a number", "fine", "\u03a9", ohms("0.3")],
		["a count is not held against a number", "3 of 4", "\u03a9", ohms("0.3")],
		["a meter that shows OL says nothing about insulation", "OL", "M\u03a9", { kind: "at least", value: "1", unit: "M\u03a9" }],
		["above the range is not known to be below the limit", ">2", "V", { kind: "at most", value: "7", unit: "V" }],
		["a warm motor is not judged without the air around it", "41", "\u00b0C", { kind: "rise", value: "40" }],
		["a number is not held against a count", "98", "", { kind: "count", atLeast: 98, of: 100 }],
		["fifty coins are too few for a limit over a hundred", "50 of 50", "", { kind: "count", atLeast: 98, of: 100 }],
		["one reading is not held against two limits", "6.9", "V", { kind: "in turn", limits: [ohms("1"), ohms("2")] } as Limit],
		["a number of a hundred figures is no reading", "9".repeat(100), "V", ohms("1")],
		["nothing was measured", "  ", "V", ohms("1")],
		["nothing was measured against words", " ", "", { kind: "words", words: ["right"] }],
	])("%s", (_name, text, unit, limit) => {
		expect(judgeText(text, unit, limit).verdict).toBe("unjudged");
	});

	it("a test without a limit is only recorded", () => {
		expect(judgeText("0.07", "\u03a9", null)).toEqual({
			verdict: "unjudged",
			say: "No limit was set for this test, so the value is only recorded.",
		});
	});

	it("a reading beyond the meter's range decides where it can", () => {
		const insulation: Limit = { kind: "at least", value: "1", unit: "M\u03a9" };
		expect(judgeText(">200", "M\u03a9", insulation).verdict).toBe("pass");
		expect(judgeText(">0.5", "M\u03a9", insulation).verdict).toBe("unjudged");
		expect(judgeText("<0.5", "M\u03a9", insulation).verdict).toBe("fail");
		expect(judgeText("> 2", "\u03a9", ohms("0.3")).verdict).toBe("fail");
		expect(judgeText("<0.1", "\u03a9", ohms("0.3")).verdict).toBe("pass");
		expect(judgeText(">5", "V", { kind: "between", low: "1", high: "9", unit: "V" }).verdict).toBe("unjudged");
		expect(judgeText(">9", "V", { kind: "between", low: "1", high: "9", unit: "V" }).verdict).toBe("fail");
	});

	it("an open circuit is no earth", () => {
		expect(judgeText("OL", "\u03a9", ohms("0.3")).verdict).toBe("fail");
		expect(judgeText("0.07 / OL", "\u03a9", ohms("0.3")).verdict).toBe("fail");
	});

	it("one failure fails all, and one unknown leaves the rest unjudged", () => {
		const limit = ohms("0.3");
		const [good, bad, unknown] = ["0.1", "0.4", "fine"].map((text) => readingIn(text, "\u03a9"));
		if (!good || !bad || !unknown) throw new Error("three readings");
		expect(judgeAll([good, good], limit).verdict).toBe("pass");
		expect(judgeAll([good, unknown], limit).verdict).toBe("unjudged");
		expect(judgeAll([unknown, bad, good], limit).verdict).toBe("fail");
	});

	it("a count that can no longer be reached fails at once, one that still can is not judged", () => {
		const limit: Limit = { kind: "count", atLeast: 98, of: 100 };
		expect(judgeText("30 of 33", "", limit).verdict).toBe("fail");
		expect(judgeText("31 of 33", "", limit).verdict).toBe("unjudged");
		expect(judgeText("98 of 100", "", limit).verdict).toBe("pass");
		expect(judgeText("97 of 100", "", limit).verdict).toBe("fail");
		expect(judgeText("196 of 200", "", limit).verdict).toBe("pass");
		expect(judgeText("195 of 200", "", limit).verdict).toBe("fail");
	});

	it("words are compared as a person would, and nothing but the words agreed on passes", () => {
		const limit: Limit = { kind: "words", words: ["right", "none"] };
		expect(judgeText(" Right ", "", limit).verdict).toBe("pass");
		expect(judgeText("none", "", limit).verdict).toBe("pass");
		expect(judgeText("not right", "", limit).verdict).toBe("fail");
	});

	it("a rise counts from the air around", () => {
		const limit: Limit = { kind: "rise", value: "40" };
		expect(judgeText("61 at 21", "\u00b0C", limit).verdict).toBe("pass");
		expect(judgeText("61.1 \u00b0C at 21 \u00b0C", "\u00b0C", limit).verdict).toBe("fail");
		expect(judgeText("20 K", "\u00b0C", limit).verdict).toBe("pass");
	});

	it("a fuse link is read by its mark", () => {
		const limit: Limit = { kind: "at most", value: "1", unit: "A" };
		expect(judgeText("T1A", "A", limit).verdict).toBe("pass");
		expect(judgeText("F 500 mA", "A", limit).verdict).toBe("pass");
		expect(judgeText("T1.6A", "A", limit).verdict).toBe("fail");
	});

	it("what keeps a limit keeps it in every unit, and the verdict turns exactly at the limit", () => {
		const hundredths = fc.integer({ min: 1, max: 100_000 });
		fc.assert(
			fc.property(
				hundredths,
				hundredths,
				fc.constantFrom(["m\u03a9", 3], ["\u03a9", 0], ["k\u03a9", -3]),
				(value, limit, [unit, power]) => {
					const text = (n: number, places: number) =>
						places <= 0
							? `${n}${"0".repeat(-places)}`
							: `${Math.floor(n / 10 ** places)}.${String(n % 10 ** places).padStart(places, "0")}`;
					const reading = { kind: "number", value: text(value, 2 - Number(power)), unit: String(unit) } as const;
					const verdict = judge(reading, { kind: "at most", value: text(limit, 2), unit: "\u03a9" }).verdict;
					expect(verdict).toBe(value <= limit ? "pass" : "fail");
				},
			),
			{ seed: 12_0147 },
		);
	});

	it("whatever was written down, it is judged without a surprise", () => {
		fc.assert(
			fc.property(fc.string(), fc.constantFrom("\u03a9", "", "V"), (text, unit) => {
				for (const { limit } of USUAL_LIMITS) expect(["pass", "fail", "unjudged"]).toContain(judgeText(text, unit, limit).verdict);
			}),
			{ seed: 41, numRuns: 300 },
		);
	});
});

describe("limits", () => {
	it("come back from the text in which they are stored", () => {
		for (const { limit } of USUAL_LIMITS) expect(readLimit(JSON.stringify(limit))).toEqual({ ok: true, value: limit });
	});

	it.each([
		"",
		"null",
		"[]",
		'{"kind":"at most"}',
		'{"kind":"at most","value":"about 3","unit":"V"}',
		'{"kind":"roughly","value":"3","unit":"V"}',
		'{"kind":"at most","value":3,"unit":"V"}',
	])("%s is no limit", (text) => {
		const read = readLimit(text);
		expect(read.ok === false && read.error.code).toBe("limit-unreadable");
	});

	it.each<Limit>([
		{ kind: "between", low: "3", high: "2.9", unit: "V" },
		{ kind: "nominal", value: "24", tolerance: "-1", unit: "V" },
		{ kind: "count", atLeast: 21, of: 20 },
	])("%j could never be kept and is refused", (limit) => {
		const read = checkedLimit(limit);
		expect(read.ok === false && read.error.code).toBe("limit-impossible");
	});

	it("each of the usual ones names its source and how well it is known", () => {
		for (const { id, source, backing } of USUAL_LIMITS) {
			expect([id, source.length > 5]).toEqual([id, true]);
			expect(["read in a source", "from memory", "common practice, no source", "own limit"]).toContain(backing);
		}
		expect(new Set(USUAL_LIMITS.map(({ id }) => id)).size).toBe(USUAL_LIMITS.length);
	});

	it("those that follow from a rating follow it exactly", () => {
		const limitOf = (made: ReturnType<typeof railLimit>) => (made.ok ? made.value.limit : made.error.code);
		expect(limitOf(railLimit("2.5"))).toEqual({ kind: "at most", value: "2", unit: "A" });
		expect(limitOf(fuseLimit("0.315"))).toEqual({ kind: "at most", value: "0.315", unit: "A" });
		expect(limitOf(noLoadLimit("6.3"))).toEqual({ kind: "between", low: "6.6", high: "7.1", unit: "V" });
		expect([railLimit("0"), fuseLimit("big"), noLoadLimit("-6"), protectiveConductorLimit("0")].map((made) => made.ok)).toEqual([
			false,
			false,
			false,
			false,
		]);
	});
});

describe("units", () => {
	it.each([
		["ohm", "\u03a9"],
		["Ohms", "\u03a9"],
		["\u2126", "\u03a9"],
		["kohm", "k\u03a9"],
		["Mohm", "M\u03a9"],
		["mohm", "m\u03a9"],
		["uA", "\u00b5A"],
		["\u03bcA", "\u00b5A"],
		["Nm", "N m"],
		["degC", "\u00b0C"],
	])("%s is written %s", (typed, written) => {
		expect(unitAsWritten(typed)).toBe(written);
	});
});
