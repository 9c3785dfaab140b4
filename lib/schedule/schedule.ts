// The scheduler: from a problem to a schedule, its lower bound, and what is critical. Pure: seed and budget are handed in.

import { seededRandom } from "@/lib/core/random";
import { Justifier } from "@/lib/schedule/justify";
import { lowerBound } from "@/lib/schedule/lowerBound";
import type { ScheduleProblem } from "@/lib/schedule/problem";
import { type Project, projectOf } from "@/lib/schedule/project";
import { type KeepOn, shortest } from "@/lib/schedule/search";
import { Serial } from "@/lib/schedule/serial";

export const SCHEDULE_FORMAT = "asfound.schedule/1";

export type ScheduledActivity = {
	readonly id: string;
	/** Minutes from the start of everything. */
	readonly start: number;
	/** The end of the work, before its wait. */
	readonly finish: number;
	/** Whether it cannot be done later, in the order that the resources are held in, without the end moving. */
	readonly critical: boolean;
};

export type Schedule = {
	readonly format: typeof SCHEDULE_FORMAT;
	/** From the first start to the end of the last wait. */
	readonly makespan: number;
	/** No schedule is shorter than this. */
	readonly lowerBound: number;
	/** makespan - lowerBound: 0 when it is proved that nothing is shorter. */
	readonly gap: number;
	/** In the order of the problem. */
	readonly activities: readonly ScheduledActivity[];
};

/** Schedules looked at unless told otherwise: some seconds for a shop's work, and always the same answer. */
export const SCHEDULES = 20_000;
/** What is tried before the lower bound is worked out: mostly that is the end of it. */
const FIRST_TRIES = 100;

/** Schedules a problem that `readScheduleProblem` let through. The same problem, seed and budget of schedules give the same answer. */
export function scheduleOf(problem: ScheduleProblem, seed: number, keepOn: KeepOn = (made) => made < SCHEDULES): Schedule {
	const project = projectIn(problem);
	const first = shortest(project, 0, seededRandom(seed), (made) => made < FIRST_TRIES && keepOn(made));
	const bound = lowerBound(project, first.makespan);
	const found = bound >= first.makespan ? first : shortest(project, bound, seededRandom(seed), keepOn);
	const { makespan, start } = found.makespan <= first.makespan ? found : first;
	const late = latestIn(project, start, makespan);
	return {
		format: SCHEDULE_FORMAT,
		makespan,
		lowerBound: bound,
		gap: makespan - bound,
		activities: problem.activities.map(({ id, minutes }, a) => ({
			id,
			start: start[a] ?? 0,
			finish: (start[a] ?? 0) + minutes,
			critical: start[a] === late[a],
		})),
	};
}

function projectIn({ resources, activities }: ScheduleProblem): Project {
	const numberOf = new Map(activities.map(({ id }, at) => [id, at]));
	return projectOf({
		capacity: resources.map(({ capacity }) => capacity),
		activities: activities.map(({ minutes, wait = 0, after, uses }) => ({
			minutes,
			wait,
			after: after.map((id) => numberOf.get(id) ?? 0),
			uses: resources.map(({ id }) => uses.get(id) ?? 0),
		})),
	});
}

/** The latest starts when everything is pushed to the end, the last to finish first. */
function latestIn(project: Project, start: Int32Array, makespan: number): Int32Array {
	const late = new Int32Array(project.count);
	new Justifier(new Serial(project)).toTheEnd(start, makespan, late);
	return late;
}
