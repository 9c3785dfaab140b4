// What will have to be bought for a machine, and what of it is still to come. Pure.

import { ok, type Result, refuse } from "@/lib/core/result";
import { type MinorUnits, minor, NOTHING, sumMinor } from "@/lib/money/money";
import { spread } from "@/lib/money/spread";

export type WantedState = "open" | "bought" | "dropped";

export type WantedPart = {
	readonly state: WantedState;
	readonly estimated: MinorUnits;
	/** Of the first plan, not added later. */
	readonly firstPlan: boolean;
	/** Its share of what is left of the line that it was bought with; nothing when it was not bought, or the line is not known. */
	readonly share: MinorUnits;
};

/** A line of a purchase with all that was wanted and bought with it, for whatever machine, in the order of the book. */
export type SharedLine = {
	readonly count: number;
	/** What is left of it stands for so much. */
	readonly left: MinorUnits;
	readonly wanted: readonly { readonly id: string; readonly machineId: string; readonly estimated: MinorUnits }[];
	/** What was used on machines, or sent back for them. */
	readonly takings: readonly { readonly machineId: string; readonly count: number }[];
};

/**
 * What each wanted thing still has of its line; together never more than is left of it.
 *
 * Where the line has a piece for each, a piece taken for a machine serves one thing that it wanted, and the others share
 * what is left alike. A line of more is stock besides: one taking serves one thing, be it of 4 inserts or of 6, and the
 * others will take no more than was thought.
 */
export function sharesOf({ count, left, wanted, takings }: SharedLine): ReadonlyMap<string, MinorUnits> {
	const aPieceEach = count <= wanted.length;
	const served = new Map<string, number>();
	for (const { machineId, count: taken } of takings) served.set(machineId, (served.get(machineId) ?? 0) + (aPieceEach ? taken : 1));
	const waiting = wanted.filter(({ machineId }) => {
		const serves = served.get(machineId) ?? 0;
		served.set(machineId, serves - 1);
		return serves <= 0;
	});
	if (aPieceEach && waiting.length > 0) {
		const shares = spread(
			left,
			waiting.map(() => 1),
		);
		return new Map(waiting.map(({ id }, at) => [id, shares[at] ?? NOTHING]));
	}
	let rest: number = left;
	return new Map(
		waiting.map(({ id, estimated }) => {
			const share = minor(Math.min(estimated, rest));
			rest -= share;
			return [id, share];
		}),
	);
}

/** A line gives no more wanted things than it has pieces. */
export function mayBeBoughtWith(line: { readonly what: string; readonly count: number; readonly spokenFor: number }): Result<null> {
	if (line.spokenFor < line.count) return ok(null);
	const say = `All of ${line.what}, ${line.count} bought, was wanted for something else already. Choose another line, or say first what was not bought with this one.`;
	return refuse("line-spoken-for", say, { fields: { lineId: say }, facts: { count: line.count } });
}

/** What the first plan had for parts; what was dropped is not needed any more. */
export const estimatedForParts = (wanted: readonly WantedPart[]): MinorUnits =>
	sumMinor(wanted.flatMap(({ firstPlan, state, estimated }) => (firstPlan && state !== "dropped" ? [estimated] : [])));

/** What one wanted thing will still cost the machine. Open: its estimate. Bought: its share of the line. Dropped: nothing. */
export function toComeOf({ state, estimated, share }: WantedPart): MinorUnits {
	if (state === "open") return estimated;
	return state === "dropped" ? NOTHING : share;
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
