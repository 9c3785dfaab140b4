// Reads a problem from outside: every field that is wrong is named, all at once.

import type { Offence } from "@/lib/core/fieldPath";
import { type FieldsRefusal, fieldsRefused, plainPath } from "@/lib/core/offences";
import { err, ok, type Result } from "@/lib/core/result";
import { type Problem, problemSchema } from "@/lib/reversal/problem";
import { contradictions } from "@/lib/reversal/problemSense";

/**
 * Gives the problem, checked for shape and for sense, or names every offending field.
 * What it gives is all that `planReversal` requires.
 */
export function readProblem(raw: unknown): Result<Problem, FieldsRefusal> {
	const shape = problemSchema.safeParse(raw);
	const misshapen: Offence[] = shape.success
		? []
		: shape.error.issues.map((issue) => ({ path: plainPath(issue.path), say: issue.message }));
	const offences = misshapen.concat(contradictions(raw));
	const incomplete = shape.success ? shape.data.incomplete : undefined;
	if (incomplete !== undefined) return err(notWhole(incomplete));
	if (shape.success && offences.length === 0) return ok(shape.data);
	return err(fieldsRefused("problem-unreadable", "The problem cannot be planned", offences));
}

/** A problem of part of a record: its own words say why. */
const notWhole = (say: string): FieldsRefusal => ({
	code: "problem-incomplete",
	say,
	paths: ["incomplete"],
	fields: { incomplete: say },
	facts: { paths: ["incomplete"] },
});
