// Small projects with waits against their least makespan, which another program proved (see data/SOURCES.md).

import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { readScheduleProblem } from "@/lib/schedule/readScheduleProblem";
import { scheduleOf } from "@/lib/schedule/schedule";
import { wrongsOf } from "@/tests/schedule/checkSchedule";

const folder = path.join(import.meta.dirname, "data/schedule");
const [, ...rows] = readFileSync(path.join(folder, "optima.csv"), "utf8").trim().split("\n");
const optima = rows.map((row) => row.split(",")).map(([name = "", least = ""]) => ({ name, least: Number(least) }));

it("there is an answer for each project", () => {
	expect(optima.map(({ name }) => `${name}.json`).sort()).toEqual(
		readdirSync(folder)
			.filter((name) => name.endsWith(".json"))
			.sort(),
	);
});

it.each(optima)("$name is over after $least", ({ name, least }) => {
	const raw = JSON.parse(readFileSync(path.join(folder, `${name}.json`), "utf8"));
	const read = readScheduleProblem(raw);
	if (!read.ok) throw new Error(read.error.say);
	const schedule = scheduleOf(read.value, 1);
	expect(wrongsOf(raw, schedule)).toEqual([]);
	expect([schedule.makespan, schedule.lowerBound]).toEqual([least, least]);
});
