// Simulation of the shop's plan, kept to: each task is done by the crew that the plan gives it; whoever or whatever two tasks share goes
// from one to the other in the plan's order; each begins as early as that, its needs, its parcels and its people's hours allow; and
// work, waits and post take what chance makes of their estimates (beta-PERT). Pure: chance is handed in.
//
// Of what has begun it is known that it takes more than was put in, and of a parcel that has not come that it takes longer than until
// now: those are drawn among the longer ones only.

import type { Random } from "@/lib/core/random";
import type { ThreePoint } from "@/lib/money/pert";
import { betaPert } from "@/lib/schedule/betaPert";
import { needsFirst } from "@/lib/schedule/placing";
import { type SampleSummary, summaryOf } from "@/lib/schedule/sample";
import type { PlannedTask } from "@/lib/schedule/shopPlan";
import type { ShopProblem } from "@/lib/schedule/shopProblem";
import { crewTimes, type WorkingTime } from "@/lib/schedule/workingTime";

export type SimulatedMachine = {
	readonly id: string;
	/** The end of its last wait, in minutes from now. Infinity in runs in which its people's hours run out. */
	readonly finish: SampleSummary;
	/** What the work still to be done on it costs, in the unit of the rates. */
	readonly cost: SampleSummary;
	/** By task of the problem: the share of the runs in which this machine's end hung on it, 0 to 1. */
	readonly critical: readonly number[];
	/** The share of the runs in which it was done by then; null when nothing was promised. */
	readonly inTime: number | null;
	/** The ends, sorted: for a curve. */
	readonly ends: Float64Array;
	/** By arrival: the share of the runs in which its end hung on that. */
	readonly parcels: readonly number[];
};

export type ShopSimulation = {
	readonly runs: number;
	readonly machines: readonly SimulatedMachine[];
};

/** A need, or what is handed from one task to the next: the second begins when the first is finished, or over. */
type Arc = { readonly from: number; readonly throughWait: boolean };

/**
 * Runs the plan so many times. `costAMinute` is by task, its crew together. What has no time in the plan is left out. Requires a plan of
 * this problem, and one or more runs.
 */
export function simulateShop(
	problem: ShopProblem,
	planned: readonly PlannedTask[],
	costAMinute: readonly number[],
	runs: number,
	random: Random,
): ShopSimulation {
	const count = problem.tasks.length;
	const order = inOrder(problem, planned);
	const arcs = arcsOf(problem, planned, order);
	const timeOf = crewTimes(problem.people);
	const times = planned.map(({ crew }) => timeOf(crew));
	const drawWork = problem.tasks.map(({ estimate, spent }) => remaining(estimate, spent, random));
	const drawWait = problem.tasks.map(({ wait }) => betaPert(wait, random));
	const drawArrival = problem.arrivals.map(({ lead, ordered }) => {
		const draw = remaining(lead, -ordered, random);
		// Overdue by more than the most that was thought: the plan's day.
		return ordered + lead.high < 0 ? () => OVERDUE : draw;
	});

	const [finish, over] = [new Float64Array(count), new Float64Array(count)];
	const arrival = new Float64Array(problem.arrivals.length);
	/** What each task began after: a task, or -1, or -2 - n for parcel n. */
	const hungOn = new Int32Array(count);
	const machines = problem.machines.length;
	const last = new Int32Array(machines);
	const ends = Array.from({ length: machines }, () => new Float64Array(runs));
	const costs = Array.from({ length: machines }, () => new Float64Array(runs));
	const critical = Array.from({ length: machines }, () => new Float64Array(count));
	const hungOnParcel = Array.from({ length: machines }, () => new Float64Array(problem.arrivals.length));

	for (let run = 0; run < runs; run++) {
		for (let parcel = 0; parcel < arrival.length; parcel++) arrival[parcel] = (drawArrival[parcel] as () => number)();
		last.fill(-1);
		for (const task of order) {
			const { release, parcels, machine } = problem.tasks[task] as ShopProblem["tasks"][number];
			let from = Math.max(release, 0);
			let hanging = -1;
			for (const parcel of parcels) {
				if ((arrival[parcel] as number) <= from) continue;
				from = arrival[parcel] as number;
				hanging = -2 - parcel;
			}
			for (const { from: other, throughWait } of arcs[task] as readonly Arc[]) {
				const moment = (throughWait ? over[other] : finish[other]) as number;
				if (moment < from || (moment === from && hanging !== -1)) continue;
				if (moment === 0) continue;
				from = moment;
				hanging = other;
			}
			hungOn[task] = hanging;
			const minutes = (drawWork[task] as () => number)();
			const time = times[task] as WorkingTime;
			const done = time.finish(time.start(from, minutes), minutes);
			finish[task] = done;
			over[task] = done + (drawWait[task] as () => number)();
			const costsOf = costs[machine] as Float64Array;
			costsOf[run] = (costsOf[run] as number) + minutes * (costAMinute[task] ?? 0);
			const latest = last[machine] as number;
			if (latest < 0 || (over[task] as number) > (over[latest] as number)) last[machine] = task;
		}
		for (let machine = 0; machine < machines; machine++) {
			let task = last[machine] as number;
			if (task < 0) continue;
			(ends[machine] as Float64Array)[run] = over[task] as number;
			const hung = critical[machine] as Float64Array;
			const parcels = hungOnParcel[machine] as Float64Array;
			for (; task >= 0; task = hungOn[task] as number) {
				hung[task] = (hung[task] as number) + 1;
				const parcel = -2 - (hungOn[task] as number);
				if (parcel >= 0) parcels[parcel] = (parcels[parcel] as number) + 1;
			}
		}
	}
	return {
		runs,
		machines: problem.machines.map(({ id, promised }, machine) => {
			const sorted = (ends[machine] as Float64Array).slice().sort();
			return {
				id,
				finish: summaryOf(sorted),
				cost: summaryOf(costs[machine] as Float64Array),
				critical: [...(critical[machine] as Float64Array)].map((often) => often / runs),
				inTime: promised === null ? null : sorted.filter((end) => end <= promised).length / runs,
				ends: sorted,
				parcels: [...(hungOnParcel[machine] as Float64Array)].map((often) => often / runs),
			};
		}),
	};
}

/** As in the plan: a parcel that is overdue is there a day from now. */
const OVERDUE = 1440;

/** Draws what is left of something that has taken `spent` already and is not over. */
function remaining(estimate: ThreePoint, spent: number, random: Random): () => number {
	const draw = betaPert(estimate, random);
	if (spent <= 0) return spent === 0 ? draw : () => draw() - spent;
	if (spent >= estimate.high) return () => 0;
	return () => {
		for (let tries = 0; tries < 50; tries++) {
			const whole = draw();
			if (whole > spent) return whole - spent;
		}
		// So far out in the tail that hardly anything is longer: somewhere between now and the most.
		return random() * (estimate.high - spent);
	};
}

/** The tasks that have a time, by planned start, a need before what needs it, also where both last no time. */
function inOrder(problem: ShopProblem, planned: readonly PlannedTask[]): number[] {
	const start = (task: number): number => planned[task]?.start ?? 0;
	// Sorting is stable: of those that start together, needs stay first.
	return needsFirst(problem.tasks.map(({ after }) => [...new Set(after)]))
		.filter((task) => start(task) < Number.POSITIVE_INFINITY)
		.sort((a, b) => start(a) - start(b));
}

/** What has to be over before each task: its needs, and whoever had its people and its equipment before it in the plan. */
function arcsOf(problem: ShopProblem, planned: readonly PlannedTask[], order: readonly number[]): Arc[][] {
	const arcs = problem.tasks.map(({ after }): Arc[] => after.map((from) => ({ from, throughWait: true })));
	const lastOf = new Map<number, number>();
	/** By equipment, by piece: the task that had it last, and until when. */
	const pieces = problem.equipment.map(({ count }) => Array.from({ length: count }, () => ({ task: -1, end: 0, throughWait: false })));
	for (const task of order) {
		const row = planned[task];
		if (row === undefined) continue;
		const asked = problem.tasks[task];
		if (asked !== undefined && asked.estimate.high > asked.spent)
			for (const person of row.crew) {
				const before = lastOf.get(person);
				if (before !== undefined) arcs[task]?.push({ from: before, throughWait: false });
				lastOf.set(person, task);
			}
		for (const { equipment, count, throughWait } of problem.tasks[task]?.holds ?? []) {
			const end = throughWait ? row.over : row.finish;
			if (end === row.start) continue;
			// The pieces that were given back last, so that the others stay free for whoever comes.
			const free = (pieces[equipment] ?? []).filter((piece) => piece.end <= row.start).sort((a, b) => b.end - a.end);
			for (const piece of free.slice(0, count)) {
				if (piece.task >= 0) arcs[task]?.push({ from: piece.task, throughWait: piece.throughWait });
				Object.assign(piece, { task, end, throughWait });
			}
		}
	}
	return arcs;
}
