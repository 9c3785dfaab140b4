// `asfound schedule FILE|- [--json] [--lines] [--seconds N] [--seed N]`: reads a scheduling problem, prints a schedule.

import { BAD_INPUT, type Said } from "@/lib/cli/said";
import { type Instant, millisOf } from "@/lib/core/instants";
import { formatMinutes, formatWait } from "@/lib/core/minutes";
import { err, type Result } from "@/lib/core/result";
import type { ScheduleProblem } from "@/lib/schedule/problem";
import { readScheduleProblem, type ScheduleRefusal } from "@/lib/schedule/readScheduleProblem";
import { type Schedule, scheduleOf } from "@/lib/schedule/schedule";

export type ScheduleOptions = {
	/** Print the schedule as JSON. */
	readonly json?: boolean;
	/** One problem a line, one answer or error object a line. Blank lines are passed over. */
	readonly lines?: boolean;
	/** How long to look for a shorter one, for each problem; left out, a fixed number of schedules, so that the answer is always the same. */
	readonly seconds?: number;
	readonly seed?: number;
};

/** Runs the verb on the text of the problem file (or of standard input). `clock` is looked at only when seconds are given. */
export function scheduleVerb(options: ScheduleOptions, input: string, clock: () => Instant): Said {
	const text = input.startsWith("\uFEFF") ? input.slice(1) : input;
	const solve = (problem: ScheduleProblem): Schedule => {
		const { seconds, seed = 1 } = options;
		if (seconds === undefined) return scheduleOf(problem, seed);
		const until = millisOf(clock()) + seconds * 1000;
		return scheduleOf(problem, seed, () => millisOf(clock()) < until);
	};
	return options.lines === true ? scheduleLines(text, solve) : scheduleOne(text, options.json === true, solve);
}

type Solve = (problem: ScheduleProblem) => Schedule;

function scheduleOne(text: string, json: boolean, solve: Solve): Said {
	const read = readText(text);
	if (!read.ok)
		return {
			exitCode: BAD_INPUT,
			stdout: json ? `${JSON.stringify(errorOf(read.error), null, 2)}\n` : "",
			stderr: `${[read.error.say, ...Object.entries(read.error.fields).map(([path, why]) => `  ${path}: ${why}`)].join("\n")}\n`,
		};
	const schedule = solve(read.value);
	return { exitCode: 0, stdout: json ? `${JSON.stringify(schedule, null, 2)}\n` : inWords(schedule), stderr: "" };
}

function scheduleLines(text: string, solve: Solve): Said {
	let exitCode = 0;
	const answers: string[] = [];
	for (const line of text.split("\n")) {
		if (line.trim() === "") continue;
		const read = readText(line);
		if (!read.ok) exitCode = BAD_INPUT;
		answers.push(`${JSON.stringify(read.ok ? solve(read.value) : errorOf(read.error))}\n`);
	}
	return { exitCode, stdout: answers.join(""), stderr: "" };
}

function readText(text: string): Result<ScheduleProblem, ScheduleRefusal> {
	let raw: unknown;
	try {
		raw = JSON.parse(text);
	} catch (error) {
		const why = error instanceof SyntaxError ? error.message : String(error);
		return err({
			code: "not-json",
			say: `The input is not JSON: ${why}. Give one problem as JSON.`,
			paths: ["(the whole input)"],
			fields: {},
		});
	}
	return readScheduleProblem(raw);
}

const errorOf = ({ code, say, paths, fields }: ScheduleRefusal) => ({ error: { code, say, paths, fields } });

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
