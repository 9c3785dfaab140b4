// The fonts of labels, from packages on this computer: Atkinson Hyperlegible, in which 0 and O, 1 and I cannot be
// confused, and behind it DejaVu for letters that it lacks (Greek, Cyrillic, Hebrew, Arabic and many signs).

import { createRequire } from "node:module";
import path from "node:path";
import PDFDocument from "pdfkit";
import { CAP_HEIGHT, type Face, type TypeCase } from "@/lib/labels/face";
import { charactersOf } from "@/lib/labels/fitText";
import { inDrawnOrder, isRightToLeft } from "@/lib/labels/readingOrder";

type Font = {
	readonly name: string;
	readonly file: string /** Size against the face's own, so that capitals are equally high. */;
	readonly factor: number;
};

const ATKINSON = "@fontsource/atkinson-hyperlegible";
const DEJAVU_CAP_HEIGHT = 0.729;
const wide = (name: string): Font => ({ name, file: `dejavu-fonts-ttf/ttf/${name}.ttf`, factor: CAP_HEIGHT / DEJAVU_CAP_HEIGHT });
const open = (family: "next" | "mono", letters: "latin" | "latin-ext", weight: number): Font => ({
	name: `${family}-${letters}-${weight}`,
	file: `${ATKINSON}-${family}/files/atkinson-hyperlegible-${family}-${letters}-${weight}-normal.woff`,
	factor: 1,
});

/** For each face, the fonts to try in this order. */
const FONTS: Readonly<Record<Face, readonly Font[]>> = {
	sans: [open("next", "latin", 400), open("next", "latin-ext", 400), wide("DejaVuSans")],
	bold: [open("next", "latin", 700), open("next", "latin-ext", 700), wide("DejaVuSans-Bold")],
	mono: [open("mono", "latin", 700), open("mono", "latin-ext", 700), wide("DejaVuSansMono-Bold")],
};

// pdfkit keeps the opened font in a field that its types leave out. The test of this file fails if a new version moves it.
type OpenedFont = { hasGlyphForCodePoint: (codePoint: number) => boolean };
type WithOpenedFont = { _font?: { font?: OpenedFont } };

const resolver = createRequire(path.join(process.cwd(), "package.json"));

/** Makes the fonts known to a document by their names. */
export function registerFonts(document: PDFKit.PDFDocument): void {
	for (const font of Object.values(FONTS).flat()) document.registerFont(font.name, resolver.resolve(font.file));
}

/** A stretch of text in one font. */
export type Run = { readonly font: string; readonly factor: number; readonly text: string };

/** The fonts opened once, to measure with and to split text by. */
export type LabelFonts = TypeCase & { readonly runsOf: (text: string, face: Face) => readonly Run[] };

let opened: LabelFonts | null = null;

/** The label fonts of this computer; opened on first use and kept. */
export function labelFonts(): LabelFonts {
	opened ??= openFonts();
	return opened;
}

function openFonts(): LabelFonts {
	const rule = new PDFDocument({ autoFirstPage: false });
	registerFonts(rule);
	const glyphsOf = new Map<string, OpenedFont>();
	for (const { name } of Object.values(FONTS).flat()) {
		rule.font(name);
		const font = (rule as WithOpenedFont)._font?.font;
		if (font === undefined) throw new Error(`pdfkit did not open ${name}`);
		glyphsOf.set(name, font);
	}
	const has = ({ name }: Font, cluster: string): boolean =>
		[...cluster].every((character) => glyphsOf.get(name)?.hasGlyphForCodePoint(character.codePointAt(0) ?? 0) === true);

	const runs = new Map<string, readonly Run[]>();
	const runsOf = remember(runs, (text, face) => {
		const found: { font: Font; text: string }[] = [];
		for (const cluster of charactersOf(inDrawnOrder(text))) {
			const last = found.at(-1);
			// A blank stays with the word before it, but not with one from right to left: it would be drawn left of it.
			if (last && cluster === " " && !isRightToLeft(last.text)) last.text += cluster;
			else {
				const fonts = FONTS[face];
				const font = fonts.find((candidate) => has(candidate, cluster)) ?? fonts[0];
				if (font === undefined) throw new Error(`no font for ${face}`);
				if (last && last.font === font) last.text += cluster;
				else found.push({ font, text: cluster });
			}
		}
		return found.map(({ font, text: words }) => ({ font: font.name, factor: font.factor, text: words }));
	});

	const widths = new Map<string, number>();
	const widthOf = remember(widths, (text, face) =>
		runsOf(text, face).reduce((sum, run) => sum + (rule.font(run.font).fontSize(1000).widthOfString(run.text) / 1000) * run.factor, 0),
	);
	return { widthOf, runsOf, covers: (cluster) => FONTS.sans.some((font) => has(font, cluster)) };
}

// Labels of one machine repeat most of their words; a bound, since a server runs for months.
const MOST_REMEMBERED = 20_000;

function remember<T>(known: Map<string, T>, compute: (text: string, face: Face) => T): (text: string, face: Face) => T {
	return (text, face) => {
		const key = `${face} ${text}`;
		const before = known.get(key);
		if (before !== undefined) return before;
		if (known.size >= MOST_REMEMBERED) known.clear();
		const value = compute(text, face);
		known.set(key, value);
		return value;
	};
}
