import { z } from "zod";
import { chosen, line, optionalLine } from "@/lib/core/words";
import { readThing } from "@/lib/pins/rules";

/** Ten-thousandths of the picture's width or height: half a millimetre of a wall-sized print. */
const along = z.int("Point at the picture once more.").min(0, "Point inside the picture.").max(10_000, "Point inside the picture.");

const said = {
	x: along,
	y: along,
	/** "position:ID", "wire:ID" or "fixing:ID"; empty where words alone say what is there. */
	thing: z
		.string()
		.max(80, "Choose from the list.")
		.default("")
		.transform((text, context) => {
			const thing = readThing(text);
			if (thing === null) context.addIssue({ code: "custom", message: "Choose from the list." });
			return thing ?? { positionId: null, connectionId: null, fixingId: null };
		}),
	words: optionalLine("the words", 200),
};

export const addPinSchema = z.object({ captureId: chosen("a photo"), ...said });
export type AddPin = z.input<typeof addPinSchema>;

export const changePinSchema = z.object({ pinId: chosen("a pin"), ...said });
export type ChangePin = z.input<typeof changePinSchema>;

export const takeOffPinSchema = z.object({ pinId: chosen("a pin"), why: line("why it comes off", 200) });
export type TakeOffPin = z.input<typeof takeOffPinSchema>;
