// What the entry of a paper says besides its rows, so that the paper reads in ten years as it was handed over: to whom, made
// with which handling, about what, and what was paid and agreed by then. Ids and a percentage only; nothing that is withheld.

import { z } from "zod";

/** The action of the entry with which a paper is given. */
export const GIVEN = "owner-paper.given";

const factsSchema = z.object({
	/** The owner's id among the parties. */
	owner: z.string(),
	/** Per cent on parts. */
	handling: z.string(),
	/** Added steps and wanted parts that it speaks of. */
	about: z.array(z.string()),
	/** On a statement: the payments that it takes off. */
	payments: z.array(z.string()),
	/** The papers that made up what was agreed by then. */
	agreed: z.array(z.string()),
});
export type GivenFacts = z.output<typeof factsSchema>;

/** Reads the facts of an entry's open part. Anything else than what `givePaper` wrote is a bug and throws. */
export const givenFacts = (open: string): GivenFacts => z.object({ facts: factsSchema }).parse(JSON.parse(open)).facts;
