// The least makespan by trying every order of starting, for very small projects. Shares no code with the scheduler.

import type { CheckedProblem } from "@/tests/schedule/checkSchedule";

/**
 * Every active schedule is made by starting activities one after the other, each as early as it can be after those before it in
 * the order have been placed; so trying all orders finds the least.
 */
export function leastMakespan({ resources = [], activities }: CheckedProblem): number {
	let best = Number.POSITIVE_INFINITY;
	type Placed = { readonly id: string; readonly start: number; readonly finish: number; readonly over: number };
	const place = (placed: readonly Placed[]): void => {
		const end = Math.max(0, ...placed.map(({ over }) => over));
		if (end >= best) return;
		if (placed.length === activities.length) {
			best = end;
			return;
		}
		for (const activity of activities) {
			if (placed.some(({ id }) => id === activity.id)) continue;
			const needs = (activity.after ?? []).map((need) => placed.find(({ id }) => id === need));
			if (needs.some((need) => need === undefined)) continue;
			let start = Math.max(0, ...needs.map((need) => need?.over ?? 0));
			// Minute by minute: slow, and nothing to get wrong.
			while (!fits(activity, start, placed)) start += 1;
			const finish = start + activity.minutes;
			place([...placed, { id: activity.id, start, finish, over: finish + (activity.wait ?? 0) }]);
		}
	};
	const fits = ({ minutes, uses = {} }: CheckedProblem["activities"][number], start: number, placed: readonly Placed[]): boolean => {
		for (let minute = start; minute < start + minutes; minute++)
			for (const { id, capacity } of resources) {
				const held = placed.reduce((sum, row) => {
					const other = activities.find((one) => one.id === row.id);
					return row.start <= minute && minute < row.finish ? sum + (other?.uses?.[id] ?? 0) : sum;
				}, 0);
				if (held + (uses[id] ?? 0) > capacity) return false;
			}
		return true;
	};
	place([]);
	return activities.length === 0 ? 0 : best;
}
