// Limits for the protective conductor by the length of the cord, VDE 0701-0702:2008.
// Source: a tester maker's overview and the table in a tester's manual (seen, secondary): each further 7.5 m begun counts.
import { describe, expect, it } from "vitest";
import { judgeText } from "@/lib/tests/limits";
import { NEWER_EARTH_RULE, protectiveConductorLimit, USUAL_LIMITS } from "@/lib/tests/usualLimits";

const limitFor = (metres: string) => {
	const made = protectiveConductorLimit(metres);
	if (!made.ok) throw new Error(made.error.say);
	return made.value;
};

describe("protective conductor, VDE 0701-0702:2008", () => {
	it.each([
		["0.5", "0.3"],
		["5", "0.3"],
		["5.01", "0.4"],
		["12.5", "0.4"],
		["12.51", "0.5"],
		["20", "0.5"],
		["27.5", "0.6"],
		["35", "0.7"],
		["42.5", "0.8"],
		["50", "0.9"],
		["50.01", "1"],
		["57.5", "1"],
		["1000", "1"],
	])("a cord of %s m may have %s ohm", (metres, ohms) => {
		expect(limitFor(metres).limit).toEqual({ kind: "at most", value: ohms, unit: "\u03a9" });
	});

	it("names its edition, and says what the newer standards changed", () => {
		expect(limitFor("3").source).toContain("VDE 0701-0702:2008");
		expect(limitFor("3").note).toBe(NEWER_EARTH_RULE);
		// EN 50678 and EN 50699, from two tester makers' pages (seen, secondary).
		for (const figure of ["1.5 mm\u00b2", "5 m", "0.1 \u03a9", "1 \u03a9"]) expect(NEWER_EARTH_RULE).toContain(figure);
	});
});

describe("other limits that are offered", () => {
	// Insulation and currents: the same overview, digits partly lost in the copy (seen in part, else from memory);
	// leakage: IEC 60335-1 clause 13.2, quoted in a forum (seen, secondary); 60 V: IEC 60204-1 (from memory).
	it.each([
		["insulation-1", "1", "0.99", "M\u03a9"],
		["insulation-2", "2", "1.99", "M\u03a9"],
		["insulation-3", "0.25", "0.249", "M\u03a9"],
		["insulation-heater", "0.3", "0.29", "M\u03a9"],
		["earth-current", "3.5", "3.51", "mA"],
		["touch-current", "0.5", "0.51", "mA"],
		["leakage-2", "0.25", "0.26", "mA"],
		["leakage-1-portable", "0.75", "0.76", "mA"],
		["leakage-1-motor", "3.5", "3.51", "mA"],
		["residual-voltage", "60", "60.1", "V"],
		["earth-au", "1", "1.01", "\u03a9"],
	])("%s is kept at %s and not at %s", (id, kept, broken, unit) => {
		const limit = USUAL_LIMITS.find((usual) => usual.id === id)?.limit ?? null;
		expect(judgeText(kept, unit, limit).verdict).toBe("pass");
		expect(judgeText(broken, unit, limit).verdict).toBe("fail");
	});
});
