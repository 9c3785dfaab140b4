// Label stock: what is in the printer. All lengths in millimetres, as the maker of the stock gives them.

import { z } from "zod";
import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";

/** The smallest label that holds a code a phone can read, the tag, a name and "original: keep" in text 2 mm high. */
export const SMALLEST_LABEL = { width: 38, height: 21 } as const;

const mm = z.number().min(0).max(1000);
const name = z.string().trim().min(1, "Give the stock a name.").max(60);
const id = z.string().regex(/^[a-z0-9-]{1,40}$/, "Use small letters, digits and dashes.");
const width = mm.min(SMALLEST_LABEL.width, `A label must be at least ${SMALLEST_LABEL.width} mm wide.`).max(300);
const height = mm.min(SMALLEST_LABEL.height, `A label must be at least ${SMALLEST_LABEL.height} mm high.`).max(300);

const rollSchema = z.object({ kind: z.literal("roll"), id, name, width, height });

// The printer cuts; a label is as long as what it says, between two limits.
const continuousSchema = z.object({ kind: z.literal("continuous"), id, name, width, shortest: height, longest: height });

const sheetSchema = z.object({
	kind: z.literal("sheet"),
	id,
	name,
	pageWidth: mm.min(50),
	pageHeight: mm.min(50),
	columns: z.int().min(1).max(20),
	rows: z.int().min(1).max(50),
	width,
	height,
	/** Page edge to the first label. */
	top: mm,
	left: mm,
	/** From one label's edge to the same edge of the next. */
	pitchX: mm,
	pitchY: mm,
});

/** Label stock as typed by a person or read from the shop's settings; refuses a layout that does not fit its page. */
export const stockSchema = z.discriminatedUnion("kind", [rollSchema, continuousSchema, sheetSchema]).superRefine((stock, context) => {
	for (const { path, say } of misfitsOf(stock)) context.addIssue({ code: "custom", path: [path], message: say });
});

export type Stock = z.infer<typeof stockSchema>;
export type SheetStock = z.infer<typeof sheetSchema>;

/** Labels that follow each other without a gap, with the page's room left over shared between its edges. */
const centred = (
	id: string,
	name: string,
	page: { pageWidth: number; pageHeight: number },
	grid: { columns: number; rows: number; width: number; height: number; pitchX: number; pitchY: number },
): SheetStock => ({
	kind: "sheet",
	id,
	name,
	...page,
	columns: grid.columns,
	rows: grid.rows,
	width: grid.width,
	height: grid.height,
	top: tenth(page.pageHeight - (grid.rows - 1) * grid.pitchY - grid.height) / 2,
	left: tenth(page.pageWidth - (grid.columns - 1) * grid.pitchX - grid.width) / 2,
	pitchX: grid.pitchX,
	pitchY: grid.pitchY,
});
const tenth = (mm: number): number => Math.round(mm * 10) / 10;

export const A4 = { pageWidth: 210, pageHeight: 297 } as const;
export const LETTER = { pageWidth: 215.9, pageHeight: 279.4 } as const;

/** Stock that most shops have. a4-21 and letter-30 from sheet data pages; the other sheets and the rolls are common practice. */
export const STOCKS: readonly Stock[] = [
	{ kind: "roll", id: "roll-62x29", name: "Roll, 62 x 29 mm", width: 62, height: 29 },
	{ kind: "roll", id: "roll-57x32", name: "Roll, 57 x 32 mm", width: 57, height: 32 },
	{ kind: "roll", id: "roll-50x25", name: "Roll, 50 x 25 mm (small bags)", width: 50, height: 25 },
	{ kind: "roll", id: "roll-40x30", name: "Roll, 40 x 30 mm (small bags)", width: 40, height: 30 },
	{ kind: "roll", id: "roll-100x50", name: "Roll, 100 x 50 mm (totes)", width: 100, height: 50 },
	{ kind: "roll", id: "tie-on-70x35", name: "Tie-on tags, 70 x 35 mm", width: 70, height: 35 },
	{ kind: "continuous", id: "continuous-62", name: "Continuous roll, 62 mm", width: 62, shortest: 29, longest: 60 },
	{
		kind: "sheet",
		id: "a4-21",
		name: "A4 sheet, 21 of 63.5 x 38.1 mm",
		...A4,
		columns: 3,
		rows: 7,
		width: 63.5,
		height: 38.1,
		top: 15.15,
		left: 7.2,
		pitchX: 66,
		pitchY: 38.1,
	},
	centred("a4-24-70x37", "A4 sheet, 24 of 70 x 37 mm", A4, { columns: 3, rows: 8, width: 70, height: 37, pitchX: 70, pitchY: 37 }),
	centred("a4-65", "A4 sheet, 65 of 38.1 x 21.2 mm", A4, {
		columns: 5,
		rows: 13,
		width: 38.1,
		height: 21.2,
		pitchX: 40.6,
		pitchY: 21.2,
	}),
	{
		kind: "sheet",
		id: "letter-30",
		name: "US Letter sheet, 30 of 2 5/8 x 1 in",
		...LETTER,
		columns: 3,
		rows: 10,
		width: 66.675,
		height: 25.4,
		top: 12.7,
		left: 4.7625,
		pitchX: 69.85,
		pitchY: 25.4,
	},
	{
		kind: "sheet",
		id: "letter-10",
		name: "US Letter sheet, 10 of 4 x 2 in (totes)",
		...LETTER,
		columns: 2,
		rows: 5,
		width: 101.6,
		height: 50.8,
		top: 12.7,
		left: 3.96875,
		pitchX: 106.3625,
		pitchY: 50.8,
	},
];

/** The label that is folded round a wire: narrower than any other, since each half holds three short lines and no code. */
export const FLAG_ROLL: Stock = { kind: "roll", id: "flag-25x75", name: "Flag roll, 25 x 75 mm (wires)", width: 25, height: 75 };

/** The stock of an id, among the shop's own and the common ones. */
export function stockOf(stockId: string, own: readonly Stock[] = []): Result<Stock, Refusal> {
	const found = [...own, ...STOCKS].find((stock) => stock.id === stockId);
	return found
		? ok(found)
		: refuse("no-such-stock", "Choose the label stock again: this one is not in the list any more.", { facts: { stockId } });
}

/** How many labels a sheet holds; 1 for a roll. */
export const labelsPerPage = (stock: Stock): number => (stock.kind === "sheet" ? stock.columns * stock.rows : 1);

/** Top left corner of the label at `place` (0-based, row by row) on its page, in mm. */
export function cornerOf(stock: Stock, place: number): { x: number; y: number } {
	if (stock.kind !== "sheet") return { x: 0, y: 0 };
	const column = place % stock.columns;
	const row = Math.floor(place / stock.columns) % stock.rows;
	return { x: stock.left + column * stock.pitchX, y: stock.top + row * stock.pitchY };
}

// A hundredth of a millimetre: makers round their inches.
const SLACK = 0.01;

/** What makes a layout impossible on its page, each with the field to change. Empty when it fits. */
export function misfitsOf(stock: Stock): { path: string; say: string }[] {
	if (stock.kind === "roll") return [];
	if (stock.kind === "continuous") {
		return stock.longest < stock.shortest ? [{ path: "longest", say: "The longest label must be at least as long as the shortest." }] : [];
	}
	const right = stock.left + (stock.columns - 1) * stock.pitchX + stock.width;
	const bottom = stock.top + (stock.rows - 1) * stock.pitchY + stock.height;
	const say = (edge: string, at: number, page: number) =>
		`The last label ends ${at.toFixed(1)} mm from the ${edge}, but the page is ${page.toFixed(1)} mm. Measure margin, pitch and label again.`;
	return [
		...(stock.columns > 1 && stock.pitchX < stock.width - SLACK
			? [{ path: "pitchX", say: "Labels side by side overlap: the pitch is measured from one left edge to the next." }]
			: []),
		...(stock.rows > 1 && stock.pitchY < stock.height - SLACK
			? [{ path: "pitchY", say: "Labels below each other overlap: the pitch is measured from one top edge to the next." }]
			: []),
		...(right > stock.pageWidth + SLACK ? [{ path: "columns", say: say("left", right, stock.pageWidth) }] : []),
		...(bottom > stock.pageHeight + SLACK ? [{ path: "rows", say: say("top", bottom, stock.pageHeight) }] : []),
	];
}
