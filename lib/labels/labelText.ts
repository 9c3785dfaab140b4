// What a label says to a person without the tool: every line in words, in the order in which it matters.

import { type Day, formatDayShort } from "@/lib/core/days";
import { ordinal } from "@/lib/core/ordinal";
import { glued } from "@/lib/labels/fitText";
import type { Tag } from "@/lib/tags/tag";

/** A side of the machine as seen from the player's place; elsewhere left and right mean nothing. */
export type Side = "left" | "right" | "front" | "rear" | "top" | "bottom";

/** What happens to the thing: an original that is kept for ever, a keeping bag, or a holding bag. */
export type Fate = "original" | "keeping" | "holding";

/** What a label is about. Only the tag and the words are needed; the rest is said when it is known. */
export type LabelContent = {
	readonly tag: Tag;
	/** The part, or what is in the bag: "Drive motor", "Wood screws No.8 x 1". */
	readonly words: string;
	/** Name of the machine; left out on the shop's own bags. */
	readonly machine?: string;
	/** Where it sits: "drive plate", "rear, third from top". */
	readonly position?: string;
	readonly side?: Side;
	/** Which way round: "flat side to the glass". */
	readonly wayRound?: string;
	readonly thisWayUp?: boolean;
	/** How many, the check when the bag is opened; and of what, if not pieces: "screws", "wires". */
	readonly count?: number;
	readonly counted?: string;
	/** What else is in it: "3 shakeproof washers". */
	readonly also?: string;
	readonly fate?: Fate;
	/** What a hand must know before it opens it: "mercury: do not break". */
	readonly hazard?: string;
	/** What was done on the day, in a word: "out", "bagged". */
	readonly deed?: string;
	readonly day?: Day;
	readonly initials?: string;
	/** The how-manieth label of this tag: one that went to paper before says so, since the other may still be about. */
	readonly print?: number;
};

/** The words of a label. Alternatives run from the full wording to the shortest that still says it. */
export type LabelText = {
	readonly tag: Tag;
	readonly words: string;
	/** `isInWords` when the words already name what is counted, or it is just pieces. */
	readonly count: { readonly figure: string; readonly of: string; readonly isInWords: boolean } | null;
	/** "LEFT", and from where that is seen. */
	readonly side: { readonly side: Side; readonly word: string; readonly seenFrom: readonly string[] } | null;
	readonly up: readonly string[] | null;
	/** Machine first, then position, way round, what else. */
	readonly facts: readonly string[];
	/** In a word, and the rest of the sentence. */
	readonly fate: { readonly word: string; readonly rest: readonly string[] } | null;
	readonly hazard: string | null;
	/** Deed and day, initials, which print. Empty when nothing of it is known. */
	readonly foot: readonly string[];
};

const FATES: Readonly<Record<Fate, NonNullable<LabelText["fate"]>>> = {
	original: { word: "ORIGINAL: KEEP", rest: [] },
	keeping: { word: "KEEP", rest: ["with the machine"] },
	holding: { word: "HOLD:", rest: ["empties at re-assembly", "empties on refit"] },
};

const SEEN_FROM = ["as seen from the player's place", "from the player's place", "player's view"];

// The arrows beside it already say which way.
const UP = ["THIS WAY UP", "UP"];

// More than the largest label holds; a whole page pasted into a name is not worth measuring.
const MOST_CHARACTERS = 300;

// Line breaks, tabs and invisible characters of pasted text would print as boxes or nothing.
const plain = (text: string | undefined): string =>
	(text ?? "")
		.slice(0, MOST_CHARACTERS)
		.normalize("NFC")
		.replace(/[\s\p{Cc}\p{Cf}]+/gu, " ")
		.trim();

/** The words of a label for this content, in plain text: no line breaks, no double blanks, accents joined to their letters. */
export function labelText(content: LabelContent): LabelText {
	const { tag, side, count, fate } = content;
	return {
		tag,
		words: glued(plain(content.words)),
		count: count === undefined ? null : countText(count, plain(content.counted), plain(content.words)),
		side: side === undefined ? null : { side, word: side.toUpperCase(), seenFrom: SEEN_FROM },
		up: content.thisWayUp === true ? UP : null,
		facts: [content.machine, content.position, content.wayRound, content.also]
			.map((fact) => glued(plain(fact)))
			.filter((fact) => fact !== ""),
		fate: fate === undefined ? null : FATES[fate],
		hazard: glued(plain(content.hazard)) || null,
		foot: footText(content),
	};
}

function footText({ deed, day, initials, print = 1 }: LabelContent): string[] {
	const by = plain(initials);
	const nth = print > 1 ? `${ordinal(print)} print` : "";
	const joined = (...parts: readonly string[]): string => parts.filter((part) => part !== "").join(" · ");
	const on = day === undefined ? "" : formatDayShort(day);
	const wordings = [
		joined([plain(deed), on].filter(Boolean).join(" "), by, nth),
		joined(on || plain(deed), by, nth),
		...(day === undefined ? [] : [joined(on.replace(/ \d{4}$/, ""), by, nth)]),
	];
	return [...new Set(wordings)].filter((wording) => wording !== "");
}

function countText(count: number, counted: string, words: string): NonNullable<LabelText["count"]> {
	const of = counted || (count === 1 ? "piece" : "pieces");
	return { figure: String(count), of, isInWords: counted === "" || words.toLowerCase().includes(counted.toLowerCase()) };
}
