// The most that a machine can ever be again, as far as the book tells: back to as made with every conversion undone, with what is
// only lost or out of the shop back: both may turn up. Pure.

import type { Instant } from "@/lib/core/instants";
import { heldAfter, problemOf } from "@/lib/reversal/asked";
import { planReversal } from "@/lib/reversal/plan";
import type { ReversalFacts } from "@/lib/reversal/queries";
import { readProblem } from "@/lib/reversal/readProblem";

/** Why what was done for safety counts as undone here: nobody carries this plan out, it only counts. */
const COUNTED = "it is only counted";

/** Position id to part id when nothing but what is gone for good is missing; null when no plan can be made of the record. */
export function mostEver(facts: ReversalFacts, asFoundAt: Instant | null): Map<string, string> | null {
	const home: ReversalFacts = {
		...facts,
		bagsOutside: [],
		parts: facts.parts.map((part) =>
			part.place === "out" || part.place === "lost" ? { ...part, place: "bench" as const, placeWhy: "" } : part,
		),
		// With no conversion done for safety, the whole machine is the whole machine.
		conversions: facts.conversions.map((conversion) => ({ ...conversion, purpose: "ordinary" as const })),
	};
	const problem = readProblem(problemOf(home, { asFoundAt, asMade: true, reason: COUNTED }));
	return problem.ok ? heldAfter(home, planReversal(problem.value)) : null;
}
