import { z } from "zod";
import { chosen, line, optionalChosen } from "@/lib/core/words";

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

export type AddLocation = z.input<typeof addLocationSchema>;
export type RenameLocation = z.input<typeof renameLocationSchema>;
