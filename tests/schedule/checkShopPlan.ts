// Whether a plan of the shop can be worked: needs and waits, people's hours, nobody at two things, equipment at every minute. Written
// from the definition, minute by minute; shares no code with the planner.

import type { ShopPlan } from "@/lib/schedule/shopPlan";
import type { ShopProblem } from "@/lib/schedule/shopProblem";
import { leftOfStep } from "@/tests/schedule/leftOfStep";

type Windows = ShopProblem["people"][number]["windows"];
const isIn = (windows: Windows, minute: number): boolean => windows.some(({ from, until }) => from <= minute && minute < until);

/** Everything that is wrong with it, in words; empty when nothing is. For whole minutes. */
export function wrongsOfShopPlan(problem: ShopProblem, plan: Pick<ShopPlan, "tasks">): string[] {
	const wrongs: string[] = [];
	const { tasks, people, equipment, arrivals } = problem;
	for (const [task, asked] of tasks.entries()) {
		const row = plan.tasks[task];
		if (row === undefined) {
			wrongs.push(`${asked.id} is not planned`);
			continue;
		}
		if (row.start === Number.POSITIVE_INFINITY) continue;
		if (!asked.crews.some((crew) => [...crew].sort().join() === [...row.crew].sort().join()) && asked.crews.length + row.crew.length > 0)
			wrongs.push(`${asked.id} is done by ${row.crew.join(", ")}`);
		if (row.start < asked.release) wrongs.push(`${asked.id} starts before what it needs has rested`);
		for (const parcel of asked.parcels) {
			const { ordered = 0, lead } = arrivals[parcel] ?? {};
			const likely = ordered + (lead?.likely ?? 0);
			const most = ordered + (lead?.high ?? 0);
			if (row.start < (likely >= 0 ? likely : most >= 0 ? most : 1440)) wrongs.push(`${asked.id} starts before its parcel has come`);
		}
		for (const need of asked.after)
			if (row.start < (plan.tasks[need]?.over ?? 0)) wrongs.push(`${asked.id} starts before ${tasks[need]?.id} is over`);
		let worked = 0;
		for (let minute = row.start; minute < row.finish; minute++) {
			const here = row.crew.filter((person) => isIn(people[person]?.windows ?? [], minute));
			if (here.length === row.crew.length) worked += 1;
		}
		const wanted = leftOfStep(asked.estimate, asked.spent);
		if (worked !== wanted) wrongs.push(`${asked.id} is worked at for ${worked} minutes instead of ${wanted}`);
		if (row.over !== row.finish + asked.wait.likely) wrongs.push(`${asked.id} rests until ${row.over}`);
		if (row.finish > row.start && !row.crew.every((person) => isIn(people[person]?.windows ?? [], row.start)))
			wrongs.push(`${asked.id} starts while somebody is out`);
	}
	const last = Math.max(0, ...plan.tasks.map(({ over }) => (over === Number.POSITIVE_INFINITY ? 0 : over)));
	for (let minute = 0; minute < last; minute++) {
		for (const [person, { id }] of people.entries()) {
			const at = plan.tasks.filter(({ crew, start, finish }) => crew.includes(person) && start <= minute && minute < finish);
			if (at.length > 1) wrongs.push(`at ${minute} ${id} is at ${at.map((row) => row.id).join(" and ")}`);
		}
		for (const [one, { id, count }] of equipment.entries()) {
			const held = tasks.reduce((sum, { holds }, task) => {
				const row = plan.tasks[task];
				const hold = holds.find((each) => each.equipment === one);
				if (row === undefined || hold === undefined || row.start > minute) return sum;
				return minute < (hold.throughWait ? row.over : row.finish) ? sum + hold.count : sum;
			}, 0);
			if (held > count) wrongs.push(`at ${minute} ${held} of ${id} are held, and there are ${count}`);
		}
	}
	return wrongs;
}
