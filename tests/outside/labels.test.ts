// Label sheets and QR codes against published figures and against an encoder that is not ours.
// Data: tests/outside/data/labels. sheets.csv: rows flagged SEEN are from sheet data pages, MEMORY rows are recalled;
// qr-*: ISO/IEC 18004 figures, and versions as the npm package qrcode 1.5.4 gives them. The modules are held against
// bwip-js, an encoder of other hands (Barcode Writer in Pure PostScript) than the one that the program draws with.

import { readFileSync } from "node:fs";
import path from "node:path";
import bwipjs from "bwip-js/node";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DOT } from "@/lib/labels/labelMeasures";
import { QUIET_MODULES, qrModules, qrSizeFor } from "@/lib/labels/qrModules";
import { misfitsOf, type SheetStock, STOCKS } from "@/lib/labels/stock";
import cases from "./data/labels/qr-cases.json";

function rowsOf(file: string): Record<string, string>[] {
	const [header = "", ...lines] = readFileSync(path.join(import.meta.dirname, "data/labels", file), "utf8")
		.trim()
		.split(/\r?\n/);
	const names = header.split(",");
	return lines.map((line) => {
		const cells = line.split(",");
		return Object.fromEntries(names.map((name, at) => [name, cells[at] ?? ""]));
	});
}

const sheets = rowsOf("sheets.csv").map((row) => {
	const mm = (name: string): number => Number(row[name]);
	const sheet: SheetStock = {
		kind: "sheet",
		id: row.layout ?? "",
		name: row.layout ?? "",
		pageWidth: mm("page_w_mm"),
		pageHeight: mm("page_h_mm"),
		columns: mm("columns"),
		rows: mm("rows"),
		width: mm("label_w_mm"),
		height: mm("label_h_mm"),
		top: mm("top_mm"),
		left: mm("left_mm"),
		pitchX: mm("pitch_x_mm"),
		pitchY: mm("pitch_y_mm"),
	};
	return { flag: row.flag, sheet };
});
const seen = sheets.filter(({ flag }) => flag === "SEEN");

describe("label sheets", () => {
	it.each(seen)("has the measures of the data page: $sheet.id", ({ sheet }) => {
		const ours = STOCKS.find(({ id }) => id === sheet.id);
		expect(ours).toEqual({ ...sheet, name: ours?.name });
	});

	it("were compared with two data pages, the A4 sheet of 21 and the US Letter sheet of 30", () => {
		expect(seen.map(({ sheet }) => sheet.id)).toEqual(["a4-21", "letter-30"]);
	});

	it.each(sheets)("fits its page by our own check: $sheet.id", ({ sheet }) => {
		expect(misfitsOf(sheet)).toEqual([]);
	});
});

const capacities = rowsOf("qr-alphanumeric-capacity.csv").filter(({ version }) => Number(version) <= 6);

describe("the QR code of a label", () => {
	it.each(capacities)(
		"of version $version holds as many characters at level M as ISO/IEC 18004 says, and one more needs the next",
		(row) => {
			const room = Number(row.alnum_M);
			expect(qrSizeFor("A".repeat(room))?.version).toBe(Number(row.version));
			expect(qrSizeFor("A".repeat(room + 1))?.version).not.toBe(Number(row.version));
		},
	);

	it.each(capacities)("of version $version takes the best level that it has room for", (row) => {
		const previous = capacities.find(({ version }) => Number(version) === Number(row.version) - 1);
		const least = Number(previous?.alnum_M ?? 0);
		for (const level of ["H", "Q", "M"] as const) {
			const most = Number(row[`alnum_${level}`]);
			if (most > least) expect(qrSizeFor("A".repeat(most))).toEqual({ version: Number(row.version), level });
		}
	});

	it.each(cases.cases)("over $text has the version that another encoder gives it at level M", ({ text, M }) => {
		expect(qrModules(text)).toMatchObject({ version: M });
	});

	it("is of version 1 for a bare tag, at the level that survives most dirt, and of version 2 for an address with its tag", () => {
		expect(qrSizeFor("12-0147-K")).toEqual({ version: 1, level: "H" });
		expect(qrSizeFor("HTTP://HOST/T/12-0147-K")).toMatchObject({ version: 2 });
	});

	it("is module for module a code that another encoder makes, in one of the eight masks, in alphanumeric mode", () => {
		fc.assert(
			fc.property(fc.stringMatching(/^[0-9A-Z $%*+\-./:]{1,60}$/), (text) => {
				const ours = qrModules(text);
				if (ours === null) throw new Error("no code");
				const drawn = ours.rows.map((row) => row.map(Number).join("")).join("\n");
				const others = [1, 2, 3, 4, 5, 6, 7, 8].map((mask) => {
					const [made] = bwipjs.raw("qrcode", text, `version=${ours.version} eclevel=${ours.level} mask=${mask}`);
					if (made === undefined || !("pixs" in made)) throw new Error("the other encoder gave no matrix");
					return Array.from({ length: made.pixx }, (_, y) => made.pixs.slice(y * made.pixx, (y + 1) * made.pixx).join("")).join("\n");
				});
				expect(others).toContain(drawn);
			}),
			{ seed: 18004, numRuns: 40 },
		);
	});

	it("has 17 + 4 x version modules a side", () => {
		for (const row of capacities) {
			const code = qrModules("A".repeat(Number(row.alnum_M)));
			expect(code?.rows.length).toBe(Number(row.modules));
			expect(code?.rows.every((line) => line.length === code.rows.length)).toBe(true);
		}
	});

	it("keeps four light modules around it (ISO/IEC 18004), so that a bare tag takes 29 modules a side: 14.5 mm at 4 dots", () => {
		expect(QUIET_MODULES).toBe(4);
		expect((21 + 2 * QUIET_MODULES) * 4 * DOT).toBeCloseTo(14.5, 1);
		expect((25 + 2 * QUIET_MODULES) * 4 * DOT).toBeCloseTo(16.5, 1);
	});

	it("has modules over the least of GS1 at retail, 0.396 mm, at 4 dots, and under it at 3 (GS1 General Specifications 5.12.3.1)", () => {
		expect(4 * DOT).toBeGreaterThan(0.396);
		expect(3 * DOT).toBeLessThan(0.396);
	});

	it("comes out at 203 dpi in dots of 0.1251 mm: 4 dots are 0.5005 mm, 3 dots 0.3754 mm (arithmetic)", () => {
		expect(DOT).toBeCloseTo(0.1251, 4);
		expect(4 * DOT).toBeCloseTo(0.5005, 4);
		expect(3 * DOT).toBeCloseTo(0.3754, 4);
	});
});
