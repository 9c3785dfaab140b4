// What the entry of a paper says besides its rows, so that the paper reads in ten years as it was handed over: to whom, made
// with which handling, about what, and what was paid and agreed by then. Ids only; the handling is the shop's mark-up and lies
// under the seal.

import { z } from "zod";

/** The action of the entry with which a paper is given. */
export const GIVEN = "owner-paper.given";
/** The action of the entries with the owner's answer. */
export const ANSWERED = "owner-paper.answered";

const factsSchema = z.object({
	/** The owner's id among the parties. */
	owner: z.string(),
	/** Added steps and wanted parts that it speaks of. */
	about: z.array(z.string()),
	/** On a statement: the payments that it takes off. */
	payments: z.array(z.string()),
	/** The papers that made up what was agreed by then. */
	agreed: z.array(z.string()),
	/** On a quote: the papers, agreed to by then, that its lines take in. Older books do not say. */
	takesIn: z.array(z.string()).optional(),
	/** Per cent on parts, where older books have it. */
	handling: z.string().optional(),
});
export type GivenFacts = z.output<typeof factsSchema>;

/** Reads the facts of an entry's open part. Anything else than what `givePaper` wrote is a bug and throws. */
export const givenFacts = (open: string): GivenFacts => z.object({ facts: factsSchema }).parse(JSON.parse(open)).facts;

const answerSchema = z.object({ rows: z.record(z.string(), z.object({ state: z.string() })) });

/** Whether the entry of an answer says that the owner agreed. */
export const saysAgreed = (open: string, subject: string): boolean =>
	answerSchema.parse(JSON.parse(open)).rows[subject]?.state === "agreed";

const sealedSchema = z.object({ facts: z.object({ handling: z.string() }).optional() });

/** Per cent on parts that a paper was made with; none ("") once what was sealed is erased. */
export function handlingOf({ handling }: GivenFacts, withheld: string | null | undefined): string {
	if (handling !== undefined) return handling;
	return withheld ? (sealedSchema.parse(JSON.parse(withheld)).facts?.handling ?? "") : "";
}
