// Working time: when people are in. Pure. Time is in minutes from the plan's zero.

/** When somebody is in: stretches of time in order, not touching each other. `until` is the first moment out. */
export type Windows = readonly { readonly from: number; readonly until: number }[];

/**
 * The time that a crew has in common, and how a step lies in it. One person breaks off when the day is over and goes on the next.
 * Several break off only when all of them go: a step that has time enough before one of them leaves without the others is
 * begun there, and else after. So the time in common falls into sittings, and a step lies in one, or, where no sitting of the next
 * two weeks is long enough, begins one and goes on in the next.
 */
export class WorkingTime {
	readonly count: number;
	private readonly from: Float64Array;
	private readonly until: Float64Array;
	/** Minutes in common before each window, and in all. */
	private readonly before: Float64Array;
	/** By window: the minutes in common up to the end of its sitting, and the first window of the next one. */
	private readonly sittingEnd: Float64Array;
	private readonly nextSitting: Int32Array;

	constructor(crew: readonly Windows[]) {
		const [first, ...others] = crew;
		const shared = first === undefined ? ALWAYS : others.reduce((common, windows) => inCommon(common, windows), first);
		this.count = shared.length;
		this.from = Float64Array.from(shared, ({ from }) => from);
		this.until = Float64Array.from(shared, ({ until }) => until);
		this.before = new Float64Array(this.count + 1);
		for (let w = 0; w < this.count; w++) this.before[w + 1] = at(this.before, w) + at(this.until, w) - at(this.from, w);
		this.sittingEnd = new Float64Array(this.count);
		this.nextSitting = new Int32Array(this.count);
		let end = this.count;
		for (let w = this.count - 1; w >= 0; w--) {
			const isLast = w === this.count - 1 || crew.some((windows) => isInBetween(windows, at(this.until, w), at(this.from, w + 1)));
			if (isLast) end = w + 1;
			this.nextSitting[w] = end;
			this.sittingEnd[w] = at(this.before, end);
		}
	}

	/** The earliest moment, not before `moment`, at which work of so many minutes begins; Infinity when there is no time left for it. */
	start(moment: number, minutes: number): number {
		if (minutes === 0) return moment;
		let w = this.windowAt(moment);
		if (w === this.count) return Number.POSITIVE_INFINITY;
		const start = Math.max(moment, at(this.from, w));
		if (at(this.before, w) + start - at(this.from, w) + minutes <= at(this.sittingEnd, w)) return start;
		const isFirst = w === 0 || this.nextSitting[w - 1] === w;
		const whole = isFirst && start === at(this.from, w) ? w : (this.nextSitting[w] as number);
		for (w = whole; w < this.count && at(this.from, w) <= moment + LOOKED_AHEAD; w = this.nextSitting[w] as number)
			if (at(this.sittingEnd, w) - at(this.before, w) >= minutes) return at(this.from, w);
		return whole < this.count && at(this.before, whole) + minutes <= at(this.before, this.count)
			? at(this.from, whole)
			: Number.POSITIVE_INFINITY;
	}

	/** When work of so many minutes that begins at `start` is done. Requires a moment that `start` gave. */
	finish(start: number, minutes: number): number {
		if (minutes === 0 || start === Number.POSITIVE_INFINITY) return start;
		let w = this.windowAt(start);
		const done = at(this.before, w) + start - at(this.from, w) + minutes;
		while (at(this.before, w + 1) < done) w += 1;
		return at(this.from, w) + done - at(this.before, w);
	}

	/** The window that holds the moment, or the next one; `count` when there is none. */
	private windowAt(moment: number): number {
		let [low, high] = [0, this.count];
		while (low < high) {
			const middle = (low + high) >> 1;
			if (at(this.until, middle) > moment) high = middle;
			else low = middle + 1;
		}
		return low;
	}
}

/** So far ahead a sitting that is long enough is waited for: two weeks. */
const LOOKED_AHEAD = 14 * 1440;

/** For what needs nobody: from the plan's zero on, for two thousand years. */
const ALWAYS: Windows = [{ from: 0, until: 2 ** 30 }];

const at = (row: Float64Array, index: number): number => row[index] as number;

/** When both are in. */
export function inCommon(one: Windows, other: Windows): Windows {
	const common: { from: number; until: number }[] = [];
	for (let a = 0, b = 0; a < one.length && b < other.length; ) {
		const [first, second] = [one[a], other[b]];
		if (first === undefined || second === undefined) break;
		const [from, until] = [Math.max(first.from, second.from), Math.min(first.until, second.until)];
		if (from < until) common.push({ from, until });
		if (first.until <= second.until) a += 1;
		if (second.until <= first.until) b += 1;
	}
	return common;
}

/** Whether somebody is in at some moment of a gap. Windows are in order, so the first that ends after its begin decides. */
function isInBetween(windows: Windows, from: number, until: number): boolean {
	let [low, high] = [0, windows.length];
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((windows[middle]?.until ?? 0) > from) high = middle;
		else low = middle + 1;
	}
	return (windows[low]?.from ?? Number.POSITIVE_INFINITY) < until;
}

/** Gives the time that a crew has in common; worked out once for each crew. Numbers are those of the people. */
export function crewTimes(people: readonly { readonly windows: Windows }[]): (crew: readonly number[]) => WorkingTime {
	const known = new Map<string, WorkingTime>();
	return (crew) => {
		const key = [...crew].sort((a, b) => a - b).join(" ");
		const time = known.get(key) ?? new WorkingTime(crew.map((person) => people[person]?.windows ?? []));
		known.set(key, time);
		return time;
	};
}
