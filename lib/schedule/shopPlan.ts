// The plan of the whole shop: when each open step is done and by whom, what it waited for, when each machine is done, and how much
// earlier it could be at most. Pure: seed and budget are handed in.

import { seededRandom } from "@/lib/core/random";
import { Placing, type ShopProject, shopProjectOf } from "@/lib/schedule/placing";
import type { ShopProblem } from "@/lib/schedule/shopProblem";
import { machineEnds, search, type Worth } from "@/lib/schedule/shopSearch";
import { type WaitedFor, waitedFor } from "@/lib/schedule/waitedFor";

export type PlannedTask = {
	readonly id: string;
	/** Minutes from now. */
	readonly start: number;
	readonly finish: number;
	/** The end of its wait. */
	readonly over: number;
	/** Numbers of the people who do it. */
	readonly crew: readonly number[];
	/** What it waited for last; the chain from a machine's last task back along it is what the machine's end hangs on. */
	readonly waitedFor: WaitedFor;
};

export type PlannedMachine = {
	readonly id: string;
	/** The end of its last wait, minutes from now; null when it has nothing open, or no end. */
	readonly end: number | null;
	/** No plan has it done before this: its own chains, with the hours of its people, as if it were alone. */
	readonly notBefore: number;
	/** Minutes past what was promised; 0 when it is in time or nothing was promised. */
	readonly late: number;
	/** Its last task, and what that waited for, back to now. */
	readonly chain: readonly number[];
};

export type ShopPlan = {
	readonly tasks: readonly PlannedTask[];
	readonly machines: readonly PlannedMachine[];
	/** The end of everything that has a time, and no plan's is before `lowerBound`. */
	readonly makespan: number;
	readonly lowerBound: number;
	/** Numbers of tasks for which there is no time, since their people have no more hours, and of those that need them. */
	readonly without: readonly number[];
	readonly worth: Worth;
};

/** Plans looked at unless told otherwise. */
export const PLANS = 3000;

/**
 * The same problem, seed and budget give the same plan. Requires needs without a loop, and holdings of no more than there is. `begin` is
 * a plan of the same tasks whose order is tried first.
 */
export function shopPlanOf(
	problem: ShopProblem,
	seed: number,
	plans: number = PLANS,
	begin: Pick<ShopPlan, "tasks"> | null = null,
): ShopPlan {
	const project = shopProjectOf(problem);
	const placing = new Placing(project);
	const worth = search(placing, seededRandom(seed), plans, begin === null ? null : orderOf(project, begin));
	const alone = aloneOver(project);
	const reasons = problem.tasks.map((_, task) => waitedFor(placing, task));
	const ends = machineEnds(project, placing);
	const bound = Math.max(0, ...alone.filter(Number.isFinite), ...problem.people.map((_, person) => personBound(project, alone, person)));
	return {
		tasks: problem.tasks.map(({ id, crews }, task) => ({
			id,
			start: placing.start[task] as number,
			finish: placing.finish[task] as number,
			over: placing.over(task),
			crew: crews[placing.crew[task] as number] ?? [],
			waitedFor: reasons[task] ?? { why: "nothing" },
		})),
		machines: problem.machines.map(({ id, promised }, machine) => {
			const mine = problem.tasks.flatMap((task, at) => (task.machine === machine ? [at] : []));
			const end = ends[machine] ?? 0;
			// A machine is done when all of it is.
			const isKnown = mine.length > 0 && mine.every((task) => placing.over(task) < Number.POSITIVE_INFINITY);
			return {
				id,
				end: isKnown ? end : null,
				notBefore: isKnown ? mine.reduce((most, task) => Math.max(most, alone[task] ?? 0), 0) : 0,
				late: isKnown && promised !== null ? Math.max(0, end - promised) : 0,
				chain: isKnown ? chainOf(placing, reasons, mine) : [],
			};
		}),
		makespan: Math.max(0, ...ends),
		lowerBound: Math.min(bound, Math.max(0, ...ends)),
		without: problem.tasks.flatMap((_, task) => (placing.start[task] === Number.POSITIVE_INFINITY ? [task] : [])),
		worth,
	};
}

/** The tasks by their start in a plan, needs first where they start together. */
function orderOf({ topological }: ShopProject, { tasks }: Pick<ShopPlan, "tasks">): number[] {
	const start = (task: number): number => tasks[task]?.start ?? 0;
	return [...topological].sort((a, b) => (start(a) === start(b) ? 0 : start(a) - start(b)));
}

/** By task: the end of its wait when it has only its needs, its parcels and its people's hours to wait for, and everybody is free. */
function aloneOver(project: ShopProject): number[] {
	const { topological, after, release, times, minutes, wait } = project;
	const over: number[] = topological.map(() => 0);
	for (const task of topological) {
		const from = (after[task] ?? []).reduce((latest, need) => Math.max(latest, over[need] ?? 0), release[task] ?? 0);
		const lasts = minutes[task] ?? 0;
		const finish = Math.min(...(times[task] ?? []).map((time) => time.finish(time.start(from, lasts), lasts)));
		over[task] = finish + (wait[task] ?? 0);
	}
	return over;
}

/** Nobody has done all of their work before their hours, from their first possible start on, come to it. */
function personBound(project: ShopProject, alone: readonly number[], person: number): number {
	const { problem, minutes, wait, times } = project;
	const mine = problem.tasks.flatMap(({ crews }, task) =>
		crews.length === 1 && crews[0]?.includes(person) && (minutes[task] ?? 0) > 0 && (alone[task] ?? 0) < Number.POSITIVE_INFINITY
			? [task]
			: [],
	);
	const [one] = mine;
	if (one === undefined) return 0;
	// What several do together lies in no more of this person's time than what they do alone.
	const own = mine.find((task) => problem.tasks[task]?.crews[0]?.length === 1);
	const time = own === undefined ? undefined : times[own]?.[0];
	if (time === undefined) return 0;
	const work = mine.reduce((sum, task) => sum + (minutes[task] ?? 0), 0);
	const head = Math.min(...mine.map((task) => earliestStart(project, alone, task)));
	const tail = Math.min(...mine.map((task) => wait[task] ?? 0));
	const bound = time.finish(time.start(head, work), work) + tail;
	return Number.isFinite(bound) ? bound : 0;
}

const earliestStart = ({ after, release }: ShopProject, alone: readonly number[], task: number): number =>
	(after[task] ?? []).reduce((latest, need) => Math.max(latest, alone[need] ?? 0), release[task] ?? 0);

/** A machine's last task and back along what each waited for. */
function chainOf(placing: Placing, reasons: readonly WaitedFor[], mine: readonly number[]): number[] {
	const last = mine.reduce((latest, task) => (placing.over(task) > placing.over(latest) ? task : latest));
	const chain = [last];
	for (let reason = reasons[last]; reason !== undefined && "task" in reason && chain.length <= reasons.length; ) {
		chain.push(reason.task);
		reason = reasons[reason.task];
	}
	return chain.reverse();
}
