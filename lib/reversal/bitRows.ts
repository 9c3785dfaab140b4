// Sets of small numbers, one a row, for closures over a few thousand openings.

/** `rows` sets over the numbers 0 to `columns` - 1, all empty. */
export type BitRows = { readonly words: number; readonly bits: Uint32Array };

export const bitRows = (rows: number, columns: number): BitRows => {
	const words = (columns + 31) >>> 5;
	return { words, bits: new Uint32Array(rows * words) };
};

export const hasBit = (rows: BitRows, row: number, column: number): boolean =>
	(((rows.bits[row * rows.words + (column >>> 5)] ?? 0) >>> (column & 31)) & 1) === 1;

export const setBit = (rows: BitRows, row: number, column: number): void => {
	const at = row * rows.words + (column >>> 5);
	rows.bits[at] = (rows.bits[at] ?? 0) | (1 << (column & 31));
};

/** The numbers in one word, `base` being the number of its first bit. */
export function eachBit(word: number, base: number, use: (column: number) => void): void {
	for (let rest = word; rest !== 0; rest &= rest - 1) use(base + (31 - Math.clz32(rest & -rest)));
}

/** The numbers in one set, ascending. */
export function bitsOf(rows: BitRows, row: number): number[] {
	const found: number[] = [];
	for (let w = 0; w < rows.words; w++) {
		eachBit(rows.bits[row * rows.words + w] ?? 0, w * 32, (column) => {
			found.push(column);
		});
	}
	return found;
}
