// What a form sent that its schema cannot read, as a refusal with a sentence at each field.

import type { ZodError } from "zod";
import type { Refusal, Result } from "@/lib/core/result";
import { err } from "@/lib/core/result";

/** The first sentence of each field, by its path ("lines.2.net"); nothing was written, nothing is lost. */
export function unreadable(error: ZodError): Result<never, Refusal> {
	const fields: Record<string, string> = {};
	for (const issue of error.issues) {
		const field = issue.path.map(String).join(".");
		fields[field] ??= issue.message;
	}
	const count = Object.keys(fields).length;
	return err({
		code: "unreadable",
		say: count === 1 ? "One field needs another look. Nothing was written." : `${count} fields need another look. Nothing was written.`,
		fields,
	});
}
