// The serial schedule generation scheme (J. E. Kelley, 1963): activities in the order of a list, each as early as what comes
// before it and the resources allow. For every project some list gives a shortest schedule (A. Sprecher, R. Kolisch and
// A. Drexl, 1995), so searching the lists loses nothing. Pure.

import { Profile } from "@/lib/schedule/profile";
import type { Direction, Project } from "@/lib/schedule/project";

/** Makes schedules of one project, one after the other. */
export class Serial {
	private readonly profile: Profile;
	/** How many schedules were made: what a budget counts. */
	made = 0;

	constructor(readonly project: Project) {
		this.profile = new Profile(project);
	}

	/**
	 * Fills `start` by the list and gives the makespan, waits included. Requires a list that has every activity once, after
	 * those that it needs in that direction. Backwards, starts count from the end: an activity's finish lies that long before it.
	 */
	schedule(list: Int32Array, direction: Direction, start: Int32Array): number {
		const { duration } = this.project;
		const { arcStart, arcFrom, arcLag, release, tail } = direction;
		this.made += 1;
		this.profile.clear();
		let makespan = 0;
		for (let at = 0; at < list.length; at++) {
			const a = list[at] as number;
			let from = release[a] as number;
			for (let arc = arcStart[a] as number, end = arcStart[a + 1] as number; arc < end; arc++) {
				const need = arcFrom[arc] as number;
				const over = (start[need] as number) + (duration[need] as number) + (arcLag[arc] as number);
				if (over > from) from = over;
			}
			const moment = this.profile.earliest(a, from);
			this.profile.occupy(a, moment);
			start[a] = moment;
			const over = moment + (duration[a] as number) + (tail[a] as number);
			if (over > makespan) makespan = over;
		}
		return makespan;
	}
}

/** The activities in the order of `key`, the smallest first; ties by `rank`. Small numbers of them, so plain insertion is quickest. */
export function inOrderOf(key: Int32Array, rank: Int32Array, into: Int32Array): void {
	for (let at = 0; at < into.length; at++) {
		const k = key[at] as number;
		const r = rank[at] as number;
		let to = at;
		while (to > 0) {
			const other = into[to - 1] as number;
			const otherKey = key[other] as number;
			if (otherKey < k || (otherKey === k && (rank[other] as number) < r)) break;
			into[to] = other;
			to -= 1;
		}
		into[to] = at;
	}
}
