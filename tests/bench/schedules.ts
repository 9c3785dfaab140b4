// The scheduler on published instances in a folder that is given (they have no stated licence, so they are not here): files of
// `asfound.schedule-problem/1` and an `optima.csv` of instance and best known makespan. And larger projects of our own, made like
// them, against the scheduler's own lower bound.

import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { seededRandom, wholeBelow } from "@/lib/core/random";
import { readScheduleProblem } from "@/lib/schedule/readScheduleProblem";
import { scheduleOf } from "@/lib/schedule/schedule";
import { type CheckedProblem, wrongsOf } from "@/tests/schedule/checkSchedule";

const SECONDS = 1;

/** Prints the mean deviation from the best known, and gives how many schedules are wrong. */
export function publishedProjects(folder: string): number {
	const best = new Map(
		readFileSync(path.join(folder, "optima.csv"), "utf8")
			.trim()
			.split(/\r?\n/)
			.slice(1)
			.map((row) => [row.split(",")[0] ?? "", Number(row.split(",")[1])] as const),
	);
	const files = readdirSync(folder).filter((file) => file.endsWith(".json") && best.has(file.slice(0, -5)));
	let [sum, worst, proved, wrong, longest] = [0, 0, 0, 0, 0];
	for (const file of files) {
		const known = best.get(file.slice(0, -5)) ?? Number.NaN;
		const one = timed(readFileSync(path.join(folder, file), "utf8"));
		if (one.wrongs.length > 0 || one.lowerBound > known) {
			wrong += 1;
			console.log(`${file}: ${one.wrongs.join("; ") || `lower bound ${one.lowerBound} above the best known ${known}`}`);
		}
		const off = (100 * (one.makespan - known)) / known;
		if (off !== 0) console.log(`${file}: ${one.makespan}, best known ${known}`);
		sum += off;
		worst = Math.max(worst, off);
		longest = Math.max(longest, one.took);
		if (one.makespan === one.lowerBound) proved += 1;
	}
	console.log(
		`schedules of ${files.length} published projects at ${SECONDS} s each: mean ${(sum / files.length).toFixed(3)} % over the best known, worst ${worst.toFixed(2)} %; ${proved} proved shortest by our own bound; ${wrong} wrong; longest run ${(longest / 1000).toFixed(2)} s`,
	);
	return wrong;
}

/** Projects of 30, 60 and 120 activities: how far the schedule is from the lower bound, and whether it keeps to its time. */
export function largerProjects(): number {
	let wrong = 0;
	for (const count of [30, 60, 120]) {
		let [gap, longest, proved] = [0, 0, 0];
		const projects = 12;
		for (let seed = 1; seed <= projects; seed++) {
			const one = timed(JSON.stringify(project(count, seed)));
			wrong += one.wrongs.length;
			gap += (100 * (one.makespan - one.lowerBound)) / one.lowerBound;
			if (one.makespan === one.lowerBound) proved += 1;
			longest = Math.max(longest, one.took);
		}
		console.log(
			`schedules of ${projects} own projects of ${count} activities at ${SECONDS} s each: ${(gap / projects).toFixed(2)} % over the lower bound on average, ${proved} proved shortest, longest run ${(longest / 1000).toFixed(2)} s`,
		);
	}
	return wrong;
}

function timed(text: string) {
	const read = readScheduleProblem(JSON.parse(text));
	if (!read.ok) throw new Error(read.error.say);
	const start = performance.now();
	const schedule = scheduleOf(read.value, 1, () => performance.now() - start < SECONDS * 1000);
	const took = performance.now() - start;
	return {
		makespan: schedule.makespan,
		lowerBound: schedule.lowerBound,
		took,
		wrongs: wrongsOf(JSON.parse(text) as CheckedProblem, schedule),
	};
}

/** In the manner of the published ones: one to three needs each among the twelve before, four resources of which each holds some. */
function project(count: number, seed: number) {
	const random = seededRandom(seed * 1000 + count);
	const below = (most: number): number => wholeBelow(random, most);
	return {
		format: "asfound.schedule-problem/1",
		resources: Array.from({ length: 4 }, (_, r) => ({ id: `R${r}`, capacity: 12 + below(15) })),
		activities: Array.from({ length: count }, (_, a) => ({
			id: `J${a}`,
			minutes: 1 + below(10),
			after: [...new Set(Array.from({ length: a < 3 ? 0 : 1 + below(3) }, () => `J${Math.max(0, a - 1 - below(12))}`))],
			uses: Object.fromEntries(Array.from({ length: 4 }, (_, r) => [`R${r}`, below(2) === 0 ? 0 : 1 + below(10)])),
		})),
	};
}
