// Fitting words into a width: wrap, and shorten only what cannot be wrapped.

/** Width of a text in the same unit as the room given. */
export type WidthOf = (text: string) => number;

export const ELLIPSIS = "…";

/** A blank that a line is not broken at: between a number and what it counts, and inside a size. */
export const GLUE = "\u00a0";

/**
 * Keeps "4 screws", "15 W" and "No.8 x 1" on one line each.
 *
 * @example glued("Wood screws No.8 x 1") // "Wood screws No.8\u00a0x\u00a01"
 */
export function glued(text: string): string {
	return text
		.replace(/(?<=\d\S*) (?=x \S)/g, GLUE)
		.replace(/(?<=\u00a0x) (?=\S)/g, GLUE)
		.replace(/(?<=(?:^| )[\d.,/-]+) (?=\p{L})/gu, GLUE);
}

const clusters = new Intl.Segmenter("en", { granularity: "grapheme" });
// Most words are plain letters, for which the segmenter is a hundred times too thorough.
const PLAIN = /^[\x20-\x7e\u00a0-\u00ff]*$/;

/** Whether a text has only the letters of western Europe, each its own character. */
export const isPlain = (text: string): boolean => PLAIN.test(text);

/** The characters of a text as a reader counts them, accents with their letters. */
export const charactersOf = (text: string): string[] =>
	isPlain(text) ? text.split("") : [...clusters.segment(text)].map(({ segment }) => segment);

/** The most characters, 0 to `most`, of which a beginning still fits. Requires that a longer beginning is never narrower. */
function mostThatFit(most: number, fits: (taken: number) => boolean): number {
	let low = 0;
	let high = most;
	while (low < high) {
		const middle = Math.ceil((low + high) / 2);
		if (fits(middle)) low = middle;
		else high = middle - 1;
	}
	return low;
}

/** The longest beginning of `text` that fits in `room` together with a closing ellipsis; `text` itself if it fits. */
export function shorten(text: string, room: number, widthOf: WidthOf): string {
	if (widthOf(text) <= room) return text;
	const characters = charactersOf(text);
	const beginning = (taken: number): string =>
		characters
			.slice(0, taken)
			.join("")
			.replace(/[\s·,;:–-]+$/u, "") + ELLIPSIS;
	const taken = mostThatFit(characters.length - 1, (count) => widthOf(beginning(count)) <= room);
	return taken === 0 ? "" : beginning(taken);
}

/** The longest beginning of a word that fits without an ellipsis, at least one character, and what is left of it. */
function breakWord(word: string, room: number, widthOf: WidthOf): [string, string] {
	const characters = charactersOf(word);
	const taken = Math.max(
		1,
		mostThatFit(characters.length, (count) => widthOf(characters.slice(0, count).join("")) <= room),
	);
	return [characters.slice(0, taken).join(""), characters.slice(taken).join("")];
}

/** Room of a line, counted from 0; lines beside a code are shorter than lines below it. */
export type RoomOf = (line: number) => number;

/** `text` in lines no wider than their room, broken at blanks, and within a word only if the word alone is too wide. */
export function wrap(text: string, roomOf: RoomOf, widthOf: WidthOf): string[] {
	const lines: string[] = [];
	const room = (): number => roomOf(lines.length);
	let line = "";
	const place = (word: string): void => {
		const longer = line === "" ? word : `${line} ${word}`;
		if (widthOf(longer) <= room()) {
			line = longer;
			return;
		}
		if (line !== "") {
			lines.push(line);
			line = "";
			place(word);
			return;
		}
		const [piece, left] = breakWord(word, room(), widthOf);
		if (left === "") {
			line = piece;
			return;
		}
		lines.push(piece);
		place(left);
	};
	for (const word of text.split(" ")) {
		const isTooWide = widthOf(word) > roomOf(lines.length) && widthOf(word) > roomOf(lines.length + 1);
		for (const part of isTooWide ? word.split(GLUE) : [word]) if (part !== "") place(part);
	}
	return line === "" ? lines : [...lines, line];
}

/** `text` in at most `most` lines no wider than their room; `isCut` when the last line had to be shortened. */
export function fitLines(text: string, room: number | RoomOf, most: number, widthOf: WidthOf): { lines: string[]; isCut: boolean } {
	const roomOf = typeof room === "number" ? () => room : room;
	const lines = wrap(text, roomOf, widthOf);
	if (lines.length <= most) return { lines, isCut: false };
	if (most <= 0) return { lines: [], isCut: true };
	const kept = lines.slice(0, most - 1);
	return { lines: [...kept, shorten(lines.slice(most - 1).join(" "), roomOf(most - 1), widthOf)], isCut: true };
}
