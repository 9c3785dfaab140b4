// Machine 12 of the acceptance scenario as a problem of the shop's planner: one of each person, in always or by the demo shop's hours.

import type { ShopProblem } from "@/lib/schedule/shopProblem";
import type { Windows } from "@/lib/schedule/workingTime";
import type { StepRow, Who } from "@/tests/money/machine12";

export const WHO: readonly Who[] = ["A", "B", "C"];
export const ALWAYS_IN: Windows = [{ from: 0, until: 10_000_000 }];

/** Eight to half past four with half an hour at noon, Monday to Friday, from a Monday's midnight on. */
export const officeHours = (weeks: number): Windows =>
	Array.from({ length: weeks * 7 }, (_, day) => day)
		.filter((day) => day % 7 < 5)
		.flatMap((day) => [
			{ from: day * 1440 + 480, until: day * 1440 + 720 },
			{ from: day * 1440 + 750, until: day * 1440 + 990 },
		]);

export const skerryShop = (rows: readonly StepRow[], windows: Windows): ShopProblem => ({
	people: WHO.map((id) => ({ id, windows })),
	equipment: [],
	arrivals: [],
	machines: [{ id: "12", promised: null }],
	tasks: rows.map(({ id, who, low, likely, high, wait, after }) => ({
		id,
		machine: 0,
		estimate: { low, likely, high },
		spent: 0,
		wait: { low: wait, likely: wait, high: wait },
		after: after.map((need) => rows.findIndex((row) => row.id === need)),
		release: 0,
		parcels: [],
		crews: [who.map((one) => WHO.indexOf(one))],
		holds: [],
	})),
});
