// RFC 8785, the JSON Canonicalization Scheme: one text for one value, whoever writes it down.
// Pure. Written out here and not left to the package of that name, because the package drops what JSON cannot hold
// (undefined, symbols, a Date turned into text by its toJSON, half a surrogate pair) where a ledger must stop.
// The tests hold it equal to the package on everything that both take.

/** A value that JSON can hold. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

// Deeper than anything the shop writes; it turns a hostile nest of brackets into an error that can be named.
const DEEPEST = 200;

// With the u flag, a surrogate that has its other half is not matched: only lone ones are.
const LONE_SURROGATE = /[\ud800-\udfff]/u;

/**
 * The canonical text of a JSON value: keys sorted by UTF-16 code units at every depth, numbers as ECMAScript writes them.
 * Anything that JSON cannot hold exactly (undefined, NaN, infinity, a bigint, a Date or other object of a class, a lone
 * surrogate, a circle) is a bug of the caller and throws, naming the place.
 */
export function canonical(value: unknown): string {
	return written(value, 0, []);
}

function written(value: unknown, depth: number, way: (string | number)[]): string {
	switch (typeof value) {
		case "string":
			return quoted(value, way);
		case "number":
			if (!Number.isFinite(value)) throw notJson(String(value), way);
			return JSON.stringify(value);
		case "boolean":
			return value ? "true" : "false";
		case "object":
			break;
		default:
			throw notJson(typeof value, way);
	}
	if (value === null) return "null";
	if (depth >= DEEPEST) throw notJson(`nested more than ${DEEPEST} deep, or a circle`, way);
	return Array.isArray(value) ? list(value, depth, way) : record(value, depth, way);
}

function list(items: readonly unknown[], depth: number, way: (string | number)[]): string {
	let text = "[";
	for (let place = 0; place < items.length; place++) {
		way.push(place);
		text += `${place === 0 ? "" : ","}${written(items[place], depth + 1, way)}`;
		way.pop();
	}
	return `${text}]`;
}

function record(value: object, depth: number, way: (string | number)[]): string {
	const kind = Object.getPrototypeOf(value);
	if (kind !== Object.prototype && kind !== null) throw notJson(`an object of ${kind.constructor?.name ?? "a class"}`, way);
	const fields = value as Readonly<Record<string, unknown>>;
	let text = "{";
	// Without a comparison function, sort goes by UTF-16 code units, which is what the RFC asks for.
	for (const key of Object.keys(fields).sort()) {
		way.push(key);
		text += `${text.length === 1 ? "" : ","}${quoted(key, way)}:${written(fields[key], depth + 1, way)}`;
		way.pop();
	}
	return `${text}}`;
}

function quoted(text: string, way: readonly (string | number)[]): string {
	if (LONE_SURROGATE.test(text)) throw notJson("half a surrogate pair", way);
	return JSON.stringify(text);
}

function notJson(what: string, way: readonly (string | number)[]): Error {
	return new Error(`not a JSON value: ${what} at ${way.length === 0 ? "the top" : way.join(".")}`);
}
