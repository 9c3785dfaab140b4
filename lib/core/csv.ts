// A table as a file that spreadsheets read: comma separated, UTF-8 with its mark, lines ended as RFC 4180 has them. Pure.

import { stringify } from "csv-stringify/sync";

/** Words, or a figure with a decimal point (`12.30`, `-4`). Nothing is an empty cell. */
export type CsvCell = { readonly text: string } | { readonly figure: string | number } | null;

export type CsvTable = { readonly columns: readonly string[]; readonly rows: readonly (readonly CsvCell[])[] };

/**
 * What a spreadsheet would take for a formula, also written in full width. Words that begin so get an apostrophe before
 * them, which spreadsheets take for "this is text"; a figure may begin with a minus.
 */
const FORMULA = /^[\s]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/;
const FIGURE = /^-?\d+(\.\d+)?$/;

/** The file, whole. Requires as many cells in a row as there are columns. */
export function csvOf({ columns, rows }: CsvTable): string {
	for (const row of rows)
		if (row.length !== columns.length) throw new Error(`a row of ${row.length} cells under ${columns.length} columns`);
	return stringify([columns.map((name) => cell({ text: name })), ...rows.map((row) => row.map(cell))], {
		bom: true,
		record_delimiter: "windows",
	});
}

function cell(of: CsvCell): string {
	if (of === null) return "";
	if ("text" in of) return FORMULA.test(of.text) ? `'${of.text}` : of.text;
	const figure = String(of.figure);
	if (!FIGURE.test(figure)) throw new Error(`not a figure: ${figure}`);
	return figure;
}
