// A sheet for a shelf: its name in letters as large as fit, to be read from across the room; the whole way to it above.

import type { Drawing } from "@/lib/labels/drawing";
import { CAP_HEIGHT, DESCENDER, type TypeCase } from "@/lib/labels/face";
import { charactersOf, fitLines, wrap } from "@/lib/labels/fitText";
import { DOT } from "@/lib/labels/labelMeasures";
import { penWith } from "@/lib/labels/pen";
import { type QrModules, QUIET_MODULES } from "@/lib/labels/qrModules";

export type ShelfContent = {
	readonly name: string;
	/** The places around it, from the room inwards. */
	readonly way: readonly string[];
	/** Null while the place has no tag: then the sheet has no code. */
	readonly tag: { readonly tag: string; readonly text: string; readonly modules: QrModules } | null;
};

const MARGIN = 14;
const WAY_CAP = 9;
const TAG_CAP = 9;
const CODE_DOTS = 13;
const LINE = 1.32;
const STEP = 0.5;
const MOST_LINES = 4;
const LARGEST = 120;
const SMALLEST = 8;

/** The sheet, lying on its long side. */
export function shelfSheet(
	shelf: ShelfContent,
	page: { readonly pageWidth: number; readonly pageHeight: number },
	type: TypeCase,
): Drawing {
	const width = Math.max(page.pageWidth, page.pageHeight);
	const height = Math.min(page.pageWidth, page.pageHeight);
	const pen = penWith(type);
	const room = width - 2 * MARGIN;
	const drawable = (text: string): string =>
		charactersOf(text.normalize("NFC").replace(/\s+/g, " ").trim())
			.map((cluster) => (type.covers(cluster) ? cluster : "□"))
			.join("");

	let top = MARGIN;
	const way = fitLines(shelf.way.map(drawable).join(" · "), room, 2, pen.widthAt("sans", WAY_CAP)).lines;
	for (const line of way) {
		pen.write(line, MARGIN, top + WAY_CAP, "sans", WAY_CAP);
		top += WAY_CAP * LINE;
	}
	if (way.length > 0) top += WAY_CAP * 0.5;

	const module = CODE_DOTS * DOT;
	const side = shelf.tag === null ? 0 : shelf.tag.modules.rows.length * module;
	const floor = height - MARGIN - (shelf.tag === null ? 0 : side + QUIET_MODULES * module);
	const name = drawable(shelf.name);
	const { cap, lines } = largest(name, room, floor - top, (size) => pen.widthAt("bold", size));
	const block = cap + (lines.length - 1) * cap * LINE;
	let y = top + (floor - top - block - below(cap)) / 2 + cap;
	for (const line of lines) {
		pen.write(line, MARGIN + (room - pen.widthAt("bold", cap)(line)) / 2, y, "bold", cap);
		y += cap * LINE;
	}

	if (shelf.tag !== null) {
		const codeTop = height - MARGIN - side;
		pen.marks.push({ kind: "code", x: width - MARGIN - side, y: codeTop, module, modules: shelf.tag.modules, text: shelf.tag.text });
		pen.write(shelf.tag.tag, MARGIN, height - MARGIN - below(TAG_CAP), "mono", TAG_CAP * 1.6);
	}
	return { width, height, marks: pen.marks };
}

const below = (cap: number): number => (DESCENDER / CAP_HEIGHT) * cap;

/** A line less is worth letters that are smaller by so much: two shelves of one rack should look alike. */
const FEWER_LINES = 0.9;

/** The name in the largest letters in which its words stay whole. */
function largest(
	name: string,
	room: number,
	height: number,
	widthAt: (cap: number) => (text: string) => number,
): { cap: number; lines: string[] } {
	const words = name.split(" ");
	let best: { cap: number; lines: string[] } | null = null;
	for (let cap = LARGEST; cap >= SMALLEST; cap -= STEP) {
		if (best !== null && (best.lines.length === 1 || cap < best.cap * FEWER_LINES)) break;
		const widthOf = widthAt(cap);
		if (words.some((word) => widthOf(word) > room)) continue;
		const lines = wrap(name, () => room, widthOf);
		const isWithin = lines.length <= MOST_LINES && cap + (lines.length - 1) * cap * LINE + below(cap) <= height;
		if (isWithin && (best === null || lines.length < best.lines.length)) best = { cap, lines };
	}
	if (best !== null) return best;
	// A name of one endless word: broken where it must be.
	const most = Math.max(1, Math.floor(height / (SMALLEST * LINE)));
	return { cap: SMALLEST, lines: fitLines(name, room, most, widthAt(SMALLEST)).lines };
}
