import { z } from "zod";
import { atSchema, destinationSchema } from "@/lib/bags/schema";
import { changedColourSchema, wireColourSchema } from "@/lib/colours/schema";
import { chosen, line, optionalChosen, optionalLine, words } from "@/lib/core/words";

const COUNT = "Count in whole numbers, 1 to 9,999.";
const count = z.number(COUNT).int(COUNT).min(1, COUNT).max(9999, COUNT);

/** What a fixing is, as it is written on a job card. Nothing of it need be known. */
const fixingColumns = {
	thread: optionalLine("the thread or size", 60),
	length: optionalLine("the length", 40),
	head: optionalLine("the head", 60),
	drive: optionalLine("the drive", 60),
	tightness: optionalLine("how tight it was", 80),
	differs: optionalLine("how they differ", 200),
	note: optionalLine("the note", 400),
};

/** Where a fixing goes when its part comes out. "with-part" is the bag that the part goes into; "stays" still holds another part. */
export const wentSchema = z.discriminatedUnion(
	"kind",
	[
		z.object({ kind: z.literal("with-part") }),
		z.object({ kind: z.literal("bag"), bagId: chosen("a bag") }),
		z.object({ kind: z.literal("bench") }),
		z.object({ kind: z.literal("left") }),
		z.object({ kind: z.literal("lost") }),
		z.object({ kind: z.literal("scrapped") }),
		z.object({ kind: z.literal("stays") }),
	],
	"Say where the fixings went.",
);

export const outFixingSchema = z.object({
	/** The fixing of the record that was found; null for one that was not on record. Named twice, its lot is split. */
	fixingId: optionalChosen,
	count,
	...fixingColumns,
	went: wentSchema.default({ kind: "with-part" }),
});

/** A wire or hose as it was when the part came out. */
export const outConnectionSchema = z.object({
	/** Null for a wire that was not on record. */
	connectionId: optionalChosen,
	state: z.enum(["connected", "parked", "removed"], "Say what became of the wire.").default("parked"),
	from: optionalLine("where it comes from", 120),
	to: optionalLine("where it goes", 120),
	colour: wireColourSchema,
	base: optionalLine("the base colour", 40),
	tracer: optionalLine("the tracer", 40),
	gauge: optionalLine("the gauge", 40),
	tagFrom: optionalLine("the tag on its one end", 40),
	tagTo: optionalLine("the tag on its other end", 40),
	note: optionalLine("the note", 400),
});

export const settingSchema = z.object({
	kind: line("what is set", 80),
	value: line("how it was set", 200),
	captureId: optionalChosen,
});

/** Reality wins: it was done although the record says that something is in the way. */
export const anywaySchema = z.object({
	reason: line("how it was reached all the same", 400),
	/** "withdraw": what was said to cover it does not. "note": it does, but it went all the same. */
	covers: z.enum(["withdraw", "note"]).default("note"),
});

const LISTED = "That is more than one position can have. Split the assembly into positions.";

export const takeOutSchema = z.object({
	machineId: chosen("a machine"),
	positionId: chosen("a position"),
	at: atSchema,
	stepId: optionalChosen,
	conversionId: optionalChosen,
	into: destinationSchema.default({ kind: "bench" }),
	fixings: z.array(outFixingSchema).max(60, LISTED).default([]),
	connections: z.array(outConnectionSchema).max(300, LISTED).default([]),
	settings: z.array(settingSchema).max(40, LISTED).default([]),
	/** Which way round it sat; null keeps what is on record. */
	wayRound: z.string().trim().max(400, "Make it shorter: at most 400 characters.").nullish(),
	/** Null keeps what is on record. */
	works: z.enum(["works", "faulty", "unknown"]).nullish(),
	condition: z.string().trim().max(2000, "Make it shorter: at most 2,000 characters.").nullish(),
	captureIds: z.array(chosen("a photo")).max(100, LISTED).default([]),
	/** Parts that had to come off first: said as obstructions of this position. */
	cameBefore: z
		.array(z.object({ partId: chosen("a part"), side: optionalLine("the side", 40) }))
		.max(60, LISTED)
		.default([]),
	anyway: anywaySchema.nullish(),
});

export const inFixingSchema = z.object({
	/** A fixing of the record; null for a new one. */
	fixingId: optionalChosen,
	/** How many are used. Fewer than the lot has: the rest stay where they are. */
	count,
	...fixingColumns,
});

export const inConnectionSchema = z.object({
	/** A wire of the record, parked or removed; null for a new one. */
	connectionId: optionalChosen,
	state: z.enum(["connected", "parked"], "Say whether the wire is connected.").default("connected"),
	from: optionalLine("where it comes from", 120),
	to: optionalLine("where it goes", 120),
	colour: wireColourSchema,
	base: optionalLine("the base colour", 40),
	tracer: optionalLine("the tracer", 40),
	gauge: optionalLine("the gauge", 40),
	tagFrom: optionalLine("the tag on its one end", 40),
	tagTo: optionalLine("the tag on its other end", 40),
	note: optionalLine("the note", 400),
});

export const putInSchema = z.object({
	partId: chosen("a part"),
	positionId: chosen("a position"),
	at: atSchema,
	stepId: optionalChosen,
	conversionId: optionalChosen,
	fixings: z.array(inFixingSchema).max(60, LISTED).default([]),
	connections: z.array(inConnectionSchema).max(300, LISTED).default([]),
	settings: z.array(settingSchema).max(40, LISTED).default([]),
	captureIds: z.array(chosen("a photo")).max(100, LISTED).default([]),
	wayRound: words("which way round", 400),
	/** The part whose obstructions this one takes over; left out, the part that was here last; null, none. */
	obstructsLike: z.string().max(64).nullable().optional(),
	anyway: anywaySchema.nullish(),
	/** Needed for an original of another machine, and for what was taken out for safety. */
	reason: optionalLine("the reason", 400),
});

export const putBackSchema = z.object({ partId: chosen("a part"), at: atSchema });

const fixingPlaces = [
	z.object({ kind: z.literal("bag"), bagId: chosen("a bag") }),
	z.object({ kind: z.literal("bench") }),
	z.object({ kind: z.literal("left") }),
	z.object({ kind: z.literal("lost") }),
	z.object({ kind: z.literal("scrapped") }),
] as const;

export const sayFixingSchema = z.object({
	/** A fixing to describe anew; null for one that is now seen. */
	fixingId: optionalChosen,
	/** The positions whose parts it holds, or held last. One fixing may hold two parts. */
	positionIds: z.array(chosen("a position")).max(20, LISTED).default([]),
	count,
	...fixingColumns,
	/** Where a new fixing is; left out, it holds its part, or lies on the bench when the part is out. */
	lies: z.discriminatedUnion("kind", [z.object({ kind: z.literal("home") }), ...fixingPlaces]).optional(),
});

export const moveFixingSchema = z.object({
	fixingId: chosen("a fixing"),
	/** How many of the lot; left out, all. */
	count: count.optional(),
	to: z.discriminatedUnion("kind", [...fixingPlaces], "Say where it goes."),
	note: optionalLine("the note", 400),
});

export const sayConnectionSchema = z.object({
	/** The position whose part has the wire, or had it last. */
	positionId: chosen("a position"),
	conversionId: optionalChosen,
	from: line("where it comes from", 120),
	to: optionalLine("where it goes", 120),
	colour: wireColourSchema,
	base: optionalLine("the base colour", 40),
	tracer: optionalLine("the tracer", 40),
	gauge: optionalLine("the gauge", 40),
	tagFrom: optionalLine("the tag on its one end", 40),
	tagTo: optionalLine("the tag on its other end", 40),
	state: z.enum(["connected", "parked", "removed"], "Say whether it is connected.").default("connected"),
	note: optionalLine("the note", 400),
});

const kept = (name: string, most: number) => z.string().trim().max(most, `Make ${name} shorter: at most ${most} characters.`).optional();

export const changeConnectionSchema = z.object({
	connectionId: chosen("a wire"),
	/** What is left out stays as it is. */
	state: z.enum(["connected", "parked", "removed"]).optional(),
	from: kept("where it comes from", 120),
	to: kept("where it goes", 120),
	colour: changedColourSchema,
	base: kept("the base colour", 40),
	tracer: kept("the tracer", 40),
	gauge: kept("the gauge", 40),
	tagFrom: kept("the tag", 40),
	tagTo: kept("the tag", 40),
	note: kept("the note", 400),
	conversionId: z.string().max(64).nullable().optional(),
	/** The position whose part it is at from now on. */
	positionId: z.string().max(64).optional(),
});

export const saySettingSchema = settingSchema.extend({
	/** The position whose part is set so, or was when it came out: the words may come that evening. */
	positionId: chosen("a position"),
});

export type TakeOut = z.input<typeof takeOutSchema>;
export type PutIn = z.input<typeof putInSchema>;
export type PutBack = z.input<typeof putBackSchema>;
export type SayFixing = z.input<typeof sayFixingSchema>;
export type MoveFixing = z.input<typeof moveFixingSchema>;
export type SayConnection = z.input<typeof sayConnectionSchema>;
export type ChangeConnection = z.input<typeof changeConnectionSchema>;
export type SaySetting = z.input<typeof saySettingSchema>;
