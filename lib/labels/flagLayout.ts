// A flag round a wire: the label is folded over it in the middle and stuck to itself, so that both sides say the same.

import { ok, type Result, refuse } from "@/lib/core/result";
import type { LabelDrawing } from "@/lib/labels/drawing";
import { CAP_HEIGHT, DESCENDER, type Face, type TypeCase } from "@/lib/labels/face";
import { charactersOf, fitLines } from "@/lib/labels/fitText";
import { DOT, INSET, SMALLEST_CAP } from "@/lib/labels/labelMeasures";
import { type Pen, penWith } from "@/lib/labels/pen";
import type { Stock } from "@/lib/labels/stock";

/** What a flag says: this end of the wire first, since that is where it is read. */
export type FlagContent = {
	/** The tag of this end, where the shop has given it one: "W12a". */
	readonly tag: string;
	/** Where this end belongs: "X1-1", "NO". */
	readonly terminal: string;
	/** The device that the terminal is on, with the machine's number: "12 · sign box". */
	readonly device: string;
	/** IEC 60757, in the standard's writing: "RDBU". Empty where nobody knows. */
	readonly colour: string;
	/** The colour in words, and what was seen of a cloth wire: "red and blue". */
	readonly colourWords: string;
	/** The other end. */
	readonly other: string;
};

/** What goes round the wire, on each side of the fold: 1.5 mm of wire and its cover, and what the glue needs. In mm. */
const WRAP = 3;
/** A half shorter than this holds no terminal that can be read. */
const SHORTEST_HALF = 16;
const LARGEST_CAP = 4.2;
const CAP_STEP = 0.1;
const PITCH = 1.55;

/** What stands on a line by itself, wrapped where it is too long; `mark` before it in the face of tags. */
type Saying = { readonly name: string; readonly mark: string; readonly text: string; readonly face: Face };

/** How long and how high a flag of this stock is, laid along its longer side. */
export function flagSize(stock: Stock): { width: number; height: number } {
	const height = stock.kind === "continuous" ? Math.max(stock.shortest, Math.min(stock.longest, 25)) : stock.height;
	return { width: Math.max(stock.width, height), height: Math.min(stock.width, height) };
}

/** Whether flags can be made of this stock: each half must hold a terminal. */
export const isForFlags = (stock: Stock): boolean => flagSize(stock).width / 2 - WRAP - INSET >= SHORTEST_HALF;

/**
 * The flag, with a line to fold along. What does not fit at the smallest size is shortened and named; the terminal and the
 * colour's code never are.
 */
export function layoutFlag(content: FlagContent, stock: Stock, type: TypeCase): Result<LabelDrawing> {
	const { width, height } = flagSize(stock);
	const room = width / 2 - WRAP - INSET;
	const undrawable = new Set<string>();
	const drawable = (text: string): string =>
		charactersOf(text.normalize("NFC").replace(/\s+/g, " ").trim())
			.map((cluster) => {
				if (type.covers(cluster)) return cluster;
				undrawable.add(cluster);
				return "□";
			})
			.join("");
	const sayings = sayingsOf(content, drawable);
	const pen = penWith(type);
	const most = (cap: number): number => Math.floor((height - 2 * INSET - cap - below(cap)) / (cap * PITCH) + 1 + 1e-6);
	let cap = LARGEST_CAP;
	let rows = sayings.map((saying) => rowsOf(saying, room, 99, pen, cap));
	while (cap > SMALLEST_CAP && (rows.flat().length > most(cap) || rows.flat().some(({ isBroken }) => isBroken))) {
		cap = Math.max(SMALLEST_CAP, cap - CAP_STEP);
		rows = sayings.map((saying) => rowsOf(saying, room, 99, pen, cap));
	}
	if (!isForFlags(stock) || most(cap) < sayings.length) {
		return refuse(
			"label-too-small",
			`These labels are too small for a flag that says ${content.terminal || content.device}. Use the flag roll, or larger labels.`,
		);
	}
	// What is longest gives up a line first, and the terminal last.
	while (rows.flat().length > most(cap)) {
		const longest = rows.reduce((best, row, at) => (row.length > (rows[best]?.length ?? 0) && row.length > 1 ? at : best), rows.length - 1);
		rows = rows.map((row, at) => {
			const saying = sayings[at];
			return at === longest && saying ? rowsOf(saying, room, row.length - 1, pen, cap) : row;
		});
	}
	const shortened = sayings.filter((_, at) => rows[at]?.some(({ isCut }) => isCut)).map(({ name }) => name);
	const shown = rows.flat();
	const block = cap + (shown.length - 1) * cap * PITCH;
	for (const left of [INSET, width / 2 + WRAP]) {
		let y = (height - block - below(cap)) / 2 + cap;
		for (const { mark, text, face } of shown) {
			const x = mark === "" ? left : pen.write(mark, left, y, "mono", cap) + 0.6 * cap;
			pen.write(text, x, y, face, cap);
			y += cap * PITCH;
		}
	}
	for (let y = 0; y < height; y += 2) pen.box(width / 2 - DOT, y, 2 * DOT, Math.min(1, height - y));
	return ok({ width, height, marks: pen.marks, shortened, undrawable: [...undrawable] });
}

type Row = { readonly mark: string; readonly text: string; readonly face: Face; readonly isCut: boolean; readonly isBroken: boolean };

const below = (cap: number): number => (DESCENDER / CAP_HEIGHT) * cap;

/** A saying in lines no wider than the half; `isBroken` where a word had to be broken for it. */
function rowsOf(saying: Saying, room: number, most: number, pen: Pen, cap: number): Row[] {
	const { mark, text, face } = saying;
	const widthOf = pen.widthAt(face, cap);
	// A mark stands on a line of its own rather than break the word after it.
	const beside = pen.widthAt("mono", cap)(mark) + 0.6 * cap;
	const [first = ""] = text.split(" ");
	if (mark !== "" && text !== "" && most > 1 && beside + widthOf(first) > room) {
		return [...rowsOf({ ...saying, text: "" }, room, 1, pen, cap), ...rowsOf({ ...saying, mark: "" }, room, most - 1, pen, cap)];
	}
	const taken = mark === "" ? 0 : beside;
	const isBroken = taken > room || text.split(" ").some((word) => widthOf(word) > room);
	if (text === "") return [{ mark, text, face, isCut: false, isBroken }];
	const { lines, isCut } = fitLines(text, (line) => (line === 0 ? room - taken : room), most, widthOf);
	return lines.map((line, at) => ({ mark: at === 0 ? mark : "", text: line, face, isCut, isBroken }));
}

/** What one side says, from the top: the terminal, since it is what the hand looks for, device, colour, the other end. */
function sayingsOf({ tag, terminal, device, colour, colourWords, other }: FlagContent, drawable: (text: string) => string): Saying[] {
	const saying = (name: string, mark: string, text: string, face: Face): Saying => ({
		name,
		mark: drawable(mark),
		text: drawable(text),
		face,
	});
	return [
		saying("the terminal", tag, terminal || (tag === "" ? "no terminal" : ""), "bold"),
		saying("the device", "", device, "sans"),
		saying("the colour", colour, colourWords, "sans"),
		saying("the other end", "", other === "" ? "" : `to ${other}`, "sans"),
	].filter(({ mark, text }) => mark !== "" || text !== "");
}
