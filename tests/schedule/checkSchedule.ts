// Whether a schedule can be worked: precedence, waits, and capacity at every instant. Written from the definition; shares no code
// with the scheduler.

export type CheckedProblem = {
	readonly resources?: readonly { readonly id: string; readonly capacity: number }[] | undefined;
	readonly activities: readonly {
		readonly id: string;
		readonly minutes: number;
		readonly wait?: number | undefined;
		readonly after?: readonly string[] | undefined;
		readonly uses?: Readonly<Record<string, number>> | undefined;
	}[];
};

export type CheckedSchedule = {
	readonly makespan: number;
	readonly activities: readonly { readonly id: string; readonly start: number; readonly finish: number }[];
};

/** Everything that is wrong with it, in words; empty when nothing is. */
export function wrongsOf(problem: CheckedProblem, schedule: CheckedSchedule): string[] {
	const wrongs: string[] = [];
	const times = new Map(schedule.activities.map((row) => [row.id, row]));
	if (times.size !== problem.activities.length || schedule.activities.length !== problem.activities.length)
		wrongs.push(`${problem.activities.length} activities, ${schedule.activities.length} in the schedule`);
	let end = 0;
	for (const { id, minutes, wait = 0, after = [] } of problem.activities) {
		const row = times.get(id);
		if (row === undefined) {
			wrongs.push(`${id} is not scheduled`);
			continue;
		}
		if (!Number.isInteger(row.start) || row.start < 0) wrongs.push(`${id} starts at ${row.start}`);
		if (row.finish !== row.start + minutes) wrongs.push(`${id} lasts ${row.finish - row.start} instead of ${minutes}`);
		for (const need of after) {
			const before = times.get(need);
			const rests = problem.activities.find((one) => one.id === need)?.wait ?? 0;
			if (before !== undefined && row.start < before.finish + rests) wrongs.push(`${id} starts before ${need} is over`);
		}
		end = Math.max(end, row.finish + wait);
	}
	if (schedule.makespan !== end) wrongs.push(`the makespan is ${schedule.makespan}, the last wait is over at ${end}`);
	for (const { id: resource, capacity } of problem.resources ?? []) {
		// What is held changes only where something starts, so those are the instants to look at.
		for (const { start: instant } of schedule.activities) {
			const held = problem.activities.reduce((sum, { id, uses }) => {
				const row = times.get(id);
				return row !== undefined && row.start <= instant && instant < row.finish ? sum + (uses?.[resource] ?? 0) : sum;
			}, 0);
			if (held > capacity) wrongs.push(`at ${instant} ${held} of ${resource} are held, and there are ${capacity}`);
		}
	}
	return wrongs;
}
