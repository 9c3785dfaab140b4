// Justification (V. Valls, F. Ballestin and S. Quintanilla, 2005): a schedule pushed to its end and back to its start never gets
// longer, and often gets shorter. Pure.

import type { Project } from "@/lib/schedule/project";
import { inOrderOf, type Serial } from "@/lib/schedule/serial";

/** Room for justifying schedules of one project again and again. */
export class Justifier {
	private readonly key: Int32Array;
	private readonly list: Int32Array;
	private readonly mirrored: Int32Array;
	private readonly lastFirst: Int32Array;
	private readonly project: Project;

	constructor(private readonly serial: Serial) {
		this.project = serial.project;
		const { count, rank } = this.project;
		this.key = new Int32Array(count);
		this.list = new Int32Array(count);
		this.mirrored = new Int32Array(count);
		this.lastFirst = rank.map((place) => -place);
	}

	/** Pushes the schedule to its end: fills `late` with the latest starts and gives the length of what it comes to, at most `makespan`. */
	toTheEnd(start: Int32Array, makespan: number, late: Int32Array): number {
		const { duration, count, backwards } = this.project;
		for (let a = 0; a < count; a++) this.key[a] = -((start[a] as number) + (duration[a] as number));
		inOrderOf(this.key, this.lastFirst, this.list);
		const length = this.serial.schedule(this.list, backwards, this.mirrored);
		for (let a = 0; a < count; a++) late[a] = makespan - (this.mirrored[a] as number) - (duration[a] as number);
		return length;
	}

	/** One push to the end and one back. `start` is written over with what it comes to; gives its makespan and, in `list`, its order. */
	once(start: Int32Array, makespan: number, list: Int32Array): number {
		this.toTheEnd(start, makespan, this.key);
		const late = this.key;
		inOrderOf(late, this.project.rank, list);
		return this.serial.schedule(list, this.project.forwards, start);
	}
}
