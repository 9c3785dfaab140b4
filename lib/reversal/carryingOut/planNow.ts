// What is left of a reversal that was begun, planned from the record as it stands. Pure.

import type { Instant } from "@/lib/core/instants";
import { ok, type Result } from "@/lib/core/result";
import { buildAt, partKey, problemOf } from "@/lib/reversal/asked";
import { planOnTheWay } from "@/lib/reversal/onTheWay";
import type { Plan } from "@/lib/reversal/plan";
import type { ReversalFacts } from "@/lib/reversal/queries";
import { type ProblemRefusal, readProblem } from "@/lib/reversal/readProblem";
import type { Asked } from "@/lib/reversal/scope";

/**
 * The plan for what is left, or why none can be made of the record. Positions that were changed since `startedAt` go back to
 * what the reversal is to bring there or, where it brings nothing, to what they held then; those left out stay as they are.
 */
export function planNow(facts: ReversalFacts, asked: Asked, startedAt: Instant): Result<Plan, ProblemRefusal> {
	const problem = readProblem(problemOf(facts, asked));
	if (!problem.ok) return problem;
	const markOf = new Map(facts.positions.map(({ id, mark }) => [id, mark]));
	const keyOf = new Map(facts.parts.map((part) => [part.id, partKey(part)]));
	const start = Object.fromEntries(
		[...buildAt(facts, startedAt).build].flatMap(([position, part]) => {
			const [mark, key] = [markOf.get(position), keyOf.get(part)];
			return mark === undefined || key === undefined ? [] : [[mark, key] as const];
		}),
	);
	const leftOut = new Set((asked.leftOut ?? []).map(({ position }) => position));
	const touched = new Set(
		facts.fittings
			.filter(({ fromAt, untilAt, positionId }) => (fromAt > startedAt || (untilAt ?? "") > startedAt) && !leftOut.has(positionId))
			.flatMap(({ positionId }) => markOf.get(positionId) ?? []),
	);
	return ok(planOnTheWay(problem.value, start, touched));
}
