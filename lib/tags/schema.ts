// A tag in a form or a request.

import { z } from "zod";
import { readTag } from "@/lib/tags/readTag";

/** Accepts a tag as typed or scanned and gives it in its printed form; refuses with the reader's own sentence. */
export const tagSchema = z.string().transform((text, context) => {
	const read = readTag(text);
	if (read.ok) return read.value.tag;
	context.addIssue({ code: "custom", message: read.error.say });
	return z.NEVER;
});
