// `asfound schedule FILE|- [--json] [--lines] [--seconds N] [--seed N]`: reads a scheduling problem, prints a schedule.

import { answerText, type ProblemOptions } from "@/lib/cli/problemText";
import type { Said } from "@/lib/cli/said";
import { type Instant, millisOf } from "@/lib/core/instants";
import { formatMinutes, formatWait } from "@/lib/core/minutes";
import type { ScheduleProblem } from "@/lib/schedule/problem";
import { readScheduleProblem } from "@/lib/schedule/readScheduleProblem";
import { type Schedule, scheduleOf } from "@/lib/schedule/schedule";

export type ScheduleOptions = ProblemOptions & {
	/** How long to look for a shorter one, for each problem; left out, a fixed number of schedules, so that the answer is always the same. */
	readonly seconds?: number;
	readonly seed?: number;
};

/** Runs the verb on the text of the problem file (or of standard input). `clock` is looked at only when seconds are given. */
export function scheduleVerb(options: ScheduleOptions, input: string, clock: () => Instant): Said {
	const { seconds, seed = 1 } = options;
	const solve = (problem: ScheduleProblem): Schedule => {
		if (seconds === undefined) return scheduleOf(problem, seed);
		const until = millisOf(clock()) + seconds * 1000;
		return scheduleOf(problem, seed, () => millisOf(clock()) < until);
	};
	return answerText({ read: readScheduleProblem, solve, words: inWords }, options, input);
}

function inWords({ makespan, lowerBound, gap, activities }: Schedule): string {
	const lines = [
		`Over after ${formatWait(makespan)} (${makespan} min), the last wait included.`,
		gap === 0
			? "No schedule is shorter: that is proved."
			: `No schedule is shorter than ${formatWait(lowerBound)} (${lowerBound} min): at most ${formatMinutes(gap)} could be gained.`,
		"",
		...[...activities]
			.sort((a, b) => a.start - b.start || a.finish - b.finish)
			.map(
				({ id, start, finish, critical }) =>
					`${String(start).padStart(8)} to ${String(finish).padStart(8)}  ${id}${critical ? "  critical" : ""}`,
			),
	];
	return `${lines.join("\n")}\n`;
}
