// Positions that nothing comes out of: the plan goes round them or says what they keep shut.

import { describe, expect, test } from "vitest";
import { planReversal } from "@/lib/reversal/plan";
import { openingFor } from "@/lib/reversal/reach";
import { readProblem } from "@/lib/reversal/readProblem";

/** A motor behind a panel in front and a cover at the rear, the panel being the quicker way. */
const problemOf = (stuck: Readonly<Record<string, string>>) => {
	const problem = readProblem({
		format: "asfound.reversal-problem/1",
		positions: [{ id: "motor", sides: ["front", "rear"] }, { id: "panel" }, { id: "cover" }].map((position) =>
			stuck[position.id] === undefined ? position : { ...position, stuck: stuck[position.id] },
		),
		parts: ["old", "new", "p", "c"].map((id) => ({ id })),
		now: { motor: "new", panel: "p", cover: "c" },
		target: { motor: "old", panel: "p", cover: "c" },
		obstructions: [
			{ part: "p", position: "motor", sides: ["front"] },
			{ part: "c", position: "motor", sides: ["rear"] },
		],
		times: {
			panel: { out: { low: 1, likely: 2, high: 3 }, in: { low: 1, likely: 2, high: 3 } },
			cover: { out: { low: 5, likely: 8, high: 9 }, in: { low: 5, likely: 8, high: 9 } },
		},
	});
	if (!problem.ok) throw new Error(JSON.stringify(problem.error));
	return problem.value;
};

describe("something is stuck", () => {
	test("in the quicker way: the plan takes the other one", () => {
		expect(planReversal(problemOf({})).opened).toEqual(["motor", "panel"]);
		expect(planReversal(problemOf({ panel: "seized" })).opened).toEqual(["cover", "motor"]);
		expect(openingFor(problemOf({ panel: "seized" }), ["motor"]).openedOnly).toEqual(["cover"]);
	});

	test("in every way: what is behind stays, and what keeps it shut is named and not called a ring", () => {
		const plan = planReversal(problemOf({ panel: "seized", cover: "glued" }));
		expect(plan.operations).toEqual([]);
		expect(plan.staysDifferent.map(({ position, code }) => [position, code])).toEqual([["motor", "access-loop"]]);
		expect(plan.loops.map(({ say }) => say)).toEqual([
			expect.stringMatching(/motor waits for panel, and panel cannot be opened at all\.$/),
		]);
		expect(plan.attains.motor).toBe("new");
	});

	test("at the position itself: it stays with the reason", () => {
		const plan = planReversal(problemOf({ motor: "seized on its shaft" }));
		expect(plan.operations).toEqual([]);
		expect(plan.staysDifferent).toMatchObject([
			{ position: "motor", code: "stuck", why: "nothing comes out of it or goes in: seized on its shaft", freedBy: "getting it free" },
		]);
	});
});
