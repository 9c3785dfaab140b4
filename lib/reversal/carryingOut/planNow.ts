// What is left of a reversal that was begun, planned from the record as it stands. Pure.

import type { FieldsRefusal } from "@/lib/core/offences";
import { ok, type Result } from "@/lib/core/result";
import { partKey, problemOf } from "@/lib/reversal/asked";
import { planOnTheWay } from "@/lib/reversal/onTheWay";
import type { Plan } from "@/lib/reversal/plan";
import type { ReversalFacts } from "@/lib/reversal/queries";
import { readProblem } from "@/lib/reversal/readProblem";
import type { Asked } from "@/lib/reversal/scope";

/**
 * The plan for what is left, or why none can be made of the record. `startBuild` is the build when the reversal was begun,
 * position id to part id. A position that is empty now and was not then has been opened on the way: where the reversal brings
 * nothing to it, what it held goes in again. One that holds something else by now was worked on by somebody, and keeps that; one
 * that was left out stays as it is.
 */
export function planNow(facts: ReversalFacts, asked: Asked, startBuild: Readonly<Record<string, string>>): Result<Plan, FieldsRefusal> {
	const problem = readProblem(problemOf(facts, asked));
	if (!problem.ok) return problem;
	const markOf = new Map(facts.positions.map(({ id, mark }) => [id, mark]));
	const keyOf = new Map(facts.parts.map((part) => [part.id, partKey(part)]));
	const leftOut = new Set((asked.leftOut ?? []).flatMap(({ position, stuck }) => (stuck === "no" ? [markOf.get(position) ?? ""] : [])));
	const start = Object.fromEntries(
		Object.entries(startBuild).flatMap(([position, part]) => {
			const [mark, key] = [markOf.get(position), keyOf.get(part)];
			return mark === undefined || key === undefined ? [] : [[mark, key] as const];
		}),
	);
	return ok(planOnTheWay(problem.value, start, leftOut));
}
