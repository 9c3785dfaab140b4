import { describe, expect, it } from "vitest";
import { CAP_HEIGHT } from "@/lib/labels/face";
import { labelFonts } from "@/lib/labels/labelFonts";
import { layoutLabel } from "@/lib/labels/labelLayout";
import { labelPdf } from "@/lib/labels/labelPdf";
import { qrModules } from "@/lib/labels/qrModules";
import { STOCKS, type Stock } from "@/lib/labels/stock";
import { pagesDrawn } from "./contentStream";
import { GEARMOTOR, good, manyLabels, OVERFULL, printing, SHOP_ADDRESS, TUBE } from "./printed";

const TENTH = 0.1;
const OWN: readonly Stock[] = [
	{ kind: "roll", id: "own-roll", name: "Own roll", width: 44.45, height: 31.75 },
	{
		kind: "sheet",
		id: "own-sheet",
		name: "Own sheet",
		pageWidth: 148.5,
		pageHeight: 210,
		columns: 2,
		rows: 5,
		width: 66.7,
		height: 36.3,
		top: 11.35,
		left: 5.05,
		pitchX: 71.7,
		pitchY: 37.75,
	},
];
const NUDGES = [
	{ nudgeX: 0, nudgeY: 0 },
	{ nudgeX: 0.7, nudgeY: -0.4 },
];

/** Where the labels of a full page begin: counted by hand from the maker's figures, row by row. */
function corners(stock: Stock): { x: number; y: number }[] {
	if (stock.kind !== "sheet") return [{ x: 0, y: 0 }];
	const all: { x: number; y: number }[] = [];
	let y = stock.top;
	for (let row = 1; row <= stock.rows; row++) {
		let x = stock.left;
		for (let column = 1; column <= stock.columns; column++) {
			all.push({ x, y });
			x += stock.pitchX;
		}
		y += stock.pitchY;
	}
	return all;
}

const near = (measured: number | undefined, wanted: number): void =>
	expect(Math.abs((measured ?? Number.NaN) - wanted)).toBeLessThan(TENTH);

describe("what the PDF draws, measured in its own drawing", () => {
	describe.each([...STOCKS, ...OWN])("on $name", (stock) => {
		const places = corners(stock);
		const labels = manyLabels(places.length);

		it.each(NUDGES)("has each label's edges and its code within a tenth of a millimetre, moved by %j", async (nudge) => {
			const { pdf } = good(await labelPdf(labels, printing({ stock, outlines: true, ...nudge })));
			const [page, ...others] = pagesDrawn(pdf);
			expect(others).toEqual([]);
			near(page?.width, stock.kind === "sheet" ? stock.pageWidth : stock.width);
			if (stock.kind === "sheet") near(page?.height, stock.pageHeight);

			const edges = page?.paths.filter(({ how }) => how === "stroke") ?? [];
			expect(edges).toHaveLength(places.length);
			const height = stock.kind === "continuous" ? stock.shortest : stock.height;
			// A code is the one path of many rectangles.
			const codes = page?.paths.filter(({ rectangles }) => rectangles > 50) ?? [];
			expect(codes).toHaveLength(places.length);
			const laid = good(layoutLabel({ ...GEARMOTOR }, stock, { type: labelFonts(), modulesOf: qrModules, address: null }));
			const code = laid.marks.find((mark) => mark.kind === "code");
			if (code?.kind !== "code") throw new Error("no code");
			for (const [at, { x, y }] of places.entries()) {
				const [left, top] = [x + nudge.nudgeX, y + nudge.nudgeY];
				near(edges[at]?.box.left, left);
				near(edges[at]?.box.top, top);
				near(edges[at]?.box.right, left + stock.width);
				near(edges[at]?.box.bottom, top + height);
				// 21 modules a side: version 1, a bare tag (ISO/IEC 18004).
				near(codes[at]?.box.left, left + code.x);
				near(codes[at]?.box.top, top + code.y);
				near(codes[at]?.box.right, left + code.x + 21 * code.module);
				near(codes[at]?.box.bottom, top + code.y + 21 * code.module);
			}
		});
	});

	it("has no letter whose capital is under 2 mm, nothing off the label, and no colour but black and the paper", async () => {
		for (const stock of [...STOCKS, ...OWN].filter(({ id }) => id !== "a4-65")) {
			for (const content of [GEARMOTOR, { ...OVERFULL, print: 3 }, TUBE]) {
				const { pdf } = good(await labelPdf([content], printing({ stock, address: SHOP_ADDRESS })));
				const [page] = pagesDrawn(pdf);
				expect(page?.texts.length).toBeGreaterThan(3);
				for (const { em } of page?.texts ?? []) expect(em * CAP_HEIGHT).toBeGreaterThan(1.99);
				expect(page?.colours).toContain("0 0 0");
				expect([...(page?.colours ?? [])].sort().filter((colour) => !["0 0 0", "1 1 1"].includes(colour))).toEqual([]);
			}
		}
	});
});
