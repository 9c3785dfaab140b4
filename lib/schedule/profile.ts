// What is free of each resource over time: a staircase of segments, each from one moment to the next. Pure.

import type { Project } from "@/lib/schedule/project";

/**
 * The staircase of one schedule in the making. Segment k reaches from `times[k]` to `times[k + 1]`, the last one without end,
 * and there everything is free. Kept for many schedules: `clear` begins the next.
 */
export class Profile {
	private count = 1;
	private readonly times: Int32Array;
	private readonly free: Int32Array;
	private readonly resources: number;

	constructor(private readonly project: Project) {
		const most = 2 * project.count + 2;
		this.resources = project.resources;
		this.times = new Int32Array(most);
		this.free = new Int32Array(most * project.resources);
		this.clear();
	}

	clear(): void {
		this.count = 1;
		this.times[0] = 0;
		this.free.set(this.project.capacity);
	}

	/** The earliest moment, not before `from`, at which the activity can hold what it needs from start to finish. */
	earliest(activity: number, from: number): number {
		const { useStart, useOf, useAmount, duration } = this.project;
		const { times, free, count, resources } = this;
		const [first, last] = [useStart[activity] as number, useStart[activity + 1] as number];
		const lasts = duration[activity] as number;
		if (first === last || lasts === 0) return from;
		let at = from;
		let k = this.segmentAt(from);
		for (let j = k; j < count && (times[j] as number) < at + lasts; j++) {
			const row = j * resources;
			for (let u = first; u < last; u++) {
				if ((free[row + (useOf[u] as number)] as number) >= (useAmount[u] as number)) continue;
				// In the last segment all is free, so there is a next one.
				k = j + 1;
				at = times[k] as number;
				break;
			}
		}
		return at;
	}

	/** Takes what the activity holds out of the staircase. Requires that it is free. */
	occupy(activity: number, start: number): void {
		const { useStart, useOf, useAmount, duration } = this.project;
		const [first, last] = [useStart[activity] as number, useStart[activity + 1] as number];
		const lasts = duration[activity] as number;
		if (first === last || lasts === 0) return;
		const from = this.split(start);
		const until = this.split(start + lasts);
		for (let k = from; k < until; k++) {
			const row = k * this.resources;
			for (let u = first; u < last; u++) {
				const at = row + (useOf[u] as number);
				this.free[at] = (this.free[at] as number) - (useAmount[u] as number);
			}
		}
	}

	private segmentAt(moment: number): number {
		let low = 0;
		let high = this.count - 1;
		while (low < high) {
			const middle = (low + high + 1) >> 1;
			if ((this.times[middle] as number) <= moment) low = middle;
			else high = middle - 1;
		}
		return low;
	}

	/** Makes a segment begin at the moment; gives its number. */
	private split(moment: number): number {
		const k = this.segmentAt(moment);
		if (this.times[k] === moment) return k;
		const { times, free, resources } = this;
		times.copyWithin(k + 2, k + 1, this.count);
		free.copyWithin((k + 2) * resources, (k + 1) * resources, this.count * resources);
		times[k + 1] = moment;
		free.copyWithin((k + 1) * resources, k * resources, (k + 1) * resources);
		this.count += 1;
		return k + 1;
	}
}
