// The originality strip: every position as one small mark, grouped as the machine is built. Pure.

import {
	type Held,
	type Holding,
	heldAsFound,
	heldIn,
	type OriginFacts,
	type OriginPosition,
	originalOf,
	partsOf,
} from "@/lib/originality/facts";

/**
 * original: filled; kept: outlined; not-original: hatched; unknown: half filled; lost: crossed; empty: a dot; unseen: dashed.
 * What nobody knows is not called "not original".
 */
export type Mark = "original" | "kept" | "not-original" | "unknown" | "lost" | "empty" | "unseen";

export type StripPosition = {
	readonly id: string;
	readonly mark: string;
	readonly name: string;
	readonly state: Mark;
	/** The state in words, more exactly than its shape: "modern; its original is kept". */
	readonly says: string;
};
export type StripArea = { readonly name: string; readonly positions: readonly StripPosition[] };

/** Which state of the machine the strip shows. */
export type StripOf = "as-found" | "now" | Holding;

/** The name of the group of positions that were given no area. */
export const NO_AREA = "Elsewhere";

/** The strip of a machine; areas in the order in which they first appear. As found shows no place that the work made later. */
export function stripOf(facts: OriginFacts, of: StripOf): StripArea[] {
	const parts = partsOf(facts);
	const areas = new Map<string, StripPosition[]>();
	const onlyOne = facts.positions.every((position) => position.area === "");
	for (const position of facts.positions) {
		if (position.kind === "place") continue;
		const read = of === "as-found" ? markAsFound(position, parts) : markIn(position, parts, of);
		if (read === null) continue;
		const area = position.area === "" ? (onlyOne ? "Machine" : NO_AREA) : position.area;
		const list = areas.get(area) ?? [];
		areas.set(area, list);
		list.push({ id: position.id, mark: position.mark, name: position.name, ...read });
	}
	// What has no area comes last.
	return [...areas]
		.map(([name, positions]) => ({ name, positions }))
		.sort((a, b) => Number(a.name === NO_AREA) - Number(b.name === NO_AREA));
}

type Read = { readonly state: Mark; readonly says: string };
type Parts = ReturnType<typeof partsOf>;

const WORDS: Readonly<Record<Held, string>> = {
	original: "original",
	period: "period, from elsewhere",
	reproduction: "reproduction",
	modern: "modern",
	unknown: "origin not known",
	missing: "missing",
	unseen: "not seen yet",
	empty: "empty",
};

/** The mark of a position as the machine came; null where there was no such position. */
export function markAsFound(position: OriginPosition, parts: Parts): Read | null {
	const held = heldAsFound(position, parts);
	return held === null ? null : { state: shapeOf(held), says: WORDS[held] };
}

/** The mark of a position in a build: what it holds first, then what became of its original. */
export function markIn(position: OriginPosition, parts: Parts, holding: Holding | "now"): Read {
	const held = heldIn(position, parts, holding);
	if (held === "original" || held === "unseen") return { state: held, says: WORDS[held] };
	const original = originalOf(position, parts);
	if (original === null) return { state: shapeOf(held), says: WORDS[held] };
	const gone = parts.isGone(original.id);
	return { state: gone ? "lost" : "kept", says: `${WORDS[held]}; its original is ${gone ? GONE_WORDS(original.place) : "kept"}` };
}

const GONE_WORDS = (place: string): string => (["sold", "lost", "scrapped"].includes(place) ? place : "gone with what it sits on");

function shapeOf(held: Held): Mark {
	if (held === "original" || held === "unseen" || held === "unknown") return held;
	return held === "missing" || held === "empty" ? "empty" : "not-original";
}
