// 10,000 runs of the acceptance scenario's plan with people and their hours, against the plain simulation of the longest path: the same
// draws, no people, no hours.

import { seededRandom } from "@/lib/core/random";
import { betaPert } from "@/lib/schedule/betaPert";
import { needsFirst } from "@/lib/schedule/placing";
import { summaryOf } from "@/lib/schedule/sample";
import { shopPlanOf } from "@/lib/schedule/shopPlan";
import type { ShopProblem } from "@/lib/schedule/shopProblem";
import { simulateShop } from "@/lib/schedule/shopSimulate";
import { PLANNED } from "@/tests/money/machine12";
import { officeHours, skerryShop } from "@/tests/schedule/skerryPlan";
import { report, timed } from "./timing";

const RUNS = 10_000;

export async function simulating(): Promise<void> {
	const problem = skerryShop(PLANNED, officeHours(104));
	const costs = problem.tasks.map(({ crews }) => 60 * (crews[0]?.length ?? 0));
	const plan = shopPlanOf(problem, 1);
	const ours = await timed(7, () => simulateShop(problem, plan.tasks, costs, RUNS, seededRandom(1)), 2);
	const plain = await timed(7, () => longestPaths(problem), 2);
	report(`${RUNS} runs of the acceptance scenario with people and hours, against the longest path alone`, ours, plain, null);
	const planning = await timed(5, () => shopPlanOf(problem, 1), 1);
	report("planning it once, against one simulation of it", planning, ours, null);
}

function longestPaths({ tasks }: ShopProblem): unknown {
	const random = seededRandom(1);
	const order = needsFirst(tasks.map(({ after }) => after));
	const draws = tasks.map(({ estimate }) => betaPert(estimate, random));
	const over = new Float64Array(tasks.length);
	const ends = new Float64Array(RUNS);
	for (let run = 0; run < RUNS; run++) {
		let end = 0;
		for (const task of order) {
			let from = 0;
			for (const need of tasks[task]?.after ?? []) from = Math.max(from, over[need] as number);
			over[task] = from + (draws[task]?.() ?? 0) + (tasks[task]?.wait.likely ?? 0);
			end = Math.max(end, over[task] as number);
		}
		ends[run] = end;
	}
	return summaryOf(ends);
}
