// The serial scheme with people's hours: tasks in the order of a list, each as early as what comes before it, its parcels, its
// people and its equipment allow. A person is bound from a task's start to its finish, over nights, too; equipment as long or to the
// end of the wait. Some list gives a best plan for whoever was named: a task that is done earlier hinders no later one of the list. Pure.

import { plannedArrival, plannedMinutes, type ShopProblem } from "@/lib/schedule/shopProblem";
import { crewTimes, type WorkingTime } from "@/lib/schedule/workingTime";

/** An interval in which something is held. */
type Held = { readonly start: number; readonly end: number; readonly count: number };
/** Sorted by start. */
type Holdings = Held[];

/** A problem with what is worked out once: durations, releases, the time that each crew has in common. */
export type ShopProject = {
	readonly problem: ShopProblem;
	readonly count: number;
	readonly minutes: Float64Array;
	readonly wait: Float64Array;
	readonly release: Float64Array;
	/** By task: its crews' common times, in the order of `crews`. */
	readonly times: readonly (readonly WorkingTime[])[];
	readonly after: readonly (readonly number[])[];
	readonly next: readonly (readonly number[])[];
	/** Tasks with every need before what needs it. */
	readonly topological: readonly number[];
};

/** Requires needs without a loop, and holdings of no more than there is. */
export function shopProjectOf(problem: ShopProblem): ShopProject {
	const { tasks, people, arrivals } = problem;
	const timeOf = crewTimes(people);
	const after = tasks.map((task) => [...new Set(task.after)]);
	const next: number[][] = tasks.map(() => []);
	after.forEach((needs, task) => {
		for (const need of needs) next[need]?.push(task);
	});
	return {
		problem,
		count: tasks.length,
		minutes: Float64Array.from(tasks, plannedMinutes),
		wait: Float64Array.from(tasks, ({ wait }) => wait.likely),
		release: Float64Array.from(tasks, ({ release, parcels }) =>
			parcels.reduce(
				(latest, parcel) => {
					const arrival = arrivals[parcel];
					return arrival === undefined ? latest : Math.max(latest, plannedArrival(arrival));
				},
				Math.max(0, release),
			),
		),
		times: tasks.map(({ crews }) => (crews.length === 0 ? [timeOf([])] : crews.map(timeOf))),
		after,
		next,
		topological: needsFirst(after),
	};
}

/** The tasks with every need before what needs it. Requires needs without a loop. */
export function needsFirst(after: readonly (readonly number[])[]): number[] {
	const next: number[][] = after.map(() => []);
	after.forEach((needs, task) => {
		for (const need of needs) next[need]?.push(task);
	});
	const left = after.map((needs) => needs.length);
	const ready = left.flatMap((needs, task) => (needs === 0 ? [task] : []));
	for (let done = 0; done < ready.length; done++) {
		for (const task of next[ready[done] ?? 0] ?? []) {
			left[task] = (left[task] ?? 0) - 1;
			if (left[task] === 0) ready.push(task);
		}
	}
	if (ready.length < after.length) throw new Error("the needs form a loop");
	return ready;
}

/** Makes plans of one project, one after the other. */
export class Placing {
	readonly start: Float64Array;
	readonly finish: Float64Array;
	/** By task: the number of the crew that does it, among its crews. */
	readonly crew: Int32Array;
	private readonly busy: Holdings[];
	private readonly held: Holdings[];
	/** How many plans were made: what a budget counts. */
	made = 0;

	constructor(readonly project: ShopProject) {
		const { people, equipment } = project.problem;
		this.start = new Float64Array(project.count);
		this.finish = new Float64Array(project.count);
		this.crew = new Int32Array(project.count);
		this.busy = people.map(() => []);
		this.held = equipment.map(() => []);
	}

	/** Fills `start`, `finish` and `crew`. Requires every task once, after what it needs. What has no time left gets Infinity. */
	plan(list: Int32Array | readonly number[]): void {
		this.made += 1;
		for (const rows of [...this.busy, ...this.held]) rows.length = 0;
		for (const task of list) this.place(task);
	}

	/** When a task's wait is over. */
	over(task: number): number {
		return (this.finish[task] as number) + (this.project.wait[task] as number);
	}

	/** When a task could begin if it had only its needs, its parcels and its rest to wait for. */
	ready(task: number): number {
		let from = this.project.release[task] as number;
		for (const need of this.project.after[task] as readonly number[]) from = Math.max(from, this.over(need));
		return from;
	}

	private place(task: number): void {
		const { problem, minutes, times } = this.project;
		const { crews, holds } = problem.tasks[task] as ShopProblem["tasks"][number];
		const lasts = minutes[task] as number;
		const from = this.ready(task);
		let [start, finish, chosen] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 0];
		for (const [number, time] of (times[task] as readonly WorkingTime[]).entries()) {
			const begun = this.earliest(task, crews[number] ?? [], time, from);
			const done = time.finish(begun, lasts);
			if (number > 0 && done >= finish) continue;
			[start, finish, chosen] = [begun, done, number];
		}
		this.start[task] = start;
		this.finish[task] = finish;
		this.crew[task] = chosen;
		if (start === Number.POSITIVE_INFINITY) return;
		if (finish > start) for (const person of crews[chosen] ?? []) hold(this.busy[person] ?? [], { start, end: finish, count: 1 });
		for (const { equipment, count, throughWait } of holds) {
			const end = throughWait ? this.over(task) : finish;
			if (end > start) hold(this.held[equipment] ?? [], { start, end, count });
		}
	}

	private earliest(task: number, crew: readonly number[], time: WorkingTime, from: number): number {
		const { problem, minutes, wait } = this.project;
		const lasts = minutes[task] as number;
		const holds = problem.tasks[task]?.holds ?? [];
		for (let moment = from; ; ) {
			const start = time.start(moment, lasts);
			if (start === Number.POSITIVE_INFINITY) return start;
			const finish = time.finish(start, lasts);
			let free = 0;
			if (lasts > 0) for (const person of crew) free = Math.max(free, freeAfter(this.busy[person] ?? [], start, finish, 1, 1));
			for (const { equipment, count, throughWait } of holds) {
				const end = throughWait ? finish + (wait[task] as number) : finish;
				free = Math.max(free, freeAfter(this.held[equipment] ?? [], start, end, count, problem.equipment[equipment]?.count ?? 0));
			}
			if (free === 0) return start;
			moment = free;
		}
	}
}

function hold(rows: Holdings, row: Held): void {
	let at = rows.length;
	while (at > 0 && (rows[at - 1]?.start ?? 0) > row.start) at -= 1;
	rows.splice(at, 0, row);
}

/**
 * Zero when so many are free from `start` to `end`. Else the first moment at which some of what hinders is given back: no start before
 * it can do, since a later start never ends sooner.
 */
function freeAfter(rows: Holdings, start: number, end: number, count: number, capacity: number): number {
	return capacity === 1 ? singleFreeAfter(rows, start, end) : severalFreeAfter(rows, start, end, count, capacity);
}

/** Of what there is one, the intervals do not overlap: the first that ends after `start` is the only one to look at. */
function singleFreeAfter(rows: Holdings, start: number, end: number): number {
	let [low, high] = [0, rows.length];
	while (low < high) {
		const middle = (low + high) >> 1;
		if ((rows[middle] as Held).end > start) high = middle;
		else low = middle + 1;
	}
	const row = rows[low];
	return row !== undefined && row.start < end ? row.end : 0;
}

function severalFreeAfter(rows: Holdings, start: number, end: number, count: number, capacity: number): number {
	const over = rows.filter((row) => row.start < end && row.end > start);
	const soonest = over.reduce((first, row) => Math.min(first, row.end), Number.POSITIVE_INFINITY);
	// What overlaps need not overlap at one instant: it is held most where something begins.
	for (const moment of [start, ...over.filter((row) => row.start > start).map((row) => row.start)]) {
		const then = over.reduce((sum, row) => (row.start <= moment && row.end > moment ? sum + row.count : sum), 0);
		if (then + count > capacity) return soonest;
	}
	return 0;
}
