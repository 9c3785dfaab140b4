// What is still needed at one moment of the search, and how little it can cost.

import { gotAt, type Net } from "@/lib/reversal/choiceNet";

/** What is decided about an opening so far. */
export const UNDECIDED = 0;
export const OPENED = 1;
export const LEFT_SHUT = 2;

/**
 * One of the options must come true, and an option is true when each of its clauses has an opening. Only
 * undecided openings are listed. `single` is the opened position that waits, or null when several wait in a ring
 * and the first of them needs help from outside it.
 */
export type Need = {
	readonly direction: 0 | 1;
	readonly single: number | null;
	readonly options: readonly Option[];
};
export type Option = {
	/** Which way of the waiting position this is. */
	readonly way: number;
	readonly clauses: readonly (readonly number[])[];
	/** All that the option's clauses list, those of other waiting positions included. */
	readonly free: boolean;
};

/**
 * Everything opened that cannot be got at with what is opened already, as needs: one for each ring of positions that wait for each
 * other and for nothing opened outside the ring, and one for each that waits for such a ring.
 */
export function openNeeds(net: Net, status: Uint8Array, reached: readonly [Uint8Array, Uint8Array]): Need[] {
	const needs: Need[] = [];
	for (const direction of [0, 1] as const) {
		const got = reached[direction];
		const stuck: number[] = [];
		for (let p = 0; p < status.length; p++) if (status[p] === OPENED && got[p] === 0) stuck.push(p);
		if (stuck.length === 0) continue;
		const waits = new Map<number, { way: number; clauses: number[][] }[]>();
		for (const p of stuck) waits.set(p, unmetWays(net, direction, p, status, got));
		for (const ring of ringsOf(stuck, (p) => stuckIn(waits.get(p) ?? [], status))) {
			const inside = new Set(ring);
			const options: Option[] = [];
			for (const p of ring) {
				for (const { way, clauses } of waits.get(p) ?? []) {
					const outside = clauses.map((clause) => clause.filter((q) => !inside.has(q)));
					if (outside.some((clause) => clause.length === 0)) continue;
					const paid = outside.filter((clause) => clause.every((q) => status[q] === UNDECIDED));
					options.push({ way, clauses: paid, free: paid.length === 0 });
				}
			}
			needs.push({ direction, single: ring.length === 1 ? (ring[0] ?? null) : null, options });
		}
	}
	return needs;
}

/** The ways of `p` that may still come true, each with its clauses that are not met, without what stays shut. */
function unmetWays(net: Net, direction: 0 | 1, p: number, status: Uint8Array, got: Uint8Array): { way: number; clauses: number[][] }[] {
	const found: { way: number; clauses: number[][] }[] = [];
	(net.directions[direction].ways[p] ?? []).forEach((way, n) => {
		const clauses: number[][] = [];
		for (const clause of way) {
			if (clause.some((q) => status[q] === OPENED && got[q] === 1)) continue;
			const live = clause.filter((q) => status[q] !== LEFT_SHUT);
			if (live.length === 0) return;
			clauses.push(live);
		}
		found.push({ way: n, clauses });
	});
	return found;
}

const stuckIn = (ways: readonly { clauses: number[][] }[], status: Uint8Array): number[] => [
	...new Set(ways.flatMap(({ clauses }) => clauses.flat()).filter((q) => status[q] === OPENED)),
];

/** Strongly connected components, without recursion (Tarjan 1972, with the call stack kept by hand). */
function ringsOf(nodes: readonly number[], next: (node: number) => readonly number[]): number[][] {
	const order = new Map<number, number>();
	const low = new Map<number, number>();
	const onPath = new Set<number>();
	const path: number[] = [];
	const rings: number[][] = [];
	for (const root of nodes) {
		if (order.has(root)) continue;
		const calls: { node: number; edges: readonly number[]; at: number }[] = [];
		const enter = (node: number) => {
			order.set(node, order.size);
			low.set(node, order.get(node) ?? 0);
			path.push(node);
			onPath.add(node);
			calls.push({ node, edges: next(node), at: 0 });
		};
		enter(root);
		for (let call = calls.at(-1); call !== undefined; call = calls.at(-1)) {
			const edge = call.edges[call.at++];
			if (edge !== undefined) {
				if (!order.has(edge)) enter(edge);
				else if (onPath.has(edge)) low.set(call.node, Math.min(low.get(call.node) ?? 0, order.get(edge) ?? 0));
				continue;
			}
			calls.pop();
			const caller = calls.at(-1);
			if (caller !== undefined) low.set(caller.node, Math.min(low.get(caller.node) ?? 0, low.get(call.node) ?? 0));
			if (low.get(call.node) !== order.get(call.node)) continue;
			const ring: number[] = [];
			for (let node = path.pop(); node !== undefined; node = path.pop()) {
				onPath.delete(node);
				ring.push(node);
				if (node === call.node) break;
			}
			rings.push(ring.sort((a, b) => a - b));
		}
	}
	return rings;
}

/** What has been got at with only the opened ones, in both directions. */
export function reachedNow(net: Net, status: Uint8Array): [Uint8Array, Uint8Array] {
	const opened = status.map((s) => (s === OPENED ? 1 : 0));
	return [gotAt(net.directions[0], opened), gotAt(net.directions[1], opened)];
}

/**
 * Leaves shut what could not be got at even if everything undecided were opened. False when something
 * opened is among that: then there is no answer here.
 */
export function dropUnreachable(net: Net, status: Uint8Array): boolean {
	for (;;) {
		const may = status.map((s) => (s === LEFT_SHUT ? 0 : 1));
		const out = gotAt(net.directions[0], may);
		const back = gotAt(net.directions[1], may);
		let dropped = false;
		for (let p = 0; p < status.length; p++) {
			if (may[p] === 0 || (out[p] === 1 && back[p] === 1)) continue;
			if (status[p] === OPENED) return false;
			status[p] = LEFT_SHUT;
			dropped = true;
		}
		if (!dropped) return true;
	}
}
