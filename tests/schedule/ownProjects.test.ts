// Projects of our own, larger than all orders can be tried on; a general-purpose solver proves the least makespan.

import { expect, it } from "vitest";
import { seededRandom, wholeBelow } from "@/lib/core/random";
import { SCHEDULE_PROBLEM_FORMAT } from "@/lib/schedule/problem";
import { readScheduleProblem } from "@/lib/schedule/readScheduleProblem";
import { scheduleOf } from "@/lib/schedule/schedule";
import { milpSolver } from "@/tests/reversal/byMilp";
import { leastByMilp } from "@/tests/schedule/byMilp";
import { type CheckedProblem, wrongsOf } from "@/tests/schedule/checkSchedule";

/** ASFOUND_PROJECTS=100 for a long run. */
const PROJECTS = Number(process.env.ASFOUND_PROJECTS ?? 8);

/** Ten to fourteen activities, three resources that do not suffice for all, some waits. */
function aProject(seed: number): CheckedProblem & { readonly format: string } {
	const random = seededRandom(seed);
	const count = 10 + wholeBelow(random, 5);
	return {
		format: SCHEDULE_PROBLEM_FORMAT,
		resources: ["ann", "bench", "booth"]
			.map((id) => ({ id, capacity: 1 + wholeBelow(random, 3) }))
			.map((one) => ({ ...one, capacity: one.capacity + 1 })),
		activities: Array.from({ length: count }, (_, at) => ({
			id: `s${at}`,
			minutes: 1 + wholeBelow(random, 5),
			...(wholeBelow(random, 4) === 0 ? { wait: 1 + wholeBelow(random, 6) } : {}),
			after: at === 0 ? [] : [...new Set([0, 1].flatMap(() => (wholeBelow(random, 3) === 0 ? [] : [`s${wholeBelow(random, at)}`])))],
			uses: { ann: wholeBelow(random, 3), bench: wholeBelow(random, 2), booth: wholeBelow(random, 3) },
		})),
	};
}

it(`${PROJECTS} projects of our own are scheduled as short as a general-purpose solver proves possible`, async () => {
	const solver = await milpSolver();
	for (let seed = 1; seed <= PROJECTS; seed++) {
		const problem = aProject(seed);
		const read = readScheduleProblem(problem);
		if (!read.ok) throw new Error(read.error.say);
		const schedule = scheduleOf(read.value, 1, (made) => made < 3000);
		expect(wrongsOf(problem, schedule)).toEqual([]);
		const least = leastByMilp(solver, problem, schedule.makespan);
		expect(least, `seed ${seed}`).not.toBeNull();
		expect(schedule.makespan, `seed ${seed}`).toBe(least);
		expect(schedule.lowerBound).toBeLessThanOrEqual(least ?? 0);
	}
}, 300_000);
