// What will have to be bought for a machine, and what of it is still to come. Pure.

import { ok, type Result, refuse } from "@/lib/core/result";
import { type MinorUnits, minor, NOTHING, sumMinor } from "@/lib/money/money";

export type WantedState = "open" | "bought" | "dropped";

export type WantedPart = {
	readonly state: WantedState;
	readonly estimated: MinorUnits;
	/** Of the first plan, not added later. */
	readonly firstPlan: boolean;
	/** The line that it was bought with, as it stands now; null when it was not bought, or the line is not known. */
	readonly line: {
		readonly count: number;
		/** What is left of it stands for so much. */
		readonly left: MinorUnits;
		/** Something of it was used on this machine, or sent back for it. */
		readonly taken: boolean;
	} | null;
};

/** What the first plan had for parts; what was dropped is not needed any more. */
export const estimatedForParts = (wanted: readonly WantedPart[]): MinorUnits =>
	sumMinor(wanted.flatMap(({ firstPlan, state, estimated }) => (firstPlan && state !== "dropped" ? [estimated] : [])));

/**
 * What one wanted thing will still cost the machine. Open: its estimate. Bought: nothing once something of its line was
 * taken for this machine, and until then what the line cost; of a line of several the machine will not take more than
 * was thought, for the rest is stock. Dropped: nothing.
 */
export function toComeOf({ state, estimated, line }: WantedPart): MinorUnits {
	if (state === "open") return estimated;
	if (state === "dropped" || line === null || line.taken) return NOTHING;
	return line.count === 1 ? line.left : minor(Math.min(estimated, line.left));
}

/** What parts will still cost the machine, all together. */
export const partsToCome = (wanted: readonly WantedPart[]): MinorUnits => sumMinor(wanted.map(toComeOf));

const DROPPED = " (dropped: ";

/** The words of something that is not wanted any more, with the reason. */
export const droppedWords = (words: string, why: string): string => `${words}${DROPPED}${why})`;

/** The same without the reason, when it is wanted after all. */
export function wordsAgain(words: string): string {
	const at = words.lastIndexOf(DROPPED);
	return at > 0 && words.endsWith(")") ? words.slice(0, at) : words;
}

const NOW_WORDS: Readonly<Record<WantedState, string>> = {
	open: "It is still wanted.",
	bought: "It is bought already: say first that it is wanted after all.",
	dropped: "It was dropped: say first that it is wanted after all.",
};

/** Only what is open may be bought or dropped, and only what is not may be wanted again. */
export function mayBecome(now: WantedState, next: WantedState): Result<null> {
	if (next === "open" ? now !== "open" : now === "open") return ok(null);
	return refuse(`wanted-${now}`, NOW_WORDS[now]);
}
