// Codes and their colours: IEC 60757, as carried over into tests/outside/data/electrical/colours-iec60757.csv; the order in
// a combination follows the list, and green with yellow is written only as GNYE (IEC 60757:2021, clause 5).

import { readFileSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { colourInWords, isProtective, isWireColour, readWireColour, WIRE_COLOURS } from "@/lib/colours/wireColour";

const published = readFileSync(path.resolve("tests/outside/data/electrical/colours-iec60757.csv"), "utf8")
	.trim()
	.split("\n")
	.slice(1)
	.map((line) => line.split(",") as [string, string]);
const codeOf = (text: string) => {
	const read = readWireColour(text);
	return read.ok ? read.value : read.error.code;
};

describe("wire colours", () => {
	it("has the codes of the standard, in its order, with its colours", () => {
		expect(WIRE_COLOURS.map(([code, word]) => [code, word])).toEqual(published.filter(([code]) => code !== "GNYE"));
		expect(published.at(-1)).toEqual(["GNYE", "green-and-yellow"]);
	});

	it.each([
		["BN", "BN"],
		["bn", "BN"],
		["burd", "RDBU"],
		["rd/bu", "RDBU"],
		["blue, red", "RDBU"],
		["YEGN", "GNYE"],
		["green and yellow", "GNYE"],
		["gray", "GY"],
		["", ""],
		["  ", ""],
	])("%s is written %s", (typed, written) => {
		expect(codeOf(typed)).toBe(written);
	});

	it.each([
		["XX", "colour-unknown"],
		["B", "colour-unknown"],
		["BNB", "colour-unknown"],
		["cloth", "colour-unknown"],
		["-", "colour-unknown"],
		["RDRD", "colour-twice"],
		["GNYEBK", "colour-earth"],
	])("%s is refused: %s", (typed, code) => {
		expect(codeOf(typed)).toBe(code);
	});

	it("only green with yellow is a protective conductor", () => {
		expect(isProtective("GNYE")).toBe(true);
		expect(isProtective("GN")).toBe(false);
	});

	it("a colour is read aloud in words, and what is no code stays as it was written", () => {
		expect(colourInWords("RDBU")).toBe("red and blue");
		expect(colourInWords("GNYE")).toBe("green and yellow");
		expect(colourInWords("faded, was red?")).toBe("faded, was red?");
	});

	it("the same colours in any order are written alike, and reading that again changes nothing", () => {
		const some = fc
			.subarray(
				WIRE_COLOURS.map(([code]) => code),
				{ minLength: 1, maxLength: 4 },
			)
			.filter((codes) => !(codes.includes("GN") && codes.includes("YE")));
		fc.assert(
			fc.property(some, fc.infiniteStream(fc.nat(3)), (codes, turns) => {
				const mixed = [...codes].sort(() => (turns.next().value ?? 0) - 1.5);
				const written = codeOf(mixed.join(""));
				expect(written).toBe(codeOf(codes.join("/")));
				expect(codeOf(written)).toBe(written);
				expect(isWireColour(written)).toBe(true);
			}),
			{ seed: 60757 },
		);
	});
});
