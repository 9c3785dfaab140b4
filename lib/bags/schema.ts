import { z } from "zod";
import { isInstant } from "@/lib/core/instants";
import { chosen, line, optionalChosen, optionalLine } from "@/lib/core/words";
import { tagSchema } from "@/lib/tags/schema";

/** When it happened, where that was before now. */
export const atSchema = z.string().refine(isInstant, "Write the moment like 2026-03-02T08:00:00.000Z.").optional();

export const bagKindSchema = z.enum(["bag", "tote", "envelope", "tube", "tray", "tub", "sleeve", "box"], "Say what kind of bag it is.");
export const bagRoleSchema = z.enum(["holding", "keeping"], "Say whether it is emptied again or kept.");

/** Where a bag, a loose part or a fixing can be laid. */
export const placeSchema = z.discriminatedUnion(
	"kind",
	[
		z.object({ kind: z.literal("bag"), bagId: chosen("a bag") }),
		z.object({ kind: z.literal("location"), locationId: chosen("a place in the shop") }),
		z.object({ kind: z.literal("bench") }),
	],
	"Say where it goes.",
);

export const freshBagSchema = z.object({
	kind: bagKindSchema.default("bag"),
	role: bagRoleSchema.default("holding"),
	/** In big words: what is in it. Left empty, it is the name of what goes in first. */
	words: optionalLine("what is in the bag", 200),
	caution: optionalLine("what a hand must know", 200),
	/** The tag on it already, where it was printed beforehand; else the next free number. */
	tag: tagSchema.nullish(),
	/** Where the bag itself lies. */
	lies: placeSchema.default({ kind: "bench" }),
});

/** Where a part that comes out or is put away can go: also into a bag that is made for it. */
export const destinationSchema = z.discriminatedUnion(
	"kind",
	[...placeSchema.options, z.object({ kind: z.literal("new-bag"), bag: freshBagSchema.prefault({}) })],
	"Say where it goes.",
);

export const makeBagSchema = freshBagSchema.extend({
	/** Null for a bag of the shop itself. */
	machineId: optionalChosen,
	words: line("what is in the bag", 200),
	at: atSchema,
});

export const moveBagSchema = z.object({
	bagId: chosen("a bag"),
	/** "out" is for a bag that leaves the shop, with the reason. */
	to: z.discriminatedUnion(
		"kind",
		[...placeSchema.options, z.object({ kind: z.literal("out"), why: line("where it goes and why", 400) })],
		"Say where it goes.",
	),
	at: atSchema,
});

export const movePartSchema = z.object({
	partId: chosen("a part"),
	to: destinationSchema,
	why: optionalLine("why", 400),
	at: atSchema,
});

export const describeBagSchema = z.object({
	bagId: chosen("a bag"),
	kind: bagKindSchema,
	role: bagRoleSchema,
	words: line("what is in the bag", 200),
	caution: optionalLine("what a hand must know", 200),
});

export const voidBagSchema = z.object({ bagId: chosen("a bag"), why: line("why the bag is no more", 400) });

export type Place = z.input<typeof placeSchema>;
export type Destination = z.input<typeof destinationSchema>;
export type FreshBag = z.output<typeof freshBagSchema>;
export type MakeBag = z.input<typeof makeBagSchema>;
export type MoveBag = z.input<typeof moveBagSchema>;
export type MovePart = z.input<typeof movePartSchema>;
export type DescribeBag = z.input<typeof describeBagSchema>;
export type VoidBag = z.input<typeof voidBagSchema>;
