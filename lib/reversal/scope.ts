// What of a machine somebody asks to take back, and to which state. Pure.
//
// The whole machine without what was done for safety, or chosen conversions and positions, less what was left out on the way.
// What was done for safety is taken back only when it is named, and with a reason.

import type { Instant } from "@/lib/core/instants";
import type { ReversalFacts } from "@/lib/reversal/queries";

/** A position that stays as it is, by choice or because nothing comes out of it or goes in. */
export type LeftOut = { readonly position: string; readonly why: string; readonly stuck: "yes" | "no" };

export type Asked = {
	/** When as found was stamped; null while it is open. */
	readonly asFoundAt: Instant | null;
	/** The instant to go back to; left out, to as found. */
	readonly at?: Instant;
	/** To the best that is known of how it was made, instead. */
	readonly asMade?: boolean;
	/** Ids of conversions to undo; these and `positions` left out or empty, the whole machine. */
	readonly conversions?: readonly string[];
	/** Ids of positions to take back. */
	readonly positions?: readonly string[];
	/** What stays as it is after all; what is stuck is no way to anything else either. */
	readonly leftOut?: readonly LeftOut[];
	/** Why what was taken out for safety goes in again; without it no plan puts it back. */
	readonly reason?: string;
	/** What the question came to when a reversal was begun: it does not shrink as the work is done. */
	readonly frozen?: Frozen;
};

/** A scope and the alterations to undo, by ids (a place by its mark). Scope null: the whole machine. */
export type Frozen = { readonly scope: readonly string[] | null; readonly alterations: readonly string[] };

/** The position of an alteration that is on no part and at no position: "rear wall" becomes a place of the machine. */
export const placeMark = (place: string): string => `place ${place}`;

type Fact<Key extends keyof ReversalFacts> = ReversalFacts[Key] extends readonly (infer Row)[] ? Row : never;

export const isChosen = ({ conversions = [], positions = [] }: Asked): boolean => conversions.length + positions.length > 0;

/** What of the machine is taken back, by name; "" for the whole of it. */
export function scopeInWords(facts: Pick<ReversalFacts, "conversions" | "positions">, { conversions = [], positions = [] }: Asked): string {
	const named = [
		...facts.conversions.filter(({ id }) => conversions.includes(id)).map(({ number, name }) => `conversion ${number} ${name}`),
		...facts.positions.filter(({ id }) => positions.includes(id)).map(({ mark, name }) => `${mark} ${name}`),
	];
	return named.length > MOST_NAMED ? `${named.slice(0, MOST_NAMED).join(", ")} and ${named.length - MOST_NAMED} more` : named.join(", ");
}
const MOST_NAMED = 5;

/** Whether a conversion is to be undone. */
export function asksFor(facts: ReversalFacts, asked: Asked, conversionId: string): boolean {
	if (isChosen(asked)) return (asked.conversions ?? []).includes(conversionId);
	return facts.conversions.find(({ id }) => id === conversionId)?.purpose !== "safety";
}

/** Whether an alteration is to be undone: one that was there in the state to go back to stays. */
export function alterationAsked(
	facts: ReversalFacts,
	alteration: Fact<"alterations">,
	asked: Asked,
	target: ReadonlyMap<string, string>,
): boolean {
	if (asked.frozen !== undefined) return asked.frozen.alterations.includes(alteration.id);
	if (wasThere(alteration, asked)) return false;
	if (!isChosen(asked)) return alteration.conversionId === null || asksFor(facts, asked, alteration.conversionId);
	if (alteration.conversionId !== null && asksFor(facts, asked, alteration.conversionId)) return true;
	// Where its position is chosen, or the part that goes back into one, whatever it was done for.
	const { partId, positionId } = alteration;
	return (asked.positions ?? []).some((id) => id === positionId || (partId !== null && target.get(id) === partId));
}

function wasThere({ doneAt, conversionId }: Fact<"alterations">, asked: Asked): boolean {
	if (asked.asMade) return false;
	if (asked.at !== undefined) return doneAt <= asked.at;
	// What belongs to a conversion is the shop's own work, whatever moment was written down for it.
	return conversionId === null && asked.asFoundAt !== null && doneAt <= asked.asFoundAt;
}

/** Positions at which conversions put something in or took something out. */
export const placesOf = (facts: ReversalFacts, conversionIds: readonly string[], mine: ReadonlySet<string>): string[] =>
	facts.fittings
		.filter(
			({ positionId, conversionId, outConversionId }) =>
				mine.has(positionId) && [conversionId, outConversionId].some((id) => id !== null && conversionIds.includes(id)),
		)
		.map(({ positionId }) => positionId);

/** Position ids to take back, or null for all of them. */
export function scopeOf(
	facts: ReversalFacts,
	asked: Asked,
	alterations: readonly Fact<"alterations">[],
	mine: ReadonlySet<string>,
): Set<string> | null {
	const scope =
		asked.frozen !== undefined
			? thawed(asked.frozen)
			: isChosen(asked)
				? chosenScope(facts, asked, alterations, mine)
				: wholeScope(facts, asked, alterations, mine);
	if (scope === null && !(asked.leftOut ?? []).some(({ stuck }) => stuck === "no")) return null;
	const left = scope ?? new Set([...mine, ...alterations.flatMap(({ place }) => (place ? [placeMark(place)] : []))]);
	for (const { position, stuck } of asked.leftOut ?? []) if (stuck === "no") left.delete(position);
	return left;
}

const thawed = ({ scope }: Frozen): Set<string> | null => (scope === null ? null : new Set(scope));

function wholeScope(
	facts: ReversalFacts,
	asked: Asked,
	alterations: readonly Fact<"alterations">[],
	mine: ReadonlySet<string>,
): Set<string> | null {
	const safety = facts.conversions.filter(({ id }) => !asksFor(facts, asked, id)).map(({ id }) => id);
	if (safety.length === 0) return null;
	const kept = new Set(placesOf(facts, safety, mine));
	return new Set([
		...facts.positions.map(({ id }) => id).filter((id) => !kept.has(id)),
		...alterations.flatMap(({ place }) => (place ? [placeMark(place)] : [])),
	]);
}

function chosenScope(
	facts: ReversalFacts,
	asked: Asked,
	alterations: readonly Fact<"alterations">[],
	mine: ReadonlySet<string>,
): Set<string> {
	return new Set([
		...(asked.positions ?? []).filter((id) => mine.has(id)),
		...placesOf(facts, asked.conversions ?? [], mine),
		...alterations.flatMap(({ positionId, place }) =>
			positionId !== null && mine.has(positionId) ? [positionId] : place ? [placeMark(place)] : [],
		),
		// An altered part is mended where the target holds it.
		...alterations.flatMap(({ partId }) =>
			partId === null
				? []
				: facts.fittings.filter((fitting) => fitting.partId === partId && mine.has(fitting.positionId)).map(({ positionId }) => positionId),
		),
	]);
}

/**
 * The conversions that are not undone whole, with the marks of the positions that they changed, for what a choice leaves in half.
 * Those done for safety stay by rule and are not among them.
 */
export function standingConversions(
	facts: ReversalFacts,
	asked: Asked,
): { readonly name: string; readonly positions: readonly string[] }[] {
	if (!isChosen(asked)) return [];
	const marks = new Map(facts.positions.map(({ id, mark }) => [id, mark]));
	return facts.conversions
		.filter(({ id, purpose }) => purpose !== "safety" && !asksFor(facts, asked, id))
		.map(({ id, number, name }) => ({
			name: `${number} ${name}`,
			positions: [...new Set(placesOf(facts, [id], new Set(marks.keys())))].flatMap((position) => marks.get(position) ?? []),
		}));
}
