// Worlds of any size from a seed, shaped like machines: layers from the outside in, assemblies, several ways to some
// positions, a conversion that changed a part of it. For measurements and for tests that compare two solvers.

import {
	type Alteration,
	type Obstruction,
	type Part,
	type Position,
	PROBLEM_FORMAT,
	type Problem,
	type Times,
} from "@/lib/reversal/problem";
import { randomFrom } from "@/tests/reversal/random";

export type WorldSize = {
	readonly positions: number;
	/** How many positions have two or three sides. */
	readonly multiSided: number;
	readonly seed: number;
	/** Share of positions whose part was replaced; 0.1 unless given. */
	readonly changed?: number;
	/** Share of positions that are on a part of another position; 0.2 unless given. */
	readonly hosted?: number;
	/** Share of obstructions that go from the inside out, and so may close a loop; 0.01 unless given. */
	readonly backwards?: number;
	/** Mean number of parts in the way of a side; 1 unless given, about what the machines of the trade have. */
	readonly blocking?: number;
};

/** A problem that `readProblem` lets through. The same size and seed give the same world. */
export function makeWorld(size: WorldSize): Problem {
	const { positions: count, multiSided, seed, changed = 0.1, hosted = 0.2, backwards = 0.01, blocking = 1 } = size;
	const random = randomFrom(seed);
	const below = (n: number): number => Math.floor(random() * n);
	const name = (n: number): string => `p${String(n).padStart(String(count).length, "0")}`;
	const old = (n: number): string => `${name(n)}-old`;
	const fresh = (n: number): string => `${name(n)}-new`;
	/** A position further out, mostly a near one: machines are deep in places, not everywhere. */
	const outer = (n: number): number => Math.max(0, n - 1 - Math.floor(random() ** 2 * Math.min(n, 40)));

	const many = new Set<number>();
	while (many.size < Math.min(multiSided, count - 1)) many.add(1 + below(count - 1));
	const replaced = new Set<number>();
	for (let n = 1; n < count; n++) if (random() < changed) replaced.add(n);

	const positions: Position[] = [];
	const obstructions: Obstruction[] = [];
	const times: [string, Times][] = [];
	for (let n = 0; n < count; n++) {
		const sides = many.has(n) ? ["front", "rear", "top"].slice(0, 2 + below(2)) : undefined;
		const host = n > 2 && random() < hosted ? old(below(n)) : undefined;
		positions.push({
			id: name(n),
			area: `area ${below(6)}`,
			...(host === undefined ? {} : { host }),
			...(sides === undefined ? {} : { sides }),
		});
		for (const side of sides ?? [undefined]) {
			if (n === 0) continue;
			const blockers = new Set<number>();
			for (let left = blocking * (side === undefined ? 1 : 1.3); left > 0; left--) {
				if (random() >= left) continue;
				blockers.add(random() < backwards ? Math.min(count - 1, n + 1 + below(10)) : outer(n));
			}
			blockers.delete(n);
			for (const blocker of blockers) {
				for (const part of [old(blocker), ...(replaced.has(blocker) ? [fresh(blocker)] : [])]) {
					obstructions.push({ part, position: name(n), ...(side === undefined ? {} : { sides: [side] }) });
				}
			}
		}
		const [out, back] = [1 + below(30), 1 + below(45)];
		times.push([name(n), { out: { low: out, likely: out, high: 2 * out }, in: { low: back, likely: back, high: 2 * back } }]);
	}
	const parts: Part[] = [];
	const now: [string, string][] = [];
	const target: [string, string][] = [];
	for (let n = 0; n < count; n++) {
		const lost = replaced.has(n) && random() < 0.05;
		parts.push({ id: old(n), ...(lost ? { unavailable: "scrapped" } : {}) });
		if (replaced.has(n)) parts.push({ id: fresh(n) });
		now.push([name(n), replaced.has(n) ? fresh(n) : old(n)]);
		target.push([name(n), old(n)]);
	}
	const alterations: Alteration[] = [];
	for (let n = 0; n < count; n += 37) {
		const where = random() < 0.5 ? { position: name(n) } : { part: old(n) };
		alterations.push({ id: `a${n}`, ...where, undo: random() < 0.2 ? null : { low: 5, likely: 10, high: 30 } });
	}
	return {
		format: PROBLEM_FORMAT,
		positions,
		parts,
		now: Object.fromEntries(now),
		target: Object.fromEntries(target),
		obstructions,
		alterations,
		times: Object.fromEntries(times),
	};
}
