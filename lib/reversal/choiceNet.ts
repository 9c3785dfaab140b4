// The least opening as a bare choice: openings with a weight, and for each the ways to get at it in two directions.
// Knows nothing of machines. Kept apart so that the search can be read, and tested, for itself.

/** For one direction and one opening: ways, each a list of clauses, each a list of openings. Null: nothing to do. */
export type NetWays = readonly (readonly (readonly number[])[])[] | null;

export type Net = {
	/** What each opening is called outside, ascending. */
	readonly labels: readonly number[];
	/** Whole numbers. Nothing for what is open already. */
	readonly weight: readonly number[];
	/** 1 for what is open already and must be got at. */
	readonly opened: Uint8Array;
	readonly directions: readonly [NetDirection, NetDirection];
};

/** One direction, laid out flat so that emptying is one pass. */
export type NetDirection = {
	readonly ways: readonly NetWays[];
	readonly wayOwner: readonly number[];
	readonly wayClauses: readonly number[];
	readonly clauseWay: readonly number[];
	readonly clausesOf: readonly (readonly number[])[];
};

/** Lays out one direction. */
export function netDirection(ways: readonly NetWays[]): NetDirection {
	const wayOwner: number[] = [];
	const wayClauses: number[] = [];
	const clauseWay: number[] = [];
	const clausesOf: number[][] = ways.map(() => []);
	ways.forEach((all, owner) => {
		for (const way of all ?? []) {
			for (const clause of way) {
				for (const q of clause) clausesOf[q]?.push(clauseWay.length);
				clauseWay.push(wayOwner.length);
			}
			wayClauses.push(way.length);
			wayOwner.push(owner);
		}
	});
	return { ways, wayOwner, wayClauses, clauseWay, clausesOf };
}

/** Which openings can be got at in this direction when only those with a 1 in `may` may be opened. */
export function gotAt(direction: NetDirection, may: Uint8Array): Uint8Array {
	const count = may.length;
	const got = new Uint8Array(count);
	const queue: number[] = [];
	const reach = (p: number) => {
		if (may[p] === 1 && got[p] === 0) {
			got[p] = 1;
			queue.push(p);
		}
	};
	const left = Int32Array.from(direction.wayClauses);
	const met = new Uint8Array(direction.clauseWay.length);
	for (let p = 0; p < count; p++) if (direction.ways[p] === null) reach(p);
	direction.wayOwner.forEach((owner, way) => {
		if (left[way] === 0) reach(owner);
	});
	for (let q = queue.pop(); q !== undefined; q = queue.pop()) {
		for (const clause of direction.clausesOf[q] ?? []) {
			if (met[clause] === 1) continue;
			met[clause] = 1;
			const way = direction.clauseWay[clause] ?? 0;
			const still = (left[way] ?? 0) - 1;
			left[way] = still;
			if (still === 0) reach(direction.wayOwner[way] ?? 0);
		}
	}
	return got;
}
