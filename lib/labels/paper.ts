// Drawings on paper: a PDF that is exact to a tenth of a millimetre, in lines and letters, never in pixels.

import PDFDocument from "pdfkit";
import type { Instant } from "@/lib/core/instants";
import { type Drawing, darkRuns, type Mark } from "@/lib/labels/drawing";
import { type LabelFonts, labelFonts, takeFont } from "@/lib/labels/labelFonts";
import { cornerOf, labelsPerPage, type Stock } from "@/lib/labels/stock";

/** A drawing at its place on a page, in mm from the page's top left corner. */
export type Placed = {
	readonly x: number;
	readonly y: number;
	readonly drawing: Drawing;
	/** Turned by a quarter to the right, so that its width runs down the page. */
	readonly isTurned?: boolean;
	/** Its edges are drawn, too. */
	readonly isOutlined?: boolean;
};

export type PaperPage = { readonly width: number; readonly height: number; readonly drawings: readonly Placed[] };

/** The drawings in order on this stock, one a label. */
export function onStock(
	drawings: readonly Drawing[],
	stock: Stock,
	{ startAt, nudgeX, nudgeY, outlines }: { startAt: number; nudgeX: number; nudgeY: number; outlines: boolean },
): PaperPage[] {
	const perPage = labelsPerPage(stock);
	const first = stock.kind === "sheet" ? startAt - 1 : 0;
	const pages: { width: number; height: number; drawings: Placed[] }[] = [];
	for (const [at, drawing] of drawings.entries()) {
		const place = (first + at) % perPage;
		const isTurned = stock.kind !== "continuous" && drawing.width > stock.width + TURNED_SLACK;
		if (at === 0 || place === 0) {
			const roll = isTurned ? { width: drawing.height, height: drawing.width } : { width: drawing.width, height: drawing.height };
			pages.push({ ...(stock.kind === "sheet" ? { width: stock.pageWidth, height: stock.pageHeight } : roll), drawings: [] });
		}
		const corner = cornerOf(stock, place);
		pages.at(-1)?.drawings.push({ x: corner.x + nudgeX, y: corner.y + nudgeY, drawing, isTurned, isOutlined: outlines });
	}
	return pages;
}
/** A drawing wider than its label by more than rounding was made to lie along it. */
const TURNED_SLACK = 0.5;

const POINTS_PER_MM = 72 / 25.4;
const HAIRLINE = 0.1;

type WithRoot = { readonly _root?: { readonly data?: Record<string, unknown> } };

/** The pages as a PDF. The same pages, title and `madeAt` give the same bytes. */
export function paperPdf(pages: readonly PaperPage[], title: string, madeAt: Instant): Promise<Buffer> {
	const fonts = labelFonts();
	const document = new PDFDocument({ autoFirstPage: false, lang: "en", info: { Title: title, CreationDate: new Date(madeAt) } });
	// Readers otherwise shrink a page to the printer's margins, and every label would miss its place. Not in pdfkit's types.
	const root = (document as unknown as WithRoot)._root?.data;
	if (root === undefined) throw new Error("pdfkit has no document root");
	root.ViewerPreferences = document.ref({ PrintScaling: "None", DisplayDocTitle: true });
	for (const page of pages) {
		document.addPage({ size: [page.width * POINTS_PER_MM, page.height * POINTS_PER_MM], margin: 0 });
		document.scale(POINTS_PER_MM);
		for (const { x, y, drawing, isTurned, isOutlined } of page.drawings) {
			document.save();
			if (isTurned) document.transform(0, 1, -1, 0, x + drawing.height, y);
			else document.translate(x, y);
			if (isOutlined) document.rect(0, 0, drawing.width, drawing.height).lineWidth(HAIRLINE).stroke("black");
			for (const mark of drawing.marks) drawMark(document, mark, fonts);
			document.restore();
		}
	}
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
