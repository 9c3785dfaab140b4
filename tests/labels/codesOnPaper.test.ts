import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { codeText } from "@/lib/labels/address";
import { labelFonts } from "@/lib/labels/labelFonts";
import { layoutLabel } from "@/lib/labels/labelLayout";
import { labelPdf } from "@/lib/labels/labelPdf";
import { labelSvg } from "@/lib/labels/labelSvg";
import { qrModules } from "@/lib/labels/qrModules";
import { GEARMOTOR, good, OVERFULL, pagesOf, printing, readByOthers, SHOP_ADDRESS, stock, TUBE } from "./printed";

const PRINTER_DPI = 203;
// Sheets are read whole by a scanner, label by label by a phone; rolls are one label a page.
const ROLLS = ["roll-62x29", "roll-57x32", "roll-100x50", "continuous-62"];
const ADDRESSES = [
	{ holds: "the bare tag", address: null },
	{ holds: "the shop's address with the tag", address: SHOP_ADDRESS },
];

async function printedLabel(content: typeof GEARMOTOR, stockId: string, address: typeof SHOP_ADDRESS | null): Promise<Buffer> {
	const { pdf } = good(await labelPdf([content], printing({ stock: stock(stockId), address })));
	const [page] = await pagesOf(pdf, PRINTER_DPI);
	if (page === undefined) throw new Error("no page was drawn");
	return page;
}

/** As it lies before a phone: turned by some degrees. */
const turned = (png: Buffer, degrees: number): Promise<Buffer> => sharp(png).rotate(degrees, { background: "white" }).png().toBuffer();
async function shrunk(png: Buffer, share: number): Promise<Buffer> {
	const { width } = await sharp(png).metadata();
	return sharp(png)
		.resize({ width: Math.round(width * share) })
		.png()
		.toBuffer();
}

describe("the code of a label on paper", { timeout: 120_000 }, () => {
	describe.each(ADDRESSES)("that holds $holds", ({ address }) => {
		it.each(ROLLS)("is read from a 203 dpi print by three readers that are not ours: %s", async (id) => {
			const said = codeText(GEARMOTOR.tag, address);
			expect(await readByOthers(await printedLabel(GEARMOTOR, id, address))).toEqual({ jsqr: said, zxing: said, zbar: said });
		});

		it("is read when the label lies upside down or sideways", async () => {
			const label = await printedLabel(TUBE, "roll-62x29", address);
			const said = codeText(TUBE.tag, address);
			for (const degrees of [90, 180, 270]) {
				expect(await readByOthers(await turned(label, degrees))).toEqual({ jsqr: said, zxing: said, zbar: said });
			}
		});

		it("is read when the label lies askew, at 80 % of its size", async () => {
			const label = await shrunk(await printedLabel(GEARMOTOR, "roll-62x29", address), 0.8);
			const said = codeText(GEARMOTOR.tag, address);
			for (const degrees of [0, 15, 37]) {
				const read = await readByOthers(await turned(label, degrees));
				expect([read.jsqr, read.zxing]).toEqual([said, said]);
			}
		});

		it("is read from the fullest label too", async () => {
			const said = codeText(OVERFULL.tag, address);
			expect(await readByOthers(await printedLabel(OVERFULL, "roll-57x32", address))).toEqual({ jsqr: said, zxing: said, zbar: said });
		});

		it("is read on every label of a full sheet", async () => {
			for (const id of ["a4-21", "letter-30"]) {
				const labels = [GEARMOTOR, TUBE, OVERFULL];
				const { pdf } = good(await labelPdf(labels, printing({ stock: stock(id), address })));
				const [page] = await pagesOf(pdf, PRINTER_DPI);
				const sheet = stock(id);
				if (page === undefined || sheet.kind !== "sheet") throw new Error("no sheet was drawn");
				const dots = (mm: number) => Math.round((mm / 25.4) * PRINTER_DPI);
				for (const [at, { tag }] of labels.entries()) {
					const left = dots(sheet.left + at * sheet.pitchX);
					const cut = { left, top: dots(sheet.top), width: dots(sheet.width), height: dots(sheet.height) };
					const read = await readByOthers(await sharp(page).extract(cut).png().toBuffer());
					expect([read.jsqr, read.zxing]).toEqual([codeText(tag, address), codeText(tag, address)]);
				}
			}
		});

		it("is read from the picture on the screen", async () => {
			const tools = { type: labelFonts(), modulesOf: qrModules, address };
			const svg = labelSvg(good(layoutLabel(GEARMOTOR, stock("roll-62x29"), tools)));
			const said = codeText(GEARMOTOR.tag, address);
			const read = await readByOthers(await sharp(Buffer.from(svg), { density: 203 }).png().toBuffer());
			expect([read.jsqr, read.zxing]).toEqual([said, said]);
		});
	});

	it("is not found by any reader where there is none", async () => {
		const blank = await sharp({ create: { width: 500, height: 230, channels: 3, background: "white" } })
			.png()
			.toBuffer();
		expect(await readByOthers(blank)).toEqual({ jsqr: null, zxing: null, zbar: null });
	});
});
