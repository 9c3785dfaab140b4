import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FindingState, Origin } from "@/lib/generated/prisma/enums";
import { type ListedPosition, positionsOfList, readIndentedList, writeIndentedList } from "@/lib/positions/indentedList";

const read = (text: string) => readIndentedList(text);
const names = (text: string) => read(text).positions.map((position) => [position.depth, position.count, position.name]);
const wrong = (text: string) => read(text).wrong.map(({ say }) => say);

describe("a list of positions", () => {
	it("makes one position of each line, deeper for what sits on it", () => {
		expect(names("Sound box\n  Speaker\n    Cone\n  4 grille screws\nLid")).toEqual([
			[0, 1, "Sound box"],
			[1, 1, "Speaker"],
			[2, 1, "Cone"],
			[1, 4, "grille screws"],
			[0, 1, "Lid"],
		]);
	});

	it("takes tabs for two spaces, passes over empty lines and leaves out the bullets of a pasted list", () => {
		expect(names("- Door\n\n\t- Lock\r\n  * Key\u00a0hook")).toEqual([
			[0, 1, "Door"],
			[1, 1, "Lock"],
			[1, 1, "Key hook"],
		]);
	});

	it("makes a lot of a number in front, with or without a times sign, and of nothing else", () => {
		expect(names("4 screws\n12x balls\n3 × felts\n24V supply\n2-way switch")).toEqual([
			[0, 4, "screws"],
			[0, 12, "balls"],
			[0, 3, "felts"],
			[0, 1, "24V supply"],
			[0, 1, "2-way switch"],
		]);
	});

	it("leaves a quoted name as it is", () => {
		expect(names('"12 way terminal block"')).toEqual([[0, 1, "12 way terminal block"]]);
	});

	it("knows what was found and what a part is by the words at the end", () => {
		const { positions } = read("Mirror ?\nCash box (missing)\nCrane (wrong) (modern)\nPlate (Original)\nWall (place)\nBar (left)");
		expect(positions.map(({ name, finding, origin, kind }) => [name, finding, origin, kind])).toEqual([
			["Mirror", "unseen", null, "seat"],
			["Cash box", "missing", null, "seat"],
			["Crane", "wrong", "modern", "seat"],
			["Plate", "there", "original", "seat"],
			["Wall", "there", null, "place"],
			["Bar (left)", "there", null, "seat"],
		]);
	});

	it("puts an area over the lines that follow, whether they are indented or not", () => {
		const { positions } = read("Lamp house:\n  Lamp\n  Reflector\nCoin gear:\nDoor\n  Lock");
		expect(positions.map(({ name, area, depth }) => [name, area, depth])).toEqual([
			["Lamp", "Lamp house", 0],
			["Reflector", "Lamp house", 0],
			["Door", "Coin gear", 0],
			["Lock", "Coin gear", 1],
		]);
	});

	it("takes a mark of one's own in front", () => {
		expect(read("[k36] Cash box").positions[0]?.mark).toBe("k36");
	});

	it.each([
		["  Lamp\n Reflector\n   Tube\n  Starter", "Line 4: its indent lines up with no line above"],
		["Lid\n  (missing)", "Line 2: write the position's name"],
		[":", "Line 1: write the area's name"],
		["Door\n  Lock:", "Line 2: an area such as"],
		["Mirror (missing) ?", "Line 1: it says two things about what was found"],
		["Plate (original) (modern)", "Line 1: it says two origins"],
		["Wall (place) ?", "Line 1: a place has no part of its own"],
		["Wall (place)\n  Hole", "Line 2: Hole cannot sit on Wall"],
		["Lid (missing)\n  Lamp", "Line 2: Lamp cannot sit on Lid, which is missing"],
		["0 screws", "Line 1: a lot is of one at least"],
		["123456 screws", "Line 1: a lot is of at most 9999"],
		["4 walls (place)", "Line 1: a place is one place"],
		["[k 36] Cash box", "Line 1: a mark is short"],
		["[a1] Lid\n[a1] Lamp", "Line 2: the mark a1 is used twice"],
		["x".repeat(121), "Line 1: make the name shorter"],
		[`${"x".repeat(61)}:`, "Line 1: make the area's name shorter"],
	])("%j is refused by its line", (text, say) => {
		expect(wrong(text).some((sentence) => sentence.startsWith(say))).toBe(true);
	});
});

/** Positions as they could stand in a list: each deeper by one step at most, nothing on what cannot carry. */
const listed = (): fc.Arbitrary<Omit<ListedPosition, "line" | "parent">[]> => {
	const name = fc.oneof(
		fc.constantFrom("Lamp", "Coin door", "Chime bar, left", "12 way block", "Shaft 1/4 x 320 mm", "Trim (left)", "Two: halves"),
		fc.stringMatching(/^[A-Za-z][A-Za-z ,/'-]{0,30}[A-Za-z]$/).map((text) => text.replace(/ +/g, " ")),
	);
	return fc
		.array(
			fc.record({
				step: fc.integer({ min: -3, max: 1 }),
				name,
				count: fc.constantFrom(1, 1, 1, 2, 24, 9999),
				kind: fc.constantFrom<"seat" | "place">("seat", "seat", "seat", "place"),
				finding: fc.constantFrom<FindingState>("there", "there", "wrong", "unseen", "missing"),
				origin: fc.constantFrom<Origin | null>(null, "original", "modern", "unknown"),
				area: fc.constantFrom("Cabinet", "Lamp house"),
				marked: fc.boolean(),
			}),
			{ maxLength: 40 },
		)
		.map((rows) => {
			let depth = -1;
			let area = "";
			let carries = true;
			return rows.map(({ step, marked, ...row }, index) => {
				depth = Math.max(0, Math.min(carries ? depth + 1 : depth, depth + step));
				if (depth === 0) area = row.area;
				const isPlace = row.kind === "place";
				carries = !isPlace && row.finding !== "missing";
				return {
					depth,
					mark: marked ? `m${index}` : null,
					name: row.name,
					kind: row.kind,
					area,
					count: isPlace ? 1 : row.count,
					finding: isPlace ? ("there" as const) : row.finding,
					origin: isPlace ? null : row.origin,
				};
			});
		});
};

describe("for any list (seed 1958)", () => {
	const settings = { seed: 1958, numRuns: 300 };

	it("what is written out reads back as it was", () => {
		fc.assert(
			fc.property(listed(), (positions) => {
				const back = readIndentedList(writeIndentedList(positions));
				expect(back.wrong).toEqual([]);
				expect(back.positions.map(({ line: _, parent: __, ...position }) => position)).toEqual(positions);
			}),
			settings,
		);
	});

	it("any text is read, and every line is a position, a heading, an empty line or a line with a sentence", () => {
		fc.assert(
			fc.property(
				fc.string({ unit: fc.constantFrom("a", "B", " ", "\n", "\t", "?", ":", "(", ")", "[", "]", '"', "4", "x", "-") }),
				(text) => {
					const { positions, wrong: sentences } = readIndentedList(text);
					for (const { line, parent } of positions) {
						expect(line).toBeGreaterThan(0);
						if (parent !== null) expect(positions[parent]?.line).toBeLessThan(line);
					}
					for (const { line, say } of sentences) expect(say.startsWith(`Line ${line}: `)).toBe(true);
				},
			),
			settings,
		);
	});

	it("every position gets a mark, no mark twice, and hosts come first", () => {
		fc.assert(
			fc.property(listed(), (positions) => {
				const items = positionsOfList(readIndentedList(writeIndentedList(positions)).positions, ["p01", "p03"], "original");
				const marks = items.map((item) => item.mark);
				expect(new Set(marks).size).toBe(items.length);
				expect(marks).not.toContain("p01");
				for (const [index, item] of items.entries()) {
					if (item.hostMark !== null) expect(marks.indexOf(item.hostMark)).toBeLessThan(index);
				}
			}),
			settings,
		);
	});
});

it("300 positions are read between two key presses", () => {
	const text = Array.from(
		{ length: 300 },
		(_, index) => `${"  ".repeat(index % 5)}${index % 7 === 0 ? "4 " : ""}Position ${index} (original)`,
	).join("\n");
	expect(readIndentedList(text).positions).toHaveLength(300);
	expect(readIndentedList(text).wrong).toEqual([]);
});
