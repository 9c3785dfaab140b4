// Lettering for the demo's drawings: capitals and figures as pen strokes on a grid six units high.
// Drawn here, and not set in a font, so that a picture is the same on every computer.

type Glyph = { readonly width: number; readonly strokes: string };

const g = (width: number, strokes: string): Glyph => ({ width, strokes });

const glyphs: Readonly<Record<string, Glyph>> = {
	A: g(4, "M0 6 L2 0 L4 6 M.75 3.9 H3.25"),
	B: g(3.6, "M0 0 V6 H2.1 A1.55 1.55 0 0 0 2.1 2.9 H0 M0 0 H1.9 A1.45 1.45 0 0 1 1.9 2.9"),
	C: g(4, "M3.9 1.1 C3.4 .35 2.8 0 2.1 0 C.9 0 0 1.2 0 3 S.9 6 2.1 6 C2.8 6 3.4 5.65 3.9 4.9"),
	D: g(4, "M0 0 V6 H1.4 C3 6 4 4.8 4 3 S3 0 1.4 0 Z"),
	E: g(3.2, "M3.2 0 H0 V6 H3.2 M0 2.9 H2.7"),
	F: g(3.1, "M3.1 0 H0 V6 M0 2.9 H2.6"),
	G: g(4, "M3.9 1.1 C3.4 .35 2.8 0 2.1 0 C.9 0 0 1.2 0 3 S.9 6 2.1 6 C2.9 6 3.6 5.7 4 5.1 V3.2 H2.4"),
	H: g(4, "M0 0 V6 M4 0 V6 M0 2.9 H4"),
	I: g(0.2, "M.1 0 V6"),
	J: g(2.4, "M2.4 0 V4.4 C2.4 5.5 1.9 6 1.2 6 C.6 6 .1 5.7 0 5.1"),
	K: g(3.8, "M0 0 V6 M3.6 0 L0 3.7 M1.3 2.5 L3.8 6"),
	L: g(3, "M0 0 V6 H3"),
	M: g(4.6, "M0 6 V0 L2.3 4 L4.6 0 V6"),
	N: g(4, "M0 6 V0 L4 6 V0"),
	O: g(4.4, "M2.2 0 C.9 0 0 1.2 0 3 S.9 6 2.2 6 S4.4 4.8 4.4 3 S3.5 0 2.2 0 Z"),
	P: g(3.7, "M0 6 V0 H2.1 A1.65 1.65 0 0 1 2.1 3.3 H0"),
	Q: g(4.4, "M2.2 0 C.9 0 0 1.2 0 3 S.9 6 2.2 6 S4.4 4.8 4.4 3 S3.5 0 2.2 0 Z M2.8 4.4 L4.4 6.2"),
	R: g(3.8, "M0 6 V0 H2.1 A1.65 1.65 0 0 1 2.1 3.3 H0 M2 3.3 L3.8 6"),
	S: g(3.6, "M3.4 1 C3 .3 2.4 0 1.8 0 C.8 0 .1 .6 .1 1.5 C.1 3.6 3.6 2.4 3.6 4.5 C3.6 5.4 2.8 6 1.8 6 C1 6 .3 5.6 0 4.9"),
	T: g(3.8, "M0 0 H3.8 M1.9 0 V6"),
	U: g(4, "M0 0 V4 C0 5.3 .8 6 2 6 S4 5.3 4 4 V0"),
	V: g(4, "M0 0 L2 6 L4 0"),
	W: g(5.6, "M0 0 L1.5 6 L2.8 1.2 L4.1 6 L5.6 0"),
	X: g(4, "M0 0 L4 6 M4 0 L0 6"),
	Y: g(4, "M0 0 L2 3.2 L4 0 M2 3.2 V6"),
	Z: g(3.8, "M0 0 H3.8 L0 6 H3.8"),
	"0": g(3.8, "M1.9 0 C.7 0 0 1.2 0 3 S.7 6 1.9 6 S3.8 4.8 3.8 3 S3.1 0 1.9 0 Z M1.1 4.4 L2.7 1.6"),
	"1": g(1.8, "M0 1.3 L1.5 0 V6"),
	"2": g(3.6, "M.1 1.4 C.3 .5 1 0 1.8 0 C2.8 0 3.5 .7 3.5 1.6 C3.5 3 .9 4.2 0 6 H3.6"),
	"3": g(
		3.6,
		"M.1 .9 C.5 .3 1.1 0 1.8 0 C2.7 0 3.4 .6 3.4 1.45 C3.4 2.4 2.6 2.8 1.5 2.8 C2.7 2.8 3.6 3.4 3.6 4.4 C3.6 5.4 2.8 6 1.8 6 C1 6 .3 5.6 0 5",
	),
	"4": g(3.8, "M2.8 6 V0 L0 4.3 H3.8"),
	"5": g(3.6, "M3.2 0 H.6 L.3 2.7 C.7 2.4 1.2 2.2 1.8 2.2 C2.9 2.2 3.6 3 3.6 4.1 C3.6 5.2 2.8 6 1.7 6 C1 6 .4 5.7 0 5.1"),
	"6": g(
		3.6,
		"M3.2 .7 C2.9 .2 2.4 0 1.9 0 C.7 0 0 1.4 0 3.6 C0 5.2 .7 6 1.8 6 C2.9 6 3.6 5.2 3.6 4.1 C3.6 3.1 2.9 2.3 1.9 2.3 C1 2.3 .2 2.9 0 3.9",
	),
	"7": g(3.6, "M0 0 H3.6 L1.2 6"),
	"8": g(
		3.6,
		"M1.8 2.8 C.9 2.8 .2 2.2 .2 1.4 S.9 0 1.8 0 S3.4 .6 3.4 1.4 S2.7 2.8 1.8 2.8 C.7 2.8 0 3.5 0 4.4 S.7 6 1.8 6 S3.6 5.3 3.6 4.4 S2.9 2.8 1.8 2.8 Z",
	),
	"9": g(
		3.6,
		"M.4 5.3 C.7 5.8 1.2 6 1.7 6 C2.9 6 3.6 4.6 3.6 2.4 C3.6 .8 2.9 0 1.8 0 C.7 0 0 .8 0 1.9 C0 2.9 .7 3.7 1.7 3.7 C2.6 3.7 3.4 3.1 3.6 2.1",
	),
	".": g(0.4, "M.2 5.8 V6"),
	",": g(0.6, "M.4 5.7 L0 6.9"),
	"-": g(2, "M0 3.1 H2"),
	":": g(0.4, "M.2 2.2 V2.4 M.2 5.4 V5.6"),
	"/": g(2.6, "M0 6.4 L2.6 -.4"),
	"(": g(1.2, "M1.2 -.5 C.2 .8 0 2 0 3 S.2 5.2 1.2 6.5"),
	")": g(1.2, "M0 -.5 C1 .8 1.2 2 1.2 3 S1 5.2 0 6.5"),
	"+": g(2.6, "M1.3 1.8 V4.4 M0 3.1 H2.6"),
	"×": g(2.2, "M0 2 L2.2 4.2 M2.2 2 L0 4.2"),
	"=": g(2.4, "M0 2.3 H2.4 M0 4 H2.4"),
	"&": g(4, "M4 6 L.9 1.9 C.2 .9 .8 0 1.8 0 C2.8 0 3.3 1 2.6 1.8 L.7 3.4 C-.3 4.4 .2 6 1.6 6 C2.8 6 3.6 5 3.8 3.8"),
	"'": g(0.4, "M.2 0 V1.4"),
	"²": g(1.6, "M0 .6 C.2 .1 .5 0 .8 0 C1.3 0 1.6 .3 1.6 .8 C1.6 1.4 .4 1.8 0 2.6 H1.6"),
	"?": g(3.2, "M0 1.2 C.2 .4 .8 0 1.6 0 C2.6 0 3.2 .7 3.2 1.5 C3.2 2.9 1.6 2.9 1.6 4.2 M1.6 5.8 V6"),
};

const GRID = 6;
const SPACE = 2.2;
const CLEAR = 0.55; // units of air between two letters, beside the pen itself: open enough to read at the size of a thumbnail
const PEN = 0.13;

const shown = (text: string): string => text.toUpperCase().replaceAll("–", "-").replaceAll("·", "-").replaceAll('"', "'");

/** Width of a line of lettering in pixels, `height` being that of a capital. */
export function letteringWidth(text: string, height: number, tracking = CLEAR + PEN * GRID): number {
	const letters = [...shown(text)];
	const units = letters.reduce((sum, letter) => sum + (letter === " " ? SPACE : (glyphs[letter]?.width ?? 2)), 0);
	return ((units + Math.max(0, letters.length - 1) * tracking) * height) / GRID;
}

export type Lettering = {
	/** Of the anchor and of the capitals' top edge. */
	readonly x: number;
	readonly y: number;
	readonly height: number;
	readonly colour: string;
	/** Pen width as a share of the height. */
	readonly weight?: number;
	readonly anchor?: "start" | "middle" | "end";
	readonly tracking?: number;
	/** The line is made smaller when it would be wider than this. */
	readonly fit?: number;
};

/** A line of lettering as SVG. A letter that the alphabet lacks is drawn as a question mark, never left out. */
export function lettering(
	text: string,
	{ x, y, height, colour, weight = PEN, anchor = "start", tracking = CLEAR + weight * GRID, fit }: Lettering,
): string {
	const wide = letteringWidth(text, height, tracking);
	const size = fit !== undefined && wide > fit ? (height * fit) / wide : height;
	const width = letteringWidth(text, size, tracking);
	const left = anchor === "middle" ? x - width / 2 : anchor === "end" ? x - width : x;
	const scale = size / GRID;
	let at = 0;
	const paths: string[] = [];
	for (const letter of shown(text)) {
		if (letter !== " ") {
			const glyph = glyphs[letter] ?? glyphs["?"];
			if (glyph !== undefined) {
				paths.push(`<path transform="translate(${at.toFixed(2)} 0)" d="${glyph.strokes}"/>`);
				at += glyph.width;
			}
		} else at += SPACE;
		at += tracking;
	}
	return `<g transform="translate(${left.toFixed(1)} ${(y + (height - size) / 2).toFixed(1)}) scale(${scale.toFixed(4)})" fill="none" stroke="${colour}" stroke-width="${(weight * GRID).toFixed(2)}" stroke-linecap="round" stroke-linejoin="round">${paths.join("")}</g>`;
}

/** The letters of a text that the alphabet lacks. */
export const unknownLetters = (text: string): string[] =>
	[...shown(text)].filter((letter) => letter !== " " && glyphs[letter] === undefined);
