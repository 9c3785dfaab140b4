import { describe, expect, it } from "vitest";
import { labelFonts } from "@/lib/labels/labelFonts";
import { layoutLabel } from "@/lib/labels/labelLayout";
import { labelPdf, MOST_LABELS, printSettingsSchema } from "@/lib/labels/labelPdf";
import { qrModules } from "@/lib/labels/qrModules";
import { cornerOf, STOCKS, type Stock } from "@/lib/labels/stock";
import { askPoppler, GEARMOTOR, good, OVERFULL, pagesOf, pixelsOf, printing, stock, TRIM_SCREWS, TUBE } from "./printed";

const DPI = 400; // a pixel is 0.064 mm, and an edge is found to half of it
const TOLERANCE = 0.1;
const mmOf = (pixels: number): number => (pixels / DPI) * 25.4;

type Picture = Awaited<ReturnType<typeof pixelsOf>>;
type Area = { x: number; y: number; width: number; height: number };

/** The outermost dark pixels within an area in mm, as mm: left, top, right, bottom. */
function inkWithin(picture: Picture, area: Area): { left: number; top: number; right: number; bottom: number } | null {
	const from = (mm: number) => Math.round((mm / 25.4) * DPI);
	let [left, top, right, bottom] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, -1, -1];
	for (let y = from(area.y); y < Math.min(picture.height, from(area.y + area.height)); y++) {
		for (let x = from(area.x); x < Math.min(picture.width, from(area.x + area.width)); x++) {
			if (!picture.isDark(x, y)) continue;
			left = Math.min(left, x);
			right = Math.max(right, x + 1);
			top = Math.min(top, y);
			bottom = Math.max(bottom, y + 1);
		}
	}
	return right < 0 ? null : { left: mmOf(left), top: mmOf(top), right: mmOf(right), bottom: mmOf(bottom) };
}

async function pictureOf(pdf: Buffer, page = 1): Promise<Picture> {
	const png = (await pagesOf(pdf, DPI, page))[0];
	if (png === undefined) throw new Error(`there is no page ${page}`);
	return pixelsOf(png);
}

/** Where the code of this label should be, from the label's corner. */
function codeOf(on: Stock): { x: number; y: number; side: number } {
	const drawing = good(layoutLabel(GEARMOTOR, on, { type: labelFonts(), modulesOf: qrModules, address: null }));
	const code = drawing.marks.find((mark) => mark.kind === "code");
	if (code?.kind !== "code") throw new Error("the label has no code");
	return { x: code.x, y: code.y, side: code.module * code.modules.rows.length };
}

/** Measures the code of a label on paper and expects it within a tenth of a millimetre of `corner`. */
function expectCodeAt(picture: Picture, on: Stock, corner: { x: number; y: number }): void {
	const { x, y, side } = codeOf(on);
	const ink = inkWithin(picture, { x: corner.x + x / 2, y: corner.y + y / 2, width: side + x, height: side + y * 0.9 });
	if (ink === null) throw new Error("nothing is printed here");
	const measured = [ink.left, ink.top, ink.right, ink.bottom];
	const expected = [corner.x + x, corner.y + y, corner.x + x + side, corner.y + y + side];
	for (const [at, value] of measured.entries()) expect(Math.abs(value - (expected[at] ?? 0))).toBeLessThan(TOLERANCE);
}

// Whole sheets are drawn and measured, which a busy computer needs its time for.
describe("labels on paper", { timeout: 120_000 }, () => {
	it.each(STOCKS)("have pages of the size of the stock: $name", async (on) => {
		const { pdf, pages } = good(await labelPdf([GEARMOTOR, TUBE], printing({ stock: on })));
		const info = await askPoppler("pdfinfo", pdf);
		const [, width = "", height = ""] = /Page size:\s+([\d.]+) x ([\d.]+) pts/.exec(info) ?? [];
		const wanted = on.kind === "sheet" ? [on.pageWidth, on.pageHeight] : [on.width, on.kind === "roll" ? on.height : on.shortest];
		expect(Math.abs((Number(width) / 72) * 25.4 - (wanted[0] ?? 0))).toBeLessThan(TOLERANCE);
		expect(Math.abs((Number(height) / 72) * 25.4 - (wanted[1] ?? 0))).toBeLessThan(TOLERANCE);
		expect(pages).toBe(on.kind === "sheet" ? 1 : 2);
		expect(info).toMatch(new RegExp(`Pages:\\s+${pages}\\b`));
	});

	it("stand on an A4 sheet of 21 where the stock has its labels, the first and the last, to a tenth of a millimetre", async () => {
		const on = stock("a4-21");
		const labels = Array.from({ length: 21 }, () => GEARMOTOR);
		const picture = await pictureOf(good(await labelPdf(labels, printing({ stock: on }))).pdf);
		for (const place of [0, 2, 10, 18, 20]) expectCodeAt(picture, on, cornerOf(on, place));
	});

	it("start on a used sheet at the first free label, leave the used ones alone, and go on to the next sheet", async () => {
		const on = stock("a4-21");
		const { pdf, pages } = good(
			await labelPdf(
				Array.from({ length: 5 }, () => GEARMOTOR),
				printing({ stock: on, startAt: 19 }),
			),
		);
		expect(pages).toBe(2);
		const [first, second] = [await pictureOf(pdf, 1), await pictureOf(pdf, 2)];
		expect(inkWithin(first, { x: 0, y: 0, width: 210, height: cornerOf(on, 18).y })).toBeNull();
		for (const place of [18, 19, 20]) expectCodeAt(first, on, cornerOf(on, place));
		for (const place of [0, 1]) expectCodeAt(second, on, cornerOf(on, place));
	});

	it("have modules of the code that are whole dots of a 203 dpi printer: no two widths of bar come out of one", async () => {
		const { pdf } = good(await labelPdf([GEARMOTOR], printing()));
		const [png] = await pagesOf(pdf, 203);
		if (png === undefined) throw new Error("no page was drawn");
		const picture = await pixelsOf(png);
		const { x, y, side } = codeOf(stock("roll-62x29"));
		const dot = (mm: number) => Math.round((mm / 25.4) * 203);
		const dots = dot(side) / 21;
		expect(Number.isInteger(dots)).toBe(true);
		const modules = qrModules(GEARMOTOR.tag)?.rows ?? [];
		const printed = Array.from({ length: dot(side) }, (_, down) =>
			Array.from({ length: dot(side) }, (_, across) => picture.isDark(dot(x) + across, dot(y) + down)),
		);
		const wanted = printed.map((row, down) =>
			row.map((_, across) => modules[Math.floor(down / dots)]?.[Math.floor(across / dots)] === true),
		);
		expect(printed).toEqual(wanted);
	});

	it("come in as many copies as asked for, one after the other", async () => {
		const { pdf, pages } = good(await labelPdf([GEARMOTOR, TUBE], printing({ copies: 3 })));
		expect(pages).toBe(6);
		const text = await askPoppler("pdftotext", pdf);
		const tags = [...text.matchAll(/12-0\d{3}-[A-Z0-9]/g)].map(([tag]) => tag);
		expect(tags).toEqual([...Array(3).fill(GEARMOTOR.tag), ...Array(3).fill(TUBE.tag)]);
	});

	it("say in letters, not in pixels, what the label says", async () => {
		const text = await askPoppler("pdftotext", good(await labelPdf([TRIM_SCREWS], printing())).pdf, ["-raw"]);
		for (const words of [
			"12-0205-W",
			"Trim screws 4BA x 1/2",
			"LEFT",
			"player's place",
			"Skerry Light",
			"HOLD:",
			"5",
			"screws",
			"4 Mar 2026",
		]) {
			expect(text).toContain(words);
		}
	});

	it("carry every font they use within them", async () => {
		const mixed = { ...GEARMOTOR, words: "Motor žluťoučký κινητήρας мотор" };
		const fonts = await askPoppler("pdffonts", good(await labelPdf([mixed], printing({ stock: stock("roll-100x50") }))).pdf);
		const rows = fonts.trim().split("\n").slice(2);
		expect(rows.length).toBeGreaterThanOrEqual(4);
		for (const row of rows) expect(row).toMatch(/\byes\s+yes\s+yes\b/);
	});

	it("tell the printer not to shrink the page to its margins", async () => {
		const { pdf } = good(await labelPdf([GEARMOTOR], printing()));
		expect(pdf.toString("latin1")).toMatch(/\/ViewerPreferences/);
		expect(pdf.toString("latin1")).toMatch(/\/PrintScaling \(?\/?None/);
	});

	it("are the same bytes for the same labels and time", async () => {
		const print = async () => good(await labelPdf([GEARMOTOR, OVERFULL], printing())).pdf;
		expect((await print()).equals(await print())).toBe(true);
	});

	it("name what was shortened on which label, and what could not be drawn", async () => {
		const { shortened, undrawable } = good(await labelPdf([GEARMOTOR, OVERFULL, { ...TUBE, words: "tube 中" }], printing()));
		expect(shortened).toEqual([{ tag: OVERFULL.tag, what: expect.arrayContaining(["words"]) }]);
		expect(undrawable).toEqual(["中"]);
	});

	it("are refused, each with what to do: none, too many, a start beyond the sheet, a label too small", async () => {
		expect(await labelPdf([], printing())).toMatchObject({ ok: false, error: { code: "no-labels" } });
		const many = Array.from({ length: MOST_LABELS / 2 + 1 }, () => GEARMOTOR);
		expect(await labelPdf(many, printing({ copies: 2 }))).toMatchObject({ ok: false, error: { code: "too-many-labels" } });
		expect(await labelPdf([GEARMOTOR], printing({ stock: stock("a4-21"), startAt: 22 }))).toMatchObject({
			ok: false,
			error: { code: "start-beyond-sheet", fields: { startAt: "From 1 to 21." } },
		});
		const tiny: Stock = { kind: "roll", id: "tiny", name: "Tiny", width: 20, height: 12 };
		expect(await labelPdf([GEARMOTOR], printing({ stock: tiny }))).toMatchObject({
			ok: false,
			error: { say: expect.stringContaining("arger") },
		});
	});
});

describe("the settings of a print", () => {
	it("are one copy, from the first label, not moved, unless said otherwise", () => {
		expect(printSettingsSchema.parse({})).toEqual({ startAt: 1, copies: 1, nudgeX: 0, nudgeY: 0, outlines: false });
	});
	it.each([{ startAt: 0 }, { copies: 0 }, { copies: 21 }, { nudgeX: 11 }, { nudgeY: -10.1 }, { startAt: 1.5 }])("refuse %j", (settings) => {
		expect(printSettingsSchema.safeParse(settings).success).toBe(false);
	});
});
