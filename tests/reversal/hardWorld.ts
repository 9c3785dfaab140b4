// Worlds that are hard to choose in, from a seed: a few parts deep inside were replaced, and behind them everything stands in the way
// of everything in a narrow band, so that many openings cost nearly or just the same. Few machines are like that.

import { type Obstruction, type Part, type Position, PROBLEM_FORMAT, type Problem, type Times } from "@/lib/reversal/problem";
import { randomFrom } from "@/tests/reversal/random";

export type Hardness = {
	readonly positions: number;
	/** How many positions have two or three sides. */
	readonly multiSided: number;
	/** "ties": a minute each, so that many openings are as cheap; "none": no minutes at all; "spread": 1 to 60. */
	readonly minutes: "ties" | "none" | "spread";
	/** Parts in the way of a side. */
	readonly blocking: number;
	/** How far out those may be, in positions: the narrower, the deeper. */
	readonly band: number;
	/** Share of positions that are on a part of another position: each such is a choice between it and its assembly. */
	readonly hosted: number;
	/** How many parts of the innermost quarter were replaced, at most. */
	readonly changed: number;
	readonly seed: number;
};

/** A problem that `readProblem` lets through. The same hardness and seed give the same world. */
export function hardWorld({ positions: count, multiSided, minutes, blocking, band, hosted, changed, seed }: Hardness): Problem {
	const random = randomFrom(seed);
	const below = (n: number): number => Math.floor(random() * n);
	const name = (n: number): string => `p${String(n).padStart(4, "0")}`;
	const many = new Set<number>();
	while (many.size < Math.min(multiSided, count - 1)) many.add(1 + below(count - 1));
	const positions: Position[] = [];
	const parts: Part[] = [];
	const obstructions: Obstruction[] = [];
	const now: Record<string, string> = {};
	const times: Record<string, Times> = {};
	for (let n = 0; n < count; n++) {
		const sides = many.has(n) ? ["front", "rear", "top"].slice(0, 2 + below(2)) : undefined;
		const host = n > 2 && random() < hosted ? `old${below(n)}` : undefined;
		positions.push({ id: name(n), ...(sides === undefined ? {} : { sides }), ...(host === undefined ? {} : { host }) });
		parts.push({ id: `old${n}` });
		now[name(n)] = `old${n}`;
		for (const side of sides ?? [undefined]) {
			for (let more = 0; n > 0 && more < blocking; more++) {
				if (random() < 0.15) continue;
				const outer = Math.max(0, n - 1 - below(Math.min(n, band)));
				obstructions.push({ part: `old${outer}`, position: name(n), ...(side === undefined ? {} : { sides: [side] }) });
			}
		}
		const likely = { ties: 1, none: 0, spread: 1 + below(60) }[minutes];
		if (minutes !== "none") times[name(n)] = { out: { low: likely, likely, high: likely } };
	}
	const target = { ...now };
	for (let left = changed; left > 0; left--) {
		const n = count - 1 - below(Math.max(1, Math.floor(count / 4)));
		if (target[name(n)] === `new${n}`) continue;
		target[name(n)] = `new${n}`;
		parts.push({ id: `new${n}` });
	}
	return { format: PROBLEM_FORMAT, positions, parts, now, target, obstructions, times };
}
