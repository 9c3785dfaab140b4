import { z } from "zod";
import { atSchema, placeSchema } from "@/lib/bags/schema";
import { chosen, line, optionalChosen, words } from "@/lib/core/words";

export const locationKindSchema = z.enum(["room", "rack", "shelf", "bin"], "Say whether it is a room, a rack, a shelf or a bin.");

const rank = z
	.number("Write its turn as a whole number, like 3.")
	.int("Order places by whole numbers.")
	.min(0, "Order places by a number from 0 to 9999.")
	.max(9999, "Order places by a number from 0 to 9999.");

export const addLocationSchema = z.object({
	/** What it is in; null for a room. */
	parentId: optionalChosen,
	kind: locationKindSchema,
	name: line("the name of the place", 60),
	/** Order of walking; left out, it comes last. */
	rank: rank.optional(),
});

export const renameLocationSchema = z.object({
	locationId: chosen("a place"),
	name: line("the name of the place", 60),
	kind: locationKindSchema.optional(),
	rank: rank.optional(),
	/** Where it stands from now on; left out, where it is. */
	parentId: optionalChosen.optional(),
});

export const tagPlacesSchema = z.object({
	locationIds: z.array(chosen("a place")).min(1, "Choose a place.").max(200, "At most 200 places at once."),
});

const thingSchema = z.object({ kind: z.enum(["part", "bag", "place"]), id: chosen("a thing") });

export const moveThingsSchema = z.object({
	/** A place stands for everything that lies right on it. */
	things: z.array(thingSchema).min(1, "Scan what is to be moved first.").max(500, "At most 500 things at once: move these first."),
	to: placeSchema,
	/** What cannot be moved stays, and the rest goes. */
	restGoes: z.boolean().default(false),
	at: atSchema,
});

const idList = z.array(z.string().max(64)).max(2000, "That is more than one place holds. Count it in parts.").default([]);

export const countPlaceSchema = z.object({
	locationId: chosen("a place"),
	/** What lies in the places in it is counted, too. */
	inside: z.boolean().default(false),
	/** Ids of the bags and parts that were expected when the count began. */
	expected: idList,
	/** Ids of those that were seen, expected or not. */
	seen: idList,
	/** Of those that were seen and by the record lie elsewhere: what lies here from now on. */
	layHere: idList,
	/** Of those that are missing: what is known to lie elsewhere. */
	elsewhere: z
		.array(z.object({ kind: z.enum(["part", "bag"]), id: chosen("a thing"), to: placeSchema }))
		.max(500)
		.default([]),
	/** Of the parts that are missing: what is given up as lost. */
	lost: z
		.array(z.object({ partId: chosen("a part"), why: words("what is known", 500) }))
		.max(500)
		.default([]),
});

export type TagPlaces = z.input<typeof tagPlacesSchema>;
export type MoveThings = z.input<typeof moveThingsSchema>;
export type CountPlace = z.input<typeof countPlaceSchema>;
export type AddLocation = z.input<typeof addLocationSchema>;
export type RenameLocation = z.input<typeof renameLocationSchema>;
