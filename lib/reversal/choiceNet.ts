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

/**
 * One direction, laid out flat so that a pass over it allocates nothing. Ways and clauses are numbered through: those of
 * opening p are the ways wayStart[p] to wayStart[p + 1] - 1, of way w the clauses clauseStart[w] to clauseStart[w + 1] - 1,
 * and so on.
 */
export type NetDirection = {
	readonly ways: readonly NetWays[];
	/** 1 for what needs nothing in this direction. */
	readonly free: Uint8Array;
	readonly wayStart: Int32Array;
	readonly wayOwner: Int32Array;
	readonly clauseStart: Int32Array;
	readonly clauseWay: Int32Array;
	readonly memberStart: Int32Array;
	/** The openings in each clause. */
	readonly members: Int32Array;
	readonly userStart: Int32Array;
	/** The clauses each opening is in. */
	readonly users: Int32Array;
};

/** What one pass over a net looks at: its openings, and how often they stand in a clause. */
export const sizeOf = ({ weight, directions: [out, back] }: Net): number => weight.length + out.members.length + back.members.length;

/** Lays out one direction. */
export function netDirection(ways: readonly NetWays[]): NetDirection {
	const count = ways.length;
	const wayStart = new Int32Array(count + 1);
	const wayOwner: number[] = [];
	const clauseStart: number[] = [];
	const clauseWay: number[] = [];
	const memberStart: number[] = [];
	const members: number[] = [];
	ways.forEach((all, owner) => {
		wayStart[owner] = wayOwner.length;
		for (const way of all ?? []) {
			clauseStart.push(clauseWay.length);
			for (const clause of way) {
				memberStart.push(members.length);
				clauseWay.push(wayOwner.length);
				for (const q of clause) members.push(q);
			}
			wayOwner.push(owner);
		}
	});
	wayStart[count] = wayOwner.length;
	clauseStart.push(clauseWay.length);
	memberStart.push(members.length);
	return {
		ways,
		free: Uint8Array.from(ways, (all) => (all === null || all.some((way) => way.length === 0) ? 1 : 0)),
		wayStart,
		wayOwner: Int32Array.from(wayOwner),
		clauseStart: Int32Array.from(clauseStart),
		clauseWay: Int32Array.from(clauseWay),
		memberStart: Int32Array.from(memberStart),
		members: Int32Array.from(members),
		...usersOf(count, memberStart, members),
	};
}

function usersOf(count: number, memberStart: readonly number[], members: readonly number[]): Pick<NetDirection, "userStart" | "users"> {
	const userStart = new Int32Array(count + 1);
	for (const q of members) userStart[q + 1] = (userStart[q + 1] ?? 0) + 1;
	for (let q = 0; q < count; q++) userStart[q + 1] = (userStart[q + 1] ?? 0) + (userStart[q] ?? 0);
	const next = userStart.slice();
	const users = new Int32Array(members.length);
	for (let clause = 0; clause + 1 < memberStart.length; clause++) {
		for (let at = memberStart[clause] ?? 0; at < (memberStart[clause + 1] ?? 0); at++) {
			const q = members[at] ?? 0;
			const place = next[q] ?? 0;
			users[place] = clause;
			next[q] = place + 1;
		}
	}
	return { userStart, users };
}

/** How many clauses of each way are still to be met when none is. */
export function clausesLeft({ wayOwner, clauseStart }: NetDirection): Int32Array {
	const left = new Int32Array(wayOwner.length);
	for (let way = 0; way < left.length; way++) left[way] = (clauseStart[way + 1] ?? 0) - (clauseStart[way] ?? 0);
	return left;
}

/** Which openings can be got at in this direction when only those with a 1 in `may` may be opened. */
export function gotAt(direction: NetDirection, may: Uint8Array): Uint8Array {
	const { free, wayOwner, clauseWay, userStart, users } = direction;
	const count = may.length;
	const got = new Uint8Array(count);
	const queue = new Int32Array(count);
	let end = 0;
	const left = clausesLeft(direction);
	const met = new Uint8Array(clauseWay.length);
	for (let p = 0; p < count; p++) {
		if (may[p] !== 1 || free[p] !== 1) continue;
		got[p] = 1;
		queue[end++] = p;
	}
	for (let at = 0; at < end; at++) {
		const q = queue[at] ?? 0;
		for (let use = userStart[q] ?? 0; use < (userStart[q + 1] ?? 0); use++) {
			const clause = users[use] ?? 0;
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
