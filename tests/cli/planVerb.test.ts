// `asfound plan` on what nobody should send it, and on what is merely big: it answers, says where it is wrong, and never hangs.

import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { planVerb } from "@/lib/cli/planVerb";
import { PROBLEM_FORMAT } from "@/lib/reversal/problem";

type Raw = Record<string, unknown>;

const sound = (more: Raw = {}): Raw => ({
	format: PROBLEM_FORMAT,
	positions: [{ id: "k1" }, { id: "k2", sides: ["front", "rear"] }],
	parts: [{ id: "m1" }, { id: "m2" }, { id: "m3" }],
	now: { k1: "m1" },
	target: { k1: "m2" },
	obstructions: [],
	...more,
});
const answer = (input: string) => {
	const { exitCode, stdout } = planVerb({ json: true }, input);
	return { exitCode, said: JSON.parse(stdout) };
};
const pathsOf = (problem: Raw): string[] => {
	const { exitCode, said } = answer(JSON.stringify(problem));
	expect(exitCode).toBe(2);
	expect(Object.keys(said.error.fields)).toEqual(said.error.paths);
	return said.error.paths;
};
const out = (low: unknown, likely: unknown, high: unknown) => ({ times: { k1: { out: { low, likely, high } } } });

describe("a problem that contradicts itself", () => {
	it.each<[string, Raw, string[]]>([
		["a part in two places now", { now: { k1: "m1", k2: "m1" } }, ["now.k1", "now.k2"]],
		["a part in two places in the target", { target: { k1: "m1", k2: "m1" } }, ["target.k1", "target.k2"]],
		["an id used twice", { parts: [{ id: "m1" }, { id: "m1" }, { id: "m2" }] }, ["parts[1].id"]],
		["a position's id used twice", { positions: [{ id: "k1" }, { id: "k1" }] }, ["positions[1].id"]],
		[
			"an alteration's id used twice",
			{
				alterations: [
					{ id: "a", part: "m1", undo: null },
					{ id: "a", part: "m2", undo: null },
				],
			},
			["alterations[1].id"],
		],
		["a part that is in a position on itself", { positions: [{ id: "k1", host: "m1" }] }, ["now.k1"]],
		[
			"hosts in a ring",
			{
				positions: [
					{ id: "k1", host: "m2" },
					{ id: "k2", host: "m1" },
				],
				now: { k1: "m1", k2: "m2" },
				target: {},
			},
			["now.k1", "now.k2"],
		],
		["a side that the position has not", { obstructions: [{ part: "m3", position: "k2", sides: ["top"] }] }, ["obstructions[0].sides[0]"]],
		[
			"a side of a position with one way only",
			{ obstructions: [{ part: "m3", position: "k1", sides: ["front"] }] },
			["obstructions[0].sides[0]"],
		],
		["minutes below 0", out(-1, 2, 3), ["times.k1.out.low"]],
		["minutes beyond reason", out(1, 2, 1e300), ["times.k1.out.high"]],
		["minutes with a fraction", out(1, 1.5, 3), ["times.k1.out.likely"]],
		["minutes that are no number", out(null, "2", 3), ["times.k1.out.low", "times.k1.out.likely"]],
		["minutes out of order", out(3, 2, 3), ["times.k1.out.likely"]],
		[
			"a target with two that exclude each other",
			{ parts: [{ id: "m1", excludes: ["m2"] }, { id: "m2" }], target: { k1: "m1", k2: "m2" } },
			["target.k1", "target.k2"],
		],
		["empty ids", { positions: [{ id: "" }], parts: [{ id: "" }], now: {}, target: {} }, ["positions[0].id", "parts[0].id"]],
		["an alteration nowhere", { alterations: [{ id: "a", undo: null }] }, ["alterations[0].position"]],
	])("%s: the path of each field", (_, more, paths) => {
		expect(pathsOf(sound(more))).toEqual(paths);
	});

	it("names every id that nobody defined, wherever it stands", () => {
		const unknown = sound({
			positions: [{ id: "k1" }, { id: "k2", host: "g" }],
			parts: [{ id: "m1", excludes: ["c"] }],
			now: { k1: "zz" },
			target: { q: "m1" },
			scope: ["ww"],
			obstructions: [{ part: "a", position: "b" }],
			alterations: [
				{ id: "a1", position: "d", undo: null },
				{ id: "a2", part: "e", undo: null },
			],
			times: { f: {} },
		});
		expect(pathsOf(unknown)).toEqual([
			"positions[1].host",
			"parts[0].excludes[0]",
			"now.k1",
			"target.q",
			"scope[0]",
			"obstructions[0].part",
			"obstructions[0].position",
			"alterations[0].position",
			"alterations[1].part",
			"times.f",
		]);
	});

	it("names a ring of 1,000 hosts, and 130,000 wrong fields, without running out of stack", () => {
		const ring = nested(1000);
		expect(
			pathsOf({ ...ring, positions: ring.positions.map((one, n) => (n === 0 ? { ...one, host: "m999" } : one)), now: ring.target }),
		).toHaveLength(2000);
		const obstructions = Array.from({ length: 130_000 }, (_, n) => ({ part: `nobody ${n}`, position: "k1" }));
		expect(pathsOf(sound({ obstructions }))).toHaveLength(130_000);
	});
});

/** Assemblies one on the other; the part in the innermost one was replaced. */
function nested(depth: number) {
	const ids = Array.from({ length: depth }, (_, n) => n);
	const target = Object.fromEntries(ids.map((n) => [`k${n}`, `m${n}`]));
	return {
		format: PROBLEM_FORMAT,
		positions: ids.map((n): Raw => (n === 0 ? { id: "k0" } : { id: `k${n}`, host: `m${n - 1}` })),
		parts: [...ids.map((n) => ({ id: `m${n}` })), { id: "new" }],
		now: { ...target, [`k${depth - 1}`]: "new" },
		target,
		obstructions: [],
	};
}

describe("a problem that is only unusual", () => {
	it.each([1000, 10_000])("%i assemblies nested in each other are planned", (depth) => {
		const { exitCode, said } = answer(JSON.stringify(nested(depth)));
		expect([exitCode, said.opened, said.leastProved]).toEqual([0, [`k${depth - 1}`], true]);
	});

	it("a thousand positions, each behind the next one, are planned and proved, on the machine and nested", () => {
		const inside = nested(1000);
		const obstructions = inside.positions.slice(1).map(({ id }, n) => ({ part: `m${n}`, position: id }));
		for (const positions of [inside.positions, inside.positions.map(({ id }) => ({ id }))]) {
			const { exitCode, said } = answer(JSON.stringify({ ...inside, positions, obstructions }));
			expect([exitCode, said.opened.length, said.leastProved]).toEqual([0, 1000, true]);
		}
	});

	it("keeps ids such as __proto__ and constructor, and very long ones", () => {
		const long = "x".repeat(100_000);
		const text = `{"format":"${PROBLEM_FORMAT}","positions":[{"id":"__proto__"},{"id":"constructor"},{"id":"${long}"}],
			"parts":[{"id":"__proto__"},{"id":"constructor"},{"id":"${long}"}],"now":{"__proto__":"constructor"},
			"target":{"__proto__":"__proto__","constructor":"constructor","${long}":"${long}"},"obstructions":[],
			"times":{"__proto__":{"out":{"low":1,"likely":1,"high":1}}}}`;
		const { exitCode, said } = answer(text);
		expect([exitCode, said.opened, said.minutes.likely]).toEqual([0, ["__proto__", "constructor", long], 1]);
	});

	it("names such ids when nobody defined them", () => {
		const text = `{"format":"${PROBLEM_FORMAT}","positions":[{"id":"k1","host":"__proto__"}],"parts":[],"now":{"__proto__":"constructor"},"target":{},"obstructions":[]}`;
		expect(answer(text).said.error.paths).toEqual(["positions[0].host", "now.__proto__"]);
	});

	it("says the same thing as often as it was told, once", () => {
		const obstructions = Array.from({ length: 100_000 }, () => ({ part: "m3", position: "k1" }));
		const scope = Array.from({ length: 100_000 }, () => "k1");
		expect(answer(JSON.stringify(sound({ obstructions, scope }))).said.opened).toEqual(["k1"]);
	});

	it("may begin with a byte order mark", () => {
		expect(answer(`\uFEFF${JSON.stringify(sound())}`).exitCode).toBe(0);
	});
});

describe("what is no problem at all", () => {
	it.each([
		["nothing", ""],
		["blanks", " \r\n"],
		["half an object", '{"format":'],
		["50 MB of one letter", "x".repeat(50_000_000)],
		["null", "null"],
		["a list 100,000 deep", `${"[".repeat(100_000)}${"]".repeat(100_000)}`],
	])("%s: the whole input is named", (_, input) => {
		const { exitCode, said } = answer(input);
		expect([exitCode, said.error.paths]).toEqual([2, ["(the whole input)"]]);
	});

	it("a field of any depth, or of 50 MB, is read or named", () => {
		const deep = JSON.stringify(sound()).replace('"obstructions":[]', `"obstructions":${"[".repeat(50_000)}${"]".repeat(50_000)}`);
		expect(answer(deep).said.error.paths).toEqual(["obstructions[0]"]);
		expect(answer(JSON.stringify(sound({ note: "y".repeat(50_000_000) }))).exitCode).toBe(0);
	});
});

describe("one problem a line", () => {
	it("gives one answer a line, good or bad, whatever the line endings, and passes over blank lines", () => {
		const good = JSON.stringify(sound());
		const { exitCode, stdout } = planVerb({ lines: true }, `\uFEFF${good}\r\n{bad\r\n\r\n${good}\r\n{}`);
		const answers = stdout.trimEnd().split("\n");
		expect(exitCode).toBe(2);
		expect(answers.map((line) => JSON.parse(line).error?.code ?? "planned")).toEqual([
			"planned",
			"not-json",
			"planned",
			"problem-unreadable",
		]);
		expect(planVerb({ lines: true }, `${good}\n${good}\n`).exitCode).toBe(0);
		expect(planVerb({ lines: true }, "\r\n")).toEqual({ exitCode: 0, stdout: "", stderr: "" });
	});
});

describe("the file", () => {
	it("is named when it is not there, or is a folder, and read when it is one", () => {
		const folder = mkdtempSync(path.join(tmpdir(), "asfound-plan-"));
		try {
			writeFileSync(path.join(folder, "problem.json"), JSON.stringify(sound()));
			const run = (file: string) =>
				spawnSync(process.execPath, [path.resolve("lib/cli/asfound.mjs"), "plan", path.join(folder, file)], { encoding: "utf8" });
			expect(run("nowhere.json")).toMatchObject({ status: 2, stderr: expect.stringContaining("nowhere.json cannot be read") });
			expect(run(".")).toMatchObject({ status: 2, stderr: expect.stringContaining("cannot be read") });
			expect(run("problem.json")).toMatchObject({ status: 0, stdout: expect.stringContaining("1 position to open: k1") });
		} finally {
			rmSync(folder, { recursive: true });
		}
	});
});
