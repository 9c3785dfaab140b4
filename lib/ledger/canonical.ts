// RFC 8785, the JSON Canonicalization Scheme: one text for one value.
import canonicalize from "canonicalize";

/** The canonical text of a JSON value. Anything that JSON cannot hold is a bug and throws. */
export function canonical(value: unknown): string {
	const text = canonicalize(value);
	if (text === undefined) throw new Error("not a JSON value");
	return text;
}
