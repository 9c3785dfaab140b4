// Beforehand: what reversal would lose by a step that is only planned. The planner runs on the state before the step
// and on the state after it, and the two plans are compared.

import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import type { Plan } from "@/lib/reversal/plan";
import type { Alteration, Problem } from "@/lib/reversal/problem";
import type { StaysDifferent } from "@/lib/reversal/staysDifferent";

/** A step that is thought about. */
export type PlannedStep =
	/** Parts that would be scrapped, sold, lent for good. What sits on them goes with them. */
	| { readonly kind: "part-with"; readonly parts: readonly string[]; readonly why: string }
	| { readonly kind: "alter"; readonly alteration: Alteration }
	/** A part would be fitted. `reason` is needed when that puts a danger back. */
	| { readonly kind: "fit"; readonly position: string; readonly part: string; readonly reason?: string };

/** The problem as it would stand after the step, or why the step is refused. Requires a problem that `readProblem` let through. */
export function afterStep(problem: Problem, step: PlannedStep): Result<Problem, Refusal> {
	const known = new Set(problem.parts.map(({ id }) => id));
	switch (step.kind) {
		case "part-with": {
			const gone = new Set(step.parts);
			const unknown = step.parts.find((id) => !known.has(id));
			if (unknown !== undefined) return refuse("unknown-part", `There is no part "${unknown}" on record. Choose one that is.`);
			return ok({
				...problem,
				parts: problem.parts.map((part) => (gone.has(part.id) ? { ...part, unavailable: step.why } : part)),
				now: Object.fromEntries(Object.entries(problem.now).filter(([, part]) => !gone.has(part))),
			});
		}
		case "alter":
			return ok({ ...problem, alterations: [...(problem.alterations ?? []), step.alteration] });
		case "fit": {
			const part = problem.parts.find(({ id }) => id === step.part);
			if (part === undefined) return refuse("unknown-part", `There is no part "${step.part}" on record. Choose one that is.`);
			if (!problem.positions.some(({ id }) => id === step.position)) {
				return refuse("unknown-position", `There is no position "${step.position}" on record. Choose one that is.`);
			}
			if (part.danger !== undefined && step.reason === undefined) {
				return refuse(
					"danger-needs-a-reason",
					`${part.name ?? part.id} would put back a danger: ${part.danger}. Give a reason, or leave it out.`,
					{
						facts: { part: part.id, position: step.position },
					},
				);
			}
			const elsewhere = Object.entries(problem.now).filter(([position, held]) => held !== part.id && position !== step.position);
			return ok({ ...problem, now: Object.fromEntries([...elsewhere, [step.position, part.id]]) });
		}
	}
}

/** One thing that reversal loses or gains: the entry of `staysDifferent` that is new or gone. */
export type Loss = StaysDifferent & {
	/** "part": the position can no longer hold what the target wants. "state": it can, but altered for good. */
	readonly of: "part" | "state";
};

export type Losses = {
	readonly lost: readonly Loss[];
	readonly gained: readonly Loss[];
	/** How many positions fewer can hold the part that the target wants. Below 0 when the step helps. */
	readonly positionsFewer: number;
	/** Likely minutes that the reversal would take more. Below 0 when it would take less. */
	readonly minutesMore: number;
};

/** What a reversal after the step can no longer bring back that one before it could, position by position. */
export function lossOf(before: Plan, after: Plan): Losses {
	const key = (stays: StaysDifferent): string => JSON.stringify([stays.position, stays.alteration ?? null]);
	const had = new Set(before.staysDifferent.map(key));
	const has = new Set(after.staysDifferent.map(key));
	const named = (stays: StaysDifferent): Loss => ({ ...stays, of: stays.alteration === undefined ? "part" : "state" });
	const lost = after.staysDifferent.filter((stays) => !had.has(key(stays))).map(named);
	const gained = before.staysDifferent.filter((stays) => !has.has(key(stays))).map(named);
	const parts = (losses: readonly Loss[]): number => losses.filter((loss) => loss.of === "part").length;
	return {
		lost,
		gained,
		positionsFewer: parts(lost) - parts(gained),
		minutesMore: after.minutes.likely - before.minutes.likely,
	};
}

/** How many of the given positions hold the given part when the plan is carried out: "31 of 40". */
export function countAttained(plan: Plan, wanted: ReadonlyMap<string, string>): number {
	const attains = new Map(Object.entries(plan.attains));
	let count = 0;
	for (const [position, part] of wanted) if (attains.get(position) === part) count++;
	return count;
}
