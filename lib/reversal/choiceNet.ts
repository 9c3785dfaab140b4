// The least opening as a bare choice: openings with a weight, and for each the ways to get at it in two directions.
// Knows nothing of machines. Kept apart so that the search can be read, and tested, for itself.

/** For one direction and one opening: ways, each a list of clauses, each a list of openings. Null: nothing to do. */
export type NetWays = readonly (readonly (readonly number[])[])[] | null;

export type Net = {
	/** What each opening is called outside, ascending. */
	readonly labels: readonly number[];
	/** Whole numbers. */
	readonly weight: readonly number[];
	readonly directions: readonly [NetDirection, NetDirection];
	/** For each opening, itself and others that must be opened with it. Not all of them need to be known. */
	readonly bring: readonly (readonly number[])[];
	/** How many openings the net had when `bring` was last worked out. */
	readonly sharpAt: number;
};

/** One direction, laid out flat so that emptying is one pass. Ways and clauses are numbered through. */
export type NetDirection = {
	readonly ways: readonly NetWays[];
	readonly waysOf: readonly (readonly number[])[];
	/** 1 for what needs nothing in this direction. */
	readonly free: Uint8Array;
	readonly wayOwner: Int32Array;
	/** How many clauses a way has. */
	readonly wayClauses: Int32Array;
	readonly clauseWay: Int32Array;
	readonly members: readonly (readonly number[])[];
	/** The clauses an opening is in. */
	readonly clausesOf: readonly (readonly number[])[];
};

const NO_CLAUSE: readonly number[] = [];

/** Lays out one direction. */
export function netDirection(ways: readonly NetWays[]): NetDirection {
	const wayOwner: number[] = [];
	const wayClauses: number[] = [];
	const clauseWay: number[] = [];
	const members: (readonly number[])[] = [];
	const clausesOf: number[][] = ways.map(() => []);
	const waysOf: (readonly number[])[] = [];
	for (let owner = 0; owner < ways.length; owner++) {
		const all = ways[owner];
		if (all === null || all === undefined || all.length === 0) {
			waysOf.push(NO_CLAUSE);
			continue;
		}
		const own: number[] = [];
		for (const way of all) {
			for (const clause of way) {
				for (const q of clause) clausesOf[q]?.push(members.length);
				members.push(clause);
				clauseWay.push(wayOwner.length);
			}
			own.push(wayOwner.length);
			wayClauses.push(way.length);
			wayOwner.push(owner);
		}
		waysOf.push(own);
	}
	return {
		ways,
		waysOf,
		free: Uint8Array.from(ways, (all) => (all === null || all.some((way) => way.length === 0) ? 1 : 0)),
		wayOwner: Int32Array.from(wayOwner),
		wayClauses: Int32Array.from(wayClauses),
		clauseWay: Int32Array.from(clauseWay),
		members,
		clausesOf,
	};
}

/** Which openings can be got at in this direction when only those with a 1 in `may` may be opened. */
export function gotAt(direction: NetDirection, may: Uint8Array): Uint8Array {
	const { free, wayOwner, wayClauses, clauseWay, clausesOf } = direction;
	const count = may.length;
	const got = new Uint8Array(count);
	const queue = new Int32Array(count);
	let end = 0;
	const left = wayClauses.slice();
	const met = new Uint8Array(clauseWay.length);
	for (let p = 0; p < count; p++) {
		if (may[p] !== 1 || free[p] !== 1) continue;
		got[p] = 1;
		queue[end++] = p;
	}
	for (let at = 0; at < end; at++) {
		for (const clause of clausesOf[queue[at] ?? 0] ?? NO_CLAUSE) {
			if (met[clause] === 1) continue;
			met[clause] = 1;
			const way = clauseWay[clause] ?? 0;
			const still = (left[way] ?? 0) - 1;
			left[way] = still;
			if (still > 0) continue;
			const owner = wayOwner[way] ?? 0;
			if (may[owner] !== 1 || got[owner] === 1) continue;
			got[owner] = 1;
			queue[end++] = owner;
		}
	}
	return got;
}
