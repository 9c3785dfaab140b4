// Random small shops, for tests: whole minutes, days of sixty of them.

import { type Random, wholeBelow } from "@/lib/core/random";
import type { ShopProblem, ShopTask } from "@/lib/schedule/shopProblem";

const DAY = 60;

/** Three persons at most, who come and go at different times, with lunch and days off; up to so many tasks on up to three machines. */
export function makeShop(random: Random, mostTasks: number): { readonly problem: ShopProblem; readonly horizon: number } {
	const below = (count: number): number => wholeBelow(random, count);
	const days = 14;
	const people = Array.from({ length: 1 + below(3) }, (_, person) => {
		const [comes, goes] = [5 + below(10), 35 + below(20)];
		const off = below(5);
		return {
			id: `person ${person}`,
			windows: Array.from({ length: days }, (_, day) => day)
				.filter((day) => off !== 0 || day % 5 !== 3)
				.flatMap((day) => [
					{ from: day * DAY + comes, until: day * DAY + 20 },
					{ from: day * DAY + 23, until: day * DAY + goes },
				]),
		};
	});
	const equipment = Array.from({ length: below(3) }, (_, one) => ({ id: `equipment ${one}`, count: 1 + below(2) }));
	const machines = Array.from({ length: 1 + below(3) }, (_, one) => ({
		id: `machine ${one}`,
		promised: below(2) === 0 ? null : 40 + below(200),
	}));
	const arrivals = Array.from({ length: below(2) }, (_, one) => ({
		id: `parcel ${one}`,
		ordered: -below(20),
		lead: { low: 20, likely: 20 + below(60), high: 200 },
	}));
	const tasks = Array.from({ length: 2 + below(mostTasks - 1) }, (_, one): ShopTask => {
		const likely = below(8) === 0 ? 0 : 1 + below(below(5) === 0 ? 60 : 18);
		const wait = below(3) === 0 ? below(40) : 0;
		return {
			id: `task ${one}`,
			machine: below(machines.length),
			estimate: { low: Math.floor(likely / 2), likely, high: likely * 2 },
			spent: below(5) === 0 ? below(10) : 0,
			wait: { low: wait, likely: wait, high: wait },
			after: Array.from({ length: one }, (_, other) => other).filter(() => below(4) === 0),
			release: below(5) === 0 ? below(80) : 0,
			parcels: arrivals.flatMap((_, parcel) => (below(3) === 0 ? [parcel] : [])),
			crews: [people.flatMap((_, person) => (below(people.length) === 0 ? [person] : []))].map((crew) =>
				crew.length === 0 ? [below(people.length)] : crew,
			),
			holds: equipment.flatMap(({ count }, each) =>
				below(3) === 0 ? [{ equipment: each, count: 1 + below(count), throughWait: below(2) === 0 }] : [],
			),
		};
	});
	return { problem: { people, equipment, arrivals, machines, tasks }, horizon: days * DAY };
}
