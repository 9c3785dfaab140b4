import { z } from "zod";
import { optionalDay } from "@/lib/core/dayFields";
import { chosen, line, optionalChosen, optionalLine, words } from "@/lib/core/words";
import { EVIDENCE_KINDS, madeField } from "@/lib/machines/schema";
import { ORIGINS } from "@/lib/parts/origins";

const WORKS = ["works", "faulty", "unknown"] as const;
const MOST_IN_A_LOT = 9999;

/** How many identical things the part is: 1, or a lot. */
export const countField = z.coerce
	.number("Write how many there are, in figures.")
	.int("Write a whole number.")
	.min(1, "At least one.")
	.max(MOST_IN_A_LOT, `At most ${MOST_IN_A_LOT}: split the lot.`)
	.default(1);

const details = {
	count: countField,
	maker: optionalLine("the maker"),
	type: optionalLine("the type"),
	material: optionalLine("the material"),
	made: madeField,
	origin: z.enum(ORIGINS, "Say what it is: original, period, reproduction, modern or unknown.").default("unknown"),
	works: z.enum(WORKS, "Say whether it works.").default("unknown"),
	condition: words("its condition", 1000),
};

/** What is said of a part; its name is the position's where none is given. */
export const partDetailsSchema = z.object({ name: optionalLine("the part's name"), ...details });
export type PartDetails = z.output<typeof partDetailsSchema>;

export const describePartSchema = z.object({ partId: chosen("the part"), name: line("the part's name"), ...details });
export type DescribePart = z.output<typeof describePartSchema>;

const evidence = {
	kind: z.enum(EVIDENCE_KINDS, "Say how it is known: seen, documented, told or assumed."),
	claim: z.enum(["came", "made"], "Say what it shows: that it was there when the machine came, or when it was made."),
	how: optionalLine("what shows it", 200),
	words: words("the evidence", 1000),
	whoSaid: optionalLine("who said it"),
	captureId: optionalChosen,
};

export const evidenceSchema = z.object(evidence);
export type NewEvidence = z.output<typeof evidenceSchema>;

export const sayEvidenceSchema = z
	.object({ ...evidence, partId: optionalChosen, positionId: optionalChosen, faultId: optionalChosen })
	.refine((said) => said.partId !== null || said.positionId !== null || said.faultId !== null, {
		path: ["partId"],
		message: "Choose what it is evidence of.",
	})
	.refine((said) => said.kind !== "told" || said.whoSaid !== "", { path: ["whoSaid"], message: "Say who told it." });
export type SayEvidence = z.output<typeof sayEvidenceSchema>;

export const withdrawEvidenceSchema = z.object({ evidenceId: chosen("the evidence"), why: words("why", 500) });

export const addPartSchema = z.object({
	machineId: chosen("the machine"),
	name: line("the part's name"),
	...details,
	bagId: optionalChosen,
	locationId: optionalChosen,
	lineId: optionalChosen,
});
export type AddPart = z.output<typeof addPartSchema>;

/** A day that need not be given: "" is null. */
const party = { partyId: optionalChosen, partyName: optionalLine("who has it") };

export const sendOutSchema = z
	.object({ partId: chosen("the part"), ...party, dueDay: optionalDay, why: words("what for", 500) })
	.refine((out) => out.partyId !== null || out.partyName !== "", {
		path: ["partyId"],
		message: "Say who answers for it: choose a name, or write one.",
	});
export type SendOut = z.output<typeof sendOutSchema>;

export const comeBackSchema = z.object({
	partId: chosen("the part"),
	locationId: optionalChosen,
	bagId: optionalChosen,
	why: words("how it came back", 500),
});
export type ComeBack = z.output<typeof comeBackSchema>;

/** Leaving for good. `why` may be empty for what is not original; a lost or scrapped part always says why. */
export const leaveSchema = z.object({ partId: chosen("the part"), why: words("why", 500) });
export type Leave = z.output<typeof leaveSchema>;

export const sellPartSchema = z.object({ partId: chosen("the part"), ...party, why: words("why", 500) });
export type SellPart = z.output<typeof sellPartSchema>;
