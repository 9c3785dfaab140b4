// Words from right to left: the order in which the words of a line stand on paper.

const RIGHT_TO_LEFT = /\p{Script=Hebrew}|\p{Script=Arabic}|\p{Script=Syriac}|\p{Script=Thaana}|\p{Script=Nko}/u;

export const isRightToLeft = (text: string): boolean => RIGHT_TO_LEFT.test(text);

/**
 * The words of a line in the order from left to right in which they are drawn, each still spelled in reading order.
 * As much of the Unicode bidirectional algorithm as a label needs: the first letter gives the direction of the line,
 * stretches of the other direction keep theirs, numbers and signs between two words of a stretch go with it.
 */
export function inDrawnOrder(line: string): string {
	if (!isRightToLeft(line)) return line;
	const words = line.split(" ");
	const directions = words.map((word) => (isRightToLeft(word) ? "right" : /\p{L}/u.test(word) ? "left" : null));
	const base = directions.find((direction) => direction !== null) ?? "left";
	if (base === "right")
		return turned(
			turned(words, () => true),
			(_, at) => isWithin(directions.toReversed(), at, "left"),
		).join(" ");
	return turned(words, (_, at) => isWithin(directions, at, "right")).join(" ");
}

/** Whether the word at `at` is of this direction, or a sign between two that are. */
function isWithin(directions: readonly (string | null)[], at: number, direction: string): boolean {
	if (directions[at] !== null) return directions[at] === direction;
	const before = directions.slice(0, at).findLast((other) => other !== null);
	const after = directions.slice(at + 1).find((other) => other !== null);
	return before === direction && after === direction;
}

/** The words with each unbroken stretch of chosen ones turned round. */
function turned(words: readonly string[], isChosen: (word: string, at: number) => boolean): string[] {
	const done: string[] = [];
	let stretch: string[] = [];
	for (const [at, word] of words.entries()) {
		if (isChosen(word, at)) stretch.unshift(word);
		else {
			done.push(...stretch, word);
			stretch = [];
		}
	}
	return [...done, ...stretch];
}
