// What one more pair of hands would buy: the plan once more, with somebody who can do what one of them does and keeps the same hours. Pure.

import { type ShopPlan, shopPlanOf } from "@/lib/schedule/shopPlan";
import type { ShopProblem } from "@/lib/schedule/shopProblem";
import { isBetter } from "@/lib/schedule/shopSearch";

export type OneMore = {
	/** Whose work somebody else could do as well: number of a person. */
	readonly person: number;
	/** By machine: minutes that it is done earlier; below nought when it is done later so that others are earlier or in time. */
	readonly earlier: readonly number[];
	/** All machines together. Never below nought where nothing is promised. */
	readonly inAll: number;
};

/** The problem with a second `person`, to choose from wherever the first is in a crew. */
export function withSecond(problem: ShopProblem, person: number): ShopProblem {
	const second = problem.people.length;
	const windows = problem.people[person]?.windows ?? [];
	return {
		...problem,
		people: [...problem.people, { id: "one more", windows }],
		tasks: problem.tasks.map((task) => ({
			...task,
			crews: task.crews.flatMap((crew) => (crew.includes(person) ? [crew, crew.map((one) => (one === person ? second : one))] : [crew])),
		})),
	};
}

/**
 * For each person who has something planned, who gains most first. The plan it is held against has to be of the same problem: the search
 * begins with its order, and where it finds nothing better that plan still holds, and nothing is gained.
 */
export function oneMore(problem: ShopProblem, plan: ShopPlan, seed: number, plans: number): OneMore[] {
	const busy = problem.people.flatMap((_, person) => (plan.tasks.some(({ crew }) => crew.includes(person)) ? [person] : []));
	return busy
		.map((person): OneMore => {
			const found = shopPlanOf(withSecond(problem, person), seed, plans, plan);
			const { machines } = isBetter(found.worth, plan.worth) ? found : plan;
			const earlier = plan.machines.map(({ end }, machine) => (end === null ? 0 : end - (machines[machine]?.end ?? end)));
			return { person, earlier, inAll: earlier.reduce((sum, minutes) => sum + minutes, 0) };
		})
		.sort((a, b) => b.inAll - a.inAll);
}
