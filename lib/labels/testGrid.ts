// A trial print that shows how far a printer draws off the mark: the edges of the labels, and across them rules in
// millimetres on which the cut is read off.

import type { Drawing } from "@/lib/labels/drawing";
import type { TypeCase } from "@/lib/labels/face";
import { DOT, SMALLEST_CAP } from "@/lib/labels/labelMeasures";
import { type Pen, penWith } from "@/lib/labels/pen";
import { cornerOf, labelsPerPage, type Stock } from "@/lib/labels/stock";

const LINE = DOT;
/** The rule runs so far to both sides of the edge, in mm: further off than this the wrong stock was chosen. */
const REACH = 5;
const HALF_TICK = 0.8;
const TICK = 1.5;
const LONG_TICK = 3;

/**
 * The grid of a whole sheet, or of one label of a roll. On each rule the figure at which the cut crosses is how far prints
 * have to be moved, to the right on the rule across the left edge, down on the one across the top edge.
 */
export function testGrid(stock: Stock, type: TypeCase): Drawing {
	const pen = penWith(type);
	if (stock.kind !== "sheet") {
		const height = stock.kind === "roll" ? stock.height : stock.shortest;
		writeRules(pen, { x: 0, y: 0 }, stock.width, height);
		return { width: stock.width, height, marks: pen.marks };
	}
	const last = labelsPerPage(stock) - 1;
	for (let place = 0; place <= last; place++) {
		const corner = cornerOf(stock, place);
		frame(pen, corner.x, corner.y, stock.width, stock.height);
		const said = String(place + 1);
		const cap = SMALLEST_CAP * 1.3;
		pen.write(said, corner.x + stock.width - pen.widthAt("sans", cap)(said) - 2, corner.y + stock.height - 2, "sans", cap);
	}
	for (const place of new Set([0, stock.columns - 1, last - stock.columns + 1, last])) {
		writeRules(pen, cornerOf(stock, place), stock.width, stock.height);
	}
	return { width: stock.pageWidth, height: stock.pageHeight, marks: pen.marks };
}

/** Lines whose middle is the edge. */
function frame(pen: Pen, x: number, y: number, width: number, height: number): void {
	pen.box(x - LINE / 2, y - LINE / 2, width + LINE, LINE);
	pen.box(x - LINE / 2, y + height - LINE / 2, width + LINE, LINE);
	pen.box(x - LINE / 2, y - LINE / 2, LINE, height + LINE);
	pen.box(x + width - LINE / 2, y - LINE / 2, LINE, height + LINE);
}

function writeRules(pen: Pen, corner: { x: number; y: number }, width: number, height: number): void {
	const across = corner.y + height * 0.6;
	const down = corner.x + width * 0.55;
	for (let half = -2 * REACH; half <= 2 * REACH; half++) {
		const at = half / 2;
		const length = at % REACH === 0 ? LONG_TICK : Number.isInteger(at) ? TICK : HALF_TICK;
		pen.box(corner.x + at - LINE / 2, across - length, LINE, length);
		pen.box(down - length, corner.y + at - LINE / 2, length, LINE);
	}
	pen.box(corner.x - REACH, across, 2 * REACH, LINE);
	pen.box(down, corner.y - REACH, LINE, 2 * REACH);
	const cap = SMALLEST_CAP;
	pen.write(`${REACH} right`, corner.x + REACH + 0.8, across, "sans", cap);
	pen.write(`${REACH} down`, down + 1, corner.y + REACH + cap / 2, "sans", cap);
}
