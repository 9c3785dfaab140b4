// Originality by count, by evidence and by what was not looked at. No score, no weights, no grade: a statement such as
// "26 of 40 recorded positions hold the part they had when the machine was made, as far as we know".
//
// Counted are the positions that were there when the machine came and can hold a part. Small fixings are no positions.
// Evidence: only what supports "it was in it when it was made" counts for an original; that we saw a part in the machine
// when it came proves no more than that. Of several pieces the strongest counts: seen (paint shadow and wear, casting
// number, untouched fixings, in our own sight), documented (date code, plate, dated photo, catalogue, invoice), told
// (who said so), assumed. Pure.

import type { EvidenceKind, Origin } from "@/lib/generated/prisma/enums";
import {
	type Held,
	type Holding,
	heldAsFound,
	heldIn,
	type OriginFacts,
	type OriginPart,
	originalOf,
	partsOf,
} from "@/lib/originality/facts";

/** Strongest first. */
export const EVIDENCE_ORDER: readonly EvidenceKind[] = ["seen", "documented", "told", "assumed"];

/** The strongest of several kinds of evidence; null when there is none. */
export const strongestOf = (kinds: readonly EvidenceKind[]): EvidenceKind | null =>
	EVIDENCE_ORDER.find((kind) => kinds.includes(kind)) ?? null;

export type HeldCounts = Readonly<Record<Held, number>>;
export type EvidenceCounts = Readonly<Record<EvidenceKind | "none", number>>;

export type OriginalityCounts = {
	/** Positions counted. */
	readonly positions: number;
	readonly asFound: HeldCounts;
	readonly now: HeldCounts;
	/** How the originals counted in `asFound` and `now` are known. */
	readonly evidenceAsFound: EvidenceCounts;
	readonly evidenceNow: EvidenceCounts;
	/** Positions without their original that still exists: in a bag, on a shelf, outside. */
	readonly kept: number;
	/** Positions whose original is lost, sold or scrapped. */
	readonly gone: number;
	/** Positions that hold their original or could again, as far as parts go; what reach and exclusions allow is the planner's to say. */
	readonly attainable: number;
	/** Places that the shop's work made, by what they hold. */
	readonly added: HeldCounts;
};

const nothing = (): Record<Held, number> => ({
	original: 0,
	period: 0,
	reproduction: 0,
	modern: 0,
	unknown: 0,
	missing: 0,
	unseen: 0,
	empty: 0,
});
const noEvidence = (): Record<EvidenceKind | "none", number> => ({ seen: 0, documented: 0, told: 0, assumed: 0, none: 0 });

/** The counts of a machine, as found and now. */
export function countOriginality(facts: OriginFacts): OriginalityCounts {
	const parts = partsOf(facts);
	const counts = {
		positions: 0,
		asFound: nothing(),
		now: nothing(),
		evidenceAsFound: noEvidence(),
		evidenceNow: noEvidence(),
		kept: 0,
		gone: 0,
		attainable: 0,
		added: nothing(),
	};
	for (const position of facts.positions) {
		if (position.kind === "place") continue;
		const now = heldIn(position, parts, "now");
		const found = heldAsFound(position, parts);
		if (found === null) {
			counts.added[now] += 1;
			continue;
		}
		counts.positions += 1;
		counts.asFound[found] += 1;
		counts.now[now] += 1;
		if (found === "original") counts.evidenceAsFound[knownBy(parts.part(position.found?.partId ?? null))] += 1;
		if (now === "original") {
			counts.evidenceNow[knownBy(parts.part(position.holds))] += 1;
			counts.attainable += 1;
			continue;
		}
		// Nobody has looked: there is no saying what its original is, or was.
		if (now === "unseen") continue;
		const original = originalOf(position, parts);
		if (original === null) continue;
		if (parts.isGone(original.id)) counts.gone += 1;
		else {
			counts.kept += 1;
			counts.attainable += 1;
		}
	}
	return counts;
}

const knownBy = (part: OriginPart | null): EvidenceKind | "none" => strongestOf(part?.evidence ?? []) ?? "none";

/** How many counted positions hold an original in a build, such as the one that a reversal would end in. */
export function originalsIn(facts: OriginFacts, holding: Holding): number {
	const parts = partsOf(facts);
	return facts.positions.filter(
		(position) => position.asFound && position.kind === "seat" && heldIn(position, parts, holding) === "original",
	).length;
}

const HELD_WORDS: Readonly<Record<Held, string>> = {
	original: "original",
	period: "period",
	reproduction: "reproduction",
	modern: "modern",
	unknown: "unknown",
	missing: "missing",
	unseen: "not seen yet",
	empty: "empty",
};
const EVIDENCE_WORDS: Readonly<Record<EvidenceKind | "none", string>> = {
	seen: "seen by us",
	documented: "documented",
	told: "told",
	assumed: "assumed",
	none: "without evidence yet",
};

/** The counts above nought as words, in their order: "original 26, period 2, modern 6". */
export const heldInWords = (counts: HeldCounts): string =>
	(Object.keys(HELD_WORDS) as Held[])
		.filter((held) => counts[held] > 0)
		.map((held) => `${HELD_WORDS[held]} ${counts[held]}`)
		.join(", ");

/** "25 seen by us, 1 documented". */
export const evidenceInWords = (counts: EvidenceCounts): string =>
	([...EVIDENCE_ORDER, "none"] as const)
		.filter((kind) => counts[kind] > 0)
		.map((kind) => `${counts[kind]} ${EVIDENCE_WORDS[kind]}`)
		.join(", ");

/** The honest sentence: what was counted, and how it is known. */
export function originalityStatement(counts: OriginalityCounts): string {
	if (counts.positions === 0) return "No positions are recorded yet.";
	const one = counts.positions === 1;
	const hold = `${counts.now.original} of ${counts.positions} recorded ${one ? "position holds" : "positions hold"} the part ${one ? "it" : "they"} had when the machine was made, as far as we know`;
	const how = counts.now.original === 0 ? "" : ` (${evidenceInWords(counts.evidenceNow)})`;
	const unseen = counts.now.unseen === 0 ? "" : ` ${counts.now.unseen} ${counts.now.unseen === 1 ? "is" : "are"} not seen yet.`;
	return `${hold}${how}.${unseen}`;
}

/** How an original is known: "seen by us", "without evidence yet". */
export const evidenceWords = (evidence: EvidenceKind | null): string => EVIDENCE_WORDS[evidence ?? "none"];

/** Words for one origin, or for why a position holds none. */
export const heldWords = (held: Held | Origin): string => HELD_WORDS[held];
