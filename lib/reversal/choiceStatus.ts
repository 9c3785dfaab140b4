// What is decided at one moment of the search, and what follows from it without a choice.

import { gotAt, type Net, type NetDirection } from "@/lib/reversal/choiceNet";

/** What is decided about an opening so far. */
export const UNDECIDED = 0;
export const OPENED = 1;
export const LEFT_SHUT = 2;

/** A choice at one moment of the search. */
export type Moment = { readonly net: Net; readonly status: Uint8Array; readonly cuts: readonly PaidCut[] };

/** Openings of which at least one must be opened, whatever is chosen, and what is owed for it out of the weight of each of them. */
export type PaidCut = { readonly cut: readonly number[]; readonly cost: number };

/** Cuts that no opened one has answered yet, without what is left shut. */
export function stillHolding(cuts: readonly PaidCut[], status: Uint8Array): PaidCut[] {
	const holding: PaidCut[] = [];
	for (const paid of cuts) {
		let shut = false;
		let answered = false;
		for (const q of paid.cut) {
			if (status[q] === OPENED) answered = true;
			if (status[q] === LEFT_SHUT) shut = true;
		}
		if (answered) continue;
		holding.push(shut ? { cut: paid.cut.filter((q) => status[q] === UNDECIDED), cost: paid.cost } : paid);
	}
	return holding;
}

/** By direction: 1 for what has been got at with only the opened ones. */
export type ReachedNow = readonly [Uint8Array, Uint8Array];

export function reachedNow(net: Net, status: Uint8Array): ReachedNow {
	const opened = status.map((s) => (s === OPENED ? 1 : 0));
	return [gotAt(net.directions[0], opened), gotAt(net.directions[1], opened)];
}

/** The opened ones that wait for something, in either direction. */
export function waitingIn(status: Uint8Array, reached: ReachedNow): number[] {
	const waiting: number[] = [];
	for (let p = 0; p < status.length; p++) {
		if (status[p] === OPENED && (reached[0][p] === 0 || reached[1][p] === 0)) waiting.push(p);
	}
	return waiting;
}

/** Of what may be opened, all that can be got at in both directions with only those; null when something opened is not among it. */
export function supported(net: Net, may: Uint8Array, status: Uint8Array): Uint8Array | null {
	for (let now = may; ; ) {
		const out = gotAt(net.directions[0], now);
		const back = gotAt(net.directions[1], now);
		let same = true;
		for (let q = 0; q < out.length; q++) {
			if (back[q] === 0) out[q] = 0;
			if (out[q] === now[q]) continue;
			if (status[q] === OPENED) return null;
			same = false;
		}
		if (same) return out;
		now = out;
	}
}

/**
 * Leaves shut what could not be got at even if everything undecided were opened. False when something
 * opened is among that: then there is no answer here.
 */
export function dropUnreachable(net: Net, status: Uint8Array): boolean {
	const may = status.map((s) => (s === LEFT_SHUT ? 0 : 1));
	const left = supported(net, may, status);
	if (left === null) return false;
	for (let p = 0; p < status.length; p++) if (left[p] === 0) status[p] = LEFT_SHUT;
	return true;
}

/**
 * Opens what the opened ones cannot do without: where only one way is left, all that alone can meet one of its clauses; and so on
 * from what that opens. A machine with one side everywhere is settled by this. False when something in need is left shut. Runs in
 * time proportional to what it looks at. `open` opens one, with all that it brings, and says whether it may.
 */
export function openNeeded(net: Net, status: Uint8Array, open: (opening: number) => boolean): boolean {
	const queued = status.map((s) => (s === OPENED ? 1 : 0));
	const queue: number[] = [];
	for (let p = 0; p < status.length; p++) if (queued[p] === 1) queue.push(p);
	for (let p = queue.pop(); p !== undefined; p = queue.pop()) {
		for (const direction of net.directions) {
			if (direction.free[p] === 1) continue;
			const way = onlyWay(direction, status, p);
			if (way === MANY) continue;
			if (way === NO_WAY) return false;
			for (let clause = direction.clauseStart[way] ?? 0; clause < (direction.clauseStart[way + 1] ?? 0); clause++) {
				const only = onlyOneLeft(direction, status, clause);
				if (only === MANY || queued[only] === 1) continue;
				if (!open(only)) return false;
				for (const q of net.bring[only] ?? [only]) {
					if (queued[q] === 1) continue;
					queued[q] = 1;
					queue.push(q);
				}
			}
		}
	}
	return true;
}

const MANY = -1;
const NO_WAY = -2;

/** The one way of an opening that is not shut, if there is just one. */
function onlyWay(direction: NetDirection, status: Uint8Array, p: number): number {
	let only = NO_WAY;
	for (let way = direction.wayStart[p] ?? 0; way < (direction.wayStart[p + 1] ?? 0); way++) {
		let isShut = false;
		for (let clause = direction.clauseStart[way] ?? 0; clause < (direction.clauseStart[way + 1] ?? 0) && !isShut; clause++) {
			isShut = onlyOneLeft(direction, status, clause) === NO_WAY;
		}
		if (isShut) continue;
		if (only !== NO_WAY) return MANY;
		only = way;
	}
	return only;
}

/** The one opening of a clause that is not shut, if there is just one. */
function onlyOneLeft({ memberStart, members }: NetDirection, status: Uint8Array, clause: number): number {
	let only = NO_WAY;
	for (let at = memberStart[clause] ?? 0; at < (memberStart[clause + 1] ?? 0); at++) {
		const q = members[at] ?? 0;
		if (status[q] === LEFT_SHUT) continue;
		if (only !== NO_WAY) return MANY;
		only = q;
	}
	return only;
}
