// What the counts and the strip are made from: plain data, read once for a machine. Pure.

import type { EvidenceKind, FindingState, Origin, PlaceKind } from "@/lib/generated/prisma/enums";

export type OriginPart = {
	readonly id: string;
	readonly origin: Origin;
	readonly place: PlaceKind;
	/** It belongs to this machine; a part borrowed from another is not original to this one, whatever it is to that. */
	readonly own: boolean;
	/** Kinds of standing evidence that it was in the machine when it was made. */
	readonly evidence: readonly EvidenceKind[];
};

export type OriginPosition = {
	readonly id: string;
	readonly mark: string;
	readonly name: string;
	readonly area: string;
	readonly kind: "seat" | "place";
	/** It was there when the machine came; else the shop's work made it. */
	readonly asFound: boolean;
	readonly hostId: string | null;
	/** The last word on what was found there. */
	readonly found: { readonly state: FindingState; readonly partId: string | null } | null;
	/** The part that is fitted now. */
	readonly holds: string | null;
	/** Every part that was ever fitted there, earliest first. */
	readonly held: readonly string[];
};

export type OriginFacts = { readonly positions: readonly OriginPosition[]; readonly parts: readonly OriginPart[] };

/** Which parts stand for each position in a build that is not today's: after a reversal, on a day. */
export type Holding = ReadonlyMap<string, string>;

/** What a position held, or why it held nothing. */
export type Held = Origin | "missing" | "unseen" | "empty";

/** The parts by id, and where those that are gone went with something else: an assembly that was sold takes what is on it along. */
export function partsOf(facts: OriginFacts): {
	readonly part: (id: string | null) => OriginPart | null;
	readonly isGone: (id: string) => boolean;
} {
	const parts = new Map(facts.parts.map((part) => [part.id, part]));
	const positionOf = new Map(facts.positions.flatMap((position) => (position.holds === null ? [] : [[position.holds, position] as const])));
	const isGone = (id: string, depth = 0): boolean => {
		const part = parts.get(id);
		if (!part) return true;
		if (GONE.includes(part.place)) return true;
		const host = positionOf.get(id)?.hostId ?? null;
		return part.place === "fitted" && host !== null && depth < DEEPEST && isGone(host, depth + 1);
	};
	return { part: (id) => (id === null ? null : (parts.get(id) ?? null)), isGone };
}

const GONE: readonly PlaceKind[] = ["sold", "lost", "scrapped", "void"];
/** Deeper than this is a circle that the database would have refused. */
const DEEPEST = 40;

/** What a part is to this machine: another machine's original is "period" here, same kind but from elsewhere. */
export const originHere = (part: OriginPart): Origin => (part.own || part.origin !== "original" ? part.origin : "period");

/** What was found at the position when the machine came, as far as is known today. Null: there was no such position. */
export function heldAsFound(position: OriginPosition, facts: ReturnType<typeof partsOf>): Held | null {
	if (!position.asFound || position.kind === "place") return null;
	const { found } = position;
	if (found === null || found.state === "unseen") return "unseen";
	const part = facts.part(found.partId);
	return found.state === "missing" || part === null || part.place === "void" ? "missing" : originHere(part);
}

/** What the position holds in a build. Not seen yet, and presumed or empty, is "unseen" for as long as nobody looked. */
export function heldIn(position: OriginPosition, facts: ReturnType<typeof partsOf>, holding: Holding | "now"): Held {
	// What sits on an assembly that is gone has gone with it.
	const isHere = position.hostId === null || !facts.isGone(position.hostId);
	const part = isHere ? facts.part(holding === "now" ? position.holds : (holding.get(position.id) ?? null)) : null;
	const unlooked = position.asFound && (position.found === null || position.found.state === "unseen");
	// A part that was only presumed, or none: nobody has looked.
	if (unlooked && (part === null || position.found?.partId === part.id)) return "unseen";
	return part === null ? "empty" : originHere(part);
}

/** The original of a position: what was found or first fitted there and is original to this machine. Null when none is known. */
export function originalOf(position: OriginPosition, facts: ReturnType<typeof partsOf>): OriginPart | null {
	const candidates = [position.found?.state === "missing" ? null : (position.found?.partId ?? null), ...position.held];
	for (const id of candidates) {
		const part = facts.part(id);
		if (part && part.place !== "void" && originHere(part) === "original") return part;
	}
	return null;
}
