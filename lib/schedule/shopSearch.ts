// The search for a good plan of the whole shop. Good is, first: every task has a time; then: little lateness against what was promised;
// then: machines done early, all of them together; then: the last one early. It begins with the classical rules and goes on by moving one task at a time to
// another place of the list. Pure: chance and budget are handed in.

import { type Random, wholeBelow } from "@/lib/core/random";
import type { Placing, ShopProject } from "@/lib/schedule/placing";

/** What a plan is worth, the smaller the better, the first figure first: tasks without time, minutes late, machines' ends, the last end. */
export type Worth = readonly [without: number, late: number, ends: number, last: number];

/** The end of each machine's last wait; 0 for a machine without open tasks that have a time. */
export function machineEnds(project: ShopProject, placing: Pick<Placing, "over">): number[] {
	const ends = project.problem.machines.map(() => 0);
	project.problem.tasks.forEach(({ machine }, task) => {
		const over = placing.over(task);
		if (over < Number.POSITIVE_INFINITY) ends[machine] = Math.max(ends[machine] ?? 0, over);
	});
	return ends;
}

export function worthOf(project: ShopProject, placing: Pick<Placing, "over">): Worth {
	const ends = machineEnds(project, placing);
	const late = ends.reduce((sum, end, machine) => sum + Math.max(0, end - (project.problem.machines[machine]?.promised ?? end)), 0);
	const without = project.problem.tasks.reduce((sum, _, task) => (placing.over(task) < Number.POSITIVE_INFINITY ? sum : sum + 1), 0);
	return [without, late, ends.reduce((sum, end) => sum + end, 0), Math.max(0, ...ends)];
}

export function isBetter(one: Worth, other: Worth): boolean {
	const at = one.findIndex((figure, place) => figure !== other[place]);
	return at >= 0 && (one[at] ?? 0) < (other[at] ?? 0);
}

/** In minutes: so much worse than now a plan is taken with one chance in e (2.718), at the beginning and at the end of a search. */
const [WARM, COLD] = [100, 2];

/**
 * Leaves the best of so many plans in `placing`, and gives what it is worth. `begin` is a list to try first. Simulated annealing (S.
 * Kirkpatrick, C. D. Gelatt and M. P. Vecchi, 1983) over lists: a worse plan is taken now and then, the less so the longer the search.
 */
export function search(placing: Placing, random: Random, plans: number, begin: readonly number[] | null = null): Worth {
	const { project } = placing;
	const tried = (list: readonly number[]): Tried => {
		placing.plan(list);
		return { list, worth: worthOf(project, placing) };
	};
	const first = [...(begin === null ? [] : [begin]), ...byRule(project)].map(tried);
	let best = first.reduce((one, other) => (isBetter(other.worth, one.worth) ? other : one));
	let now = best;
	const moves = project.count > 1 ? Math.max(0, plans - first.length) : 0;
	for (let move = 0; move < moves; move++) {
		const heat = WARM * (COLD / WARM) ** (move / moves);
		const next = tried(moved(project, now.list, random));
		const worse = minutesOf(next.worth) - minutesOf(now.worth);
		if (worse > 0 && random() >= Math.exp(-worse / heat)) continue;
		now = next;
		if (isBetter(next.worth, best.worth)) best = next;
	}
	placing.plan(best.list);
	return best.worth;
}

type Tried = { readonly list: readonly number[]; readonly worth: Worth };

/** What a plan is worth as one figure, for comparing how much worse: a minute late weighs as ten, a task without time as a year. */
const minutesOf = ([without, late, ends, last]: Worth): number => 525_600 * without + 10 * late + ends + last / 1000;

/** One task at another place of the list, still after what it needs and before what needs it. */
function moved({ after, next, count }: ShopProject, list: readonly number[], random: Random): number[] {
	const place = wholeBelow(random, count);
	const task = list[place] as number;
	const rest = list.filter((other) => other !== task);
	const needs = new Set(after[task]);
	const needy = new Set(next[task]);
	let low = rest.length;
	while (low > 0 && !needs.has(rest[low - 1] as number)) low -= 1;
	let high = low;
	while (high < rest.length && !needy.has(rest[high] as number)) high += 1;
	rest.splice(low + wholeBelow(random, high - low + 1), 0, task);
	return rest;
}

/** Lists to begin with: the longest chain ahead first, over all; and machine after machine, in several orders. */
function byRule(project: ShopProject): number[][] {
	const { tasks, machines } = project.problem;
	const ahead = chainAhead(project);
	const load = machines.map((_, machine) =>
		tasks.reduce((sum, task, at) => (task.machine === machine ? sum + (project.minutes[at] ?? 0) : sum), 0),
	);
	const longest = machines.map((_, machine) =>
		tasks.reduce((most, task, at) => (task.machine === machine ? Math.max(most, ahead[at] ?? 0) : most), 0),
	);
	const byMachine = (first: (machine: number) => number): number[] =>
		sortedBy(project, (task) => [first(tasks[task]?.machine ?? 0), -(ahead[task] ?? 0)]);
	return [
		sortedBy(project, (task) => [-(ahead[task] ?? 0)]),
		byMachine((machine) => machines[machine]?.promised ?? Number.MAX_SAFE_INTEGER),
		byMachine((machine) => longest[machine] ?? 0),
		byMachine((machine) => load[machine] ?? 0),
		byMachine((machine) => -(longest[machine] ?? 0)),
		byMachine((machine) => machine),
	];
}

/** By task: the minutes of the longest chain from its start to its machine's end, nobody's hours counted. */
function chainAhead({ topological, next, minutes, wait }: ShopProject): number[] {
	const ahead: number[] = topological.map(() => 0);
	for (const task of [...topological].reverse()) {
		const then = (next[task] ?? []).reduce((most, other) => Math.max(most, ahead[other] ?? 0), 0);
		ahead[task] = (minutes[task] ?? 0) + (wait[task] ?? 0) + then;
	}
	return ahead;
}

/** The tasks in the order of a key as far as their needs let them: of those that are free, always the one with the least key. */
function sortedBy({ after, next, count }: ShopProject, keyOf: (task: number) => readonly number[]): number[] {
	const keys = Array.from({ length: count }, (_, task) => keyOf(task));
	const isBefore = (one: number, other: number): boolean => {
		const [mine, theirs] = [keys[one] ?? [], keys[other] ?? []];
		for (const [at, key] of mine.entries()) if (key !== theirs[at]) return key < (theirs[at] ?? 0);
		return one < other;
	};
	const left = after.map((needs) => needs.length);
	const ready = left.flatMap((needs, task) => (needs === 0 ? [task] : []));
	const list: number[] = [];
	while (ready.length > 0) {
		const chosen = ready.reduce((first, task) => (isBefore(task, first) ? task : first));
		ready.splice(ready.indexOf(chosen), 1);
		list.push(chosen);
		for (const task of next[chosen] ?? []) {
			left[task] = (left[task] ?? 0) - 1;
			if (left[task] === 0) ready.push(task);
		}
	}
	return list;
}
