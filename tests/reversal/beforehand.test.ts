// The questions asked beforehand of machine 12, as they were answered by hand.

import { describe, expect, it } from "vitest";
import { afterStep, countAttained, lossOf, type PlannedStep } from "@/lib/reversal/beforehand";
import { lossWords } from "@/lib/reversal/lossWords";
import { planReversal } from "@/lib/reversal/plan";
import type { Problem } from "@/lib/reversal/problem";
import { readProblem } from "@/lib/reversal/readProblem";
import { found, machine12Whole, ORIGINALS } from "./machine12";

function sound(problem: Problem): Problem {
	const read = readProblem(problem);
	if (!read.ok) throw new Error(read.error.say);
	return read.value;
}
const problem = sound(machine12Whole);
const before = planReversal(problem);
const names = new Map(problem.positions.map(({ id, name }) => [id, name ?? ""]));

function by(step: PlannedStep) {
	const then = afterStep(problem, step);
	if (!then.ok) throw new Error(then.error.say);
	const after = planReversal(sound(then.value));
	const losses = lossOf(before, after);
	const say = lossWords({ ...losses, lost: losses.lost.map((loss) => ({ ...loss, name: names.get(loss.position) ?? "" })) });
	return { ...losses, say, best: countAttained(after, ORIGINALS) };
}

describe("before it is done, machine 12 says what reversal would lose", () => {
	it("by scrapping the old motor: one original, and it is named", () => {
		const loss = by({ kind: "part-with", parts: [found("k25")], why: "scrapped" });
		expect(countAttained(before, ORIGINALS)).toBe(31);
		expect(loss.best).toBe(30);
		expect(loss.lost.map(({ position, of }) => [position, of])).toEqual([["k25", "part"]]);
		expect(loss.say).toBe("1 position can never be original again: k25 motor.");
	});

	it("by cross-drilling the worn shaft: none in count, but it comes back altered for ever", () => {
		const loss = by({ kind: "alter", alteration: { id: "drill", name: "cross-drilled", part: found("k21"), undo: null } });
		expect(loss.best).toBe(31);
		expect(loss.lost.map(({ position, of, alteration }) => [position, of, alteration])).toEqual([["k21", "state", "drill"]]);
		expect(loss.say).toBe("1 position can come back, but altered, and that cannot be undone: k21 lantern shaft 1/4 x 320 mm.");
	});

	it("by fitting the bridged fuse link again: it is refused as a danger unless there is a reason", () => {
		const step = { kind: "fit", position: "k29", part: found("k29") } as const;
		expect(afterStep(problem, step)).toMatchObject({ ok: false, error: { code: "danger-needs-a-reason" } });
		expect(afterStep(problem, { ...step, reason: "shown as it was, never plugged in" })).toMatchObject({ ok: true });
	});

	it("by a change that can be undone: nothing", () => {
		const time = { low: 0, likely: 0, high: 0 };
		const loss = by({ kind: "alter", alteration: { id: "clip", part: found("k21"), undo: time } });
		expect([loss.lost, loss.best]).toEqual([[], 31]);
		expect(loss.say).toMatch(/^Reversal loses nothing by it\./);
	});

	it("by parting with what the shop made: nothing", () => {
		const made = problem.parts.find(({ id }) => id === problem.now.k21)?.id ?? "";
		expect(by({ kind: "part-with", parts: [made], why: "scrapped" }).lost).toEqual([]);
	});
});
