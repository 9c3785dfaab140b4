// What the machine would hold after a reversal to as found, and whether everything can come back.

import { cache } from "react";
import { instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import type { Holding } from "@/lib/originality/facts";
import { heldAfter, problemOf } from "@/lib/reversal/asked";
import { mostEver } from "@/lib/reversal/mostEver";
import { planReversal } from "@/lib/reversal/plan";
import { reversalFacts } from "@/lib/reversal/queries";
import { readProblem } from "@/lib/reversal/readProblem";

/** Read once for all parts of a page. */
const factsOf = cache(reversalFacts);

/**
 * Position id to part id after the whole way back to as found; null while as found is open, or no plan can be made of the
 * record. Planned once for all parts of a page.
 */
export const afterReversal = cache(async (read: Reader, machineId: string, asFoundAt: string | null): Promise<Holding | null> => {
	if (asFoundAt === null) return null;
	const facts = await factsOf(read, machineId);
	const problem = readProblem(problemOf(facts, { asFoundAt: instant(asFoundAt) }));
	return problem.ok ? heldAfter(facts, planReversal(problem.value)) : null;
});

/** Position id to part id at the most that the machine can ever be again; null as above. */
export const mostEverOf = cache(async (read: Reader, machineId: string, asFoundAt: string | null): Promise<Holding | null> => {
	if (asFoundAt === null) return null;
	return mostEver(await factsOf(read, machineId), instant(asFoundAt));
});
