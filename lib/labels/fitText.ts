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
/** The characters of a text as a reader counts them, accents with their letters. */
export const charactersOf = (text: string): string[] => [...clusters.segment(text)].map(({ segment }) => segment);

/** The longest beginning of `text` that fits in `room` together with a closing ellipsis; `text` itself if it fits. */
export function shorten(text: string, room: number, widthOf: WidthOf): string {
	if (widthOf(text) <= room) return text;
	const characters = charactersOf(text);
	while (characters.length > 0) {
		characters.pop();
		const shorter = characters.join("").replace(/[\s·,;:–-]+$/u, "") + ELLIPSIS;
		if (widthOf(shorter) <= room) return shorter;
	}
	return "";
}

/** The longest beginning of a word that fits without an ellipsis, at least one character, and what is left of it. */
function breakWord(word: string, room: number, widthOf: WidthOf): [string, string] {
	const characters = charactersOf(word);
	let taken = characters.length;
	while (taken > 1 && widthOf(characters.slice(0, taken).join("")) > room) taken--;
	return [characters.slice(0, taken).join(""), characters.slice(taken).join("")];
}

/** `text` in lines no wider than `room`, broken at blanks, and within a word only if the word alone is too wide. */
export function wrap(text: string, room: number, widthOf: WidthOf): string[] {
	const lines: string[] = [];
	let line = "";
	const words = text.split(" ").flatMap((word) => (widthOf(word) > room ? word.split(GLUE) : [word]));
	for (const word of words.filter((part) => part !== "")) {
		const longer = line === "" ? word : `${line} ${word}`;
		if (widthOf(longer) <= room) {
			line = longer;
			continue;
		}
		if (line !== "") lines.push(line);
		let rest = word;
		while (widthOf(rest) > room && charactersOf(rest).length > 1) {
			const [piece, left] = breakWord(rest, room, widthOf);
			lines.push(piece);
			rest = left;
		}
		line = rest;
	}
	return line === "" ? lines : [...lines, line];
}

/** `text` in at most `most` lines no wider than `room`; `isCut` when the last line had to be shortened. */
export function fitLines(text: string, room: number, most: number, widthOf: WidthOf): { lines: string[]; isCut: boolean } {
	const lines = wrap(text, room, widthOf);
	if (lines.length <= most) return { lines, isCut: false };
	if (most <= 0) return { lines: [], isCut: true };
	const kept = lines.slice(0, most - 1);
	return { lines: [...kept, shorten(lines.slice(most - 1).join(" "), room, widthOf)], isCut: true };
}
