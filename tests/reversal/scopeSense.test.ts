// What a chosen scope drags in or leaves inconsistent, on worlds small enough to see by eye.

import { describe, expect, test } from "vitest";
import { planReversal } from "@/lib/reversal/plan";
import type { Problem } from "@/lib/reversal/problem";
import { readProblem } from "@/lib/reversal/readProblem";
import { scopeSense } from "@/lib/reversal/scopeSense";

const read = (raw: object): Problem => {
	const problem = readProblem({ format: "asfound.reversal-problem/1", obstructions: [], ...raw });
	if (!problem.ok) throw new Error(JSON.stringify(problem.error));
	return problem.value;
};
const at = (...ids: string[]) => ids.map((id) => ({ id }));

describe("what a chosen scope leaves", () => {
	test("nothing is said of the whole machine", () => {
		const problem = read({ positions: at("p", "q"), parts: at("a", "b"), now: { p: "b", q: "a" }, target: { p: "a", q: "b" } });
		expect(scopeSense(problem, [{ name: "1 Swap", positions: ["p", "q"] }])).toEqual([]);
	});

	test("a part that stands where it is not chosen is named with the position to choose; then nothing is said, and it comes right", () => {
		const two = { positions: at("p", "q"), parts: at("a", "b"), now: { p: "b", q: "a" }, target: { p: "a", q: "b" } };
		const half = read({ ...two, scope: ["p"] });
		expect(scopeSense(half, []).map(({ kind, position, add }) => [kind, position, add])).toEqual([
			["wants", "p", ["q"]],
			["left-over", "p", ["q"]],
		]);
		expect(planReversal(half).staysDifferent.map(({ code }) => code)).toEqual(["stands-elsewhere"]);
		const both = read({ ...two, scope: ["p", "q"] });
		expect(scopeSense(both, [])).toEqual([]);
		expect(planReversal(both).attains).toEqual({ p: "a", q: "b" });
	});

	test("what excludes it and is not chosen", () => {
		const problem = read({
			positions: at("p", "q"),
			parts: [{ id: "a", excludes: ["n"] }, { id: "n" }],
			now: { q: "n" },
			target: { p: "a" },
			scope: ["p"],
		});
		expect(scopeSense(problem, [])).toEqual([
			{
				kind: "wants",
				position: "p",
				add: ["q"],
				say: expect.stringContaining("a cannot be fitted while the n is in q"),
			},
		]);
		expect(planReversal(problem).staysDifferent.map(({ position, code }) => [position, code])).toEqual([["p", "excluded"]]);
	});

	test("a position that is empty and not chosen stays open", () => {
		const problem = read({
			positions: at("p", "panel"),
			parts: at("a", "x", "cover"),
			now: { p: "x" },
			target: { p: "a", panel: "cover" },
			scope: ["p"],
		});
		expect(scopeSense(problem, []).map(({ kind, add, say }) => [kind, add, say])).toEqual([
			["open", ["panel"], "panel is empty now and is not chosen, so it stays open."],
		]);
	});

	test("what is on an assembly that was not there goes where that goes", () => {
		const problem = read({
			positions: [...at("plate seat"), { id: "motor seat", host: "plate" }],
			parts: at("plate", "motor", "old"),
			now: { "plate seat": "plate", "motor seat": "motor" },
			target: { "plate seat": "old" },
			scope: ["motor seat"],
		});
		expect(scopeSense(problem, []).map(({ kind, add }) => [kind, add])).toEqual([["wants", ["plate seat"]]]);
		expect(planReversal(problem).operations).toEqual([]);
	});

	test("an assembly that is not in its place, and is not chosen", () => {
		const problem = read({
			positions: [...at("tray seat"), { id: "lamp seat", host: "tray" }],
			parts: at("tray", "lamp"),
			now: {},
			target: { "tray seat": "tray", "lamp seat": "lamp" },
			scope: ["lamp seat"],
		});
		expect(scopeSense(problem, []).map(({ position, add }) => [position, add])).toEqual([["lamp seat", ["tray seat"]]]);
		expect(planReversal(problem).attains).toEqual({ "lamp seat": "lamp" });
	});

	test("a conversion that would be undone in part; one of which nothing or everything is chosen is not named", () => {
		const world = {
			positions: at("p", "q", "r"),
			parts: at("a", "b", "c", "x", "y", "z"),
			now: { p: "x", q: "y", r: "z" },
			target: { p: "a", q: "b", r: "c" },
		};
		const standing = [
			{ name: "1 Drive", positions: ["p", "q"] },
			{ name: "2 Light", positions: ["r"] },
		];
		expect(scopeSense(read({ ...world, scope: ["p"] }), standing).map(({ kind, add, say }) => [kind, add, say])).toEqual([
			["half", ["q"], "1 Drive would be undone in part: q would stay as it is."],
		]);
		expect(scopeSense(read({ ...world, scope: ["p", "q"] }), standing)).toEqual([]);
		expect(scopeSense(read({ ...world, scope: ["r"] }), standing)).toEqual([]);
	});
});
