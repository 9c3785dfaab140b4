// The order of a plan: the one that its rule gives by looking at every operation each time, and found without doing so.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { accessOf } from "@/lib/reversal/access";
import { attainableTarget } from "@/lib/reversal/attainable";
import { operationsOf } from "@/lib/reversal/operations";
import { orderOf } from "@/lib/reversal/order";
import { type Operation, planReversal } from "@/lib/reversal/plan";
import type { Problem } from "@/lib/reversal/problem";
import { worldOf } from "@/lib/reversal/world";
import { Bench } from "@/tests/reversal/carryOut";
import { makeWorld } from "@/tests/reversal/makeWorld";
import { aSmallWorld } from "@/tests/reversal/smallWorld";

const KINDS = ["take-out", "undo", "put-in"];

/** The order by its definition: of all that can be done next, what is first by stage, whole, area, kind and id. */
function orderByDefinition(problem: Problem, operations: readonly Operation[]): string[] {
	const bench = new Bench(problem);
	const left = [...operations].sort((a, b) => (a.id < b.id ? -1 : 1));
	const order: string[] = [];
	let lastWhole: string | null = null;
	let lastArea = "";
	const wholeOf = ({ position, part }: Operation): string | null => (position === undefined ? (part ?? null) : bench.wholeOf(position));
	while (left.length > 0) {
		const keyOf = (operation: Operation): number[] => {
			const whole = wholeOf(operation);
			const onBench = whole !== null || operation.kind === "undo";
			const stage = { "make-safe": 0, undo: 1, "take-out": onBench ? 1 : 2, "put-in": onBench ? 1 : 3, check: 4 }[operation.kind];
			return [
				stage,
				whole === lastWhole ? 0 : 1,
				(operation.area ?? "") === lastArea ? 0 : 1,
				(operation.wait ?? 0) > 0 ? -1 : KINDS.indexOf(operation.kind),
			];
		};
		const ready = left.filter(({ after }) => after.every((id) => order.includes(id)));
		const next = ready
			.map((operation) => ({ operation, key: keyOf(operation) }))
			.reduce((best, one) => {
				const at = one.key.findIndex((value, n) => value !== best.key[n]);
				return at !== -1 && (one.key[at] ?? 0) < (best.key[at] ?? 0) ? one : best;
			}).operation;
		const whole = wholeOf(next);
		expect(next.bench ?? null).toBe(whole);
		expect(bench.carryOut(next)).toBe(null);
		left.splice(left.indexOf(next), 1);
		order.push(next.id);
		lastWhole = next.kind === "take-out" ? (next.part ?? null) : whole;
		lastArea = next.area ?? lastArea;
	}
	return order;
}

/** With areas, and with waits on some alterations. */
const inAreas = (problem: Problem): Problem => ({
	...problem,
	positions: problem.positions.map((position, n) => (n % 4 === 3 ? position : { ...position, area: `area ${n % 3}` })),
	alterations: (problem.alterations ?? []).map(({ undo, ...alteration }, n) => ({
		...alteration,
		undo: undo === null ? null : { ...undo, ...(n % 2 === 0 ? { wait: 60 } : {}) },
	})),
});

describe("the order of a plan", () => {
	it("is the one its rule gives, in any small world", () => {
		fc.assert(
			fc.property(aSmallWorld(10).map(inAreas), (problem) => {
				const { operations } = planReversal(problem);
				expect(operations.map(({ id }) => id)).toEqual(orderByDefinition(problem, operations));
			}),
			{ seed: 1801, numRuns: 300 },
		);
	});

	it("is the one its rule gives, in machines with assemblies on assemblies", () => {
		for (let seed = 1; seed <= 12; seed++) {
			const problem = makeWorld({ positions: 40, multiSided: 8, seed, changed: 0.6, hosted: 0.5, blocking: 0.5 });
			const { operations } = planReversal(problem);
			expect(operations.map(({ id }) => id)).toEqual(orderByDefinition(problem, operations));
		}
	});

	it("is found by looking at each step a few times, however many could be done next", () => {
		const world = worldOf(makeWorld({ positions: 600, multiSided: 0, seed: 7, changed: 1, blocking: 0, hosted: 0.2 }));
		const attainable = attainableTarget(world, new Set());
		const opened = world.positions.map((_, p) => p);
		const access = accessOf(world, attainable.build, new Set());
		const { steps, after } = operationsOf(world, { to: attainable.build, access, opened, undos: [] });
		let looks = 0;
		const counted = new Proxy(steps, {
			get: (list, key, receiver) => {
				looks++;
				return Reflect.get(list, key, receiver);
			},
		});
		expect(orderOf(world, { steps: counted, after }).order).toHaveLength(steps.length);
		expect(steps.length).toBeGreaterThan(1000);
		expect(looks).toBeLessThan(steps.length * 20);
	});
});
