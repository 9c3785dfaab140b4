// 300 labels in one PDF, each code read by two readers that are not ours: as a 203 dpi printer prints it, askew by 7
// degrees, sideways, and at 80 % of its size. How long the PDF takes is measured by `npm run bench`.

import sharp from "sharp";
import { beforeAll, describe, expect, it } from "vitest";
import { codeText } from "@/lib/labels/address";
import { labelPdf } from "@/lib/labels/labelPdf";
import { type Stock, stockOf } from "@/lib/labels/stock";
import { pagesDrawn } from "./contentStream";
import {
	askPoppler,
	good,
	manyLabels,
	type Pixels,
	pixelPagesOf,
	pngOf,
	printing,
	readAllByZbar,
	readInPixels,
	SHOP_ADDRESS,
} from "./printed";

type Picture = ReturnType<typeof sharp>;

const COUNT = 300;
const DPI = 203;
/** What a phone holds its frame over: the code and something of its label around it, in mm. */
const AROUND = 2.5;

describe("300 labels in one PDF", { timeout: 120_000 }, () => {
	const labels = manyLabels(COUNT);
	const wanted = labels.map(({ tag }) => codeText(tag, SHOP_ADDRESS));
	const stock: Stock = good(stockOf("a4-24-70x37"));
	let pdf: Buffer;
	let pages: Pixels[];
	let codes: Pixels[];

	beforeAll(async () => {
		const made = good(await labelPdf(labels, printing({ stock, address: SHOP_ADDRESS })));
		pdf = made.pdf;
		pages = await pixelPagesOf(pdf, DPI);
		const dots = (mm: number): number => Math.round((mm / 25.4) * DPI);
		// Where the codes are is read from the PDF's own drawing, and cut out of the picture that poppler makes of it.
		codes = pagesDrawn(pdf).flatMap((drawn, at) => {
			const page = pages[at];
			if (page === undefined) throw new Error(`page ${at + 1} is not drawn`);
			return drawn.paths
				.filter(({ rectangles }) => rectangles > 50)
				.map(({ box }) => {
					const [left, top] = [dots(Math.max(0, box.left - AROUND)), dots(Math.max(0, box.top - AROUND))];
					const [width, height] = [dots(box.right + AROUND) - left, dots(box.bottom + AROUND) - top];
					const rows = Array.from({ length: height }, (_, down) => {
						const from = (top + down) * page.width + left;
						return page.data.subarray(from, from + width);
					});
					return { data: Buffer.concat(rows), width, height };
				});
		});
	}, 120_000);

	const seen = async (picture: Picture): Promise<Pixels> => {
		const { data, info } = await picture.extractChannel(0).raw().toBuffer({ resolveWithObject: true });
		return { data, width: info.width, height: info.height };
	};
	const readAll = async (as: (picture: Picture, width: number) => Picture) => {
		const read = [];
		for (const { data, width, height } of codes) {
			const picture = sharp(data, { raw: { width, height, channels: 1 } });
			read.push(await readInPixels(await seen(as(picture, width))));
		}
		return { jsqr: read.map(({ jsqr }) => jsqr), zxing: read.map(({ zxing }) => zxing) };
	};

	it("come out on 13 sheets, each tag once in letters", async () => {
		expect(pages).toHaveLength(13);
		expect(new Set(wanted).size).toBe(COUNT);
		const text = await askPoppler("pdftotext", pdf);
		expect(text.match(/12-\d{4}-[0-9A-Z]/g)?.sort()).toEqual(labels.map(({ tag }) => tag as string).sort());
	});

	it.each([
		["as it is printed", (picture: Picture) => picture],
		["askew by 7 degrees", (picture: Picture) => picture.rotate(7, { background: "white" })],
		["sideways", (picture: Picture) => picture.rotate(90)],
		["at 80 % of its size", (picture: Picture, width: number) => picture.resize({ width: Math.round(width * 0.8) })],
	])("have codes that two readers read, all of them, %s", async (_, as) => {
		expect(await readAll(as)).toEqual({ jsqr: wanted, zxing: wanted });
	});

	it("are read by a third reader, a whole sheet at a time, where zbarimg is installed", async ({ skip }) => {
		const [first] = pages;
		if (first === undefined) throw new Error("no page");
		const read = await readAllByZbar(await pngOf(first));
		if (read === null) return skip("zbarimg is not on this computer: apt-get install -y zbar-tools");
		expect(read.sort()).toEqual(wanted.slice(0, 24).sort());
	});
});
