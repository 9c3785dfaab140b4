// Labels on paper, on the stock that lies in the printer.

import { z } from "zod";
import type { Instant } from "@/lib/core/instants";
import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import type { LabelAddress } from "@/lib/labels/address";
import type { LabelDrawing } from "@/lib/labels/drawing";
import { labelFonts } from "@/lib/labels/labelFonts";
import { layoutLabel } from "@/lib/labels/labelLayout";
import type { LabelContent } from "@/lib/labels/labelText";
import { onStock, paperPdf } from "@/lib/labels/paper";
import { qrModules } from "@/lib/labels/qrModules";
import { labelsPerPage, type Stock } from "@/lib/labels/stock";
import type { Tag } from "@/lib/tags/tag";

/** Longest print run of one file; more is a slip of the hand. */
export const MOST_LABELS = 2000;
const MOST_COPIES = 20;
const FURTHEST_NUDGE = 10;

/** What a person sets before printing. */
export const printSettingsSchema = z.object({
	/** First free label of a used sheet, counted row by row from 1. */
	startAt: z.int().min(1, "Count the labels of the sheet from 1.").default(1),
	copies: z.int().min(1).max(MOST_COPIES, `Print at most ${MOST_COPIES} copies at a time.`).default(1),
	/** Moves everything right and down, in mm, when a printer draws off the mark. */
	nudgeX: z.number().min(-FURTHEST_NUDGE).max(FURTHEST_NUDGE).default(0),
	nudgeY: z.number().min(-FURTHEST_NUDGE).max(FURTHEST_NUDGE).default(0),
	/** Draws the label edges too, to hold a trial print on plain paper against the sheet. */
	outlines: z.boolean().default(false),
});
export type PrintSettings = z.infer<typeof printSettingsSchema>;

/** What the print-out needs from the shop. */
export type LabelPrinting = PrintSettings & { readonly stock: Stock; readonly address: LabelAddress | null; readonly madeAt: Instant };

/** A print-out, and what the person should know before taking it to the machine. */
export type LabelPdf = {
	readonly pdf: Buffer;
	readonly pages: number;
	/** Labels on which something had to be shortened, and what. */
	readonly shortened: readonly { readonly tag: Tag; readonly what: readonly string[] }[];
	/** Characters that no font here can draw; a box is printed in their place. */
	readonly undrawable: readonly string[];
};

/**
 * The labels as a PDF for this stock: one page a label on a roll, full pages on sheets, copies side by side.
 * The same labels, settings and `madeAt` give the same bytes.
 *
 * Refused, with nothing drawn: no labels or too many, a start beyond the sheet, a label too small for its words or code.
 */
export async function labelPdf(labels: readonly LabelContent[], printing: LabelPrinting): Promise<Result<LabelPdf, Refusal>> {
	const { stock, startAt, copies } = printing;
	const perPage = labelsPerPage(stock);
	if (labels.length === 0) return refuse("no-labels", "Choose at least one label to print.");
	if (labels.length * copies > MOST_LABELS) return refuse("too-many-labels", `Print at most ${MOST_LABELS} labels at a time.`);
	if (stock.kind === "sheet" && startAt > perPage) {
		return refuse("start-beyond-sheet", `This sheet has ${perPage} labels: start at one of them.`, {
			fields: { startAt: `From 1 to ${perPage}.` },
		});
	}

	const fonts = labelFonts();
	const drawings: LabelDrawing[] = [];
	const shortened: { tag: Tag; what: readonly string[] }[] = [];
	for (const label of labels) {
		const laid = layoutLabel(label, stock, { type: fonts, modulesOf: qrModules, address: printing.address });
		if (!laid.ok) return laid;
		if (laid.value.shortened.length > 0) shortened.push({ tag: label.tag, what: laid.value.shortened });
		for (let copy = 0; copy < copies; copy++) drawings.push(laid.value);
	}

	const pages = onStock(drawings, stock, printing);
	const undrawable = [...new Set(drawings.flatMap((drawing) => drawing.undrawable))];
	const title = drawings.length === 1 ? `Label ${labels[0]?.tag}` : `${drawings.length} labels`;
	return ok({ pdf: await paperPdf(pages, title, printing.madeAt), pages: pages.length, shortened, undrawable });
}
