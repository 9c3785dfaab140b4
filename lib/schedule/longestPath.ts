// The time that precedence and waits alone demand, with as many hands as could be wished for (the critical path method).
// Pure. Knows durations and what comes after what, and nothing of people or equipment. Durations may be in any unit,
// also in sixths of a minute: whole numbers stay exact.
import { ok, type Result, refuse } from "@/lib/core/result";

export type Activity = {
	readonly id: string;
	readonly minutes: number;
	/** Time that must pass after the work before a successor may start. Holds nobody. */
	readonly wait?: number;
	/** Ids of the activities that must be over, with their waits, before this one starts. */
	readonly after: readonly string[];
};

/** When an activity can be done at the earliest and must be done at the latest. `finish` is the end of the work, before the wait. */
export type ActivityTimes = {
	readonly id: string;
	readonly earliestStart: number;
	readonly earliestFinish: number;
	readonly latestStart: number;
	readonly latestFinish: number;
	/** By how much it may slip without moving the end; 0 means critical. */
	readonly slack: number;
};

export type LongestPath = {
	/** From the first start to the end of the last wait. */
	readonly makespan: number;
	/** In the order of the input. */
	readonly activities: readonly ActivityTimes[];
	/** One chain of critical activities from start to end; of several, the one that comes first in the input. */
	readonly chain: readonly string[];
};

/** The longest path through the activities. Durations are whole and not below zero. A need that leads back to its own step is refused, and the loop is named step by step. */
export function longestPath(activities: readonly Activity[]): Result<LongestPath> {
	const known = checked(activities);
	if (!known.ok) return known;
	const { byId, successors } = known.value;
	const order = inOrder(activities, successors);
	if (order === null) {
		const loop = loopOf(activities, byId);
		return refuse("needs-loop", `These steps wait for each other: ${[...loop, loop[0]].join(" before ")}. Take one of these needs away.`, {
			facts: { loop },
		});
	}

	const start = new Map<string, number>();
	for (const { id, after } of order) {
		start.set(
			id,
			after.reduce((latest, need) => Math.max(latest, overAt(byId, start, need)), 0),
		);
	}
	const makespan = activities.reduce((latest, { id }) => Math.max(latest, overAt(byId, start, id)), 0);

	const latestFinish = new Map<string, number>();
	for (const { id, wait = 0 } of [...order].reverse()) {
		const mustBeOver = (successors.get(id) ?? []).reduce(
			(earliest, next) => Math.min(earliest, (latestFinish.get(next) ?? makespan) - (byId.get(next)?.minutes ?? 0)),
			makespan,
		);
		latestFinish.set(id, mustBeOver - wait);
	}

	const times = activities.map(({ id, minutes }): ActivityTimes => {
		const earliestStart = start.get(id) ?? 0;
		const finish = latestFinish.get(id) ?? makespan;
		return {
			id,
			earliestStart,
			earliestFinish: earliestStart + minutes,
			latestStart: finish - minutes,
			latestFinish: finish,
			slack: finish - minutes - earliestStart,
		};
	});
	const [chain = []] = criticalChains({ makespan, activities: times, chain: [] }, activities, 1);
	return ok({ makespan, activities: times, chain });
}

/** All chains of critical activities, at most `most` of them, in the order of the input. There can be very many. */
export function criticalChains(path: LongestPath, activities: readonly Activity[], most: number): string[][] {
	const critical = new Set(path.activities.filter(({ slack }) => slack === 0).map(({ id }) => id));
	const times = new Map(path.activities.map((times) => [times.id, times]));
	const overAtOf = new Map(activities.map(({ id, minutes, wait = 0 }) => [id, (times.get(id)?.earliestStart ?? 0) + minutes + wait]));
	const next = new Map<string, string[]>();
	for (const { id, after } of activities) {
		if (!critical.has(id)) continue;
		for (const need of after) {
			if (critical.has(need) && overAtOf.get(need) === times.get(id)?.earliestStart) next.set(need, [...(next.get(need) ?? []), id]);
		}
	}
	const chains: string[][] = [];
	const pending = activities
		.filter(({ id }) => critical.has(id) && times.get(id)?.earliestStart === 0)
		.filter(({ after }) => after.every((need) => !critical.has(need) || overAtOf.get(need) !== 0 || !next.get(need)?.length))
		.map(({ id }) => [id])
		.reverse();
	while (chains.length < most) {
		const chain = pending.pop();
		if (chain === undefined) break;
		const tip = chain[chain.length - 1] ?? "";
		const further = next.get(tip) ?? [];
		if (overAtOf.get(tip) === path.makespan && further.length === 0) chains.push(chain);
		else for (const step of [...further].reverse()) pending.push([...chain, step]);
	}
	return chains;
}

type Known = { readonly byId: ReadonlyMap<string, Activity>; readonly successors: ReadonlyMap<string, readonly string[]> };

function checked(activities: readonly Activity[]): Result<Known> {
	const byId = new Map<string, Activity>();
	const successors = new Map<string, string[]>();
	for (const activity of activities) {
		if (byId.has(activity.id))
			return refuse("step-twice", `The step ${activity.id} is listed twice: give each its own id.`, { facts: { step: activity.id } });
		byId.set(activity.id, activity);
	}
	for (const { id, minutes, wait = 0, after } of activities) {
		if (![minutes, wait].every((time) => Number.isSafeInteger(time) && time >= 0)) {
			return refuse("step-not-whole", `The step ${id} needs whole minutes of zero or more, for its work and for the wait after it.`, {
				facts: { step: id },
			});
		}
		for (const need of after) {
			if (!byId.has(need))
				return refuse("need-unknown", `The step ${id} comes after ${need}, which is not listed: add it or take the need away.`, {
					facts: { step: id, need },
				});
			const nexts = successors.get(need);
			if (nexts === undefined) successors.set(need, [id]);
			else nexts.push(id);
		}
	}
	return ok({ byId, successors });
}

/** The activities with every need before what needs it, or null when they form a loop. */
function inOrder(activities: readonly Activity[], successors: ReadonlyMap<string, readonly string[]>): Activity[] | null {
	const byId = new Map(activities.map((activity) => [activity.id, activity]));
	const waitingFor = new Map(activities.map(({ id, after }) => [id, after.length]));
	const ready = activities.filter(({ after }) => after.length === 0);
	for (let done = 0; done < ready.length; done++) {
		for (const next of successors.get(ready[done]?.id ?? "") ?? []) {
			const left = (waitingFor.get(next) ?? 0) - 1;
			waitingFor.set(next, left);
			const activity = byId.get(next);
			if (left === 0 && activity !== undefined) ready.push(activity);
		}
	}
	return ready.length === activities.length ? ready : null;
}

/** One loop of needs, in the order in which the work would have to be done, from its first step in the input. Requires that there is one. */
function loopOf(activities: readonly Activity[], byId: ReadonlyMap<string, Activity>): string[] {
	const cleared = new Set<string>();
	for (const { id } of activities) {
		// Walk back along needs that still stand. A step without such needs is cleared; what comes round is the loop.
		const way: string[] = [];
		const placeOnWay = new Map<string, number>();
		let step: string | undefined = cleared.has(id) ? undefined : id;
		while (step !== undefined) {
			const seenAt = placeOnWay.get(step);
			if (seenAt !== undefined) return fromFirst(way.slice(seenAt).reverse(), activities);
			placeOnWay.set(step, way.length);
			way.push(step);
			let onward = standingNeed(step, byId, cleared);
			while (onward === undefined && way.length > 0) {
				const dead = way.pop() ?? "";
				placeOnWay.delete(dead);
				cleared.add(dead);
				onward = way.length === 0 ? undefined : standingNeed(way[way.length - 1] ?? "", byId, cleared);
			}
			step = onward;
		}
	}
	throw new Error("no loop among these activities");
}

function standingNeed(id: string, byId: ReadonlyMap<string, Activity>, cleared: ReadonlySet<string>): string | undefined {
	return byId.get(id)?.after.find((need) => !cleared.has(need));
}

function fromFirst(loop: readonly string[], activities: readonly Activity[]): string[] {
	const first = loop.indexOf(activities.find(({ id }) => loop.includes(id))?.id ?? "");
	return [...loop.slice(first), ...loop.slice(0, first)];
}

function overAt(byId: ReadonlyMap<string, Activity>, start: ReadonlyMap<string, number>, id: string): number {
	const activity = byId.get(id);
	return (start.get(id) ?? 0) + (activity?.minutes ?? 0) + (activity?.wait ?? 0);
}
