// Step 1: the attainable target. What the machine can be brought back to, and for every position that cannot, why.

import { firstAbove, wholesOf } from "@/lib/reversal/whole";
import { type Build, buildFrom, NONE, partIn, placeOfPart, type World } from "@/lib/reversal/world";

/** Why a position cannot have what the target wants there. `part` and `position` are what stands against it. */
export type Hindrance =
	| { readonly code: "unavailable"; readonly part: number }
	| { readonly code: "danger"; readonly part: number }
	| { readonly code: "stands-elsewhere"; readonly part: number; readonly position: number }
	/** `excludes` is the part that `part` cannot be fitted together with: the one that is wanted, or one that rides on it. */
	| { readonly code: "excluded"; readonly part: number; readonly position: number; readonly excludes: number }
	| { readonly code: "host-unavailable"; readonly part: number }
	| { readonly code: "host-not-in-target"; readonly part: number }
	| { readonly code: "would-hold-itself"; readonly part: number }
	| { readonly code: "stuck" }
	| { readonly code: "access-loop" };

export type Attainable = {
	/** T': what each position can be brought to hold. */
	readonly build: Build;
	/** The positions in scope that cannot have what the target wants, and why. */
	readonly hindrances: ReadonlyMap<number, Hindrance>;
	/** Positions on a part that the target does not hold: they keep what they hold and travel with their assembly. */
	readonly travelling: ReadonlySet<number>;
	/** Positions of a loose assembly that cannot be had, with its root: nothing can be done there at all. */
	readonly outOfHand: ReadonlyMap<number, number>;
};

/**
 * The attainable target T'.
 *
 * Starts from the target on the positions in scope and from now elsewhere. A position that cannot have the
 * part it wants keeps what it holds now, or is left empty when that is wanted elsewhere. First all that can never be had,
 * then knots, then what is excluded, all positions against the same build, so that the order of looking does not matter; it ends
 * after at most one change a position. "Now" is `world.held` here: half-way through a reversal, a position that it touched keeps
 * what it held when the reversal began. `inLoop` are positions already found to be in an access loop: they keep what they hold.
 */
export function attainableTarget(world: World, inLoop: ReadonlySet<number>): Attainable {
	const { held: now, target } = world;
	const count = world.positions.length;
	const outOfHand = positionsOutOfHand(world);
	const hindrances = new Map<number, Hindrance>();
	const travelling = new Set<number>();
	/** Keeps what it holds, whoever else may want that. */
	const keeps = new Uint8Array(count);

	for (let p = 0; p < count; p++) {
		if (world.inScope[p] !== 1) {
			keeps[p] = 1;
			continue;
		}
		const host = world.hostOf[p] ?? NONE;
		const lost = outOfHand.get(p);
		const differs = partIn(now, p) !== partIn(target, p);
		const isForeign = host !== NONE && placeOfPart(target, host) === NONE;
		if (isForeign && partIn(target, p) === NONE) {
			// What the target does not know travels, with an assembly that is lost as well: the machine misses nothing by it.
			keeps[p] = 1;
			travelling.add(p);
		} else if (inLoop.has(p)) {
			keeps[p] = 1;
			if (differs) hindrances.set(p, { code: "access-loop" });
		} else if (isStuck(world, p)) {
			keeps[p] = 1;
			if (differs) hindrances.set(p, { code: "stuck" });
		} else if (lost !== undefined) {
			keeps[p] = 1;
			if (differs) hindrances.set(p, { code: "host-unavailable", part: lost });
		} else if (isForeign) {
			keeps[p] = 1;
			if (differs) hindrances.set(p, { code: "host-not-in-target", part: host });
		}
	}

	const failed = (p: number): boolean => keeps[p] === 1 || hindrances.has(p);
	const resolve = (): Build => {
		const partAt = new Int32Array(count).fill(NONE);
		const wanted = new Uint8Array(world.parts.length);
		for (let p = 0; p < count; p++) {
			if (failed(p)) continue;
			const part = partIn(target, p);
			partAt[p] = part;
			if (part !== NONE) wanted[part] = 1;
		}
		for (let p = 0; p < count; p++) {
			if (!failed(p)) continue;
			const part = partIn(now, p);
			if (keeps[p] === 1 || (part !== NONE && wanted[part] === 0)) partAt[p] = part;
		}
		return buildFrom(partAt, world.parts.length);
	};

	const wantsAnother = (p: number): boolean => {
		const part = partIn(target, p);
		return !failed(p) && part !== NONE && part !== partIn(now, p);
	};
	for (let p = 0; p < count; p++) {
		if (!wantsAnother(p)) continue;
		const hindrance = notToBeHad(world, keeps, partIn(target, p)) ?? hostNotToBeHad(world, p);
		if (hindrance !== null) hindrances.set(p, hindrance);
	}
	for (;;) {
		const build = resolve();
		// Only a build in which no assembly holds itself has wholes, so knots are untied before exclusions are looked at.
		const knot = firstHoldingItself(world, build);
		if (knot !== NONE) {
			hindrances.set(knot, { code: "would-hold-itself", part: world.hostOf[knot] ?? NONE });
			continue;
		}
		const excluded = excludedIn(world, build);
		if (excluded.size === 0) return { build, hindrances, travelling, outOfHand };
		for (const [p, hindrance] of excluded) hindrances.set(p, hindrance);
	}
}

const isStuck = (world: World, p: number): boolean => world.positions[p]?.stuck !== undefined;

/** Whether no opening has the position: it is stuck, or on a part that cannot be had. */
export const isBarred = (world: World, { outOfHand }: Pick<Attainable, "outOfHand">, p: number): boolean =>
	isStuck(world, p) || outOfHand.has(p);

/** Why a part cannot be taken to another position, whichever that is. */
function notToBeHad(world: World, keeps: Uint8Array, part: number): Hindrance | null {
	if (world.parts[part]?.unavailable !== undefined) return { code: "unavailable", part };
	if (world.parts[part]?.danger !== undefined && !world.mayPutDangerBack) return { code: "danger", part };
	const stands = placeOfPart(world.held, part);
	if (stands !== NONE && keeps[stands] === 1) return { code: "stands-elsewhere", part, position: stands };
	return null;
}

/** Nothing new is put on a part that cannot be had, though on record it is fitted; what is on it can come off. */
function hostNotToBeHad(world: World, p: number): Hindrance | null {
	const host = world.hostOf[p] ?? NONE;
	return host === NONE || world.parts[host]?.unavailable === undefined ? null : { code: "host-unavailable", part: host };
}

/**
 * The positions that cannot come to hold another part, since it, or a part that rides on it, excludes one that stays where it is.
 * Only what is in the same whole is fitted together, as `lib/fittings/rules.ts` has it: a part on an assembly that comes out, or
 * lies on the shelf, stands in nobody's place in the machine. Two that ride on the same part were together before; but a part is
 * not put in with what it excludes on it, or it would depend on whether that came onto it at the bench or was there.
 */
function excludedIn(world: World, build: Build): Map<number, Hindrance> {
	const wholes = wholesOf(world, build);
	const found = new Map<number, Hindrance>();
	const isMoved = (p: number): boolean => partIn(build, p) !== partIn(world.held, p);
	/** The position that a part comes to, or is carried to by an assembly; `NONE` when nothing moves it. */
	const movedTo = (place: number): number => (isMoved(place) ? place : firstAbove(wholes, place, isMoved));
	world.excluded.forEach((others, part) => {
		const place = others.length === 0 ? NONE : placeOfPart(build, part);
		if (place === NONE) return;
		const p = movedTo(place);
		if (p === NONE || found.has(p)) return;
		for (const other of others) {
			const stands = placeOfPart(build, other);
			if (stands === NONE || isMoved(stands) || wholes.whole[stands] !== wholes.whole[place]) continue;
			if (place !== p && movedTo(stands) === p) continue;
			found.set(p, { code: "excluded", part: other, position: stands, excludes: part });
			return;
		}
	});
	return found;
}

/** All positions of a loose assembly whose root cannot be had: what is lost is lost with everything on it. */
function positionsOutOfHand(world: World): Map<number, number> {
	const wholes = wholesOf(world, world.held);
	const found = new Map<number, number>();
	wholes.whole.forEach((root, p) => {
		if (root !== NONE && world.parts[root]?.unavailable !== undefined) found.set(p, root);
	});
	return found;
}

/**
 * The first position, by id, that T' changes and by which an assembly would come to hold itself; `NONE` if there is none.
 * Neither now nor the target can hold such a knot, but a mixture of the two can.
 */
function firstHoldingItself(world: World, build: Build): number {
	const walkOf = new Int32Array(world.positions.length).fill(NONE);
	const above = (p: number): number => {
		const host = world.hostOf[p] ?? NONE;
		return host === NONE ? NONE : placeOfPart(build, host);
	};
	let first: number = NONE;
	for (let start = 0; start < world.positions.length; start++) {
		let p = start;
		while (p !== NONE && walkOf[p] === NONE) {
			walkOf[p] = start;
			p = above(p);
		}
		if (p === NONE || walkOf[p] !== start) continue;
		let q = p;
		do {
			if (partIn(build, q) !== partIn(world.held, q) && (first === NONE || q < first)) first = q;
			q = above(q);
		} while (q !== p);
	}
	return first;
}
