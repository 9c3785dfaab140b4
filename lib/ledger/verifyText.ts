// Recognises canonical JSON (RFC 8785) for the verifier, fast, and sharing nothing with the writer's way of making it. Pure.

/** Where no backslash and no control character is, the scan goes from quote to quote. */
const ESCAPE_OR_CONTROL = /[^ -[\]-\uffff]/;
/** With the u flag, a surrogate that has its other half is not matched: only lone ones are, and those are no character. */
const LONE_SURROGATE = /[\ud800-\udfff]/u;

/** Deeper than any entry; a hostile nest of brackets ends here and not in a full stack. */
const DEEPEST = 200;

/** The value of a text that is JSON, or undefined. */
export function readJson(text: string): unknown {
	try {
		const value: unknown = JSON.parse(text);
		return value;
	} catch {
		return undefined; // the parser has no question to ask: it answers or throws
	}
}

/** Whether the text is JSON in its canonical form: no space, keys in the order of their UTF-16 code units, one way to write each value. */
export function isCanonical(text: string): boolean {
	const stringEnd = ESCAPE_OR_CONTROL.test(text) ? escapedEnd : plainEnd;
	return valueEnd(text, 0, 0, stringEnd) === text.length && !LONE_SURROGATE.test(text);
}

/** The canonical form of a text that is JSON in some other form; the text itself when it has none. */
export function canonicalOf(text: string): string {
	const value = readJson(text);
	const written = value === undefined ? null : inOrder(value, 0);
	return written ?? text;
}

/** A parsed value written with its keys in order, or null when it has no canonical form or is nested too deep to be an entry. */
function inOrder(value: unknown, depth: number): string | null {
	if (typeof value === "string" && LONE_SURROGATE.test(value)) return null;
	if (typeof value !== "object" || value === null) return JSON.stringify(value);
	if (depth >= DEEPEST) return null;
	const pieces = Array.isArray(value)
		? value.map((item) => inOrder(item, depth + 1))
		: Object.entries(value)
				.sort(([a], [b]) => (a < b ? -1 : 1))
				.map(([key, item]) => {
					const written = inOrder(item, depth + 1);
					return written === null ? null : `${inOrder(key, depth)}:${written}`;
				});
	if (pieces.includes(null)) return null;
	return Array.isArray(value) ? `[${pieces.join(",")}]` : `{${pieces.join(",")}}`;
}

type StringEnd = (text: string, from: number) => number;

// Each of these gives the place after what begins at `from`, or -1 where that is not canonical.

function valueEnd(text: string, from: number, depth: number, stringEnd: StringEnd): number {
	switch (text.charCodeAt(from)) {
		case 0x22: // "
			return stringEnd(text, from);
		case 0x7b: // {
			return depth > DEEPEST ? -1 : objectEnd(text, from, depth + 1, stringEnd);
		case 0x5b: // [
			return depth > DEEPEST ? -1 : arrayEnd(text, from, depth + 1, stringEnd);
		case 0x74:
			return text.startsWith("true", from) ? from + 4 : -1;
		case 0x66:
			return text.startsWith("false", from) ? from + 5 : -1;
		case 0x6e:
			return text.startsWith("null", from) ? from + 4 : -1;
		default:
			return numberEnd(text, from);
	}
}

/** Of a text without escapes. */
const plainEnd: StringEnd = (text, from) => text.indexOf('"', from + 1) + 1 || -1;

/** RFC 8785, 3.2.2.2: these seven by their letter, other control characters by four small hexadecimal digits, all else as it is. */
const ESCAPE = /["\\bfnrt]|u00(?:0[0-7be-f]|1[0-9a-f])/y;

const escapedEnd: StringEnd = (text, from) => {
	for (let at = from + 1; at < text.length; at++) {
		const code = text.charCodeAt(at);
		if (code === 0x22) return at + 1;
		if (code < 0x20) return -1;
		if (code !== 0x5c) continue;
		ESCAPE.lastIndex = at + 1;
		if (!ESCAPE.test(text)) return -1;
		at = ESCAPE.lastIndex - 1;
	}
	return -1;
};

/** A key as it is compared: JavaScript compares text by UTF-16 code units, which is the order of RFC 8785. */
const keyAt = (text: string, from: number, end: number): string => {
	const key = text.slice(from + 1, end - 1);
	return key.includes("\\") ? String(JSON.parse(`"${key}"`)) : key;
};

function objectEnd(text: string, from: number, depth: number, stringEnd: StringEnd): number {
	if (text.charCodeAt(from + 1) === 0x7d) return from + 2;
	let last: string | null = null;
	for (let at = from + 1; ; at += 1) {
		if (text.charCodeAt(at) !== 0x22) return -1;
		const keyEnd = stringEnd(text, at);
		if (keyEnd === -1 || text.charCodeAt(keyEnd) !== 0x3a) return -1;
		const key = keyAt(text, at, keyEnd);
		if (last !== null && last >= key) return -1;
		last = key;
		at = valueEnd(text, keyEnd + 1, depth, stringEnd);
		if (at === -1) return -1;
		const next = text.charCodeAt(at);
		if (next === 0x7d) return at + 1;
		if (next !== 0x2c) return -1;
	}
}

function arrayEnd(text: string, from: number, depth: number, stringEnd: StringEnd): number {
	if (text.charCodeAt(from + 1) === 0x5d) return from + 2;
	for (let at = from + 1; ; at += 1) {
		at = valueEnd(text, at, depth, stringEnd);
		if (at === -1) return -1;
		const next = text.charCodeAt(at);
		if (next === 0x5d) return at + 1;
		if (next !== 0x2c) return -1;
	}
}

const NUMBER = /[-+.0-9eE]+/y;

function numberEnd(text: string, from: number): number {
	NUMBER.lastIndex = from;
	const written = NUMBER.exec(text)?.[0];
	// RFC 8785 writes a number as JavaScript does.
	return written !== undefined && Number.isFinite(Number(written)) && String(Number(written)) === written ? from + written.length : -1;
}
