// What each position held when the machine was made, as far as the record tells: the best that it can be again. Pure.
//
// Its original, where one is known and still there; else a part of the same make and type from elsewhere, if one is in it or
// was and is still to be had; else the original that is gone, so that the plan says why it stays different. Where nobody
// knows what was there, the nearest to it of what is in it, was, or came with it: a reproduction, what may be original, a
// modern part. What the shop's work made is empty.

import type { Origin } from "@/lib/generated/prisma/enums";
import { type OriginFacts, originalOf, originHere, partsOf } from "@/lib/originality/facts";
import type { ReversalFacts } from "@/lib/reversal/queries";
import { type SoundBuild, soundBuild } from "@/lib/reversal/soundBuild";

/** The facts of a reversal as those of originality; the evidence is not looked at. */
export function originsIn(facts: Pick<ReversalFacts, "machineId" | "positions" | "parts" | "fittings" | "findings">): OriginFacts {
	const found = new Map(facts.findings.map(({ positionId, state, partId }) => [positionId, { state, partId }]));
	const holds = new Map(facts.parts.flatMap(({ id, positionId }) => (positionId === null ? [] : [[positionId, id] as const])));
	const held = new Map<string, string[]>();
	for (const { positionId, partId } of facts.fittings) held.set(positionId, [...(held.get(positionId) ?? []), partId]);
	return {
		positions: facts.positions.map(({ id, mark, name, area, kind, asFound, hostId }) => ({
			id,
			mark,
			name,
			area,
			kind,
			hostId,
			asFound: asFound === "yes",
			found: found.get(id) ?? null,
			holds: holds.get(id) ?? null,
			held: held.get(id) ?? [],
		})),
		parts: facts.parts.map(({ id, origin, place, machineId }) => ({
			id,
			origin,
			place,
			own: machineId === facts.machineId,
			evidence: [],
		})),
	};
}

/** The nearest to the original first. */
const NEARNESS: readonly Origin[] = ["original", "period", "reproduction", "unknown", "modern"];

/** Position id to part id as made. Positions of which nobody knows what they held are `unsure`. */
export function buildAsMade(facts: Pick<ReversalFacts, "machineId" | "positions" | "parts" | "fittings" | "findings">): SoundBuild {
	const origins = originsIn(facts);
	const parts = partsOf(origins);
	const unknown: string[] = [];
	const told = origins.positions.flatMap((position) => {
		if (position.kind === "place" || !position.asFound) return [];
		const original = originalOf(position, parts);
		if (original !== null && !parts.isGone(original.id)) return [{ position: position.id, part: original.id }];
		const nearest = [position.holds, position.found?.partId ?? null, ...position.held.toReversed()]
			.flatMap((id) => parts.part(id) ?? [])
			.filter((part) => part.place !== "void" && !parts.isGone(part.id))
			// What is in it first, where two are as near.
			.sort((a, b) => NEARNESS.indexOf(originHere(a)) - NEARNESS.indexOf(originHere(b)))[0];
		const wanted = original === null || (nearest && originHere(nearest) === "period") ? nearest?.id : original.id;
		if (wanted) return [{ position: position.id, part: wanted }];
		unknown.push(position.id);
		return [];
	});
	const foundIn = new Map(origins.positions.flatMap(({ id, found }) => (found?.partId ? [[found.partId, id] as const] : [])));
	const { build, unsure } = soundBuild(told, new Map(facts.positions.map(({ id, hostId }) => [id, hostId])), (part, positions) => {
		const first = foundIn.get(part);
		return first !== undefined && positions.includes(first) ? first : (positions[0] ?? "");
	});
	return { build, unsure: new Set([...unsure, ...unknown]) };
}
