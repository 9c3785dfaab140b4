// So many of a line, in words: pieces are counted, what is measured keeps its unit. Pure.

export type Counted = { readonly count: number; readonly unit: string; readonly what: string };

/** `2 × lamp`, `5 m cloth wire`. */
export const counted = ({ count, unit, what }: Counted): string => (unit === "piece" ? `${count} × ${what}` : `${count} ${unit} ${what}`);

/** As it stands in a list, where a single piece needs no number: `lamp`, `2 × lamp`, `1 m cloth wire`. */
export const listed = (line: Counted): string => (line.unit === "piece" && line.count === 1 ? line.what : counted(line));

/** A part of a line: `2 of 6 lamp`, `2 of 5 m cloth wire`. */
export const partOf = (count: number, line: Counted): string =>
	`${count} of ${line.count} ${line.unit === "piece" ? "" : `${line.unit} `}${line.what}`;
