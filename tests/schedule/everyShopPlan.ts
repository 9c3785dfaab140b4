// The best plan of a small shop, by trying every order and, minute by minute, the first start that works. Shares no code with the planner.

import type { ShopProblem } from "@/lib/schedule/shopProblem";
import { leftOfStep } from "@/tests/schedule/leftOfStep";

type Row = { start: number; finish: number; over: number };
/** Late in all, ends in all, last end. */
export type Worth = readonly [number, number, number];

/** The least worth over every order of the tasks. `horizon`: after it nobody is in. Requires one crew a task, named. */
export function bestWorth(problem: ShopProblem, horizon: number): Worth {
	let best: Worth | null = null;
	const rows: (Row | undefined)[] = problem.tasks.map(() => undefined);
	const go = (left: number): void => {
		if (left === 0) {
			const worth = worthOf(problem, rows as Row[]);
			if (best === null || compare(worth, best) < 0) best = worth;
			return;
		}
		for (const [task, { after }] of problem.tasks.entries()) {
			if (rows[task] !== undefined || after.some((need) => rows[need] === undefined)) continue;
			rows[task] = firstFit(problem, rows, task, horizon);
			go(left - 1);
			rows[task] = undefined;
		}
	};
	go(problem.tasks.length);
	return best ?? [0, 0, 0];
}

export const compare = (one: Worth, other: Worth): number => one[0] - other[0] || one[1] - other[1] || one[2] - other[2];

function worthOf({ machines, tasks }: ShopProblem, rows: readonly Row[]): Worth {
	const ends = machines.map((_, machine) =>
		Math.max(0, ...rows.filter((_, task) => tasks[task]?.machine === machine).map(({ over }) => over)),
	);
	return [
		ends.reduce((sum, end, machine) => sum + Math.max(0, end - (machines[machine]?.promised ?? end)), 0),
		ends.reduce((sum, end) => sum + end, 0),
		Math.max(0, ...ends),
	];
}

function firstFit(problem: ShopProblem, rows: readonly (Row | undefined)[], task: number, horizon: number): Row {
	const { after, release, parcels, estimate, spent, wait, crews, holds } = problem.tasks[task] as ShopProblem["tasks"][number];
	const minutes = leftOfStep(estimate, spent);
	const crew = crews[0] ?? [];
	const isIn = (person: number, minute: number): boolean =>
		(problem.people[person]?.windows ?? []).some(({ from, until }) => from <= minute && minute < until);
	/** Minutes of the sitting from `minute` on: those with all in, up to the first with some in and some out after they began. */
	const sitting = (minute: number): number => {
		let together = 0;
		for (let at = minute; at < horizon; at++) {
			const here = crew.filter((person) => isIn(person, at)).length;
			if (here === crew.length) together += 1;
			else if (here > 0) break;
		}
		return together;
	};
	const beginsSitting = (minute: number): boolean => {
		for (let at = minute - 1; at >= 0; at--) {
			const here = crew.filter((person) => isIn(person, at)).length;
			if (here === crew.length) return false;
			if (here > 0) return true;
		}
		return true;
	};
	let longest = 0;
	for (let at = 0; at < horizon; at++)
		if (crew.every((person) => isIn(person, at))) longest = Math.max(longest, beginsSitting(at) ? sitting(at) : 0);
	for (let start = 0; start < horizon; start++) {
		if (start < release || after.some((need) => (rows[need]?.over ?? 0) > start)) continue;
		if (parcels.some((parcel) => (problem.arrivals[parcel]?.ordered ?? 0) + (problem.arrivals[parcel]?.lead.likely ?? 0) > start)) continue;
		if (minutes > 0) {
			if (!crew.every((person) => isIn(person, start))) continue;
			if (minutes <= longest ? sitting(start) < minutes : !beginsSitting(start)) continue;
		}
		let [finish, worked] = [start, 0];
		for (; worked < minutes && finish < horizon; finish++) if (crew.every((person) => isIn(person, finish))) worked += 1;
		if (worked < minutes) break;
		const row = { start, finish, over: finish + wait.likely };
		const clashes = (from: number, until: number, otherFrom: number, otherUntil: number): boolean => from < otherUntil && otherFrom < until;
		const personClash =
			minutes > 0 &&
			rows.some(
				(other, at) =>
					other !== undefined &&
					other.finish > other.start &&
					(problem.tasks[at]?.crews[0] ?? []).some((person) => crew.includes(person)) &&
					clashes(start, finish, other.start, other.finish),
			);
		if (personClash) continue;
		const full = holds.some(({ equipment, count, throughWait }) => {
			const end = throughWait ? row.over : finish;
			for (let at = start; at < end; at++) {
				const held = rows.reduce((sum, other, number) => {
					const hold = problem.tasks[number]?.holds.find((each) => each.equipment === equipment);
					return other !== undefined && hold !== undefined && other.start <= at && at < (hold.throughWait ? other.over : other.finish)
						? sum + hold.count
						: sum;
				}, count);
				if (held > (problem.equipment[equipment]?.count ?? 0)) return true;
			}
			return false;
		});
		if (!full) return row;
	}
	return { start: Number.POSITIVE_INFINITY, finish: Number.POSITIVE_INFINITY, over: Number.POSITIVE_INFINITY };
}
