import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SCHEDULE_PROBLEM_FORMAT } from "@/lib/schedule/problem";
import { readScheduleProblem } from "@/lib/schedule/readScheduleProblem";
import { scheduleOf } from "@/lib/schedule/schedule";
import { HAPPENED, PLANNED, type StepRow } from "@/tests/money/machine12";
import { type CheckedProblem, wrongsOf } from "@/tests/schedule/checkSchedule";
import { leastMakespan } from "@/tests/schedule/everySchedule";

/** A project without a loop; `most` activities, a few resources. */
const projects = (most: number): fc.Arbitrary<CheckedProblem & { readonly format: string }> =>
	fc
		.record({
			capacities: fc.array(fc.integer({ min: 1, max: 4 }), { maxLength: 2 }),
			rows: fc.array(
				fc.record({
					minutes: fc.nat(6),
					wait: fc.oneof(fc.constant(0), fc.nat(8)),
					needs: fc.array(fc.nat(20), { maxLength: 2 }),
					amounts: fc.array(fc.nat(4), { minLength: 2, maxLength: 2 }),
				}),
				{ maxLength: most },
			),
		})
		.map(({ capacities, rows }) => ({
			format: SCHEDULE_PROBLEM_FORMAT,
			resources: capacities.map((capacity, r) => ({ id: `r${r}`, capacity })),
			activities: rows.map(({ minutes, wait, needs, amounts }, at) => ({
				id: `s${at}`,
				minutes,
				...(wait > 0 ? { wait } : {}),
				after: at === 0 ? [] : [...new Set(needs.map((need) => `s${need % at}`))],
				uses: Object.fromEntries(capacities.flatMap((capacity, r) => [[`r${r}`, Math.min(capacity, amounts[r] ?? 0)]])),
			})),
		}));

const solved = (raw: object, seed = 1, most = 3000) => {
	const read = readScheduleProblem(raw);
	if (!read.ok) throw new Error(read.error.say);
	return scheduleOf(read.value, seed, (made) => made < most);
};

describe("a schedule", () => {
	it("of a very small project is the shortest there is, and its lower bound is no longer", () => {
		fc.assert(
			fc.property(projects(6), (problem) => {
				const schedule = solved(problem, 1, 400);
				expect(wrongsOf(problem, schedule)).toEqual([]);
				const least = leastMakespan(problem);
				expect(schedule.makespan).toBe(least);
				expect(schedule.lowerBound).toBeLessThanOrEqual(least);
			}),
			{ seed: 1958, numRuns: 250 },
		);
	}, 120_000);

	it("of any project can be worked, and is between its lower bound and all work and waits in a row", () => {
		fc.assert(
			fc.property(projects(30), fc.nat(), (problem, seed) => {
				const schedule = solved(problem, seed, 200);
				expect(wrongsOf(problem, schedule)).toEqual([]);
				const inARow = problem.activities.reduce((sum, { minutes, wait = 0 }) => sum + minutes + wait, 0);
				expect(schedule.makespan).toBeLessThanOrEqual(inARow);
				expect(schedule.lowerBound).toBeLessThanOrEqual(schedule.makespan);
				expect(schedule.gap).toBe(schedule.makespan - schedule.lowerBound);
				if (problem.activities.length > 0) expect(schedule.activities.some(({ critical }) => critical)).toBe(true);
			}),
			{ seed: 7, numRuns: 150 },
		);
	}, 120_000);

	it("is the same for the same seed and budget, and longer work never makes it shorter than the bound of less", () => {
		fc.assert(
			fc.property(projects(15), fc.nat(), (problem, seed) => {
				expect(solved(problem, seed, 300)).toEqual(solved(problem, seed, 300));
				const more = {
					...problem,
					activities: problem.activities.map((one) => ({ ...one, minutes: one.minutes * 3, wait: (one.wait ?? 0) * 3 })),
				};
				// Everything three times as long, the end comes three times as late at the earliest.
				expect(solved(more, seed, 300).makespan).toBeGreaterThanOrEqual(3 * solved(problem, seed, 300).lowerBound);
			}),
			{ seed: 3, numRuns: 40 },
		);
	});

	it("without resources is the longest path; what has no slack there is critical", () => {
		const problem = {
			format: SCHEDULE_PROBLEM_FORMAT,
			activities: [
				{ id: "sand", minutes: 20, after: [] },
				{ id: "paint", minutes: 10, wait: 120, after: ["sand"] },
				{ id: "wire", minutes: 60, after: ["sand"] },
				{ id: "fit", minutes: 15, after: ["paint", "wire"] },
			],
		};
		const schedule = solved(problem);
		expect([schedule.makespan, schedule.lowerBound]).toEqual([165, 165]);
		expect(schedule.activities.filter(({ critical }) => critical).map(({ id }) => id)).toEqual(["sand", "paint", "fit"]);
	});

	it("of nothing is over at once", () => {
		expect(solved({ format: SCHEDULE_PROBLEM_FORMAT, activities: [] })).toMatchObject({ makespan: 0, lowerBound: 0, activities: [] });
	});

	it("of a chain of 5,000 and of 300 side by side is made without running out of stack", () => {
		const chain = Array.from({ length: 5000 }, (_, at) => ({ id: `c${at}`, minutes: 1, after: at === 0 ? [] : [`c${at - 1}`] }));
		expect(solved({ format: SCHEDULE_PROBLEM_FORMAT, activities: chain }, 1, 1).makespan).toBe(5000);
	});
});

describe("a problem that cannot be scheduled", () => {
	const pathsOf = (raw: unknown) => {
		const read = readScheduleProblem(raw);
		return read.ok ? [] : read.error.paths;
	};
	const base = { format: SCHEDULE_PROBLEM_FORMAT, resources: [{ id: "bench", capacity: 1 }] };
	const activity = (more: object) => ({ id: "a", minutes: 5, after: [], ...more });

	it.each([
		["an unknown need", { ...base, activities: [activity({ after: ["b"] })] }, ["activities[0].after[0]"]],
		["an unknown resource", { ...base, activities: [activity({ uses: { booth: 1 } })] }, ["activities[0].uses.booth"]],
		["more than there is", { ...base, activities: [activity({ uses: { bench: 2 } })] }, ["activities[0].uses.bench"]],
		["an id used twice", { ...base, activities: [activity({}), activity({})] }, ["activities[1].id"]],
		[
			"a fraction and a negative",
			{ ...base, activities: [activity({ minutes: 1.5, wait: -1 })] },
			["activities[0].minutes", "activities[0].wait"],
		],
		["another format", { ...base, format: "x", activities: [] }, ["format"]],
		[
			"a __proto__ in uses",
			JSON.parse(`{"format":"${SCHEDULE_PROBLEM_FORMAT}","activities":[{"id":"a","minutes":1,"uses":{"__proto__":1}}]}`),
			["activities[0].uses.__proto__"],
		],
		["no object at all", 7, ["(the whole input)"]],
	])("%s is named by its path", (_, raw, paths) => {
		expect(pathsOf(raw)).toEqual(paths);
	});

	it("a loop is named step by step", () => {
		const read = readScheduleProblem({
			...base,
			activities: [
				activity({ after: ["c"] }),
				activity({ id: "b", after: ["a"] }),
				activity({ id: "c", after: ["b"] }),
				activity({ id: "d", after: ["c"] }),
			],
		});
		expect(read.ok).toBe(false);
		if (read.ok) return;
		expect(read.error.paths).toEqual(["activities[0].after", "activities[1].after", "activities[2].after"]);
		expect(read.error.say).toMatch(/: a before b before c before a\.$/);
	});
});

describe("machine 12 of the acceptance scenario, with one of each person", () => {
	const project = (rows: readonly StepRow[], minutesOf: (row: StepRow) => number, people: "one of each" | "as many as wanted") => ({
		format: SCHEDULE_PROBLEM_FORMAT,
		resources: people === "one of each" ? ["A", "B", "C"].map((id) => ({ id, capacity: 1 })) : [],
		activities: rows.map((row) => ({
			id: row.id,
			minutes: minutesOf(row),
			wait: row.wait,
			after: [...row.after],
			uses: people === "one of each" ? Object.fromEntries(row.who.map((who) => [who, 1])) : {},
		})),
	});

	it.each([
		["as planned", PLANNED, (row: StepRow) => row.likely, 16_940, 16_975],
		["as it happened", HAPPENED, (row: StepRow) => row.actual, 17_475, 17_520],
	] as const)(
		"%s it takes longer than by precedence alone, since the same person is needed twice at once",
		(_, rows, minutesOf, alone, withPeople) => {
			expect(solved(project(rows, minutesOf, "as many as wanted")).makespan).toBe(alone);
			const problem = project(rows, minutesOf, "one of each");
			const schedule = solved(problem);
			expect(wrongsOf(problem, schedule)).toEqual([]);
			expect([schedule.makespan, schedule.lowerBound]).toEqual([withPeople, withPeople]);
			// S37 and S38 both need C and both are needed by S39: they cannot overlap, though nothing says which is first.
			const at = new Map(schedule.activities.map((row) => [row.id, row]));
			const [s37, s38] = [at.get("S37"), at.get("S38")];
			expect((s37?.finish ?? 0) <= (s38?.start ?? 0) || (s38?.finish ?? 0) <= (s37?.start ?? 0)).toBe(true);
			const freed = { ...problem, activities: problem.activities.map((one) => (one.id === "S38" ? { ...one, uses: {} } : one)) };
			expect(solved(freed).makespan).toBe(alone);
		},
	);
});
