import { describe, expect, it } from "vitest";
import { scheduleVerb } from "@/lib/cli/scheduleVerb";
import { addMinutes, type Instant, instant } from "@/lib/core/instants";
import { wrongsOf } from "@/tests/schedule/checkSchedule";

const START = instant("2026-03-02T08:00:00.000Z");
const still = (): Instant => START;
const problem = {
	format: "asfound.schedule-problem/1",
	resources: [{ id: "person", capacity: 1 }],
	activities: [
		{ id: "sand", minutes: 30, after: [], uses: { person: 1 } },
		{ id: "paint", minutes: 20, wait: 120, after: ["sand"], uses: { person: 1 } },
		{ id: "wire", minutes: 90, after: [], uses: { person: 1 } },
	],
};

describe("asfound schedule", () => {
	it("prints the format that is asked for, and a schedule that can be worked", () => {
		const said = scheduleVerb({ json: true }, JSON.stringify(problem), still);
		expect(said.exitCode).toBe(0);
		const answer = JSON.parse(said.stdout);
		expect(answer).toMatchObject({ format: "asfound.schedule/1", makespan: 170, lowerBound: 170, gap: 0 });
		expect(wrongsOf(problem, answer)).toEqual([]);
	});

	it("in words says how long, whether that is proved, and what is critical", () => {
		const { stdout } = scheduleVerb({}, JSON.stringify(problem), still);
		expect(stdout).toMatch(/^Over after 2 h 50 \(170 min\), the last wait included\.\nNo schedule is shorter: that is proved\.\n/);
		expect(stdout).toMatch(/0 to {7}30 {2}sand {2}critical/);
	});

	it("with --lines answers each line, the good and the bad, and gives 2 when one was bad", () => {
		const said = scheduleVerb({ lines: true }, `${JSON.stringify(problem)}\r\n\nnonsense\n{"format":"x"}\n`, still);
		const lines = said.stdout.trim().split("\n");
		expect(lines).toHaveLength(3);
		expect(said.exitCode).toBe(2);
		expect(JSON.parse(lines[0] ?? "").makespan).toBe(170);
		expect(JSON.parse(lines[1] ?? "").error.code).toBe("not-json");
		expect(JSON.parse(lines[2] ?? "").error.paths).toEqual(["format", "activities"]);
	});

	it("stops when its seconds are over, by the clock that it is given", () => {
		let looked = 0;
		const ticking = (): Instant => addMinutes(START, looked++);
		const hard = {
			...problem,
			activities: Array.from({ length: 12 }, (_, at) => ({
				id: `s${at}`,
				minutes: 7 + (at % 5),
				wait: 11 * (at % 3),
				after: [],
				uses: { person: 1 },
			})),
		};
		expect(scheduleVerb({ seconds: 60 * 10 }, JSON.stringify(hard), ticking).exitCode).toBe(0);
		expect(looked).toBeGreaterThan(5);
		expect(looked).toBeLessThan(60);
	});
});
