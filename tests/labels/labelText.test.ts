import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { charactersOf, fitLines, GLUE, glued, shorten, wrap } from "@/lib/labels/fitText";
import { labelText } from "@/lib/labels/labelText";
import { inDrawnOrder } from "@/lib/labels/readingOrder";
import { formatTag } from "@/lib/tags/tag";
import { GEARMOTOR, OVERFULL, TRIM_SCREWS, TUBE } from "./printed";

const spaced = (text: string): string => text.replaceAll(GLUE, " ");

describe("what a label says", () => {
	it("says an original is to be kept, and that a holding bag empties at re-assembly", () => {
		expect(labelText(GEARMOTOR).fate?.word).toBe("ORIGINAL: KEEP");
		expect(labelText(TRIM_SCREWS).fate).toMatchObject({ word: "HOLD:", rest: ["empties at re-assembly", expect.any(String)] });
		expect(labelText(TUBE).fate).toEqual({ word: "KEEP", rest: ["with the machine"] });
	});

	it("says from where left and right are seen", () => {
		expect(labelText(TRIM_SCREWS).side).toMatchObject({
			word: "LEFT",
			seenFrom: expect.arrayContaining(["as seen from the player's place"]),
		});
	});

	it("says machine, position, which way round and what else, in this order", () => {
		expect(labelText(OVERFULL).facts.map(spaced)).toEqual([OVERFULL.machine, OVERFULL.position, OVERFULL.wayRound, OVERFULL.also]);
	});

	it("says deed, day and initials", () => {
		expect(labelText(GEARMOTOR).foot).toEqual(["out 4 Mar 2026 · IM", "4 Mar 2026 · IM", "4 Mar · IM"]);
		expect(labelText({ ...GEARMOTOR, print: 2 }).foot[0]).toBe("out 4 Mar 2026 · IM · 2nd print");
		expect(labelText({ tag: TUBE.tag, words: "Tube", print: 11 }).foot).toEqual(["11th print"]);
		expect(labelText(TUBE).foot[0]).toBe("4 Mar 2026 · IM");
	});

	it("counts pieces unless it is told what it counts", () => {
		expect(labelText(GEARMOTOR).count).toMatchObject({ figure: "1", of: "piece" });
		expect(labelText({ ...GEARMOTOR, count: 2 }).count).toMatchObject({ figure: "2", of: "pieces" });
		expect(labelText({ ...GEARMOTOR, count: 24, counted: "wires" }).count).toEqual({ figure: "24", of: "wires", isInWords: false });
		expect(labelText({ ...GEARMOTOR, count: 0 }).count).toMatchObject({ figure: "0", of: "pieces" });
	});

	it("leaves out what is not known", () => {
		expect(labelText({ tag: formatTag(0, 14), words: "Spare lamps" })).toEqual({
			tag: "0-0014-Q",
			words: "Spare lamps",
			count: null,
			side: null,
			up: null,
			facts: [],
			fate: null,
			hazard: null,
			foot: [],
		});
	});

	it("prints pasted line breaks, tabs and invisible characters as single blanks", () => {
		expect(labelText({ ...GEARMOTOR, words: " drive\n\tmotor\u200b \u0000 old " }).words).toBe("drive motor old");
	});

	it("keeps a number with what it counts, and a size together", () => {
		expect(glued("Wood screws No.8 x 1")).toBe(`Wood screws No.8${GLUE}x${GLUE}1`);
		expect(glued("Trim screws 4BA x 1/2 oval")).toBe(`Trim screws 4BA${GLUE}x${GLUE}1/2 oval`);
		expect(glued("4 screws, 1 shim")).toBe(`4${GLUE}screws, 1${GLUE}shim`);
		expect(glued("tube 15 W")).toBe(`tube 15${GLUE}W`);
	});
});

describe("fitting words", () => {
	const widthOf = (text: string): number => charactersOf(text).length;
	const texts = fc.string({ unit: "grapheme", maxLength: 80 }).map((text) => text.replace(/\s+/g, " ").trim());

	it("never makes a line wider than its room", () => {
		fc.assert(
			fc.property(texts, fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 5 }), (text, rooms) => {
				const roomOf = (line: number): number => rooms[Math.min(line, rooms.length - 1)] ?? 1;
				for (const [at, line] of wrap(text, roomOf, widthOf).entries()) expect(widthOf(line)).toBeLessThanOrEqual(roomOf(at));
			}),
			{ seed: 20260304, numRuns: 1000 },
		);
	});

	it("loses no character but blanks when it is not cut, and says so when it is", () => {
		fc.assert(
			fc.property(texts, fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 4 }), (text, room, most) => {
				const { lines, isCut } = fitLines(text, room, most, widthOf);
				expect(lines.length).toBeLessThanOrEqual(most);
				if (!isCut) expect(lines.join("").replace(/\s/gu, "")).toBe(text.replace(/\s/gu, ""));
				for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(room);
			}),
			{ seed: 20260304, numRuns: 1000 },
		);
	});

	it("breaks at blanks, and within a word only when it is wider than a line", () => {
		expect(wrap("one two three", () => 7, widthOf)).toEqual(["one two", "three"]);
		expect(wrap("extraordinary", () => 5, widthOf)).toEqual(["extra", "ordin", "ary"]);
	});

	it("shortens with an ellipsis, without a blank or a comma before it, and never splits an accent from its letter", () => {
		expect(shorten("panel, lower rear", 7, widthOf)).toBe("panel…");
		expect(shorten("q\u0323x\u0323y\u0323z\u0323", 3, widthOf)).toBe("q\u0323x\u0323…");
		expect(shorten("short", 5, widthOf)).toBe("short");
		expect(shorten("none at all", 0, widthOf)).toBe("");
	});
});

describe("words from right to left", () => {
	it("stand on paper in the order in which they are drawn", () => {
		expect(inDrawnOrder("מנורה ישנה")).toBe("ישנה מנורה");
		expect(inDrawnOrder("lamp מנורה ישנה old")).toBe("lamp ישנה מנורה old");
		expect(inDrawnOrder("מנורה old lamp ישנה")).toBe("ישנה old lamp מנורה");
		expect(inDrawnOrder("מנורה 3 ישנה")).toBe("ישנה 3 מנורה");
		expect(inDrawnOrder("lamp holder")).toBe("lamp holder");
	});
});
