// EDTF. Strings: unt-libraries/edtf-validate, commit 01c13c5 (seen); bounds: the package `edtf` 4.11.1 (reference);
// rules: Library of Congress, 4 February 2019 (seen). "agrees: false" marks strings over which those two differ.
import { describe, expect, it } from "vitest";
import { EDTF_LEVEL, readEdtf } from "@/lib/core/edtf";
import strings from "./data/edtf/strings.json";

type Row = {
	readonly edtf: string;
	readonly level?: number;
	readonly valid: boolean;
	readonly min?: string | null;
	readonly max?: string | null;
	readonly agrees: boolean;
};
const rows: readonly Row[] = strings;

/** Where the two sources differ, and what this program says. */
const DIFFERED: Readonly<Record<string, boolean>> = {
	"0000-01/0000": true, // a span may begin where its end begins; the package refuses it, the validator and we do not
	"1923-21/1924": false, // seasons in a span: the validator takes them, the package and we do not
	"1952-23~/1953": false,
	"2003-22/2004-22": false,
	"2003-22/2003-23": false,
	"2005-07-25T10:10:10Z/2006-01-01T10:10:10Z": false, // clock times in a span: the package takes them, the validator and we do not
	"2005-07-25/2006-01-01T10:10:10Z": false,
};

/** Where the package's bounds cannot be right (seasons before year 0 end after it, a list ends with its last range cut off): the years that are. */
const PACKAGE_ASTRAY: Readonly<Record<string, readonly [earliest: number, latest: number]>> = {
	"-2004-23": [-2004, -2004],
	"-2001-34": [-2001, -2001],
	"-2001-36": [-2001, -2001],
	"-2001-38": [-2001, -2001],
	"-2001-40": [-2001, -2001],
	"[-1667,1668,1670..1672]": [-1667, 1672],
	"{-1667,1668,1670..1672}": [-1667, 1672],
	"[-1740-02-12..-1200-01-29]": [-1740, -1200],
	"{-1640-06..-1200-01}": [-1640, -1200],
};

const yearIn = (instant: string) => Number(/^(-?\d+)-\d\d-/.exec(instant)?.[1]);

describe("EDTF", () => {
	it("has 106 strings, seven of them in dispute", () => {
		expect(rows).toHaveLength(106);
		expect(
			rows
				.filter((row) => !row.agrees)
				.map((row) => row.edtf)
				.sort(),
		).toEqual(Object.keys(DIFFERED).sort());
	});

	it("claims level 1 and takes every undisputed string of levels 0 and 1", () => {
		expect(EDTF_LEVEL).toBe(1);
		const claimed = rows.filter((row) => row.valid && row.agrees && (row.level ?? 9) <= EDTF_LEVEL);
		expect(claimed.length).toBeGreaterThan(35);
		for (const { edtf } of claimed) expect([edtf, readEdtf(edtf).ok]).toEqual([edtf, true]);
	});

	it.each(rows.filter((row) => row.agrees && row.edtf.trim() === row.edtf))("$edtf is valid: $valid", ({ edtf, valid }) => {
		expect(readEdtf(edtf).ok).toBe(valid);
	});

	it("blanks around a typed date are taken off, though EDTF itself has none", () => {
		const blank = rows.filter((row) => row.edtf.trim() !== row.edtf);
		expect(blank.map(({ edtf }) => edtf)).toEqual([" 1863-03-29"]);
		expect(readEdtf(" 1863-03-29")).toMatchObject({ ok: true, value: { edtf: "1863-03-29" } });
	});

	it.each(Object.entries(DIFFERED))("%s, over which the sources differ, is taken: %s", (edtf, taken) => {
		expect(readEdtf(edtf).ok).toBe(taken);
	});

	it.each(rows.filter((row) => row.agrees && row.valid && row.min !== undefined && PACKAGE_ASTRAY[row.edtf] === undefined))(
		"$edtf lies between the same years",
		(row) => {
			const read = readEdtf(row.edtf);
			if (!read.ok) throw new Error(read.error.say);
			// Null there means open, unknown, or a year beyond what a Date can hold: then there is nothing to compare.
			const named = (bound: string | null | undefined) => typeof bound === "string" && bound !== "open";
			if (named(row.min)) expect(read.value.earliestYear).toBe(yearIn(row.min ?? ""));
			if (named(row.max)) expect(read.value.latestYear).toBe(yearIn(row.max ?? ""));
			if (row.min === "open") expect(read.value.earliestYear).toBeNull();
			if (row.max === "open") expect(read.value.latestYear).toBeNull();
		},
	);

	it.each(Object.entries(PACKAGE_ASTRAY))("%s, where the package goes astray, lies between %j", (edtf, [earliestYear, latestYear]) => {
		expect(readEdtf(edtf)).toMatchObject({ ok: true, value: { earliestYear, latestYear } });
	});

	// The table of dates for machines: `edtf` 4.11.1 (reference).
	it.each([
		["1957~", 1957, 1957],
		["1957?", 1957, 1957],
		["195X", 1950, 1959],
		["1957/1961", 1957, 1961],
		["../1961", null, 1961],
		["1957/..", 1957, null],
	])("%s lies between %s and %s", (edtf, earliestYear, latestYear) => {
		expect(readEdtf(edtf)).toMatchObject({ ok: true, value: { earliestYear, latestYear } });
	});
});
