// What a planned task waited for last before it could begin. Pure.

import type { Placing } from "@/lib/schedule/placing";
import { plannedArrival, type ShopProblem } from "@/lib/schedule/shopProblem";

export type WaitedFor =
	/** It begins at once. */
	| { readonly why: "nothing" }
	/** Another task, with its wait. */
	| { readonly why: "need"; readonly task: number }
	/** Somebody, or something, that another task still held. */
	| { readonly why: "person"; readonly person: number; readonly task: number }
	| { readonly why: "equipment"; readonly equipment: number; readonly task: number }
	| { readonly why: "parcel"; readonly parcel: number }
	/** What was done before the plan and has to rest. */
	| { readonly why: "rest" }
	/** Its people are not in before. */
	| { readonly why: "hours" };

/** Requires a plan in `placing`. Of several reasons the last to go is given; needs before people before equipment. */
export function waitedFor(placing: Placing, task: number): WaitedFor {
	const { problem, release, minutes, times, after } = placing.project;
	const asked = problem.tasks[task];
	const start = placing.start[task] as number;
	const time = times[task]?.[placing.crew[task] as number];
	if (asked === undefined || time === undefined || start === 0 || start === Number.POSITIVE_INFINITY) return { why: "nothing" };
	const wouldStart = (from: number): number => time.start(from, minutes[task] as number);
	const ready = placing.ready(task);
	if (wouldStart(ready) < start) {
		const holder = holdersOf(placing, task).find(({ end }) => end > ready && wouldStart(end) === start);
		if (holder !== undefined) return holder.reason;
	}
	const need = (after[task] ?? []).find((one) => placing.over(one) === ready);
	if (need !== undefined) return { why: "need", task: need };
	if (ready === 0) return { why: "hours" };
	const parcel = asked.parcels.find((one) => arrivalOf(problem, one) === release[task]);
	return parcel === undefined ? { why: "rest" } : { why: "parcel", parcel };
}

function arrivalOf(problem: ShopProblem, parcel: number): number | null {
	const arrival = problem.arrivals[parcel];
	return arrival === undefined ? null : plannedArrival(arrival);
}

/** Tasks that hold what this one needs until it starts or before: people first, and who gives it back last first. */
function holdersOf(placing: Placing, task: number) {
	const { tasks } = placing.project.problem;
	const crewOf = (one: number): readonly number[] => tasks[one]?.crews[placing.crew[one] as number] ?? [];
	const mine = crewOf(task);
	const start = placing.start[task] as number;
	const people: { end: number; reason: WaitedFor }[] = [];
	const equipment: { end: number; reason: WaitedFor }[] = [];
	for (const [other, { holds }] of tasks.entries()) {
		if (other === task) continue;
		const finish = placing.finish[other] as number;
		const person = crewOf(other).find((one) => mine.includes(one));
		if (person !== undefined && finish <= start) people.push({ end: finish, reason: { why: "person", person, task: other } });
		for (const { equipment: one } of tasks[task]?.holds ?? []) {
			const held = holds.find((hold) => hold.equipment === one);
			const end = held?.throughWait ? placing.over(other) : finish;
			if (held !== undefined && end <= start) equipment.push({ end, reason: { why: "equipment", equipment: one, task: other } });
		}
	}
	const latestFirst = (one: { end: number }, other: { end: number }): number => other.end - one.end;
	return [...people.sort(latestFirst), ...equipment.sort(latestFirst)];
}
