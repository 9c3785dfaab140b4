// Packages carry fonts as WOFF, whose tables are packed (W3C, WOFF File Format 1.0). Unpacked once, a font is read many
// times faster: the PDF library otherwise unpacks the table of outlines anew for every letter that it embeds.

import { inflateSync } from "node:zlib";

const WOFF = 0x774f4646;
const HEADER_BYTES = 44;
const ENTRY_BYTES = 20;
const SFNT_HEADER_BYTES = 12;
const SFNT_ENTRY_BYTES = 16;

const padded = (length: number): number => (length + 3) & ~3;

/** The font as OpenType: a WOFF file unpacked, any other as it is. */
export function asOpenType(file: Buffer): Buffer {
	if (file.readUInt32BE(0) !== WOFF) return file;
	const count = file.readUInt16BE(12);
	const tables = Array.from({ length: count }, (_, at) => {
		const entry = HEADER_BYTES + at * ENTRY_BYTES;
		const [tag, offset, packed, length, checksum] = [0, 4, 8, 12, 16].map((field) => file.readUInt32BE(entry + field)) as [
			number,
			number,
			number,
			number,
			number,
		];
		const bytes = file.subarray(offset, offset + packed);
		return { tag, checksum, bytes: packed < length ? inflateSync(bytes) : bytes };
	});
	const start = SFNT_HEADER_BYTES + count * SFNT_ENTRY_BYTES;
	const font = Buffer.alloc(tables.reduce((sum, { bytes }) => sum + padded(bytes.length), start));
	// The three numbers after the count speed up a search that no reader here makes, but they belong there.
	const power = 2 ** Math.floor(Math.log2(count));
	font.writeUInt32BE(file.readUInt32BE(4), 0);
	for (const [at, value] of [count, power * 16, Math.log2(power), (count - power) * 16].entries()) font.writeUInt16BE(value, 4 + at * 2);
	let place = start;
	for (const [at, { tag, checksum, bytes }] of tables.entries()) {
		for (const [field, value] of [tag, checksum, place, bytes.length].entries()) {
			font.writeUInt32BE(value, SFNT_HEADER_BYTES + at * SFNT_ENTRY_BYTES + field * 4);
		}
		bytes.copy(font, place);
		place += padded(bytes.length);
	}
	return font;
}
