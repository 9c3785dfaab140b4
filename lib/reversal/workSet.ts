// Step 2: the work set. Where something has to be done: parts that differ, alterations to undo.

import type { Attainable } from "@/lib/reversal/attainable";
import { NONE, type PlacedAlteration, partIn, placeOfPart, type World } from "@/lib/reversal/world";

/** An alteration that stays, at the position where one would look for it, and why. `part` is the host that cannot be had. */
export type StayingAlteration = {
	readonly alteration: PlacedAlteration;
	readonly position: number;
	readonly code: "cannot-be-undone" | "access-loop" | "stuck" | "host-unavailable";
	readonly part: number;
};

export type WorkSet = {
	/** W, ascending. */
	readonly positions: readonly number[];
	/** Alterations to undo, by id. */
	readonly undos: readonly PlacedAlteration[];
	/** Positions with an alteration of their own to undo: they must be empty and within reach for it. */
	readonly undoAt: ReadonlySet<number>;
	readonly staying: readonly StayingAlteration[];
};

/**
 * The positions where now differs from T', the place of each alteration to undo, and, for an alteration on a part
 * that T' holds (it is undone on the bench), that part's position if it is fitted now.
 *
 * An alteration on a part is in scope when T' holds the part at a position in scope.
 */
export function workSet(world: World, attainable: Attainable, inLoop: ReadonlySet<number>): WorkSet {
	const work = new Set<number>();
	for (let p = 0; p < world.positions.length; p++) {
		if (partIn(world.now, p) !== partIn(attainable.build, p)) work.add(p);
	}
	const undos: PlacedAlteration[] = [];
	const undoAt = new Set<number>();
	const staying: StayingAlteration[] = [];
	for (const alteration of world.alterations) {
		const onPart = alteration.partAt !== NONE;
		const shown = onPart ? placeOfPart(attainable.build, alteration.partAt) : alteration.positionAt;
		if (shown === NONE || world.inScope[shown] !== 1) continue;
		// Where hands have to get to: nowhere for a part that lies on the bench already.
		const place = onPart ? placeOfPart(world.now, alteration.partAt) : alteration.positionAt;
		const lost = attainable.outOfHand.get(place);
		if (alteration.undo === null) staying.push({ alteration, position: shown, code: "cannot-be-undone", part: NONE });
		else if (lost !== undefined) staying.push({ alteration, position: shown, code: "host-unavailable", part: lost });
		else if (world.positions[place]?.stuck !== undefined) staying.push({ alteration, position: shown, code: "stuck", part: NONE });
		else if (inLoop.has(place)) staying.push({ alteration, position: shown, code: "access-loop", part: NONE });
		else {
			undos.push(alteration);
			if (place !== NONE) work.add(place);
			if (!onPart) undoAt.add(place);
		}
	}
	return { positions: [...work].sort((a, b) => a - b), undos, undoAt, staying };
}
