import { z } from "zod";
import { readWireColour } from "@/lib/colours/wireColour";

const read = (text: string, context: z.RefinementCtx): string => {
	const colour = readWireColour(text);
	if (colour.ok) return colour.value;
	context.addIssue({ code: "custom", message: colour.error.say });
	return z.NEVER;
};
const typed = z.string().max(60, "Write colour codes, such as RDBU.");

/** A wire colour as typed, given in the writing of IEC 60757; may be empty. */
export const wireColourSchema = typed.default("").transform(read);

/** The same where leaving it out keeps what is on record. */
export const changedColourSchema = typed.transform(read).optional();
