import { z } from "zod";
import { chosen, line, optionalChosen, optionalLine, words } from "@/lib/core/words";
import { ORIGINS } from "@/lib/parts/origins";
import { evidenceSchema, partDetailsSchema } from "@/lib/parts/schema";
import { threePointsField } from "@/lib/positions/threePoints";

/** The most positions that one list may add; a larger machine is entered in several. */
export const MOST_AT_ONCE = 1000;

const markField = z
	.string()
	.trim()
	.nullish()
	.transform((mark) => mark || null)
	.refine((mark) => mark === null || /^[A-Za-z0-9][A-Za-z0-9._-]{0,11}$/.test(mark), "A mark is short, of letters and figures, like k05.");

export const FINDING_STATES = ["there", "missing", "wrong", "unseen"] as const;

const sidesField = z
	.array(line("the side", 40))
	.max(8, "At most eight sides.")
	.default([])
	.refine((sides) => new Set(sides).size === sides.length, "Each side once.");

const positionWords = {
	name: line("the position's name"),
	kind: z.enum(["seat", "place"]).default("seat"),
	sides: sidesField,
	/** Minutes to take out, and to put in. */
	out: threePointsField,
	in: threePointsField,
	note: words("the note", 2000),
};

export const newPositionSchema = z.object({
	...positionWords,
	mark: markField,
	area: z
		.string()
		.trim()
		.max(60, "Make the area shorter: at most 60 characters.")
		.nullish()
		.transform((area) => area || null),
	/** The position whose part carries this one: a mark of the machine, or of an earlier item of the list. */
	hostMark: markField,
	/** Or the part itself, where it is not fitted. */
	hostPartId: optionalChosen,
	finding: z.enum(FINDING_STATES).default("there"),
	foundWords: words("what was found", 1000),
	part: partDetailsSchema.nullish().transform((part) => part ?? null),
	wayRound: optionalLine("which way round it sat", 200),
	evidence: z.array(evidenceSchema).max(20, "At most 20 pieces of evidence at once.").default([]),
});
export type NewPosition = z.output<typeof newPositionSchema>;

export const addPositionsSchema = z.object({
	machineId: chosen("the machine"),
	/** After the stamp: it was there when the machine came. Before it, always so. */
	wasThere: z.coerce.boolean().default(false),
	positions: z
		.array(newPositionSchema)
		.min(1, "Write at least one position.")
		.max(MOST_AT_ONCE, `At most ${MOST_AT_ONCE} positions at once: add the rest after these.`),
});
export type AddPositions = z.output<typeof addPositionsSchema>;

/** The same as text, one a line (lib/positions/indentedList.ts). */
export const addPositionsAsTextSchema = z.object({
	machineId: chosen("the machine"),
	wasThere: z.coerce.boolean().default(false),
	text: z
		.string()
		.max(100_000, "The list is too long: add it in two halves.")
		.refine((text) => text.trim() !== "", "Write at least one position."),
	/** What the parts are unless a line says otherwise. */
	origin: z.enum(ORIGINS, "Say what the parts are unless a line says otherwise.").default("unknown"),
});
export type AddPositionsAsText = z.output<typeof addPositionsAsTextSchema>;

export const describePositionSchema = z.object({
	...positionWords,
	positionId: chosen("the position"),
	area: optionalLine("the area", 60),
	/** The mark of the position whose part carries this one; empty for the machine itself. */
	hostMark: markField,
	/** The mark of its mirror image, as left is of right. */
	mirrorMark: markField,
});
export type DescribePosition = z.output<typeof describePositionSchema>;

export const recordFindingSchema = z.object({
	positionId: chosen("the position"),
	state: z.enum(FINDING_STATES, "Say what was found: there, missing, wrong or not seen yet."),
	words: words("what was found", 1000),
	/** The part that was there, where it is in the book already. */
	partId: optionalChosen,
	/** What is said of the part that was there. */
	part: partDetailsSchema.nullish().transform((part) => part ?? null),
	evidence: z.array(evidenceSchema).max(20, "At most 20 pieces of evidence at once.").default([]),
});
export type RecordFinding = z.output<typeof recordFindingSchema>;

export const sayObstructionSchema = z.object({
	positionId: chosen("the position"),
	partId: chosen("what must come off first"),
	/** Sides from which it is in the way; none means all. */
	sides: sidesField,
	note: optionalLine("the note", 300),
});
export type SayObstruction = z.output<typeof sayObstructionSchema>;

export const withdrawObstructionSchema = z.object({ obstructionId: chosen("what is in the way"), why: optionalLine("why", 300) });

export const sayExclusionSchema = z.object({
	partId: chosen("a part"),
	otherId: chosen("the other part"),
	note: optionalLine("the note", 300),
});
export type SayExclusion = z.output<typeof sayExclusionSchema>;

export const copyBuildSchema = z.object({ machineId: chosen("the machine"), fromMachineId: chosen("the machine to begin from") });
export type CopyBuild = z.output<typeof copyBuildSchema>;
