// Step 5: the order. One that can be carried out, always the same one, and that stays where the hands already are.

import { movingWholes } from "@/lib/reversal/movingWholes";
import type { Step, Steps } from "@/lib/reversal/operations";
import { readySteps } from "@/lib/reversal/readySteps";
import { byText, NONE, type World } from "@/lib/reversal/world";

export type Ordered = {
	/** Numbers of the steps, in the order to do them. */
	readonly order: readonly number[];
	/** By step: the loose part it is done on, `NONE` for the machine. */
	readonly bench: Int32Array;
	/** By step: what must come before it, without what follows from the rest. */
	readonly after: readonly (readonly number[])[];
};

/**
 * Orders the steps. Among those that can be done next it takes first what is done on the bench or starts a wait (filler
 * sets while the rest comes out), then what comes out of the machine, then what goes back; within each it stays
 * on the assembly it is at, then in the same area, then goes by id.
 */
export function orderOf(world: World, { steps, after }: Steps): Ordered {
	const waiting = after.map((before) => before.length);
	const followers: number[][] = steps.map(() => []);
	after.forEach((before, at) => {
		for (const first of before) followers[first]?.push(at);
	});
	const areas = steps.map((step) => areaOf(world, step));
	const ready = readySteps(byKindAndId(steps), areas, STAGES);
	const moving = movingWholes(world, steps);
	const stand = (at: number): void => {
		const step = steps[at];
		if (step === undefined) return;
		const whole = moving.wholeOf(step);
		ready.put(at, { stage: stageOf(step, whole), whole });
	};
	waiting.forEach((count, at) => {
		if (count === 0) stand(at);
	});

	const bench = new Int32Array(steps.length).fill(NONE);
	const order: number[] = [];
	let last = { whole: NONE, area: "" };
	for (;;) {
		const at = ready.take(last.whole, last.area);
		const step = steps[at];
		if (step === undefined) break;
		const whole = moving.wholeOf(step);
		order.push(at);
		bench[at] = whole;
		last = { whole: step.kind === "take-out" ? step.part : whole, area: world.positions[step.position]?.area ?? last.area };
		// What is on an assembly that moves is done elsewhere from now on.
		for (const carried of moving.move(step)) if (ready.has(carried)) stand(carried);
		for (const next of followers[at] ?? []) {
			const left = (waiting[next] ?? 0) - 1;
			waiting[next] = left;
			if (left === 0) stand(next);
		}
	}
	if (order.length !== steps.length) throw new Error("the operations wait for each other");
	return { order, bench, after: withoutImplied(order, after) };
}

const areaOf = (world: World, step: Step): string => world.positions[step.position]?.area ?? "";

const STAGES = 5;

/** How early a step comes, done on `whole`. */
function stageOf(step: Step, whole: number): number {
	if (step.kind === "make-safe") return 0;
	if (step.kind === "check") return STAGES - 1;
	if (step.kind === "undo" || whole !== NONE) return 1;
	return step.kind === "take-out" ? 2 : 3;
}

/** The steps, those that start a wait first, then by kind, then by id: what decides between steps of one stage at one place. */
function byKindAndId(steps: readonly Step[]): number[] {
	const kind = (step: Step): number => ((step.alteration?.undo?.wait ?? 0) > 0 ? 0 : ["take-out", "undo", "put-in"].indexOf(step.kind) + 1);
	return steps
		.map((step, at) => ({ at, kind: kind(step), id: step.id }))
		.sort((a, b) => a.kind - b.kind || byText(a.id, b.id))
		.map(({ at }) => at);
}

/** Leaves out of each list what already comes before something else in it. */
function withoutImplied(order: readonly number[], after: readonly (readonly number[])[]): number[][] {
	const rank = new Int32Array(after.length);
	order.forEach((at, n) => {
		rank[at] = n;
	});
	const words = (after.length + 31) >>> 5;
	const earlier = new Uint32Array(after.length * words);
	const kept: number[][] = after.map(() => []);
	for (const at of order) {
		const row = at * words;
		for (const first of [...(after[at] ?? [])].sort((a, b) => (rank[b] ?? 0) - (rank[a] ?? 0))) {
			if ((((earlier[row + (first >>> 5)] ?? 0) >>> (first & 31)) & 1) === 1) continue;
			kept[at]?.push(first);
			for (let w = 0; w < words; w++) earlier[row + w] = (earlier[row + w] ?? 0) | (earlier[first * words + w] ?? 0);
			earlier[row + (first >>> 5)] = (earlier[row + (first >>> 5)] ?? 0) | (1 << (first & 31));
		}
	}
	return kept.map((list) => list.sort((a, b) => (rank[a] ?? 0) - (rank[b] ?? 0)));
}
