// What a run of take-outs offers next. Pure.

import { type Cover, isReachable, type ReachFacts, type ReachPosition, whatCovers, withoutPart } from "@/lib/fittings/reach";

/** Reach as plain data, for the way to the phone. */
export type ReachSent = {
	readonly positions: readonly ReachPosition[];
	readonly seatOf: readonly (readonly [partId: string, positionId: string])[];
	readonly covers: readonly Cover[];
};

/** The facts again, as `reach.ts` reads them. */
export const reachOf = ({ positions, seatOf, covers }: ReachSent): ReachFacts => ({
	positions: new Map(positions.map((position) => [position.id, position])),
	seatOf: new Map(seatOf),
	covers,
});

export type Offered = {
	/** Can be reached now since the last part came out, that part's last first. */
	readonly opened: readonly string[];
	/** Can be reached now, in building order. */
	readonly free: readonly string[];
	/** Position ids with the ids of the parts in the way. */
	readonly behind: readonly { readonly positionId: string; readonly parts: readonly string[] }[];
};

/**
 * Which positions to offer: first what was covered by what came out last, then what else can be reached, then what is
 * behind something. `seats` are the occupied positions in building order with their parts, `out` the parts that came out,
 * the last one first; what is out is not offered.
 */
export function offeredNext(
	facts: ReachFacts,
	seats: readonly { readonly positionId: string; readonly partId: string }[],
	out: readonly string[],
): Offered {
	const now = out.reduce(withoutPart, facts);
	const here = seats.filter(({ partId }) => !out.includes(partId)).map(({ positionId }) => positionId);
	const free = here.filter((id) => isReachable(now, id));
	const covered = new Map(
		out.map((partId) => [partId, new Set(facts.covers.filter((cover) => cover.partId === partId).map((cover) => cover.positionId))]),
	);
	const turn = (id: string) => out.findIndex((partId) => covered.get(partId)?.has(id));
	const opened = free.filter((id) => turn(id) >= 0).sort((a, b) => turn(a) - turn(b));
	return {
		opened,
		free: free.filter((id) => !opened.includes(id)),
		behind: here
			.filter((id) => !free.includes(id))
			.map((positionId) => ({ positionId, parts: [...new Set(whatCovers(now, positionId).map((cover) => cover.partId))] })),
	};
}

/** What a list at the bench says of one occupied position. */
export type Line = {
	readonly positionId: string;
	readonly mark: string;
	readonly position: string;
	readonly part: string;
	readonly tag: string | null;
	readonly hasPhoto: boolean;
	/** Names of the parts in the way. */
	readonly behind: readonly string[];
};

export type Lines = { readonly opened: readonly Line[]; readonly free: readonly Line[]; readonly behind: readonly Line[] };

/** The lists to choose from, or their first lines, and how long they are. */
export type Choice = {
	readonly lines: Lines;
	readonly counts: { readonly opened: number; readonly free: number; readonly behind: number };
};

/** Lines shown at once; the rest is one tap or a word away. */
export const SHOWN = 12;

/** What is offered, in words. `names` of parts by their id. */
export function linesOf(
	seats: readonly {
		readonly position: { readonly id: string; readonly mark: string; readonly name: string };
		readonly part: { readonly name: string; readonly tag: string | null };
		readonly photo: string | null;
	}[],
	{ opened, free, behind }: Offered,
	names: ReadonlyMap<string, string>,
): Lines {
	const byId = new Map(seats.map((seat) => [seat.position.id, seat]));
	const line = (positionId: string, covers: readonly string[]): Line[] => {
		const seat = byId.get(positionId);
		if (!seat) return [];
		const { position, part, photo } = seat;
		return [
			{
				positionId,
				mark: position.mark,
				position: position.name,
				part: part.name,
				tag: part.tag,
				hasPhoto: photo !== null,
				behind: covers.map((partId) => names.get(partId) ?? "a part"),
			},
		];
	};
	return {
		opened: opened.flatMap((id) => line(id, [])),
		free: free.flatMap((id) => line(id, [])),
		behind: behind.flatMap(({ positionId, parts }) => line(positionId, parts)),
	};
}

/** Lines whose position, mark, part or tag has every word typed, in the order given. */
export function linesNamed(lines: readonly Line[], typed: string): Line[] {
	const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
	return lines.filter(({ position, mark, part, tag }) => {
		const said = `${position} ${mark} ${part} ${tag ?? ""}`.toLowerCase();
		return words.every((word) => said.includes(word));
	});
}

/** All that can be chosen of a machine: `out` are the parts that came out, the last one first. */
export function choiceOf(
	facts: ReachFacts,
	seats: readonly (Parameters<typeof linesOf>[0][number] & { readonly part: { readonly id: string } })[],
	out: readonly string[],
	names: ReadonlyMap<string, string>,
): Choice {
	const taken = seats.map(({ position, part }) => ({ positionId: position.id, partId: part.id }));
	const lines = linesOf(seats, offeredNext(facts, taken, out), names);
	return { lines, counts: { opened: lines.opened.length, free: lines.free.length, behind: lines.behind.length } };
}
