import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { edtfInWords, isEdtf, readEdtf, suggestedEdtf } from "@/lib/core/edtf";

describe("a date of manufacture", () => {
	it.each([
		["1957", "1957", 1957, 1957],
		["1957~", "about 1957", 1957, 1957],
		["1957?", "perhaps 1957", 1957, 1957],
		["1957%", "perhaps about 1957", 1957, 1957],
		["195X", "1950 to 1959", 1950, 1959],
		["19XX", "1900 to 1999", 1900, 1999],
		["1957/1961", "1957 to 1961", 1957, 1961],
		["1957~/1961", "about 1957 to 1961", 1957, 1961],
		["../1961", "not later than 1961", null, 1961],
		["1957/..", "not earlier than 1957", 1957, null],
		["1957/", "from 1957, end unknown", 1957, null],
		["/1961", "until 1961, start unknown", null, 1961],
		["1957/1957", "1957 to 1957", 1957, 1957],
		["1957-03", "March 1957", 1957, 1957],
		["1957-03~", "about March 1957", 1957, 1957],
		["1957-03-12", "12 March 1957", 1957, 1957],
		["1957-XX", "1957, month unknown", 1957, 1957],
		["1957-03-XX", "March 1957, day unknown", 1957, 1957],
		["1957-21", "spring 1957", 1957, 1957],
		["1957-34", "the second quarter of 1957", 1957, 1957],
		["1957-41", "the second half of 1957", 1957, 1957],
		["[1957,1958]", "1957 or 1958", 1957, 1958],
		["[1957,1959..1961]", "1957 or 1959 to 1961", 1957, 1961],
		["[..1961]", "not later than 1961", null, 1961],
		["{1957,1958}", "1957 and 1958", 1957, 1958],
		["1950S3", "1950 to 1959", 1950, 1959],
		["Y170000002", "the year 170000002", 170_000_002, 170_000_002],
		["-0044", "-44", -44, -44],
	])("%s says: %s", (edtf, words, earliestYear, latestYear) => {
		const read = readEdtf(edtf);
		expect(read).toMatchObject({ ok: true, value: { edtf, words, earliestYear, latestYear } });
		expect(edtfInWords(edtf)).toBe(words);
		expect(isEdtf(edtf)).toBe(true);
	});

	it.each([
		["c. 1957", "1957~"],
		["Circa 1957", "1957~"],
		["about 1957", "1957~"],
		["maybe 1957", "1957?"],
		["1950s", "195X"],
		["1950's", "195X"],
		["50s", "195X"],
		["195x", "195X"],
		["195X~", "1950~/1959~"],
		["1957-1961", "1957/1961"],
		["1957 - 1961", "1957/1961"],
		["1957\u20131961", "1957/1961"],
		["1957/61", "1957/1961"],
		["before 1961", "../1961"],
		["after 1957", "1957/.."],
		["March 1957", "1957-03"],
		["sept 1957", "1957-09"],
		["3/1957", "1957-03"],
		["57", "1957"],
	])("whoever writes %s is asked whether %s was meant", (typed, meant) => {
		expect(suggestedEdtf(typed)).toBe(meant);
		const read = readEdtf(typed);
		expect(read.ok === false && read.error.facts).toEqual({ suggestion: meant });
		expect(read.ok === false && read.error.say).toContain(`Did you mean ${meant} (`);
	});

	it.each([
		"",
		"old",
		"1957-13",
		"1957-02-30",
		"1957..",
		"195",
		"19",
		"May",
		"1957-21/1958",
		"1957-03-12T10:00:00Z/1958",
		"1".repeat(300),
		"[",
		"Y",
	])("%s is refused with examples", (typed) => {
		const read = readEdtf(typed);
		expect(read.ok === false && read.error.code).toBe("edtf-unreadable");
		expect(read.ok === false && read.error.say).toContain("1957~ (about 1957)");
		expect(isEdtf(typed)).toBe(false);
	});

	it("a span that runs backwards is refused with the remedy", () => {
		const read = readEdtf("1961/1957");
		expect(read.ok === false && read.error.code).toBe("edtf-backwards");
		expect(read.ok === false && read.error.say).toContain("swap them");
	});

	it("blanks around it are taken off, and text of a row from elsewhere is not hidden", () => {
		expect(readEdtf(" 1957~ ")).toMatchObject({ ok: true, value: { edtf: "1957~" } });
		expect(isEdtf(" 1957~ ")).toBe(false);
		expect(edtfInWords("who knows")).toBe("who knows");
	});

	it("the earliest year is never after the latest, and no text is a surprise", () => {
		const piece = fc.constantFrom(
			"19",
			"5",
			"X",
			"7",
			"-",
			"0",
			"3",
			"/",
			"..",
			"~",
			"?",
			"%",
			"[",
			"]",
			",",
			"{",
			"}",
			"T",
			"S2",
			"Y",
			"21",
		);
		fc.assert(
			fc.property(fc.array(piece, { maxLength: 10 }), (pieces) => {
				const read = readEdtf(pieces.join(""));
				if (!read.ok) return;
				const { earliestYear, latestYear, words } = read.value;
				if (earliestYear !== null && latestYear !== null) expect(earliestYear).toBeLessThanOrEqual(latestYear);
				expect(words).not.toBe("");
			}),
			{ seed: 9, numRuns: 5000 },
		);
	});
});
