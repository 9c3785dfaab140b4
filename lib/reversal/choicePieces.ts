// Cuts what is left of a choice into pieces that do not touch each other, each to be settled for itself.

import { type NetDirection, type NetWays, netDirection } from "@/lib/reversal/choiceNet";
import { LEFT_SHUT, type Moment, OPENED, type ReachedNow, stillHolding, waitingIn } from "@/lib/reversal/choiceStatus";

/** The number of the piece each opening is in, -1 for what nothing needs any more. What may serve the same one belongs together. */
export function pieceNumbers({ net, status }: Moment, reached: ReachedNow): { pieceOf: Int32Array; count: number } {
	const waiting = waitingIn(status, reached);
	const seen = new Uint8Array(status.length);
	const parent = Int32Array.from(status, (_, p) => p);
	const rootOf = (p: number): number => {
		let root = p;
		while (parent[root] !== root) root = parent[root] ?? root;
		for (let at = p; at !== root; ) {
			const next = parent[at] ?? root;
			parent[at] = root;
			at = next;
		}
		return root;
	};
	const queue = [...waiting];
	for (const p of waiting) seen[p] = 1;
	for (let p = queue.pop(); p !== undefined; p = queue.pop()) {
		for (const d of [0, 1] as const) {
			if (status[p] === OPENED && reached[d][p] === 1) continue;
			const { wayStart, clauseStart, memberStart, members } = net.directions[d];
			const got = reached[d];
			const clauses = clauseStart[wayStart[p + 1] ?? 0] ?? 0;
			for (let clause = clauseStart[wayStart[p] ?? 0] ?? 0; clause < clauses; clause++) {
				const end = memberStart[clause + 1] ?? 0;
				let isMet = false;
				for (let at = memberStart[clause] ?? 0; at < end && !isMet; at++) {
					const q = members[at] ?? 0;
					isMet = status[q] === OPENED && got[q] === 1;
				}
				for (let at = isMet ? end : (memberStart[clause] ?? 0); at < end; at++) {
					const q = members[at] ?? 0;
					if (status[q] === LEFT_SHUT) continue;
					parent[rootOf(q)] = rootOf(p);
					if (seen[q] === 1) continue;
					seen[q] = 1;
					queue.push(q);
				}
			}
		}
	}
	const pieceOf = new Int32Array(status.length).fill(-1);
	const numbers = new Map<number, number>();
	for (let p = 0; p < status.length; p++) {
		if (seen[p] === 0) continue;
		const root = rootOf(p);
		const number = numbers.get(root) ?? numbers.size;
		numbers.set(root, number);
		pieceOf[p] = number;
	}
	return { pieceOf, count: numbers.size };
}

/**
 * The moment with only some of its openings, as decided so far. What has been got at in a direction needs nothing there,
 * and serves whatever waits for it.
 */
export function pieceOfMoment({ net, status, cuts }: Moment, kept: readonly number[], reached: ReachedNow): Moment {
	const number = new Int32Array(status.length).fill(-1);
	kept.forEach((q, at) => {
		number[q] = at;
	});
	const renumbered = (list: readonly number[]): number[] => {
		const found: number[] = [];
		for (const q of list) {
			const at = number[q] ?? -1;
			if (at !== -1) found.push(at);
		}
		return found;
	};
	const cut = (d: 0 | 1): NetDirection => {
		const got = reached[d];
		const isMet = (q: number): boolean => status[q] === OPENED && got[q] === 1;
		return netDirection(
			kept.map((p): NetWays => {
				const all = net.directions[d].ways[p] ?? null;
				if (all === null || isMet(p)) return null;
				return all
					.map((way) => way.filter((clause) => !clause.some(isMet)).map(renumbered))
					.filter((way) => way.every((clause) => clause.length > 0));
			}),
		);
	};
	return {
		net: {
			labels: kept.map((q) => net.labels[q] ?? 0),
			weight: kept.map((q) => net.weight[q] ?? 0),
			directions: [cut(0), cut(1)],
			bring: kept.map((q) => renumbered(net.bring[q] ?? [])),
			sharpAt: net.sharpAt,
		},
		status: Uint8Array.from(kept, (q) => status[q] ?? 0),
		cuts: stillHolding(cuts, status)
			.map((paid) => ({ ...paid, cut: renumbered(paid.cut) }))
			.filter(({ cut: live }) => live.length > 0),
	};
}
