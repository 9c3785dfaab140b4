// A project of activities as numbers: durations, waits, what comes after what, and how much of each resource is held. Pure.
//
// Resources are renewable: people, a bench, a spray booth. An activity holds its amounts from start to finish without a break;
// the wait after it holds nothing.

/** One direction of time: forwards, or backwards from the end. Arcs lie in one array, `arcStart[a]` to `arcStart[a + 1]`. */
export type Direction = {
	readonly arcStart: Int32Array;
	/** The activity that has to be over, and the time that has to pass after it. */
	readonly arcFrom: Int32Array;
	readonly arcLag: Int32Array;
	/** No activity starts earlier. */
	readonly release: Int32Array;
	/** What passes after an activity before everything is over. */
	readonly tail: Int32Array;
};

export type Project = {
	readonly count: number;
	readonly resources: number;
	readonly capacity: Int32Array;
	readonly duration: Int32Array;
	readonly wait: Int32Array;
	/** What each activity holds: `useStart[a]` to `useStart[a + 1]` of these two. */
	readonly useStart: Int32Array;
	readonly useOf: Int32Array;
	readonly useAmount: Int32Array;
	readonly forwards: Direction;
	readonly backwards: Direction;
	/** Activities with every need before what needs it; of several free ones, the first in the input. */
	readonly topological: Int32Array;
	/** By activity: its place in that order. */
	readonly rank: Int32Array;
};

export type ProjectInput = {
	readonly capacity: readonly number[];
	readonly activities: readonly {
		readonly minutes: number;
		readonly wait: number;
		/** Numbers of the activities that must be over before. */
		readonly after: readonly number[];
		/** Amount of each resource. */
		readonly uses: readonly number[];
	}[];
};

/** Numbers a project. Requires that needs form no loop and that no activity holds more than there is. */
export function projectOf({ capacity, activities }: ProjectInput): Project {
	const count = activities.length;
	const duration = Int32Array.from(activities, ({ minutes }) => minutes);
	const wait = Int32Array.from(activities, ({ wait }) => wait);
	const before = activities.map(({ after }) => [...new Set(after)]);
	const next: number[][] = activities.map(() => []);
	before.forEach((needs, a) => {
		for (const need of needs) next[need]?.push(a);
	});
	const uses = activities.map(({ uses }) => uses.flatMap((amount, r) => (amount > 0 ? [{ r, amount }] : [])));
	const topological = sorted(before, next);
	const rank = new Int32Array(count);
	topological.forEach((a, at) => {
		rank[a] = at;
	});
	return {
		count,
		resources: capacity.length,
		capacity: Int32Array.from(capacity),
		duration,
		wait,
		...rowsOf(uses),
		forwards: {
			...arcsOf(before, (need) => wait[need] ?? 0),
			release: new Int32Array(count),
			tail: wait,
		},
		// Backwards, the wait lies between an activity and what came before it in that direction, or the end.
		backwards: {
			...arcsOf(next, (_, a) => wait[a] ?? 0),
			release: wait,
			tail: new Int32Array(count),
		},
		topological,
		rank,
	};
}

function arcsOf(lists: readonly (readonly number[])[], lagOf: (from: number, to: number) => number) {
	const arcStart = startsOf(lists);
	return {
		arcStart,
		arcFrom: Int32Array.from(lists.flat()),
		arcLag: Int32Array.from(lists.flatMap((list, a) => list.map((from) => lagOf(from, a)))),
	};
}

function rowsOf(uses: readonly (readonly { readonly r: number; readonly amount: number }[])[]) {
	return {
		useStart: startsOf(uses),
		useOf: Int32Array.from(uses.flatMap((row) => row.map(({ r }) => r))),
		useAmount: Int32Array.from(uses.flatMap((row) => row.map(({ amount }) => amount))),
	};
}

function startsOf(lists: readonly (readonly unknown[])[]): Int32Array {
	const starts = new Int32Array(lists.length + 1);
	lists.forEach((list, at) => {
		starts[at + 1] = (starts[at] ?? 0) + list.length;
	});
	return starts;
}

function sorted(before: readonly (readonly number[])[], next: readonly (readonly number[])[]): Int32Array {
	const left = before.map((needs) => needs.length);
	const ready = left.flatMap((needs, a) => (needs === 0 ? [a] : []));
	for (let done = 0; done < ready.length; done++) {
		for (const a of next[ready[done] ?? 0] ?? []) {
			left[a] = (left[a] ?? 0) - 1;
			if (left[a] === 0) ready.push(a);
		}
	}
	if (ready.length < before.length) throw new Error("the needs form a loop");
	return Int32Array.from(ready);
}
