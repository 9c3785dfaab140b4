// Dates of manufacture, which are rarely exact: EDTF, the Library of Congress profile of ISO 8601-2 (4 February 2019).
// Claimed: levels 0 and 1. What the reader understands of level 2 is taken too and put into words as well as can be.
// Not taken, on purpose: the two-digit century and three-digit decade of ISO 8601-2 (whoever types 57 means 1957),
// seasons in a span, and clock times in a span.
import { parse } from "edtf";
import { ok, type Result, refuse } from "@/lib/core/result";

declare const edtfMark: unique symbol;

/** A date in EDTF, as it is stored. */
export type Edtf = string & { readonly [edtfMark]: "EDTF" };

/** The conformance level that the tool claims for reading and writing. */
export const EDTF_LEVEL = 1;

/** What a date says. */
export type LooseDate = {
	readonly edtf: Edtf;
	readonly level: number;
	/** The date in plain words: `about 1957`, `1950 to 1959`, `not later than 1961`. */
	readonly words: string;
	/** First year that it may mean; null when it is open or unknown on that side. */
	readonly earliestYear: number | null;
	/** Last year that it may mean; null when it is open or unknown on that side. */
	readonly latestYear: number | null;
};

export const EDTF_EXAMPLES =
	"Write it like 1957, 1957-03, 1957~ (about 1957), 1957? (perhaps), 195X (some year of the fifties), 1957/1961 (from, to) or ../1961 (not later than 1961).";

/** Reads a date that a person typed. A refusal says what was probably meant. */
export function readEdtf(text: string): Result<LooseDate> {
	const typed = text.trim();
	const found = understood(typed);
	if (found !== null) {
		if (found.span === "backwards") {
			return refuse("edtf-backwards", `In ${typed} the second date begins before the first: swap them. ${EDTF_EXAMPLES}`);
		}
		return ok({ edtf: typed as Edtf, level: found.level, ...found.said });
	}
	const meant = suggestedEdtf(typed);
	const meantSaid = meant === null ? null : understood(meant);
	if (meant !== null && meantSaid !== null && meantSaid.span === "forwards") {
		return refuse("edtf-unreadable", `Did you mean ${meant} (${meantSaid.said.words})? ${EDTF_EXAMPLES}`, { facts: { suggestion: meant } });
	}
	return refuse("edtf-unreadable", typed === "" ? EDTF_EXAMPLES : `"${typed.slice(0, 60)}" cannot be read as a date. ${EDTF_EXAMPLES}`);
}

/** Whether the text is a date that `readEdtf` takes. */
export function isEdtf(text: string): text is Edtf {
	return text === text.trim() && readEdtf(text).ok;
}

/** A stored date in plain words. Text that is no EDTF, in a row from elsewhere, is given back as it stands rather than hidden. */
export function edtfInWords(edtf: string): string {
	const read = readEdtf(edtf);
	return read.ok ? read.value.words : edtf;
}

/** What somebody who does not know EDTF probably meant, in EDTF; null when there is no telling. */
export function suggestedEdtf(text: string): string | null {
	const typed = text.trim().toLowerCase().replace(/\s+/g, " ");
	const year = "(\\d{4})";
	const forms: readonly [RegExp, (...years: string[]) => string][] = [
		[new RegExp(`^(?:c|ca|circa|about|around|approx)\\.? ?${year}$`), (a) => `${a}~`],
		[new RegExp(`^(?:perhaps|maybe|probably) ${year}$`), (a) => `${a}?`],
		[new RegExp(`^${year} ?(?:to|until|-|\u2013|\u2014) ?${year}$`), (a, b) => `${a}/${b}`],
		[/^(\d{2})(\d{2}) ?(?:to|-|\u2013|\u2014|\/) ?(\d{2})$/, (a, b, c) => `${a}${b}/${a}${c}`],
		[/^(\d{3})0'?s$/, (a) => `${a}X`],
		[/^(\d{2})00'?s$/, (a) => `${a}XX`],
		[/^(?:the )?'?(\d)0'?s$/, (a) => `19${a}X`],
		[/^(\d{3})x[~?%]$/, (a) => `${a}0~/${a}9~`],
		[/^(\d{3})x$/, (a) => `${a}X`],
		[/^(\d{2})xx$/, (a) => `${a}XX`],
		[new RegExp(`^(?:before|until|to|by|not later than|<=?) ?${year}$`), (a) => `../${a}`],
		[new RegExp(`^(?:after|since|from|not earlier than|>=?) ?${year}$`), (a) => `${a}/..`],
		[/^(\d{1,2})[./](\d{4})$/, (a, b) => `${b}-${(a ?? "").padStart(2, "0")}`],
		[/^'?(\d{2})$/, (a) => `19${a}`],
	];
	for (const [form, write] of forms) {
		const match = form.exec(typed);
		if (match !== null) return write(...match.slice(1));
	}
	const named = /^([a-z]{3,9})\.? (\d{4})$/.exec(typed);
	const month = named === null ? -1 : MONTHS.findIndex((name) => name.toLowerCase().startsWith(named[1] ?? "-"));
	return named === null || month < 0 ? null : `${named[2]}-${String(month + 1).padStart(2, "0")}`;
}

type Said = Pick<LooseDate, "words" | "earliestYear" | "latestYear">;
/** One date within the text: words, and its bounds as `year * 10000 + month * 100 + day`, which sort. */
type One = { readonly words: string; readonly first: number; readonly last: number };

const MONTHS = "January February March April May June July August September October November December".split(" ");
const SEASONS: Readonly<Record<string, string>> = {
	"21": "spring",
	"22": "summer",
	"23": "autumn",
	"24": "winter",
	"25": "northern spring",
	"26": "northern summer",
	"27": "northern autumn",
	"28": "northern winter",
	"29": "southern spring",
	"30": "southern summer",
	"31": "southern autumn",
	"32": "southern winter",
	"33": "the first quarter of",
	"34": "the second quarter of",
	"35": "the third quarter of",
	"36": "the last quarter of",
	"37": "the first third of",
	"38": "the second third of",
	"39": "the last third of",
	"40": "the first half of",
	"41": "the second half of",
};

function understood(text: string): { level: number; span: "forwards" | "backwards"; said: Said } | null {
	const level = levelOf(text);
	if (level === null) return null;
	if (text.startsWith("[") || text.startsWith("{")) return { level, span: "forwards", said: severalIn(text) };
	const ends = text.split("/");
	const [from, to] = ends;
	if (from === undefined) return null;
	if (to === undefined) {
		const one = oneIn(from);
		return { level, span: "forwards", said: { words: one.words, earliestYear: yearOf(one.first), latestYear: yearOf(one.last) } };
	}
	if (from.includes("T") || to.includes("T")) return null;
	const lower = from === "" || from === ".." ? null : oneIn(from);
	const upper = to === "" || to === ".." ? null : oneIn(to);
	const backwards = lower !== null && upper !== null && lower.first > upper.first;
	return {
		level,
		span: backwards ? "backwards" : "forwards",
		said: {
			words: spanInWords(lower, upper, from, to),
			earliestYear: lower === null ? null : yearOf(lower.first),
			latestYear: upper === null ? null : yearOf(upper.last),
		},
	};
}

/** The level of the text, or null when it is no EDTF or a form that is not taken. */
function levelOf(text: string): number | null {
	// The reader takes a two-digit century and a three-digit decade, and knows no end to a text.
	if (text.length > 200 || /^-?\d{1,3}[?~%]?$/.test(text)) return null;
	try {
		return parse(text).level;
	} catch {
		return null; // the package says no by throwing; readEdtf turns that into a sentence
	}
}

function spanInWords(lower: One | null, upper: One | null, from: string, to: string): string {
	if (lower !== null && upper !== null) return `${lower.words} to ${upper.words}`;
	if (upper !== null) return from === ".." ? `not later than ${upper.words}` : `until ${upper.words}, start unknown`;
	if (lower !== null) return to === ".." ? `not earlier than ${lower.words}` : `from ${lower.words}, end unknown`;
	return "any time";
}

/** A choice `[1957,1958]` (one of them) or a list `{1957,1958}` (all of them). */
function severalIn(text: string): Said {
	const members = text
		.slice(1, -1)
		.split(",")
		.map((member) => member.trim());
	let first: number | null = Number.POSITIVE_INFINITY;
	let last: number | null = Number.NEGATIVE_INFINITY;
	const words = members.map((member) => {
		const [from = "", to] = member.includes("..") ? member.split("..") : [member, member];
		const lower = from === "" ? null : oneIn(from);
		const upper = to === undefined || to === "" ? null : oneIn(to);
		first = first === null || lower === null ? null : Math.min(first, lower.first);
		last = last === null || upper === null ? null : Math.max(last, upper.last);
		return from === to && lower !== null
			? lower.words
			: spanInWords(lower, upper, from === "" ? ".." : from, upper === null ? ".." : member);
	});
	return {
		words: listed(words, text.startsWith("[") ? "or" : "and"),
		earliestYear: first === null ? null : yearOf(first),
		latestYear: last === null ? null : yearOf(last),
	};
}

/** One date, read from its text, which `parse` has already found well formed. */
function oneIn(text: string): One {
	const approximate = /[~%]/.test(text);
	const uncertain = /[?%]/.test(text);
	const plain = plainDateIn(text.replace(/[?~%]/g, ""));
	const words = approximate ? `about ${plain.words}` : plain.words;
	return { ...plain, words: uncertain ? `perhaps ${words}` : words };
}

function plainDateIn(text: string): One {
	const long = /^(Y?)(-?\d+)(?:E(\d+))?(?:S(\d+))?$/.exec(text);
	if (long !== null && (long[1] === "Y" || long[4] !== undefined)) return longYear(Number(`${long[2]}e${long[3] ?? "0"}`), long[4]);

	const [calendar = "", time] = text.split("T");
	const parts = /^(-?)([\dX]{4})(?:-([\dX]{2}))?(?:-([\dX]{2}))?$/.exec(calendar);
	if (parts === null) throw new Error(`EDTF of an unforeseen form: ${text}`);
	const [, sign = "", yearText = "", monthText, dayText] = parts;
	const low = Number(`${sign}${yearText.replaceAll("X", sign === "" ? "0" : "9")}`);
	const high = Number(`${sign}${yearText.replaceAll("X", sign === "" ? "9" : "0")}`);
	const year = low === high ? `${low}` : `${low} to ${high}`;
	const whole = { first: dated(low, 1, 1), last: dated(high, 12, 31) };

	const season = monthText === undefined ? undefined : SEASONS[monthText];
	if (season !== undefined) return { words: `${season} ${year}`, ...whole };
	if (monthText === undefined) return { words: year, ...whole };
	if (monthText === "XX") return { words: `${year}, month unknown`, ...whole };
	const months = bounds(monthText, 1, 12);
	const days = dayText === undefined || dayText === "XX" ? { low: 1, high: 31 } : bounds(dayText, 1, 31);
	const range = { first: dated(low, months.low, days.low), last: dated(high, months.high, days.high) };
	if (low !== high || months.low !== months.high || (dayText !== undefined && dayText !== "XX" && days.low !== days.high)) {
		return { words: `${year}, partly unreadable: ${text}`, ...range };
	}
	const month = `${MONTHS[months.low - 1]} ${year}`;
	if (dayText === undefined) return { words: month, ...range };
	if (dayText === "XX") return { words: `${month}, day unknown`, ...range };
	return { words: time === undefined ? `${days.low} ${month}` : `${days.low} ${month}, ${time}`, ...range };
}

/** A year of more than four digits, or one of which only the first digits are meant (1950S2: some year from 1900 to 1999). */
function longYear(year: number, significant: string | undefined): One {
	if (significant === undefined) return { words: `the year ${year}`, first: dated(year, 1, 1), last: dated(year, 12, 31) };
	const step = 10 ** Math.max(0, String(Math.abs(year)).length - Number(significant));
	const low = Math.floor(year / step) * step;
	const high = low + step - 1;
	return { words: low === high ? `${year}` : `${low} to ${high}`, first: dated(low, 1, 1), last: dated(high, 12, 31) };
}

/** Lowest and highest number of two digits of which some are X, kept within the calendar. */
function bounds(text: string, least: number, most: number): { low: number; high: number } {
	return { low: Math.max(least, Number(text.replaceAll("X", "0"))), high: Math.min(most, Number(text.replaceAll("X", "9"))) };
}

const dated = (year: number, month: number, day: number): number => year * 10_000 + month * 100 + day;
const yearOf = (date: number): number => Math.floor(date / 10_000);

function listed(words: readonly string[], last: string): string {
	return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} ${last} ${words[words.length - 1]}`;
}
