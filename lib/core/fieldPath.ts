// How a field of a problem is named to the person who wrote it.

export type FieldPath = readonly (string | number)[];

/** A field to put right, and what is wrong with it. */
export type Offence = { readonly path: FieldPath; readonly say: string };

const PLAIN_KEY = /^[\p{ID_Start}_$][\p{ID_Continue}$-]*$/u;

/**
 * A path as one would write it in code.
 *
 * @example fieldPath(["positions", 3, "host"]) // "positions[3].host"
 */
export function fieldPath(path: FieldPath): string {
	if (path.length === 0) return "(the whole input)";
	return path
		.map((step, at) => {
			if (typeof step === "number") return `[${step}]`;
			if (!PLAIN_KEY.test(step)) return `[${JSON.stringify(step)}]`;
			return at === 0 ? step : `.${step}`;
		})
		.join("");
}
