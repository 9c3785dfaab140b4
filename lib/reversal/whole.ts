// Where in the machine, or on which loose assembly, a position is; and what parts it from another one.

import { type Build, NONE, placeOfPart, type World } from "@/lib/reversal/world";

/** For each position of one build: the position its host is in, how many hosts are above it, and its whole. */
export type Wholes = {
	/** The position that holds this position's host; `NONE` when it is on the machine or on a loose part. */
	readonly above: Int32Array;
	readonly depth: Int32Array;
	/** The loose part the position belongs to, or `NONE` for the machine. */
	readonly whole: Int32Array;
};

/** The wholes of a build. Requires that no assembly holds itself. Walks without recursion: assemblies nest to any depth. */
export function wholesOf(world: World, build: Build): Wholes {
	const count = world.positions.length;
	const above = new Int32Array(count).fill(NONE);
	const depth = new Int32Array(count).fill(-1);
	const whole = new Int32Array(count).fill(NONE);
	for (let p = 0; p < count; p++) {
		const host = world.hostOf[p] ?? NONE;
		if (host !== NONE) above[p] = placeOfPart(build, host);
	}
	for (let start = 0; start < count; start++) {
		const climbed: number[] = [];
		let p = start;
		while (p !== NONE && depth[p] === -1) {
			climbed.push(p);
			p = above[p] ?? NONE;
		}
		for (let q = climbed.pop(); q !== undefined; q = climbed.pop()) {
			const up = above[q] ?? NONE;
			depth[q] = up === NONE ? 0 : (depth[up] ?? 0) + 1;
			whole[q] = up === NONE ? (world.hostOf[q] ?? NONE) : (whole[up] ?? NONE);
		}
	}
	return { above, depth, whole };
}

/**
 * The positions any one of which, once its part is out, parts `part` from position `p`: the part's own
 * position, and every host's position between the two. Null when the part does not stand in the same whole
 * at all. `p` itself is among them when the part sits on what `p` holds.
 *
 * That is why an assembly on the bench frees its guests from what is in the machine, but not from its own parts.
 */
export function partersOf(build: Build, wholes: Wholes, p: number, part: number): number[] | null {
	const place = placeOfPart(build, part);
	if (place === NONE || wholes.whole[place] !== wholes.whole[p]) return null;
	const parters: number[] = [];
	let a = wholes.above[p] ?? NONE;
	let b = place;
	while (a !== b) {
		const depthA = a === NONE ? -1 : (wholes.depth[a] ?? 0);
		const depthB = b === NONE ? -1 : (wholes.depth[b] ?? 0);
		if (depthA >= depthB) {
			parters.push(a);
			a = wholes.above[a] ?? NONE;
		}
		if (depthB >= depthA) {
			parters.push(b);
			b = wholes.above[b] ?? NONE;
		}
	}
	// The part is itself a host of `p`: it stands in the way only as long as it is fitted.
	if (a === place) parters.push(place);
	return parters.sort((x, y) => x - y);
}

/** The first position from `p` upwards (its host's, that host's host's ...) for which `test` holds, or `NONE`. */
export function firstAbove(wholes: Wholes, p: number, test: (position: number) => boolean): number {
	let q = wholes.above[p] ?? NONE;
	while (q !== NONE && !test(q)) q = wholes.above[q] ?? NONE;
	return q;
}

/** The part that carries position `p` about: the first host upwards that is loose, or whose position is opened. `NONE` for the machine. */
export function carrierOf(world: World, build: Build, p: number, opened: ReadonlySet<number>): number {
	let q = p;
	for (;;) {
		const host = world.hostOf[q] ?? NONE;
		if (host === NONE) return NONE;
		const place = placeOfPart(build, host);
		if (place === NONE || opened.has(place)) return host;
		q = place;
	}
}
