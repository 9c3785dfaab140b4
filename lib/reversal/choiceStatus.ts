// What is decided at one moment of the search, and what follows from it without a choice.

import { gotAt, type Net } from "@/lib/reversal/choiceNet";

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
