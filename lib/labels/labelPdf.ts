// Labels on paper: a PDF that is exact to a tenth of a millimetre, drawn in lines and letters, never in pixels.

import PDFDocument from "pdfkit";
import { z } from "zod";
import type { Instant } from "@/lib/core/instants";
import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import type { LabelAddress } from "@/lib/labels/address";
import { darkRuns, type LabelDrawing, type Mark } from "@/lib/labels/drawing";
import { type LabelFonts, labelFonts, takeFont } from "@/lib/labels/labelFonts";
import { layoutLabel } from "@/lib/labels/labelLayout";
import type { LabelContent } from "@/lib/labels/labelText";
import { qrModules } from "@/lib/labels/qrModules";
import { cornerOf, labelsPerPage, type Stock } from "@/lib/labels/stock";
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

	const first = stock.kind === "sheet" ? startAt - 1 : 0;
	const pages = stock.kind === "sheet" ? Math.ceil((first + drawings.length) / perPage) : drawings.length;
	const undrawable = [...new Set(drawings.flatMap((drawing) => drawing.undrawable))];
	return ok({ pdf: await draw(drawings, first, printing, fonts), pages, shortened, undrawable });
}

const POINTS_PER_MM = 72 / 25.4;
const HAIRLINE = 0.1;

type WithRoot = { readonly _root?: { readonly data?: Record<string, unknown> } };

function draw(drawings: readonly LabelDrawing[], first: number, printing: LabelPrinting, fonts: LabelFonts): Promise<Buffer> {
	const { stock, nudgeX, nudgeY, outlines } = printing;
	const document = new PDFDocument({
		autoFirstPage: false,
		lang: "en",
		info: { Title: `${drawings.length} labels`, CreationDate: new Date(printing.madeAt) },
	});
	// Readers otherwise shrink a page to the printer's margins, and every label would miss its place. Not in pdfkit's types.
	const root = (document as unknown as WithRoot)._root?.data;
	if (root === undefined) throw new Error("pdfkit has no document root");
	root.ViewerPreferences = document.ref({ PrintScaling: "None", DisplayDocTitle: true });
	const perPage = labelsPerPage(stock);

	drawings.forEach((drawing, at) => {
		const place = (first + at) % perPage;
		if (at === 0 || place === 0) {
			const page = stock.kind === "sheet" ? [stock.pageWidth, stock.pageHeight] : [drawing.width, drawing.height];
			document.addPage({ size: [(page[0] ?? 0) * POINTS_PER_MM, (page[1] ?? 0) * POINTS_PER_MM], margin: 0 });
			document.scale(POINTS_PER_MM);
		}
		const corner = cornerOf(stock, place);
		document.save();
		document.translate(corner.x + nudgeX, corner.y + nudgeY);
		if (outlines) document.rect(0, 0, drawing.width, drawing.height).lineWidth(HAIRLINE).stroke("black");
		for (const mark of drawing.marks) drawMark(document, mark, fonts);
		document.restore();
	});
	return bytesOf(document);
}

function drawMark(document: PDFKit.PDFDocument, mark: Mark, fonts: LabelFonts): void {
	switch (mark.kind) {
		case "box":
			document.rect(mark.x, mark.y, mark.width, mark.height).fill(mark.ink);
			return;
		case "shape":
			document.polygon(...mark.points.map(([x, y]): [number, number] => [x, y])).fill(mark.ink);
			return;
		case "text": {
			let x = mark.x;
			document.fillColor(mark.ink);
			for (const run of fonts.runsOf(mark.text, mark.face)) {
				const size = mark.size * run.factor;
				takeFont(document, run.font).fontSize(size).text(run.text, x, mark.y, { lineBreak: false, baseline: "alphabetic" });
				x += document.widthOfString(run.text);
			}
			return;
		}
		case "code":
			// In modules, so that the numbers are whole; and one path, one fill: no hairlines between modules that touch.
			document.save().translate(mark.x, mark.y).scale(mark.module);
			document
				.addContent(
					darkRuns(mark.modules)
						.map((run) => `${run.join(" ")} re`)
						.join(" "),
				)
				.fill("black");
			document.restore();
			return;
	}
}

function bytesOf(document: PDFKit.PDFDocument): Promise<Buffer> {
	return new Promise((resolve, reject) => {
		const chunks: Buffer[] = [];
		document.on("data", (chunk: Buffer) => chunks.push(chunk));
		document.on("end", () => resolve(Buffer.concat(chunks)));
		document.on("error", reject);
		document.end();
	});
}
