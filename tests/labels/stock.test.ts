import { describe, expect, it } from "vitest";
import { cornerOf, labelsPerPage, misfitsOf, SMALLEST_LABEL, STOCKS, type Stock, stockOf, stockSchema } from "@/lib/labels/stock";

const sheets = STOCKS.flatMap((stock) => (stock.kind === "sheet" ? [stock] : []));
const a4 = sheets.find(({ id }) => id === "a4-21");
if (a4 === undefined) throw new Error("no A4 sheet");

describe("label stock", () => {
	it.each(STOCKS)("$name passes the check that a shop's own stock must pass", (stock) => {
		expect(stockSchema.parse(stock)).toEqual(stock);
	});

	it.each(sheets)("$name: every label lies on its page, and none on another", (sheet) => {
		const corners = Array.from({ length: labelsPerPage(sheet) }, (_, place) => cornerOf(sheet, place));
		for (const [at, { x, y }] of corners.entries()) {
			expect(x).toBeGreaterThanOrEqual(0);
			expect(y).toBeGreaterThanOrEqual(0);
			expect(x + sheet.width).toBeLessThanOrEqual(sheet.pageWidth + 0.01);
			expect(y + sheet.height).toBeLessThanOrEqual(sheet.pageHeight + 0.01);
			for (const other of corners.slice(at + 1)) {
				const apart = Math.abs(other.x - x) >= sheet.width - 0.01 || Math.abs(other.y - y) >= sheet.height - 0.01;
				expect(apart).toBe(true);
			}
		}
	});

	it("is counted row by row from the top left", () => {
		expect(cornerOf(a4, 0)).toEqual({ x: 7.2, y: 15.15 });
		expect(cornerOf(a4, 2)).toEqual({ x: 7.2 + 2 * 66, y: 15.15 });
		expect(cornerOf(a4, 3)).toEqual({ x: 7.2, y: 15.15 + 38.1 });
		expect(labelsPerPage(a4)).toBe(21);
	});

	it.each([
		["a column too many", { columns: 4 }, "columns"],
		["a row too many", { rows: 8 }, "rows"],
		["a pitch narrower than the label", { pitchX: 60 }, "pitchX"],
		["a pitch lower than the label", { pitchY: 30 }, "pitchY"],
		["a margin that pushes the last column off the page", { left: 20 }, "columns"],
		["a label narrower than any that can be read", { width: SMALLEST_LABEL.width - 1 }, "width"],
		["a label lower than any that can be read", { height: SMALLEST_LABEL.height - 1 }, "height"],
		["half a column", { columns: 2.5 }, "columns"],
	])("of the shop's own is refused with %s, at the field to change", (_what, change, field) => {
		const read = stockSchema.safeParse({ ...a4, ...change });
		expect(read.success).toBe(false);
		expect(read.error?.issues.map((issue) => issue.path.join("."))).toContain(field);
	});

	it("says by how much a layout misses its page", () => {
		expect(misfitsOf({ ...a4, columns: 4 })).toEqual([
			{ path: "columns", say: expect.stringMatching(/ends 268\.7 mm from the left, but the page is 210\.0 mm/) },
		]);
	});

	it("on a continuous roll has a longest label that is not shorter than its shortest", () => {
		const continuous: Stock = { kind: "continuous", id: "own", name: "Own", width: 62, shortest: 50, longest: 30 };
		expect(misfitsOf(continuous).map(({ path }) => path)).toEqual(["longest"]);
	});

	it("of the shop's own is found before the common one of the same id, and an unknown one is refused", () => {
		const own: Stock = { kind: "roll", id: "roll-62x29", name: "Ours", width: 62, height: 29 };
		expect(stockOf("roll-62x29", [own])).toEqual({ ok: true, value: own });
		expect(stockOf("gone")).toMatchObject({ ok: false, error: { code: "no-such-stock" } });
	});
});
