// How long a project takes at least. Destructive bounds (R. Klein and A. Scholl, 1999): a length is tried, and what follows from
// it for every activity's earliest and latest start is worked out until it contradicts itself; then it cannot be done in that
// time. Arguments: precedence and waits; activities that cannot overlap (disjunctive); what must be running at a moment
// (time-table); the work that must lie within an interval (energetic, J. Erschler and P. Lopez). Pure.

import type { Project } from "@/lib/schedule/project";

/** A length below which no schedule lies. `upper` is a length that can be done. */
export function lowerBound(project: Project, upper: number): number {
	if (project.count === 0) return 0;
	const windows = new Windows(project);
	let low = basicBound(project, windows);
	if (low >= upper || windows.contradicts(upper)) return Math.min(low, upper);
	// Refuted lengths lie below those that are not: the shortest of these is looked for by halving.
	let high = upper;
	while (low < high) {
		const middle = low + Math.floor((high - low) / 2);
		if (windows.contradicts(middle)) low = middle + 1;
		else high = middle;
	}
	return low;
}

/** The longest path, and the work of each resource spread evenly over its capacity. */
function basicBound(project: Project, windows: Windows): number {
	let bound = windows.longestPath;
	for (let r = 0; r < project.resources; r++) {
		let work = 0;
		for (let a = 0; a < project.count; a++) work += windows.amount(a, r) * (project.duration[a] as number);
		const capacity = project.capacity[r] as number;
		if (capacity > 0) bound = Math.max(bound, Math.ceil(work / capacity));
	}
	return bound;
}

/** Above so many activities pairs are not looked at: their number grows with the square. */
const MOST_PAIRED = 1000;
/** Above so many looks the work in intervals is not added up: it grows with the cube. */
const MOST_LOOKS = 50_000_000;

/** Rounds of deduction, at most: each only makes windows narrower, and so many do for what is tried here. */
const MOST_ROUNDS = 60;

class Windows {
	readonly longestPath: number;
	private readonly amounts: Int32Array;
	private readonly early: Int32Array;
	private readonly late: Int32Array;
	private readonly heads: Int32Array;
	private readonly tails: Int32Array;
	/** Pairs that cannot overlap, in one array. */
	private readonly pairs: Int32Array;
	private readonly moments: Int32Array;

	constructor(private readonly project: Project) {
		const { count, resources, useStart, useOf, useAmount } = project;
		this.amounts = new Int32Array(count * resources);
		for (let a = 0; a < count; a++)
			for (let u = useStart[a] as number; u < (useStart[a + 1] as number); u++)
				this.amounts[a * resources + (useOf[u] as number)] = useAmount[u] as number;
		this.early = new Int32Array(count);
		this.late = new Int32Array(count);
		this.heads = new Int32Array(count);
		this.tails = new Int32Array(count);
		this.moments = new Int32Array(4 * count);
		this.longestPath = this.walk();
		this.pairs = this.disjoint();
	}

	amount(a: number, r: number): number {
		return this.amounts[a * this.project.resources + r] as number;
	}

	/** Whether no schedule can be over by `length`. False says nothing: only what these arguments see is refuted. */
	contradicts(length: number): boolean {
		const { count, duration } = this.project;
		if (this.longestPath > length) return true;
		this.early.set(this.heads);
		for (let a = 0; a < count; a++) this.late[a] = length - (this.tails[a] as number) - (duration[a] as number);
		for (let round = 0; round < MOST_ROUNDS; round++) {
			const changed = [this.byPrecedence(), this.byPairs(), this.byTimeTable()];
			if (changed.includes("contradiction")) return true;
			for (let a = 0; a < count; a++) if ((this.early[a] as number) > (this.late[a] as number)) return true;
			if (!changed.includes("narrower")) return this.tooMuchWork();
		}
		return this.tooMuchWork();
	}

	/** Heads and tails by precedence and waits; gives the longest path. */
	private walk(): number {
		const { count, topological, forwards, backwards, duration } = this.project;
		let longest = 0;
		for (let at = 0; at < count; at++) {
			const a = topological[at] as number;
			let head = 0;
			for (let arc = forwards.arcStart[a] as number; arc < (forwards.arcStart[a + 1] as number); arc++) {
				const need = forwards.arcFrom[arc] as number;
				head = Math.max(head, (this.heads[need] as number) + (duration[need] as number) + (forwards.arcLag[arc] as number));
			}
			this.heads[a] = head;
			longest = Math.max(longest, head + (duration[a] as number) + (forwards.tail[a] as number));
		}
		for (let at = count - 1; at >= 0; at--) {
			const a = topological[at] as number;
			let tail = backwards.release[a] as number;
			for (let arc = backwards.arcStart[a] as number; arc < (backwards.arcStart[a + 1] as number); arc++) {
				const next = backwards.arcFrom[arc] as number;
				tail = Math.max(tail, (this.tails[next] as number) + (duration[next] as number) + (backwards.arcLag[arc] as number));
			}
			this.tails[a] = tail;
		}
		return longest;
	}

	private disjoint(): Int32Array {
		const { count, resources, capacity, duration } = this.project;
		const pairs: number[] = [];
		if (count > MOST_PAIRED) return new Int32Array(0);
		for (let a = 0; a < count; a++)
			for (let b = a + 1; b < count; b++) {
				if (duration[a] === 0 || duration[b] === 0) continue;
				for (let r = 0; r < resources; r++)
					if (this.amount(a, r) + this.amount(b, r) > (capacity[r] as number)) {
						pairs.push(a, b);
						break;
					}
			}
		return Int32Array.from(pairs);
	}

	private atLeast(a: number, moment: number): boolean {
		if ((this.early[a] as number) >= moment) return false;
		this.early[a] = moment;
		return true;
	}

	private atMost(a: number, moment: number): boolean {
		if ((this.late[a] as number) <= moment) return false;
		this.late[a] = moment;
		return true;
	}

	private byPrecedence(): Outcome {
		const { count, topological, forwards, backwards, duration } = this.project;
		let narrower = false;
		for (let at = 0; at < count; at++) {
			const a = topological[at] as number;
			for (let arc = forwards.arcStart[a] as number; arc < (forwards.arcStart[a + 1] as number); arc++) {
				const need = forwards.arcFrom[arc] as number;
				if (this.atLeast(a, (this.early[need] as number) + (duration[need] as number) + (forwards.arcLag[arc] as number))) narrower = true;
			}
		}
		for (let at = count - 1; at >= 0; at--) {
			const a = topological[at] as number;
			for (let arc = backwards.arcStart[a] as number; arc < (backwards.arcStart[a + 1] as number); arc++) {
				const next = backwards.arcFrom[arc] as number;
				if (this.atMost(a, (this.late[next] as number) - (duration[a] as number) - (backwards.arcLag[arc] as number))) narrower = true;
			}
		}
		return narrower ? "narrower" : "same";
	}

	/** Of two that cannot overlap one is first; where only one of the two orders is left, it holds. */
	private byPairs(): Outcome {
		const { duration } = this.project;
		const { pairs, early, late } = this;
		let narrower = false;
		for (let at = 0; at < pairs.length; at += 2) {
			const [a, b] = [pairs[at] as number, pairs[at + 1] as number];
			const aFirst = (early[a] as number) + (duration[a] as number) <= (late[b] as number);
			const bFirst = (early[b] as number) + (duration[b] as number) <= (late[a] as number);
			if (aFirst && bFirst) continue;
			if (!aFirst && !bFirst) return "contradiction";
			const [first, then] = aFirst ? [a, b] : [b, a];
			if (this.atLeast(then, (early[first] as number) + (duration[first] as number))) narrower = true;
			if (this.atMost(first, (late[then] as number) - (duration[first] as number))) narrower = true;
		}
		return narrower ? "narrower" : "same";
	}

	/** What must be running at a moment, whatever the schedule, leaves only so much to the others. */
	private byTimeTable(): Outcome {
		const { count, resources, capacity, duration } = this.project;
		const { early, late } = this;
		let narrower = false;
		for (let r = 0; r < resources; r++) {
			const cores: { from: number; until: number; amount: number; a: number }[] = [];
			for (let a = 0; a < count; a++) {
				const amount = this.amount(a, r);
				const [from, until] = [late[a] as number, (early[a] as number) + (duration[a] as number)];
				if (amount > 0 && from < until) cores.push({ from, until, amount, a });
			}
			if (cores.length === 0) continue;
			const steps = stepsOf(cores);
			if (steps.some(({ amount }) => amount > (capacity[r] as number))) return "contradiction";
			for (let a = 0; a < count; a++) {
				const amount = this.amount(a, r);
				if (amount === 0 || duration[a] === 0) continue;
				const isCore = (late[a] as number) < (early[a] as number) + (duration[a] as number);
				const room = (capacity[r] as number) - amount;
				const blocks = (step: Step): boolean => {
					// What it holds itself in its own core does not stand in its way.
					const own = isCore && step.from >= (late[a] as number) && step.until <= (early[a] as number) + (duration[a] as number);
					return step.amount - (own ? amount : 0) > room;
				};
				let moment = early[a] as number;
				for (const step of steps)
					if (step.from < moment + (duration[a] as number) && step.until > moment && blocks(step)) moment = step.until;
				if (this.atLeast(a, moment)) narrower = true;
				if (moment > (late[a] as number)) return "contradiction";
				let finish = (late[a] as number) + (duration[a] as number);
				for (let at = steps.length - 1; at >= 0; at--) {
					const step = steps[at] as Step;
					if (step.until > finish - (duration[a] as number) && step.from < finish && blocks(step)) finish = step.from;
				}
				if (this.atMost(a, finish - (duration[a] as number))) narrower = true;
			}
		}
		return narrower ? "narrower" : "same";
	}

	/** Whether more work must lie within some interval than a resource can do in it. */
	private tooMuchWork(): boolean {
		const { count, resources, capacity, duration } = this.project;
		const { early, late, moments } = this;
		let used = 0;
		for (let a = 0; a < count; a++) {
			const [e, l, d] = [early[a] as number, late[a] as number, duration[a] as number];
			for (const moment of [e, l, e + d, l + d]) moments[used++] = moment;
		}
		const all = [...new Set(moments.subarray(0, used))].sort((a, b) => a - b);
		if ((all.length ** 2 / 2) * count * resources > MOST_LOOKS) return false;
		for (let i = 0; i < all.length; i++)
			for (let j = i + 1; j < all.length; j++) {
				const [from, until] = [all[i] as number, all[j] as number];
				const length = until - from;
				for (let r = 0; r < resources; r++) {
					let work = 0;
					for (let a = 0; a < count; a++) {
						const amount = this.amount(a, r);
						if (amount === 0) continue;
						const d = duration[a] as number;
						const inside = Math.min(length, d, (early[a] as number) + d - from, until - (late[a] as number));
						if (inside > 0) work += inside * amount;
					}
					if (work > length * (capacity[r] as number)) return true;
				}
			}
		return false;
	}
}

type Outcome = "same" | "narrower" | "contradiction";
type Step = { readonly from: number; readonly until: number; readonly amount: number };

/** Intervals with amounts as a staircase, in order of time; stretches without anything are left out. */
function stepsOf(cores: readonly { readonly from: number; readonly until: number; readonly amount: number }[]): Step[] {
	const moments = [...new Set(cores.flatMap(({ from, until }) => [from, until]))].sort((a, b) => a - b);
	return moments.slice(0, -1).flatMap((from, at) => {
		const until = moments[at + 1] ?? from;
		const amount = cores.reduce((sum, core) => (core.from <= from && core.until >= until ? sum + core.amount : sum), 0);
		return amount === 0 ? [] : [{ from, until, amount }];
	});
}
