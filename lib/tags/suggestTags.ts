// "Did you mean": the tags that lie one slip of the hand away from what was typed.

import { CHECK_CHARACTERS } from "@/lib/tags/checkCharacter";
import { plainTagText, tagOfCompact } from "@/lib/tags/readTag";
import type { Tag } from "@/lib/tags/tag";

// Pairs that handwriting and worn labels confuse; a candidate that explains itself by one of these comes first.
const ALIKE = ["O0", "Q0", "D0", "I1", "L1", "Z2", "S5", "G6", "B8"];
const areAlike = (a: string, b: string): boolean => ALIKE.includes(a + b) || ALIKE.includes(b + a);

// A tag is at most four, four and one characters long; with one too many, ten. Longer text is not a slip.
const LONGEST = 10;
const MOST_SHOWN = 5;

// Likeliest first.
const SLIP = { separator: 0, lookAlike: 1, swap: 2, wrong: 3, missing: 4, extra: 5 } as const;
type Slip = (typeof SLIP)[keyof typeof SLIP];

/**
 * Every tag that verifies and is one slip away from `text`: separators in the wrong place, one wrong character, two
 * neighbours swapped, one character missing or one too many. Likeliest slip first, then by tag; about a dozen.
 * For text that `readTag` refused; none for text that is too long to be a tag with one slip.
 */
export function tagCandidates(text: string): Tag[] {
	const compact = plainTagText(text).replace(/[^0-9A-Z*]/g, "");
	if (compact.length === 0 || compact.length > LONGEST) return [];

	const slips = new Map<Tag, Slip>();
	const consider = (candidate: string, slip: Slip): void => {
		const tag = tagOfCompact(candidate)?.tag;
		if (tag !== undefined && slip < (slips.get(tag) ?? Number.POSITIVE_INFINITY)) slips.set(tag, slip);
	};

	consider(compact, SLIP.separator);
	for (let at = 0; at <= compact.length; at++) {
		const before = compact.slice(0, at);
		const here = compact.charAt(at);
		const after = compact.slice(at + 1);
		if (here !== "") {
			consider(before + after, SLIP.extra);
			if (after !== "") consider(before + after.charAt(0) + here + after.slice(1), SLIP.swap);
		}
		for (const character of CHECK_CHARACTERS) {
			if (here !== "") consider(before + character + after, areAlike(here, character) ? SLIP.lookAlike : SLIP.wrong);
			consider(before + character + here + after, SLIP.missing);
		}
	}
	return [...slips].sort(([tagA, a], [tagB, b]) => a - b || (tagA < tagB ? -1 : 1)).map(([tag]) => tag);
}

/**
 * The tags that may have been meant by `text`, likeliest first, at most five: `tagCandidates` that `exists` knows.
 *
 * @example suggestTags("12-0280-Q", (tag) => tag === "12-0208-Q") // ["12-0208-Q"]
 */
export function suggestTags(text: string, exists: (tag: Tag) => boolean): Tag[] {
	return tagCandidates(text).filter(exists).slice(0, MOST_SHOWN);
}
