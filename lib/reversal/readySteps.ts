// The steps that can be done next, so kept that the one to take is found without looking at all the others.
// Pure. Knows numbers of steps, wholes and areas, and nothing of parts or positions.

import { type LeastFirst, leastFirst } from "@/lib/reversal/leastFirst";
import { NONE } from "@/lib/reversal/world";

/** Where a step stands just now: how early its kind of work comes, and the whole it is done on. */
export type Stand = { readonly stage: number; readonly whole: number };

export type ReadySteps = {
	/** Adds a step, or says that it stands elsewhere now. */
	readonly put: (step: number, stand: Stand) => void;
	readonly has: (step: number) => boolean;
	/**
	 * Takes away the step to do next, `NONE` when there is none: of the earliest stage, in the given whole if it can,
	 * then in the given area if it can, then by rank.
	 */
	readonly take: (whole: number, area: string) => number;
};

/** The same steps in four orders, one for each of what may be asked for: neither whole nor area, one of them, both. */
type Stage = {
	readonly all: LeastFirst;
	readonly inWhole: Map<number, LeastFirst>;
	readonly inArea: Map<string, LeastFirst>;
	readonly inBoth: Map<string, LeastFirst>;
};

const both = (whole: number, area: string): string => `${whole} ${area}`;

function heapOf<Key>(heaps: Map<Key, LeastFirst>, key: Key): LeastFirst {
	const known = heaps.get(key);
	if (known !== undefined) return known;
	const made = leastFirst();
	heaps.set(key, made);
	return made;
}

/**
 * An empty store. `ranked` lists all steps that may ever be put into it, the first to be taken first; `areas` says the
 * area of each. A step that moves is put in again and not looked for: what no longer holds is dropped when it comes up,
 * so a step costs the logarithm of their number each time it moves.
 */
export function readySteps(ranked: readonly number[], areas: readonly string[], stages: number): ReadySteps {
	const rankOf = new Int32Array(ranked.length);
	ranked.forEach((step, rank) => {
		rankOf[step] = rank;
	});
	const standOf: (Stand | null)[] = ranked.map(() => null);
	const all = Array.from(
		{ length: stages },
		(): Stage => ({ all: leastFirst(), inWhole: new Map(), inArea: new Map(), inBoth: new Map() }),
	);

	const first = (heap: LeastFirst | undefined, holds: (stand: Stand) => boolean): number => {
		for (;;) {
			const rank = heap?.least();
			if (rank === undefined) return NONE;
			const step = ranked[rank] ?? NONE;
			const stand = standOf[step] ?? null;
			if (stand !== null && holds(stand)) return step;
			heap?.drop();
		}
	};
	const firstIn = (stage: number, whole: number, area: string): number => {
		const heaps = all[stage];
		const isHere = (stand: Stand): boolean => stand.stage === stage && stand.whole === whole;
		const isNow = (stand: Stand): boolean => stand.stage === stage;
		const found = first(heaps?.inBoth.get(both(whole, area)), isHere);
		if (found !== NONE) return found;
		const near = first(heaps?.inWhole.get(whole), isHere);
		if (near !== NONE) return near;
		const alike = first(heaps?.inArea.get(area), isNow);
		return alike !== NONE ? alike : first(heaps?.all, isNow);
	};
	return {
		put: (step, stand) => {
			standOf[step] = stand;
			const heaps = all[stand.stage];
			if (heaps === undefined) return;
			const [rank, area] = [rankOf[step] ?? 0, areas[step] ?? ""];
			for (const heap of [
				heaps.all,
				heapOf(heaps.inWhole, stand.whole),
				heapOf(heaps.inArea, area),
				heapOf(heaps.inBoth, both(stand.whole, area)),
			])
				heap.add(rank);
		},
		has: (step) => (standOf[step] ?? null) !== null,
		take: (whole, area) => {
			for (let stage = 0; stage < stages; stage++) {
				const step = firstIn(stage, whole, area);
				if (step === NONE) continue;
				standOf[step] = null;
				return step;
			}
			return NONE;
		},
	};
}
