// Access loops: positions that no opening reaches, because each waits for another one.

import type { Access, Ways } from "@/lib/reversal/access";
import { emptyingOrder } from "@/lib/reversal/emptying";

/**
 * Positions that wait for each other, each for the next one. In a ring the last one waits for the first; else it could be
 * got at, but can never be opened.
 */
export type Loop = { readonly positions: readonly number[]; readonly direction: "out" | "in"; readonly isRing: boolean };

/**
 * M: the largest set of positions that can all be taken out of the present build and put back to T' using only
 * openings in M. `barred` positions cannot be opened at all. More openings never close a way, so any two such
 * sets together are one again, and the largest is what is left when all others have been struck out.
 */
export function largestOpening(access: Access, barred: (position: number) => boolean): ReadonlySet<number> {
	const count = access.out.length;
	let open = new Set<number>();
	for (let p = 0; p < count; p++) if (!barred(p)) open.add(p);
	for (;;) {
		const may = open;
		const out = emptyingOrder(access.out, (p) => may.has(p));
		const back = emptyingOrder(access.in, (p) => may.has(p));
		const left = new Set([...open].filter((p) => out.has(p) && back.has(p)));
		if (left.size === open.size) return open;
		open = left;
	}
}

/**
 * Names the loops that keep the `stuck` positions shut. From each of them it follows one thing that it waits for,
 * and so on: outside M everything waits for something outside M, so this must come round. Loops that
 * were met already are not named twice.
 */
export function loopsBehind(stuck: readonly number[], access: Access, largest: ReadonlySet<number>): Loop[] {
	const loops: Loop[] = [];
	const walkOf = new Map<number, number>();
	for (const start of stuck) {
		let at: number | null = start;
		const path: { position: number; direction: "out" | "in" }[] = [];
		while (at !== null && !walkOf.has(at)) {
			walkOf.set(at, start);
			const wait: Wait | null = waitsFor(at, access, largest);
			path.push({ position: at, direction: wait?.direction ?? "out" });
			at = wait === null ? null : wait.position;
		}
		// Met on an earlier walk: that loop has its name already.
		if (at !== null && walkOf.get(at) !== start) continue;
		// Null: the last one could be got at but is stuck, or on an assembly that cannot be had; then the whole way to it is named.
		const ring = at === null ? path : path.slice(path.findIndex(({ position }) => position === at));
		loops.push({
			positions: ring.map(({ position }) => position),
			direction: ring.every(({ direction }) => direction === "in") ? "in" : "out",
			isRing: at !== null,
		});
	}
	return loops;
}

type Wait = { readonly position: number; readonly direction: "out" | "in" };

function waitsFor(p: number, access: Access, largest: ReadonlySet<number>): Wait | null {
	for (const direction of ["out", "in"] as const) {
		const next = firstUnmet(p, access[direction][p] ?? null, largest);
		if (next !== null) return { position: next, direction };
	}
	return null;
}

/** A position that stands against `p` for good; null when `p` can be got at. */
function firstUnmet(p: number, ways: Ways, largest: ReadonlySet<number>): number | null {
	if (ways === null) return null;
	let unmet: number | null = null;
	for (const way of ways) {
		const clause = way.clauses.find((positions) => !positions.some((q) => largest.has(q)));
		if (clause === undefined) return null;
		unmet ??= clause[0] ?? null;
	}
	return unmet ?? p;
}
