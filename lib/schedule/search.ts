// The search for a short schedule: a genetic algorithm over activity lists, each child justified (S. Hartmann, 1998; V. Valls,
// F. Ballestin and S. Quintanilla, 2008, "a hybrid genetic algorithm"). It ends when the lower bound is met or the budget is
// spent. Pure: chance and budget are handed in.

import { type Random, wholeBelow } from "@/lib/core/random";
import { Justifier } from "@/lib/schedule/justify";
import type { Project } from "@/lib/schedule/project";
import { inOrderOf, Serial } from "@/lib/schedule/serial";

/** Whether to go on, asked now and then with the number of schedules that were made so far. */
export type KeepOn = (schedules: number) => boolean;

export type Found = { readonly makespan: number; readonly start: Int32Array; readonly schedules: number };

const POPULATION = 40;
/** How often two neighbours in a child's list change places. */
const MUTATION = 0.05;
/** So many generations without a shorter schedule, and all but the best begin afresh. */
const STALE = 25;

type Individual = { readonly list: Int32Array; readonly start: Int32Array; makespan: number };

/** The shortest schedule found; a project without activities has length 0. */
export function shortest(project: Project, lowerBound: number, random: Random, keepOn: KeepOn): Found {
	const { count } = project;
	if (count === 0) return { makespan: 0, start: new Int32Array(0), schedules: 0 };
	const search = new Search(project, random);
	const best: Individual = { list: new Int32Array(count), start: new Int32Array(count), makespan: Number.MAX_SAFE_INTEGER };
	const keep = (found: Individual): boolean => {
		if (found.makespan >= best.makespan) return false;
		best.makespan = found.makespan;
		best.list.set(found.list);
		best.start.set(found.start);
		return true;
	};
	const isDone = (): boolean => best.makespan <= lowerBound || !keepOn(search.serial.made);

	// By the classical rules first: most projects need no more.
	for (const list of search.byRule()) {
		keep(search.decode(list));
		if (best.makespan <= lowerBound) return { makespan: best.makespan, start: best.start, schedules: search.serial.made };
	}
	while (!isDone()) {
		const population: Individual[] = [];
		// A fresh start keeps nothing of the last one but the best schedule that is held aside; every other one takes it in.
		const elders = wholeBelow(random, 2) === 1 ? [copyOf(best)] : [];
		population.push(...elders);
		while (population.length < POPULATION && !isDone()) {
			const one = search.decode(search.sampled());
			keep(one);
			population.push(one);
		}
		population.sort(byMakespan);
		let stale = 0;
		while (stale < STALE && !isDone() && population.length >= 2) {
			const children: Individual[] = [];
			for (let pair = 0; pair < population.length / 2 && !isDone(); pair++) {
				const [mother, father] = [search.chosen(population), search.chosen(population)];
				for (const [one, other] of [
					[mother, father],
					[father, mother],
				] as const) {
					const child = search.decode(search.crossed(one, other));
					if (keep(child)) stale = -1;
					children.push(child);
				}
			}
			stale += 1;
			const next = withoutTwins([...population, ...children].sort(byMakespan)).slice(0, POPULATION);
			population.splice(0, population.length, ...next);
		}
	}
	return { makespan: best.makespan, start: best.start, schedules: search.serial.made };
}

const byMakespan = (a: Individual, b: Individual): number => a.makespan - b.makespan;
const copyOf = ({ list, start, makespan }: Individual): Individual => ({ list: list.slice(), start: start.slice(), makespan });

/** Of schedules that are the same to the minute only one; the list is sorted by makespan, so twins are found near each other. */
function withoutTwins(sorted: readonly Individual[]): Individual[] {
	const kept: Individual[] = [];
	for (const one of sorted) {
		let isTwin = false;
		for (let at = kept.length - 1; at >= 0 && !isTwin; at--) {
			const other = kept[at];
			if (other === undefined || other.makespan !== one.makespan) break;
			isTwin = other.start.every((moment, a) => moment === one.start[a]);
		}
		if (!isTwin) kept.push(one);
	}
	return kept;
}

class Search {
	readonly serial: Serial;
	private readonly justifier: Justifier;
	private readonly latest: Int32Array;
	private readonly needs: Int32Array;
	private readonly left: Int32Array;
	private readonly ready: Int32Array;
	private readonly taken: Uint8Array;

	constructor(
		private readonly project: Project,
		private readonly random: Random,
	) {
		const { count } = project;
		this.serial = new Serial(project);
		this.justifier = new Justifier(this.serial);
		this.latest = latestFinishes(project);
		this.needs = Int32Array.from({ length: count }, (_, a) => degreeOf(project, a));
		this.left = new Int32Array(count);
		this.ready = new Int32Array(count);
		this.taken = new Uint8Array(count);
	}

	/** The schedule of a list, justified; its own order by start becomes the list, which says the same and crosses better. */
	decode(list: Int32Array): Individual {
		const start = new Int32Array(list.length);
		let makespan = this.serial.schedule(list, this.project.forwards, start);
		const own = new Int32Array(list.length);
		makespan = this.justifier.once(start, makespan, own);
		inOrderOf(start, this.project.rank, own);
		return { list: own, start, makespan };
	}

	/** Lists by latest finish, by most successors' work, and as they come. */
	byRule(): Int32Array[] {
		const { count, rank, topological } = this.project;
		const byLatest = new Int32Array(count);
		inOrderOf(this.latest, rank, byLatest);
		return [byLatest, topological.slice()];
	}

	/** A random list: what must be over soon is the likelier, the later it is in being chosen (regret-based biased sampling). */
	sampled(): Int32Array {
		const { count, backwards } = this.project;
		const list = new Int32Array(count);
		this.left.set(this.needs);
		let open = 0;
		for (let a = 0; a < count; a++) if (this.left[a] === 0) this.ready[open++] = a;
		for (let at = 0; at < count; at++) {
			let worst = Number.MIN_SAFE_INTEGER;
			for (let r = 0; r < open; r++) worst = Math.max(worst, this.latest[this.ready[r] as number] as number);
			let total = 0;
			for (let r = 0; r < open; r++) total += worst - (this.latest[this.ready[r] as number] as number) + 1;
			let draw = this.random() * total;
			let chosen = 0;
			for (; chosen < open - 1; chosen++) {
				draw -= worst - (this.latest[this.ready[chosen] as number] as number) + 1;
				if (draw < 0) break;
			}
			const a = this.ready[chosen] as number;
			this.ready[chosen] = this.ready[--open] as number;
			list[at] = a;
			open = this.opened(a, open, backwards);
		}
		return list;
	}

	private opened(a: number, open: number, { arcStart }: Project["backwards"]): number {
		const next = this.project.backwards.arcFrom;
		let count = open;
		for (let arc = arcStart[a] as number, end = arcStart[a + 1] as number; arc < end; arc++) {
			const follower = next[arc] as number;
			this.left[follower] = (this.left[follower] as number) - 1;
			if (this.left[follower] === 0) this.ready[count++] = follower;
		}
		return count;
	}

	/** The better of two drawn at random. */
	chosen(population: readonly Individual[]): Individual {
		const one = population[wholeBelow(this.random, population.length)] as Individual;
		const other = population[wholeBelow(this.random, population.length)] as Individual;
		return one.makespan <= other.makespan ? one : other;
	}

	/** Two-point crossover: the mother's beginning and end, the middle in the father's order; then some neighbours change places. */
	crossed(mother: Individual, father: Individual): Int32Array {
		const { count, backwards } = this.project;
		const list = new Int32Array(count);
		const [p, q] = [wholeBelow(this.random, count + 1), wholeBelow(this.random, count + 1)];
		const [from, until] = p < q ? [p, q] : [q, p];
		const { taken } = this;
		taken.fill(0);
		for (let at = 0; at < from; at++) {
			const a = mother.list[at] as number;
			list[at] = a;
			taken[a] = 1;
		}
		for (let at = until; at < count; at++) taken[mother.list[at] as number] = 2;
		let to = from;
		for (let at = 0; at < count; at++) {
			const a = father.list[at] as number;
			if (taken[a] === 0) list[to++] = a;
		}
		for (let at = until; at < count; at++) list[at] = mother.list[at] as number;
		for (let at = 1; at < count; at++) {
			if (this.random() >= MUTATION) continue;
			const [first, then] = [list[at - 1] as number, list[at] as number];
			if (follows(backwards, first, then)) continue;
			list[at - 1] = then;
			list[at] = first;
		}
		return list;
	}
}

/** Whether `then` needs `first` directly. */
function follows(backwards: Project["backwards"], first: number, then: number): boolean {
	for (let arc = backwards.arcStart[first] as number, end = backwards.arcStart[first + 1] as number; arc < end; arc++)
		if (backwards.arcFrom[arc] === then) return true;
	return false;
}

const degreeOf = ({ forwards }: Project, a: number): number => (forwards.arcStart[a + 1] as number) - (forwards.arcStart[a] as number);

/** The latest finishes by precedence and waits alone, counted from the end, so below or at zero. */
function latestFinishes(project: Project): Int32Array {
	const { count, topological, backwards, duration } = project;
	const latest = new Int32Array(count);
	for (let at = count - 1; at >= 0; at--) {
		const a = topological[at] as number;
		let finish = -(backwards.release[a] as number);
		for (let arc = backwards.arcStart[a] as number, end = backwards.arcStart[a + 1] as number; arc < end; arc++) {
			const next = backwards.arcFrom[arc] as number;
			const must = (latest[next] as number) - (duration[next] as number) - (backwards.arcLag[arc] as number);
			if (must < finish) finish = must;
		}
		latest[a] = finish;
	}
	return latest;
}
