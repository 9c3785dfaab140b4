// What each position held when the machine was made, as far as the record tells: the best that it can be again. Pure.
//
// Its original, where one is known and still there; else a part of the same make and type from elsewhere, if one is in it or
// was and is still to be had; else the original that is gone, so that the plan says why it stays different. Where nobody
// knows what was there, the nearest to it of what is in it, was, or came with it: a reproduction, what may be original, a
// modern part. What the shop's work made is empty.

import type { Origin } from "@/lib/generated/prisma/enums";
import { type OriginFacts, originalOf, originHere, partsOf } from "@/lib/originality/facts";
import type { ReversalFacts } from "@/lib/reversal/queries";
import { type Said, type SoundBuild, soundBuild } from "@/lib/reversal/soundBuild";

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
	/** Position to the parts that it may have had, the likeliest first. */
	const wanted = new Map<string, string[]>();
	for (const position of origins.positions) {
		if (position.kind === "place" || !position.asFound) continue;
		const original = originalOf(position, parts);
		const nearest = [position.holds, position.found?.partId ?? null, ...position.held.toReversed()]
			.flatMap((id) => parts.part(id) ?? [])
			.filter((part) => part.place !== "void" && !parts.isGone(part.id))
			// What is in it first, where two are as near.
			.sort((a, b) => NEARNESS.indexOf(originHere(a)) - NEARNESS.indexOf(originHere(b)))
			.map(({ id }) => id);
		const isThere = original !== null && !parts.isGone(original.id);
		const periodFirst = nearest[0] !== undefined && origins.parts.some((part) => part.id === nearest[0] && originHere(part) === "period");
		const list = isThere ? [original.id, ...nearest] : original !== null && !periodFirst ? [original.id] : nearest;
		if (list.length === 0) unknown.push(position.id);
		else wanted.set(position.id, [...new Set(list)]);
	}
	const foundIn = new Map(origins.positions.flatMap(({ id, found }) => (found?.partId ? [[found.partId, id] as const] : [])));
	const holdsNow = new Map(origins.positions.flatMap(({ id, holds }) => (holds === null ? [] : [[holds, id] as const])));
	const told = eachOnce(wanted, (part, positions) => {
		const first = [foundIn.get(part), holdsNow.get(part)].find((place) => place !== undefined && positions.includes(place));
		return first ?? positions[0] ?? "";
	});
	for (const id of wanted.keys()) if (!told.some(({ position }) => position === id)) unknown.push(id);
	const { build, unsure } = soundBuild(
		told,
		new Map(facts.positions.map(({ id, hostId }) => [id, hostId])),
		(_, positions) => positions[0] ?? "",
	);
	return { build, unsure: new Set([...unsure, ...unknown]) };
}

/** Gives each part to one position. Whoever loses it goes on to the next of its own list, if there is one. */
function eachOnce(wanted: ReadonlyMap<string, readonly string[]>, chosen: (part: string, positions: readonly string[]) => string): Said[] {
	const rest = new Map([...wanted].map(([position, list]) => [position, [...list]]));
	for (;;) {
		const rivals = new Map<string, string[]>();
		for (const [position, [part]] of rest) if (part !== undefined) rivals.set(part, [...(rivals.get(part) ?? []), position]);
		const contested = [...rivals].filter(([, positions]) => positions.length > 1);
		if (contested.length === 0) break;
		for (const [part, positions] of contested) {
			const winner = chosen(part, positions);
			for (const position of positions) if (position !== winner) rest.get(position)?.shift();
		}
	}
	return [...rest].flatMap(([position, [part]]) => (part === undefined ? [] : [{ position, part }]));
}
