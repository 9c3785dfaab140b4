// What the planner of the whole shop is asked: open steps of all machines, who is in when, what there is one of, and what is in the
// post. Pure. Time is in minutes from the plan's zero, which is now.

import type { ThreePoint } from "@/lib/money/pert";
import { meanLeft } from "@/lib/schedule/betaPert";
import type { Windows } from "@/lib/schedule/workingTime";

export type ShopTask = {
	readonly id: string;
	/** The number of its machine among `machines`. */
	readonly machine: number;
	/** Working minutes of the whole step. */
	readonly estimate: ThreePoint;
	/** Minutes of it that are done. */
	readonly spent: number;
	/** Minutes by the clock after it. */
	readonly wait: ThreePoint;
	/** Numbers of the tasks that have to be over, with their waits. */
	readonly after: readonly number[];
	/** It does not begin before: what it needed and is done has to rest until then. */
	readonly release: number;
	/** Numbers of the arrivals that it cannot begin without. */
	readonly parcels: readonly number[];
	/** Who does it, as numbers of people: one crew, or several to choose from where nobody was named. */
	readonly crews: readonly (readonly number[])[];
	readonly holds: readonly Holding[];
};

/** So many of an equipment, from the start on. */
export type Holding = {
	readonly equipment: number;
	readonly count: number;
	/** Until its wait is over, and not only the work. */
	readonly throughWait: boolean;
};

export type ShopProblem = {
	readonly people: readonly { readonly id: string; readonly windows: Windows }[];
	readonly equipment: readonly { readonly id: string; readonly count: number }[];
	/** What is in the post: when it was ordered, and the minutes it takes from then. */
	readonly arrivals: readonly { readonly id: string; readonly ordered: number; readonly lead: ThreePoint }[];
	/** `promised`: when the machine should be ready; null when no day was named. */
	readonly machines: readonly { readonly id: string; readonly promised: number | null }[];
	readonly tasks: readonly ShopTask[];
};

/** A parcel that is later than the most that was thought is planned as if it came so soon: a day. */
const LATE_PARCEL = 1440;

/**
 * The working minutes of a step that a plan counts with: the likely ones. Of one that has begun, what is left of them, but not less than
 * what is left on average of a step that has come so far: whole minutes, a begun one counted.
 */
export function plannedMinutes({ estimate, spent }: Pick<ShopTask, "estimate" | "spent">): number {
	if (spent === 0) return estimate.likely;
	return Math.max(0, estimate.likely - spent, Math.ceil(meanLeft(estimate, Math.max(spent, estimate.likely))));
}

/** When a parcel is planned to be there: after the likely time; where that is over, after the most; where that is over, too, a day from now. */
export function plannedArrival({ ordered, lead }: ShopProblem["arrivals"][number]): number {
	if (ordered + lead.likely >= 0) return ordered + lead.likely;
	return ordered + lead.high >= 0 ? ordered + lead.high : LATE_PARCEL;
}
