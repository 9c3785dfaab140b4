// Originality position by position: what each counted position held when it came, holds now, would hold after a reversal, and
// could hold at best, each with how it is known. The sums of these rows are the counts (counts.ts), so that anyone can check them.

import type { EvidenceKind } from "@/lib/generated/prisma/enums";
import { strongestOf } from "@/lib/originality/counts";
import { type Held, type Holding, heldAsFound, heldIn, type OriginFacts, partsOf } from "@/lib/originality/facts";
import { type Mark, markAsFound, markIn } from "@/lib/originality/strip";

export type Shown = {
	readonly held: Held;
	readonly mark: Mark;
	/** The state in words. */
	readonly says: string;
	/** Strongest evidence that an original was in it when it was made; null where it holds none, or there is no evidence yet. */
	readonly evidence: EvidenceKind | null;
};

export type PositionRow = {
	readonly id: string;
	readonly mark: string;
	readonly name: string;
	readonly area: string;
	readonly asFound: Shown;
	readonly now: Shown;
	/** Null where no reversal can be planned. */
	readonly after: Shown | null;
	readonly atBest: Shown | null;
};

/** One row a counted position, in building order. `after` and `atBest` are builds, position id to part id; null: not known. */
export function byPosition(facts: OriginFacts, after: Holding | null, atBest: Holding | null): PositionRow[] {
	const parts = partsOf(facts);
	const evidenceOf = (held: Held, partId: string | null): EvidenceKind | null =>
		held === "original" ? strongestOf(parts.part(partId)?.evidence ?? []) : null;
	return facts.positions.flatMap((position): PositionRow[] => {
		const found = heldAsFound(position, parts);
		const foundMark = markAsFound(position, parts);
		if (found === null || foundMark === null) return [];
		const shownIn = (holding: Holding | "now"): Shown => {
			const held = heldIn(position, parts, holding);
			const { state, says } = markIn(position, parts, holding);
			const partId = holding === "now" ? position.holds : (holding.get(position.id) ?? null);
			return { held, mark: state, says, evidence: evidenceOf(held, partId) };
		};
		return [
			{
				id: position.id,
				mark: position.mark,
				name: position.name,
				area: position.area,
				asFound: {
					held: found,
					mark: foundMark.state,
					says: foundMark.says,
					evidence: evidenceOf(found, position.found?.partId ?? null),
				},
				now: shownIn("now"),
				after: after === null ? null : shownIn(after),
				atBest: atBest === null ? null : shownIn(atBest),
			},
		];
	});
}

/** How many of the rows hold an original in one of the states. */
export const originalsOf = (rows: readonly PositionRow[], of: "asFound" | "now" | "after" | "atBest"): number =>
	rows.filter((row) => row[of]?.held === "original").length;
