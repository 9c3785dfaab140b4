import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CsvCell, csvOf } from "@/lib/core/csv";

/** Read by a parser that shares nothing with the writer. */
const read = (file: string): string[][] => parse(file, { bom: true, relax_column_count: false });
const columns = ["what", "amount"];
const sheet = (...rows: readonly (readonly [CsvCell, CsvCell])[]) => csvOf({ columns, rows });

describe("a table for spreadsheets", () => {
	it("begins with the mark of UTF-8 and ends its lines as RFC 4180 does", () => {
		const file = sheet([{ text: "Öl für die Welle" }, { figure: "12.30" }]);
		expect(file.charCodeAt(0)).toBe(0xfeff);
		expect(file.slice(1)).toBe("what,amount\r\nÖl für die Welle,12.30\r\n");
	});

	it("is read back as it was written, whatever stands in its words", () => {
		// What is neither a formula nor a lone carriage return, which parsers take for the end of a line.
		const word = fc.string({ unit: "grapheme" }).filter((text) => !/^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]|\r/.test(text));
		fc.assert(
			fc.property(fc.array(fc.tuple(word, fc.integer()), { maxLength: 20 }), (lines) => {
				const file = sheet(...lines.map(([text, figure]): [CsvCell, CsvCell] => [{ text }, { figure }]));
				expect(read(file)).toEqual([columns, ...lines.map(([text, figure]) => [text, String(figure)])]);
			}),
			{ seed: 71, numRuns: 300 },
		);
	});

	// OWASP, "CSV Injection": cells that begin with these signs are taken for formulas (from memory).
	it.each(["=1+1", "+49 30 1234", "-5 parsecs", "@SUM(A1)", "\t=1", "  =1", "\uff1d1", "\r=1", "\n=1"])(
		"words that a spreadsheet would take for a formula get an apostrophe: %j",
		(text) => {
			expect(read(sheet([{ text }, null]))[1]?.[0]).toBe(`'${text}`);
		},
	);

	it("figures keep their minus and their point", () => {
		expect(read(sheet([{ text: "credited" }, { figure: "-12.30" }]))[1]).toEqual(["credited", "-12.30"]);
		expect(() => sheet([null, { figure: "1,234" }])).toThrow("not a figure");
		expect(() => sheet([null, { figure: "=1" }])).toThrow("not a figure");
		expect(() => csvOf({ columns, rows: [[null]] })).toThrow("a row of 1 cells under 2 columns");
	});
});
