// Step 5: the order. One that can be carried out, always the same one, and that stays where the hands already are.

import type { Step, Steps } from "@/lib/reversal/operations";
import { NONE, type World } from "@/lib/reversal/world";

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
	const placeOf = Int32Array.from(world.now.placeOf);
	const bench = new Int32Array(steps.length).fill(NONE);
	const order: number[] = [];
	const ready = new Set(waiting.flatMap((count, at) => (count === 0 ? [at] : [])));
	let last = { whole: NONE, area: "" };

	while (ready.size > 0) {
		let best: { at: number; key: Key; whole: number } | null = null;
		for (const at of ready) {
			const step = steps[at];
			if (step === undefined) continue;
			const whole = wholeNow(world, placeOf, step);
			const key = keyOf(world, step, whole, last);
			if (best === null || isBefore(key, best.key)) best = { at, key, whole };
		}
		if (best === null) break;
		const step = steps[best.at];
		if (step === undefined) break;
		ready.delete(best.at);
		order.push(best.at);
		bench[best.at] = best.whole;
		last = { whole: step.kind === "take-out" ? step.part : best.whole, area: areaOf(world, step) ?? last.area };
		if (step.kind === "take-out") placeOf[step.part] = NONE;
		if (step.kind === "put-in") placeOf[step.part] = step.position;
		for (const next of followers[best.at] ?? []) {
			const left = (waiting[next] ?? 0) - 1;
			waiting[next] = left;
			if (left === 0) ready.add(next);
		}
	}
	if (order.length !== steps.length) throw new Error("the operations wait for each other");
	return { order, bench, after: withoutImplied(order, after) };
}

type Key = readonly [stage: number, elsewhere: number, otherArea: number, kind: number, id: string];

const isBefore = (a: Key, b: Key): boolean => {
	for (let n = 0; n < a.length; n++) {
		const [x, y] = [a[n] ?? 0, b[n] ?? 0];
		if (x !== y) return x < y;
	}
	return false;
};

const areaOf = (world: World, step: Step): string | undefined => world.positions[step.position]?.area;

function keyOf(world: World, step: Step, whole: number, last: { whole: number; area: string }): Key {
	const stage = (): number => {
		if (step.kind === "make-safe") return 0;
		if (step.kind === "check") return 4;
		if (step.kind === "undo" || whole !== NONE) return 1;
		return step.kind === "take-out" ? 2 : 3;
	};
	const waits = (step.alteration?.undo?.wait ?? 0) > 0;
	const kind = waits ? 0 : ["take-out", "undo", "put-in"].indexOf(step.kind) + 1;
	return [stage(), whole === last.whole ? 0 : 1, (areaOf(world, step) ?? "") === last.area ? 0 : 1, kind, step.id];
}

/** The loose part a step is done on at this moment, `NONE` when it is done in the machine. */
function wholeNow(world: World, placeOf: Int32Array, step: Step): number {
	if (step.position === NONE) return step.part;
	let p = step.position;
	for (;;) {
		const host = world.hostOf[p] ?? NONE;
		if (host === NONE) return NONE;
		const place = placeOf[host] ?? NONE;
		if (place === NONE) return host;
		p = place;
	}
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
