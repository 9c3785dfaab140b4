// A label set in one size: everything in its place, or word that it does not fit.

import type { LabelDrawing } from "@/lib/labels/drawing";
import { CAP_HEIGHT, DESCENDER, type TypeCase } from "@/lib/labels/face";
import { fitLines, GLUE, shorten, type WidthOf } from "@/lib/labels/fitText";
import { writeFate, writeHazard } from "@/lib/labels/labelBands";
import { factLines } from "@/lib/labels/labelFacts";
import { type LinePlace, writeMarkings } from "@/lib/labels/labelMarkings";
import { DOT, INSET, SMALLEST_CAP } from "@/lib/labels/labelMeasures";
import type { LabelText } from "@/lib/labels/labelText";
import { type Pen, penWith } from "@/lib/labels/pen";
import { type QrModules, QUIET_MODULES } from "@/lib/labels/qrModules";

/** One size to try a label in. */
export type Setting = {
	readonly width: number;
	readonly height: number;
	/** Printer dots a module. */
	readonly dots: number;
	/** Size of the running text; 1 is the smallest allowed. */
	readonly scale: number;
	/** Size of tag and words, and of the air between lines, against what suits the running text. */
	readonly heading: number;
	/** Lines that a hazard may take. */
	readonly hazardLines: number;
	/** Whether day and initials have a line. */
	readonly hasFoot: boolean;
};

/** What a label may have to give up, worst first: a hazard before anything else is to be read in full. */
const LOSSES = {
	hazard: 100,
	"this way up": 30,
	"seen from": 20,
	"day and initials": 12,
	words: 8,
	count: 6,
	"machine and position": 2,
} as const;
export type Loss = keyof typeof LOSSES;
/** A shorter wording that says the same is no loss, but not as good either. */
const SHORTER_WORDING = 1;

/** A label in one setting: its marks, what it had to give up, and how much that weighs. */
export type SetLabel = Omit<LabelDrawing, "undrawable" | "shortened"> & { readonly shortened: readonly Loss[]; readonly cost: number };

/** The code that a label carries. */
export type Code = { readonly text: string; readonly modules: QrModules };

/** Side of a code with its quiet zone, in mm. */
export const codeBox = ({ rows }: QrModules, dots: number): number => (rows.length + 2 * QUIET_MODULES) * dots * DOT;

/** Room for words beside the code, below which they run on under it. */
const NARROW = 31;
/** The tag keeps this much of the top edge free; the code's quiet zone may need more. */
const TOP = 2.2;
const MOST_WORD_LINES = 4;
const LINE = 1.55;
const WORDS_LINE = 1.42;
const descent = (cap: number): number => (DESCENDER * cap) / CAP_HEIGHT;

/** The label in this setting, with what had to be shortened; null when not even the least words fit. */
export function setLabel(text: LabelText, code: Code, setting: Setting, type: TypeCase): SetLabel | null {
	const { width, height, dots, scale, heading } = setting;
	const pen = penWith(type);
	const shortened: Loss[] = [];
	const cut = (what: Loss): void => void shortened.push(what);
	const beside = codeBox(code.modules, dots);
	const quiet = QUIET_MODULES * dots * DOT;
	const right = width - INSET;
	const isNarrow = right - beside < NARROW;
	const cap = SMALLEST_CAP * scale;
	const air = scale * heading;

	// Left: the code, in the middle if nothing stands below it.
	const hasCountBelow = !isNarrow && text.count !== null;
	const codeTop = isNarrow || hasCountBelow ? quiet : middleTop(height, beside, quiet);
	const codeBottom = codeTop - quiet + beside;
	pen.marks.push({ kind: "code", x: quiet, y: codeTop, module: dots * DOT, ...code });

	// Each in its own hand, since the marks are to stand in reading order: that is how a screen is read out.
	const hand = { hazard: penWith(type), fate: penWith(type), foot: penWith(type), count: penWith(type) };

	// From the bottom up: day and initials, what becomes of it, what must be known first.
	const left = isNarrow ? INSET : beside;
	const foot = writeFoot(hand.foot, setting.hasFoot ? text.foot : [], { left, right, floor: height - INSET }, scale, air);
	if (foot.isCut || (!setting.hasFoot && text.foot.length > 0)) cut("day and initials");
	let floor = foot.top;
	if (text.fate) floor = writeFate(hand.fate, text.fate, { left, right, floor }, scale, air);
	if (text.hazard !== null) {
		const hazard = writeHazard(hand.hazard, text.hazard, { left, right, floor }, scale, air, setting.hazardLines);
		if (hazard.isCut) cut("hazard");
		floor = hazard.top;
	}
	if (isNarrow && floor < codeBottom) return null;

	// From the top down: tag, then words in as many lines as leave the markings and one line of facts theirs.
	const room = right - beside;
	const tagCap = Math.min(4.4 * scale * heading, room / pen.widthAt("mono", 1)(text.tag));
	const wordsCap = Math.max(SMALLEST_CAP, 2.85 * Math.min(scale, 1.6) * heading);
	if (tagCap < SMALLEST_CAP) return null;
	const top = Math.min(quiet, TOP);
	const firstWords = top + tagCap + 1.15 * air + wordsCap;
	const bottomOfWords = (lines: number): number => firstWords + (lines - 1) * wordsCap * WORDS_LINE + descent(wordsCap) * 0.85;
	const linesBelow = (lines: number): number =>
		Math.max(0, Math.floor((floor - bottomOfWords(lines) - 1.2 * air + (LINE - 1) * cap) / (cap * LINE) + 1e-6));
	const markings = (text.side === null ? 0 : 1) + (text.up === null ? 0 : 1);
	const { wording, said } = isNarrow ? withCount(text) : { wording: text.words, said: text.facts };
	const widthOfWords = pen.widthAt("bold", wordsCap);
	let wordLines = fitLines(wording, room, MOST_WORD_LINES, widthOfWords).lines.length;
	while (wordLines > 1 && linesBelow(wordLines) < markings + Math.min(1, said.length)) wordLines--;
	if (bottomOfWords(wordLines) > floor) return null;
	const words = fitLines(wording, room, wordLines, widthOfWords);
	if (words.isCut) cut("words");

	const start = bottomOfWords(wordLines) + 0.5 * air;
	const places = Array.from({ length: linesBelow(wordLines) }, (_, at): LinePlace => {
		const lineTop = start + at * cap * LINE;
		const x = isNarrow && lineTop >= codeBottom ? INSET : beside;
		return { x, room: right - x, y: lineTop + cap };
	});
	if (places.length < Math.min(1, markings)) return null;

	// Room that is left over goes above the tag, to level it with the code, and between the groups.
	const marked = penWith(type);
	const markedLines = writeMarkings(marked, { ...text, facts: said }, places, cap);
	const factPlaces = places.slice(markedLines.lines);
	const lacksView = markedLines.lost.includes("seen from") && factPlaces.length > 0;
	for (const loss of markedLines.lost) if (loss !== "seen from" || !lacksView) cut(loss);
	const facts = lacksView
		? factsWithView(said, text.side, factPlaces, pen.widthAt("sans", cap))
		: { ...factLines(said, factPlaces, pen.widthAt("sans", cap)), lacksView: false };
	if (facts.lacksView) cut("seen from");
	if (facts.isCut) cut("machine and position");
	const lastLine = places[markedLines.lines + facts.lines.length - 1]?.y ?? bottomOfWords(wordLines);
	const spare = isNarrow ? 0 : Math.max(0, floor - 0.7 * air - descent(cap) * 0.6 - lastLine);
	const toTop = Math.min(spare, codeTop - top);
	const toWords = toTop + Math.min((spare - toTop) * 0.2, 0.6 * cap);
	const toFacts = toWords + Math.min((spare - toTop) * 0.3, cap);

	pen.write(text.tag, beside, top + tagCap + toTop, "mono", tagCap);
	for (const [at, line] of words.lines.entries()) {
		pen.write(line, beside, firstWords + at * wordsCap * WORDS_LINE + toWords, "bold", wordsCap);
	}
	pen.add(marked.marks, toFacts);
	for (const [at, line] of facts.lines.entries()) {
		const place = places[markedLines.lines + at];
		if (place) pen.write(line, place.x, place.y + toFacts, "sans", cap);
	}

	if (hasCountBelow && text.count !== null) {
		const countPlace = { left: quiet, right: beside - 0.75 * quiet, top: codeBottom, line: foot.line };
		if (!writeCount(hand.count, text.count, countPlace, scale)) cut("count");
	}
	for (const { marks } of [hand.count, hand.hazard, hand.fate, hand.foot]) pen.add(marks, 0);
	const cost = shortened.reduce((sum, loss) => sum + LOSSES[loss], markedLines.isBrief || lacksView ? SHORTER_WORDING : 0);
	return { width, height, marks: pen.marks, shortened, cost };
}

/**
 * The facts with from where left and right are seen at their head, when the line of the side had no room for it: on one
 * line with the machine, or on a line of its own, but never cut.
 */
function factsWithView(
	said: readonly string[],
	side: LabelText["side"],
	places: readonly LinePlace[],
	widthOf: WidthOf,
): { lines: string[]; isCut: boolean; lacksView: boolean } {
	const view = side?.seenFrom.at(-1) ?? "";
	const [first, ...others] = said;
	const joined = factLines([first === undefined ? view : `${view} · ${first}`, ...others], places, widthOf);
	if (!joined.isCut) return { ...joined, lacksView: false };
	if (widthOf(view) > (places[0]?.room ?? 0)) return { ...factLines(said, places, widthOf), lacksView: true };
	const below = factLines(said, places.slice(1), widthOf);
	return { lines: [view, ...below.lines], isCut: below.isCut, lacksView: false };
}

/** Where no room is left under the code, the count goes before the words, or before the facts if it counts something else. */
function withCount({ words, count, facts }: LabelText): { wording: string; said: readonly string[] } {
	if (count === null || (count.figure === "1" && count.isInWords)) return { wording: words, said: facts };
	if (count.isInWords) return { wording: `${count.figure}${GLUE}×${GLUE}${words}`, said: facts };
	return { wording: words, said: [`${count.figure}${GLUE}${count.of}`, ...facts] };
}

/** Top of a code that stands alone, in the middle of the label, on whole dots. */
const middleTop = (height: number, box: number, quiet: number): number => quiet + Math.max(0, Math.floor((height - box) / 2 / DOT) * DOT);

type FootPlace = { readonly left: number; readonly right: number; readonly floor: number };

/** Deed, day, initials and which print on the last line, in the fullest wording for which there is room. Gives its base line, and the line that everything above must stay above. */
function writeFoot(
	pen: Pen,
	wordings: readonly string[],
	{ left, right, floor }: FootPlace,
	scale: number,
	air: number,
): { line: number; top: number; isCut: boolean } {
	const cap = SMALLEST_CAP * Math.min(scale, 1.6);
	const line = floor - descent(cap) * 0.5;
	const shortest = wordings.at(-1);
	if (shortest === undefined) return { line, top: floor, isCut: false };
	const widthOf = pen.widthAt("sans", cap);
	const whole = wordings.find((wording) => widthOf(wording) <= right - left);
	pen.write(whole ?? shorten(shortest, right - left, widthOf), left, line, "sans", cap);
	return { line, top: line - cap - 0.9 * air, isCut: whole === undefined };
}

type CountPlace = { readonly left: number; readonly right: number; readonly top: number; readonly line: number };

/**
 * The count under the code: the figure as large as there is room, what is counted below or beside it, on the base line of
 * day and initials. False when it cannot be said.
 */
function writeCount(
	pen: Pen,
	{ figure, of }: { figure: string; of: string },
	{ left, right, top, line }: CountPlace,
	scale: number,
): boolean {
	const room = right - left;
	const ofCap = SMALLEST_CAP * Math.min(scale, 1.6);
	const ofWidth = pen.widthAt("sans", ofCap)(of);
	const figureWidth = pen.widthAt("bold", 1)(figure);
	const largest = 4.6 * scale;

	const figureLine = line - ofCap * 1.5;
	const stacked = Math.min(largest, figureLine - top, room / figureWidth);
	const abreast = Math.min(largest, line - top, (room - ofWidth - 0.5 * ofCap) / figureWidth);
	if (abreast < SMALLEST_CAP && (stacked < SMALLEST_CAP || ofWidth > room)) {
		const alone = Math.min(largest, line - top, room / figureWidth);
		if (alone >= SMALLEST_CAP) pen.write(figure, left, line, "bold", alone);
		return false;
	}
	if (stacked > abreast && ofWidth <= room) {
		pen.write(figure, left, figureLine, "bold", stacked);
		pen.write(of, left, line, "sans", ofCap);
	} else {
		const end = pen.write(figure, left, line, "bold", abreast);
		pen.write(of, end + 0.5 * ofCap, line, "sans", ofCap);
	}
	return true;
}
