// A lower bound on what still has to be opened: cuts that are paid for one after the other, as in the planning heuristic
// LM-cut (Helmert and Domshlak 2009), since opening a machine is a planning task in which nothing done ever hinders.

import { clausesLeft, type NetDirection } from "@/lib/reversal/choiceNet";
import type { Budget } from "@/lib/reversal/choiceSearch";
import { LEFT_SHUT, type Moment, OPENED, type PaidCut, type ReachedNow, UNDECIDED } from "@/lib/reversal/choiceStatus";

export type Bound = {
	/** No answer costs less than this on top of what is opened. */
	readonly least: number;
	readonly cuts: readonly PaidCut[];
	/** By opening, what it adds to `least` at the very least when it is opened. */
	readonly extra: Float64Array;
};

/**
 * For each direction again and again: the dearest thing that waits, a cut between it and what is open, the
 * cheapest opening of the cut is owed and paid out of the weights of all of the cut. No weight is paid twice, so the sum
 * is owed by every answer. Stops once it is above `enough`, or the budget is used up: what it has by then still holds. Goes on from the cuts known at
 * that moment.
 */
export function lowerBound({ net, status, cuts: known }: Moment, reached: ReachedNow, enough: number, budget: Budget): Bound {
	const count = status.length;
	const rest = Float64Array.from(net.weight, (w, q) => (status[q] === UNDECIDED ? w : 0));
	const cuts = [...known];
	let least = 0;
	for (const { cut, cost } of known) {
		least += cost;
		for (const q of cut) rest[q] = (rest[q] ?? 0) - cost;
	}
	const prices = ([0, 1] as const).map((d) => new Prices(net.directions[d], status, reached[d]));
	prices.forEach((priced, d) => {
		const waiting: number[] = [];
		for (let p = 0; p < count; p++) if (status[p] === OPENED && reached[d === 0 ? 0 : 1][p] === 0) waiting.push(p);
		while (waiting.length > 0 && least <= enough && budget.left > 0) {
			priced.compute(rest);
			budget.left -= priced.size;
			let dearest = -1;
			let most = 0;
			for (const p of waiting) {
				const price = priced.of[p] ?? 0;
				if (price <= most) continue;
				most = price;
				dearest = p;
			}
			if (dearest === -1) break;
			const cut = priced.cutBefore(dearest, rest);
			let cost = Number.POSITIVE_INFINITY;
			for (const q of cut) cost = Math.min(cost, rest[q] ?? 0);
			if (!(cost > 0 && cost < Number.POSITIVE_INFINITY)) throw new Error("a cut without a price");
			for (const q of cut) rest[q] = (rest[q] ?? 0) - cost;
			least += cost;
			cuts.push({ cut, cost });
		}
	});
	const extra = new Float64Array(count);
	for (const priced of prices) {
		priced.compute(rest);
		budget.left -= priced.size;
		for (let q = 0; q < count; q++) extra[q] = Math.max(extra[q] ?? 0, priced.of[q] ?? 0);
	}
	for (let q = 0; q < count; q++) {
		let sum = 0;
		const bring = net.bring[q] ?? [];
		for (let at = 0; at < bring.length; at++) sum += rest[bring[at] ?? 0] ?? 0;
		extra[q] = Math.max(extra[q] ?? 0, sum);
	}
	return { least, cuts, extra };
}

/** The price of getting at each opening in one direction, its dearest requirement standing for all of them. */
class Prices {
	readonly of: Float64Array;
	/** What one pass looks at. */
	readonly size: number;
	/** By way, the clause that was met last: the one that its price comes from. -1: it can never be met. */
	private readonly lastClause: Int32Array;
	private readonly left: Int32Array;
	private readonly clauses: Int32Array;
	private readonly met: Uint8Array;
	private readonly settled: Uint8Array;
	private readonly heap: number[] = [];

	constructor(
		private readonly direction: NetDirection,
		private readonly status: Uint8Array,
		private readonly reached: Uint8Array,
	) {
		this.of = new Float64Array(status.length);
		this.size = status.length + direction.members.length;
		this.settled = new Uint8Array(status.length);
		this.lastClause = new Int32Array(direction.wayOwner.length);
		this.clauses = clausesLeft(direction);
		this.left = new Int32Array(direction.wayOwner.length);
		this.met = new Uint8Array(direction.clauseWay.length);
	}

	private isOpen(p: number): boolean {
		return this.status[p] === OPENED && this.reached[p] === 1;
	}

	/** Cheapest first, as in Dijkstra's shortest paths, over openings that wait for one of several ways and, in a way, for all clauses. */
	compute(rest: Float64Array): void {
		const { direction, status, of, left, met, lastClause, settled } = this;
		const { userStart, users } = direction;
		of.fill(Number.POSITIVE_INFINITY);
		left.set(this.clauses);
		met.fill(0);
		lastClause.fill(-1);
		settled.fill(0);
		for (let p = 0; p < of.length; p++) {
			if (status[p] === LEFT_SHUT) continue;
			if (this.isOpen(p)) of[p] = 0;
			else if (direction.free[p] === 1) of[p] = rest[p] ?? 0;
			else continue;
			this.push(p);
		}
		for (let p = this.pop(); p !== -1; p = this.pop()) {
			if (settled[p] === 1) continue;
			settled[p] = 1;
			const price = of[p] ?? 0;
			for (let use = userStart[p] ?? 0; use < (userStart[p + 1] ?? 0); use++) {
				const clause = users[use] ?? 0;
				if (met[clause] === 1) continue;
				met[clause] = 1;
				const way = direction.clauseWay[clause] ?? 0;
				const still = (left[way] ?? 0) - 1;
				left[way] = still;
				if (still > 0) continue;
				lastClause[way] = clause;
				const owner = direction.wayOwner[way] ?? 0;
				if (status[owner] === LEFT_SHUT || settled[owner] === 1) continue;
				// Prices only rise, so the first way to be met is the cheapest, and no price is ever lowered in the heap.
				const through = price + (rest[owner] ?? 0);
				if (through >= (of[owner] ?? 0)) continue;
				of[owner] = through;
				this.push(owner);
			}
		}
	}

	/**
	 * Openings one of which must be opened to get at `goal`: those on the border of everything that leads to the
	 * goal for nothing, as far as they can be come to from what is open without going through it.
	 */
	cutBefore(goal: number, rest: Float64Array): number[] {
		const { direction, of, lastClause } = this;
		const { wayStart, memberStart, members, userStart, users } = direction;
		const near = new Uint8Array(of.length);
		const border: number[] = [];
		const walk = [goal];
		near[goal] = 1;
		for (let p = walk.pop(); p !== undefined; p = walk.pop()) {
			for (let way = wayStart[p] ?? 0; way < (wayStart[p + 1] ?? 0); way++) {
				const clause = lastClause[way] ?? -1;
				if (clause === -1) continue;
				for (let at = memberStart[clause] ?? 0; at < (memberStart[clause + 1] ?? 0); at++) {
					const q = members[at] ?? 0;
					if (near[q] === 1 || of[q] === Number.POSITIVE_INFINITY) continue;
					near[q] = 1;
					if ((rest[q] ?? 0) > 0) border.push(q);
					else walk.push(q);
				}
			}
		}
		// What can be come to without going through the near side; a way counts by its last clause only.
		const ready = new Uint8Array(of.length);
		const queue: number[] = [];
		const arrive = (p: number) => {
			if (ready[p] === 1) return;
			ready[p] = 1;
			if (near[p] === 0) queue.push(p);
		};
		for (let p = 0; p < of.length; p++) {
			if (of[p] !== Number.POSITIVE_INFINITY && (direction.free[p] === 1 || this.isOpen(p))) arrive(p);
		}
		for (let q = queue.pop(); q !== undefined; q = queue.pop()) {
			for (let use = userStart[q] ?? 0; use < (userStart[q + 1] ?? 0); use++) {
				const clause = users[use] ?? 0;
				const way = direction.clauseWay[clause] ?? 0;
				if (lastClause[way] !== clause) continue;
				const owner = direction.wayOwner[way] ?? 0;
				if (of[owner] !== Number.POSITIVE_INFINITY) arrive(owner);
			}
		}
		return border.filter((q) => ready[q] === 1);
	}

	private push(p: number): void {
		const { heap, of } = this;
		heap.push(p);
		let at = heap.length - 1;
		while (at > 0) {
			const up = (at - 1) >> 1;
			if ((of[heap[up] ?? 0] ?? 0) <= (of[p] ?? 0)) break;
			heap[at] = heap[up] ?? 0;
			at = up;
		}
		heap[at] = p;
	}

	private pop(): number {
		const { heap, of } = this;
		const top = heap[0];
		const last = heap.pop();
		if (top === undefined || last === undefined) return -1;
		if (heap.length === 0) return top;
		let at = 0;
		for (;;) {
			let child = 2 * at + 1;
			if (child >= heap.length) break;
			if (child + 1 < heap.length && (of[heap[child + 1] ?? 0] ?? 0) < (of[heap[child] ?? 0] ?? 0)) child++;
			if ((of[heap[child] ?? 0] ?? 0) >= (of[last] ?? 0)) break;
			heap[at] = heap[child] ?? 0;
			at = child;
		}
		heap[at] = last;
		return top;
	}
}
