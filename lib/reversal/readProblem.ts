// Reads a problem from outside: every field that is wrong is named, all at once.

import { type FieldPath, fieldPath, type Offence } from "@/lib/core/fieldPath";
import { err, ok, type Refusal, type Result } from "@/lib/core/result";
import { type Problem, problemSchema } from "@/lib/reversal/problem";
import { contradictions } from "@/lib/reversal/problemSense";

/** A refused problem: `paths` names each offending field (`positions[3].host`), `fields` says what is wrong with it. */
export type ProblemRefusal = Refusal & { readonly paths: readonly string[]; readonly fields: Readonly<Record<string, string>> };

/**
 * Gives the problem, checked for shape and for sense, or names every offending field.
 * What it gives is all that `planReversal` requires.
 */
export function readProblem(raw: unknown): Result<Problem, ProblemRefusal> {
	const shape = problemSchema.safeParse(raw);
	const misshapen: Offence[] = shape.success
		? []
		: shape.error.issues.map((issue) => ({ path: plainPath(issue.path), say: issue.message }));
	const offences = misshapen.concat(contradictions(raw));
	const incomplete = shape.success ? shape.data.incomplete : undefined;
	if (incomplete !== undefined) return err(notWhole(incomplete));
	if (shape.success && offences.length === 0) return ok(shape.data);
	return err(refusal(offences));
}

/** A problem of part of a record: its own words say why. */
const notWhole = (say: string): ProblemRefusal => ({
	code: "problem-incomplete",
	say,
	paths: ["incomplete"],
	fields: { incomplete: say },
	facts: { paths: ["incomplete"] },
});

const plainPath = (path: readonly PropertyKey[]): FieldPath => path.map((step) => (typeof step === "symbol" ? String(step) : step));

function refusal(offences: readonly Offence[]): ProblemRefusal {
	const said = new Map<string, string>();
	for (const offence of offences) {
		const path = fieldPath(offence.path);
		const before = said.get(path);
		said.set(path, before === undefined || before === offence.say ? offence.say : `${before}; ${offence.say}`);
	}
	const paths = [...said.keys()];
	const count = paths.length === 1 ? "one field" : `${paths.length} fields`;
	const first = paths[0] ?? "";
	return {
		code: "problem-unreadable",
		say: `The problem cannot be planned until ${count} are put right, starting with ${first}: ${said.get(first) ?? ""}.`.replace(
			"one field are",
			"one field is",
		),
		paths,
		fields: Object.fromEntries(said),
		facts: { paths },
	};
}
