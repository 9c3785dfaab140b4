// What a computation or a deed gives back when a person may be at fault: a value, never an exception.

/** An outcome: either `ok` with a value, or a refusal that a person can act on. */
export type Result<T, E = Refusal> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E };

/**
 * A person's mistake as a value: a code for tests and links, a sentence that says what to do (`say`),
 * and, when it belongs to a field of a form, the path of that field.
 */
export type Refusal = {
	readonly code: string;
	readonly say: string;
	/** Field path to sentence, for the form that sent it. */
	readonly fields?: Readonly<Record<string, string>>;
	/** The facts behind the sentence, so that a page can link to them and a test can compare them. */
	readonly facts?: Readonly<Record<string, unknown>>;
};

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });
export const err = <E>(error: E): { readonly ok: false; readonly error: E } => ({ ok: false, error });

/** Short form for a refusal. */
export const refuse = (
	code: string,
	say: string,
	more: Omit<Refusal, "code" | "say"> = {},
): { readonly ok: false; readonly error: Refusal } => err({ code, say, ...more });

/** Marks a `switch` that forgot a case as a type error, and as a bug when it happens all the same. */
export function never(value: never): never {
	throw new Error(`unhandled case: ${JSON.stringify(value)}`);
}
