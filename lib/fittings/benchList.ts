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

/** Seats whose name, mark, part or tag has every word typed, in the order given. */
export function seatsNamed<
	Seat extends {
		readonly position: { readonly name: string; readonly mark: string };
		readonly part: { readonly name: string; readonly tag: string | null };
	},
>(seats: readonly Seat[], typed: string): Seat[] {
	const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
	return seats.filter(({ position, part }) => {
		const said = `${position.name} ${position.mark} ${part.name} ${part.tag ?? ""}`.toLowerCase();
		return words.every((word) => said.includes(word));
	});
}
