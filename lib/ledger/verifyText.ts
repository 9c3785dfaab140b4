// Recognises canonical JSON (RFC 8785) for the verifier, fast and apart from the writer's way of making it. Pure.

import { canonical } from "@/lib/ledger/canonical";

/** Where a backslash or a control character is, the quick scan cannot go from quote to quote. */
const ESCAPE_OR_CONTROL = /[^ -[\]-\uffff]/;
/** Half a surrogate pair is no character, and RFC 8785 refuses it; JSON.stringify writes only such halves as this escape. */
const HALF_PAIR = /(?<!\\)(\\\\)*\\ud[89a-f]/;

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
	if (!ESCAPE_OR_CONTROL.test(text)) return valueEnd(text, 0, 0) === text.length;
	return !HALF_PAIR.test(text) && readJson(text) !== undefined && canonicalOf(text) === text;
}

/** The canonical form of a text that is JSON in some other form; the text itself when it has none. */
export function canonicalOf(text: string): string {
	const value = readJson(text);
	try {
		return value === undefined ? text : canonical(value);
	} catch {
		return text; // half a surrogate pair, or nested too deep to be an entry
	}
}

// Each of these gives the place after what begins at `from`, or -1 where that is not canonical. Text without escapes.

function valueEnd(text: string, from: number, depth: number): number {
	switch (text.charCodeAt(from)) {
		case 0x22: // "
			return stringEnd(text, from);
		case 0x7b: // {
			return depth > DEEPEST ? -1 : objectEnd(text, from, depth + 1);
		case 0x5b: // [
			return depth > DEEPEST ? -1 : arrayEnd(text, from, depth + 1);
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

const stringEnd = (text: string, from: number): number => text.indexOf('"', from + 1) + 1 || -1;

function objectEnd(text: string, from: number, depth: number): number {
	if (text.charCodeAt(from + 1) === 0x7d) return from + 2;
	let last: string | null = null;
	for (let at = from + 1; ; at += 1) {
		if (text.charCodeAt(at) !== 0x22) return -1;
		const keyEnd = stringEnd(text, at);
		if (keyEnd === -1 || text.charCodeAt(keyEnd) !== 0x3a) return -1;
		const key = text.slice(at + 1, keyEnd - 1);
		// JavaScript compares text by UTF-16 code units, which is the order of RFC 8785.
		if (last !== null && last >= key) return -1;
		last = key;
		at = valueEnd(text, keyEnd + 1, depth);
		if (at === -1) return -1;
		const next = text.charCodeAt(at);
		if (next === 0x7d) return at + 1;
		if (next !== 0x2c) return -1;
	}
}

function arrayEnd(text: string, from: number, depth: number): number {
	if (text.charCodeAt(from + 1) === 0x5d) return from + 2;
	for (let at = from + 1; ; at += 1) {
		at = valueEnd(text, at, depth);
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
