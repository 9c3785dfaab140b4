// The fonts of labels, from packages on this computer: Atkinson Hyperlegible, in which 0 and O, 1 and I cannot be
// confused, and behind it DejaVu for letters that it lacks (Greek, Cyrillic, Hebrew, Arabic and many signs).

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import PDFDocument from "pdfkit";
import { CAP_HEIGHT, type Face, type TypeCase } from "@/lib/labels/face";
import { charactersOf, isPlain } from "@/lib/labels/fitText";
import { asOpenType } from "@/lib/labels/openType";
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
const FILES: ReadonlyMap<string, string> = new Map(Object.values(FONTS).flatMap((fonts) => fonts.map(({ name, file }) => [name, file])));
const found = new Map<string, Buffer>();

/** The font of this name, from this computer; read on first use and kept. */
function fontBytes(name: string): Buffer {
	const before = found.get(name);
	if (before !== undefined) return before;
	const file = FILES.get(name);
	if (file === undefined) throw new Error(`no font is called ${name}`);
	const bytes = asOpenType(readFileSync(resolver.resolve(file)));
	found.set(name, bytes);
	return bytes;
}

/** Makes the font of this name the one that `document` writes in. */
export function takeFont(document: PDFKit.PDFDocument, name: string): PDFKit.PDFDocument {
	const known = inDocument.get(document) ?? new Set();
	inDocument.set(document, known);
	if (!known.has(name)) document.registerFont(name, fontBytes(name));
	known.add(name);
	return document.font(name);
}
const inDocument = new WeakMap<PDFKit.PDFDocument, Set<string>>();

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
	const glyphs = new Map<string, OpenedFont>();
	const glyphsOf = (name: string): OpenedFont => {
		const before = glyphs.get(name);
		if (before !== undefined) return before;
		takeFont(rule, name);
		const font = (rule as WithOpenedFont)._font?.font;
		if (font === undefined) throw new Error(`pdfkit did not open ${name}`);
		glyphs.set(name, font);
		return font;
	};
	const contains = ({ name }: Font, cluster: string): boolean =>
		[...cluster].every((character) => glyphsOf(name).hasGlyphForCodePoint(character.codePointAt(0) ?? 0));

	// The later fonts are large, and opened only for a letter that the earlier ones lack.
	const fontOf = remember<Font | null>((cluster, face) => FONTS[face].find((font) => contains(font, cluster)) ?? null);

	const runsOf = remember<readonly Run[]>((text, face) => {
		const found: { font: Font; text: string }[] = [];
		for (const cluster of charactersOf(inDrawnOrder(text))) {
			const last = found.at(-1);
			// A blank stays with the word before it, but not with one from right to left: it would be drawn left of it.
			if (last && cluster === " " && !isRightToLeft(last.text)) last.text += cluster;
			else {
				const font = fontOf(cluster, face) ?? FONTS[face][0];
				if (font === undefined) throw new Error(`no font for ${face}`);
				if (last && last.font === font) last.text += cluster;
				else found.push({ font, text: cluster });
			}
		}
		return found.map(({ font, text: words }) => ({ font: font.name, factor: font.factor, text: words }));
	});

	const widthOfRuns = (text: string, face: Face): number =>
		runsOf(text, face).reduce((sum, run) => sum + (takeFont(rule, run.font).fontSize(1000).widthOfString(run.text) / 1000) * run.factor, 0);
	const widthOfWord = remember(widthOfRuns);
	// pdfkit sets word by word too, so the widths of plain words add up; labels try many lines of the same few words.
	const widthOf = (text: string, face: Face): number => {
		if (!isPlain(text)) return widthOfWord(text, face);
		const words = text.split(" ");
		return words.reduce((sum, word) => sum + (word === "" ? 0 : widthOfWord(word, face)), (words.length - 1) * widthOfWord(" ", face));
	};
	return { widthOf, runsOf, covers: (cluster) => fontOf(cluster, "sans") !== null };
}

// Labels of one machine repeat most of their words; a bound, since a server runs for months.
const MOST_REMEMBERED = 20_000;

function remember<T>(compute: (text: string, face: Face) => T): (text: string, face: Face) => T {
	const known: Readonly<Record<Face, Map<string, T>>> = { sans: new Map(), bold: new Map(), mono: new Map() };
	return (text, face) => {
		const ofFace = known[face];
		const before = ofFace.get(text);
		if (before !== undefined) return before;
		if (ofFace.size >= MOST_REMEMBERED) ofFace.clear();
		const value = compute(text, face);
		ofFace.set(text, value);
		return value;
	};
}
