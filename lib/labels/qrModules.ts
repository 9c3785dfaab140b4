// The modules of a label's QR code (ISO/IEC 18004), as a square of dark and light.

import QRCode from "qrcode";

/** A QR symbol without its quiet zone: rows of modules, true is dark; a square of 17 + 4 x version. */
export type QrModules = { readonly version: number; readonly level: QrLevel; readonly rows: readonly (readonly boolean[])[] };
export type QrLevel = "L" | "M" | "Q" | "H";

/** Light modules that a reader needs around the symbol, on each side. */
export const QUIET_MODULES = 4;

// Alphanumeric characters that versions 1 to 6 hold at each level of error correction: ISO/IEC 18004, table 7.
const CAPACITY: readonly Readonly<Record<QrLevel, number>>[] = [
	{ L: 25, M: 20, Q: 16, H: 10 },
	{ L: 47, M: 38, Q: 29, H: 20 },
	{ L: 77, M: 61, Q: 47, H: 35 },
	{ L: 114, M: 90, Q: 67, H: 50 },
	{ L: 154, M: 122, Q: 87, H: 64 },
	{ L: 195, M: 154, Q: 108, H: 84 },
];

const ALPHANUMERIC = /^[0-9A-Z $%*+\-./:]+$/;
const DIRTY_ENOUGH = "M"; // a label in a workshop gets scratched and oily; L is for clean paper

/**
 * The smallest version that holds `text` at level M or better, at the best level which that version still has room for:
 * version 1 for a bare tag, 2 for an address of up to 38 characters with its tag. Null if even version 6 is too small.
 * Requires alphanumeric characters; others are a bug of the caller.
 */
export function qrSizeFor(text: string): { version: number; level: QrLevel } | null {
	if (!ALPHANUMERIC.test(text)) throw new RangeError(`not in the QR code's alphanumeric mode: ${JSON.stringify(text)}`);
	const at = CAPACITY.findIndex((room) => text.length <= room[DIRTY_ENOUGH]);
	const room = CAPACITY[at];
	if (room === undefined) return null;
	const level = text.length <= room.H ? "H" : text.length <= room.Q ? "Q" : DIRTY_ENOUGH;
	return { version: at + 1, level };
}

/** The modules of a QR code over `text`; null if it is too long for a label (see `qrSizeFor`). */
export function qrModules(text: string): QrModules | null {
	const size = qrSizeFor(text);
	if (size === null) return null;
	const { modules } = QRCode.create([{ data: text, mode: "alphanumeric" }], { version: size.version, errorCorrectionLevel: size.level });
	const side = modules.size;
	if (side !== 17 + 4 * size.version) throw new Error(`the QR encoder gave ${side} modules for version ${size.version}`);
	const rows = Array.from({ length: side }, (_, y) => Array.from({ length: side }, (_, x) => modules.get(y, x) === 1));
	return { ...size, rows };
}
