// Label stock of the shop's own, between the form in millimetres and the row in thousandths of one.

import { z } from "zod";
import { chosen, line } from "@/lib/core/words";
import { type Stock, stockSchema } from "@/lib/labels/stock";
import type { Draft } from "@/lib/ledger/rows";

type Row = Draft<"LabelStock">;
type Geometry = Omit<Row, "id" | "name" | "stands">;

const LENGTHS = {
	width: "how wide a label is",
	height: "how high a label is",
	longest: "how long a label may become",
	pageWidth: "how wide the sheet is",
	pageHeight: "how high the sheet is",
	top: "from the sheet's top edge to the first label",
	left: "from the sheet's left edge to the first label",
	pitchX: "from one left edge to the next",
	pitchY: "from one top edge to the next",
} as const;
const COUNTS = { columns: "how many labels stand side by side", rows: "how many labels stand below each other" } as const;

type Length = keyof typeof LENGTHS;
type Count = keyof typeof COUNTS;

/** What a kind of stock is measured by, besides a label's width and height. */
export const MEASURES = {
	roll: [],
	continuous: ["longest"],
	sheet: ["pageWidth", "pageHeight", "columns", "rows", "top", "left", "pitchX", "pitchY"],
} as const satisfies Readonly<Record<Stock["kind"], readonly (Length | Count)[]>>;

const typed = z.string().trim().max(12, "Write the figure alone, in millimetres, like 63.5.").default("");
const MM = /^\d{1,4}([.,]\d{1,3})?$/;

const fields = z.object({
	kind: z.enum(["roll", "continuous", "sheet"], "Say whether it is a roll, a continuous roll or a sheet."),
	name: line("a name for the stock", 60),
	width: typed,
	height: typed,
	longest: typed,
	pageWidth: typed,
	pageHeight: typed,
	columns: typed,
	rows: typed,
	top: typed,
	left: typed,
	pitchX: typed,
	pitchY: typed,
});

const isCount = (field: string): field is Count => field in COUNTS;

/** Stock as measured with a rule and typed in millimetres; what its kind has no use for is left aside. */
export const ownStockSchema = fields.transform((said, check): Stock => {
	const figures: Record<string, number> = {};
	for (const field of ["width", "height", ...MEASURES[said.kind]] as const) {
		const figure = figureIn(said[field], isCount(field));
		if (typeof figure === "string")
			check.addIssue({ code: "custom", path: [field], message: `${figure}: ${isCount(field) ? COUNTS[field] : LENGTHS[field]}.` });
		else figures[field] = figure;
	}
	if (check.issues.length > 0) return z.NEVER;
	const { height, ...others } = figures;
	const read = stockSchema.safeParse({
		kind: said.kind,
		id: "own",
		name: said.name,
		...others,
		...(said.kind === "continuous" ? { shortest: height } : { height }),
	});
	if (read.success) return read.data;
	for (const { path, message } of read.error.issues) {
		const [field] = path;
		check.addIssue({ code: "custom", path: [field === "shortest" ? "height" : String(field)], message });
	}
	return z.NEVER;
});

/** The figure typed, or the beginning of the sentence that asks for it. */
function figureIn(text: string, isWhole: boolean): number | string {
	if (text === "") return isWhole ? "Count" : "Measure in millimetres";
	if (isWhole ? !/^\d{1,3}$/.test(text) : !MM.test(text)) return isWhole ? "Write a whole number" : "Write millimetres like 63.5";
	return Number(text.replace(",", "."));
}

/** The same of a stock that is on record. */
export const correctStockSchema = fields.extend({ stockId: chosen("a stock") }).transform((said, check) => {
	const { stockId, ...others } = said;
	const stock = ownStockSchema.safeParse(others);
	if (stock.success) return { stockId, stock: stock.data };
	for (const { path, message } of stock.error.issues) check.addIssue({ code: "custom", path: [...path], message });
	return z.NEVER;
});

export const putAwayStockSchema = z.object({ stockId: chosen("a stock"), stands: z.enum(["yes", "no"]) });

const FURTHEST_TENTHS = 100;

/** "-0.4" as tenths of a millimetre. */
const tenths = (where: string) =>
	z
		.string()
		.trim()
		.max(8, "Write millimetres like 0.4 or -0.4.")
		.transform((text, check) => {
			const plain = text.replace(",", ".").replace(/^[−–]/, "-");
			if (plain === "") return 0;
			const value = Math.round(Number(plain) * 10);
			if (!/^[+-]?\d{1,2}(\.\d)?$/.test(plain)) {
				check.addIssue({ code: "custom", message: `Write how far ${where} in millimetres, to a tenth: 0.4 or -0.4.` });
				return z.NEVER;
			}
			if (Math.abs(value) > FURTHEST_TENTHS) {
				check.addIssue({
					code: "custom",
					message: "A printer is at most 10 mm off. Choose the stock that lies in it, or measure it anew.",
				});
				return z.NEVER;
			}
			return value;
		});

/** By how much a printer draws off the mark on one stock; what is typed moves the print. */
export const nudgeSchema = z.object({
	stock: z.string("Choose a stock.").min(1, "Choose a stock.").max(40, "Choose the stock from the list."),
	right: tenths("to the right"),
	down: tenths("down"),
});

export type OwnStockForm = z.input<typeof ownStockSchema>;
export type CorrectStock = z.output<typeof correctStockSchema>;
export type PutAwayStock = z.output<typeof putAwayStockSchema>;
export type SayNudge = z.output<typeof nudgeSchema>;

const thousandths = (mm: number): number => Math.round(mm * 1000);
const mmOf = (length: number | null): number => (length ?? 0) / 1000;

/** The stock that the figures so far come to, fitting or not, to be drawn while it is typed; null while one is missing. */
export function stockSoFar(said: Readonly<Record<string, unknown>>): Stock | null {
	const read = fields.extend({ name: z.string() }).safeParse(said);
	if (!read.success) return null;
	const typedOf = (field: Length | Count): number | null => {
		const figure = figureIn(read.data[field], isCount(field));
		return typeof figure === "number" ? figure : null;
	};
	const needed = (["width", "height", ...MEASURES[read.data.kind]] as const).map(typedOf);
	if (needed.includes(null) || (typedOf("width") ?? 0) <= 0 || (typedOf("height") ?? 0) <= 0) return null;
	const mm = (field: Length | Count): number | null => {
		const figure = typedOf(field);
		return figure === null ? null : isCount(field) ? figure : thousandths(figure);
	};
	const { kind, name } = read.data;
	return stockOfRow({
		id: "own",
		kind,
		name,
		width: mm("width") ?? 0,
		height: mm("height") ?? 0,
		longest: mm("longest"),
		pageWidth: mm("pageWidth"),
		pageHeight: mm("pageHeight"),
		columns: mm("columns"),
		rows: mm("rows"),
		top: mm("top"),
		left: mm("left"),
		pitchX: mm("pitchX"),
		pitchY: mm("pitchY"),
	});
}

/** What a row keeps of how the stock is cut. */
export function geometryOf(stock: Stock): Geometry {
	const none = {
		longest: null,
		pageWidth: null,
		pageHeight: null,
		columns: null,
		rows: null,
		top: null,
		left: null,
		pitchX: null,
		pitchY: null,
	};
	switch (stock.kind) {
		case "roll":
			return { ...none, kind: "roll", width: thousandths(stock.width), height: thousandths(stock.height) };
		case "continuous":
			return {
				...none,
				kind: "continuous",
				width: thousandths(stock.width),
				height: thousandths(stock.shortest),
				longest: thousandths(stock.longest),
			};
		case "sheet":
			return {
				kind: "sheet",
				width: thousandths(stock.width),
				height: thousandths(stock.height),
				longest: null,
				pageWidth: thousandths(stock.pageWidth),
				pageHeight: thousandths(stock.pageHeight),
				columns: stock.columns,
				rows: stock.rows,
				top: thousandths(stock.top),
				left: thousandths(stock.left),
				pitchX: thousandths(stock.pitchX),
				pitchY: thousandths(stock.pitchY),
			};
	}
}

/** The stock that a row describes. */
export function stockOfRow(row: Omit<Row, "stands">): Stock {
	const { id, name } = row;
	const size = { id, name, width: mmOf(row.width), height: mmOf(row.height) };
	switch (row.kind) {
		case "roll":
			return { kind: "roll", ...size };
		case "continuous":
			return { kind: "continuous", id, name, width: size.width, shortest: size.height, longest: mmOf(row.longest) };
		case "sheet":
			return {
				kind: "sheet",
				...size,
				pageWidth: mmOf(row.pageWidth),
				pageHeight: mmOf(row.pageHeight),
				columns: row.columns ?? 1,
				rows: row.rows ?? 1,
				top: mmOf(row.top),
				left: mmOf(row.left),
				pitchX: mmOf(row.pitchX),
				pitchY: mmOf(row.pitchY),
			};
	}
}

/** What a form holds that corrects this stock: figures as a person would type them. */
export function asTyped(stock: Stock): Required<OwnStockForm> {
	const { kind, longest, pageWidth, pageHeight, columns, rows, ...lengths } = geometryOf(stock);
	const mm = (length: number | null): string => (length === null ? "" : String(mmOf(length)));
	return {
		kind,
		name: stock.name,
		width: mm(lengths.width),
		height: mm(lengths.height),
		longest: mm(longest),
		pageWidth: mm(pageWidth),
		pageHeight: mm(pageHeight),
		columns: columns === null ? "" : String(columns),
		rows: rows === null ? "" : String(rows),
		top: mm(lengths.top),
		left: mm(lengths.left),
		pitchX: mm(lengths.pitchX),
		pitchY: mm(lengths.pitchY),
	};
}

/** A stock's size in words: "21 of 63.5 x 38.1 mm on a sheet of 210 x 297". */
export function sizeInWords(stock: Stock): string {
	const mm = (length: number): string => String(Math.round(length * 100) / 100);
	switch (stock.kind) {
		case "roll":
			return `${mm(stock.width)} x ${mm(stock.height)} mm`;
		case "continuous":
			return `${mm(stock.width)} mm wide, ${mm(stock.shortest)} to ${mm(stock.longest)} mm long`;
		case "sheet":
			return `${stock.columns * stock.rows} of ${mm(stock.width)} x ${mm(stock.height)} mm on a sheet of ${mm(stock.pageWidth)} x ${mm(stock.pageHeight)}`;
	}
}

/** Where a print goes by its nudge: "0.3 mm right, 0.2 mm up", or "as drawn". */
export function nudgeInWords({ right, down }: { readonly right: number; readonly down: number }): string {
	const said = [
		right === 0 ? "" : `${Math.abs(right) / 10} mm ${right > 0 ? "right" : "left"}`,
		down === 0 ? "" : `${Math.abs(down) / 10} mm ${down > 0 ? "down" : "up"}`,
	].filter(Boolean);
	return said.join(", ") || "as drawn";
}
