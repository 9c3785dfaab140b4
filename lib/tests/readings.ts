// What an instrument showed, as a person writes it down. Pure.
import { decimalFrom, decimalText } from "@/lib/core/decimals";
import { unitAsWritten } from "@/lib/tests/units";

/** One reading. Numbers are decimal text, kept with the places that were read. */
export type Reading =
	/** `210`; `ambient` when the temperature around was read as well (`41 at 21`). */
	| { readonly kind: "number"; readonly value: string; readonly unit: string; readonly ambient?: string }
	/** `74.6-75.3`: everything seen lay between these. */
	| { readonly kind: "span"; readonly low: string; readonly high: string; readonly unit: string }
	/** `>200`: the meter's range ended before the value did. */
	| { readonly kind: "beyond"; readonly side: "above" | "below"; readonly value: string; readonly unit: string }
	/** `OL`: an open circuit, nothing to read. */
	| { readonly kind: "open" }
	/** `130 of 131`: so many good ones of so many tries. */
	| { readonly kind: "count"; readonly count: number; readonly of: number }
	| { readonly kind: "words"; readonly words: string };

const NUMBER = String.raw`[+-]?\d+(?:[.,]\d+)?`;
const WITH_UNIT = new RegExp(String.raw`^(${NUMBER})\s*([^\d\s].*)?$`);
const BEYOND = new RegExp(String.raw`^([<>]|above|over|below|under)\s*(${NUMBER})\s*([^\d\s].*)?$`, "i");
const SPAN = new RegExp(String.raw`^(${NUMBER})\s*(?:to|\.\.\.?|\u2026|\u2013|-)\s*(${NUMBER})\s*([^\d\s].*)?$`);
const AT_AMBIENT = new RegExp(String.raw`^(${NUMBER})\s*(\S+)?\s+(?:at|ambient)\s+(${NUMBER})\s*(\S+)?$`);
const COUNT = /^(\d{1,9})\s*(?:of|out of)\s*(\d{1,9})$/;
const OPEN = /^(ol|o\.l\.?|open|open circuit|over ?range|no reading|no continuity|none|infinite|\u221e)$/i;
// IEC 60127 marks a fuse link with its speed and rating: T1A, F 500 mA.
const FUSE = new RegExp(String.raw`^(?:FF|F|M|TT|T)\s?(${NUMBER})\s?(m?A)(?:\s?L|\s?H)?$`);

/** The parts of what was written down: several readings are parted by a slash with blanks around it, or by a semicolon. */
export function readingParts(text: string): string[] {
	return text
		.split(/\s+\/\s+|;/)
		.map((part) => part.trim())
		.filter((part) => part !== "");
}

/** One reading, in the test's own unit where it names none. Whatever is no number, count or "OL" is kept as words. */
export function readingIn(text: string, unit: string): Reading {
	const typed = text.trim().replace(/\s+/g, " ").replaceAll("\u2212", "-");
	// No instrument shows so many figures; a pasted page must not be computed with.
	if (/[\d.,]{30,}/.test(typed)) return { kind: "words", words: typed };
	if (OPEN.test(typed)) return { kind: "open" };
	const count = COUNT.exec(typed);
	if (count !== null && Number(count[1]) <= Number(count[2])) return { kind: "count", count: Number(count[1]), of: Number(count[2]) };
	const fuse = FUSE.exec(typed);
	if (fuse !== null) return { kind: "number", value: asPoint(fuse[1]), unit: unitIn(fuse[2], unit) };
	const beyond = BEYOND.exec(typed);
	if (beyond !== null) {
		const side = /^(>|above|over)$/i.test(beyond[1] ?? "") ? "above" : "below";
		return { kind: "beyond", side, value: asPoint(beyond[2]), unit: unitIn(beyond[3], unit) };
	}
	const warm = AT_AMBIENT.exec(typed);
	if (warm !== null) return { kind: "number", value: asPoint(warm[1]), unit: unitIn(warm[2] ?? warm[4], unit), ambient: asPoint(warm[3]) };
	const span = SPAN.exec(typed);
	if (span !== null) return { kind: "span", low: asPoint(span[1]), high: asPoint(span[2]), unit: unitIn(span[3], unit) };
	const number = WITH_UNIT.exec(typed);
	if (number !== null) return { kind: "number", value: asPoint(number[1]), unit: unitIn(number[2], unit) };
	return { kind: "words", words: typed };
}

/** A reading in words, with its unit: `0.07 Ω`, `74.6 to 75.3 s`, `above 200 MΩ`, `130 of 131`. */
export function readingInWords(reading: Reading): string {
	switch (reading.kind) {
		case "number":
			return reading.ambient === undefined
				? `${reading.value} ${reading.unit}`.trim()
				: `${reading.value} ${reading.unit} at ${reading.ambient} ${reading.unit} around`;
		case "span":
			return `${reading.low} to ${reading.high} ${reading.unit}`.trim();
		case "beyond":
			return `${reading.side} ${reading.value} ${reading.unit}`.trim();
		case "open":
			return "no reading (open circuit)";
		case "count":
			return `${reading.count} of ${reading.of}`;
		case "words":
			return `"${reading.words}"`;
	}
}

function unitIn(written: string | undefined, unit: string): string {
	return unitAsWritten(written ?? unit);
}

function asPoint(number: string | undefined): string {
	const value = decimalFrom(number ?? "");
	if (value === null) throw new Error(`a number that the form let through: ${number}`);
	return decimalText(value);
}
