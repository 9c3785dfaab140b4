// Holding what was measured against a limit that was set before. Pure. Decimal numbers are compared exactly, in any unit.
// The tool says what was measured against which limit and whether it was kept; it never says more than that.
import { z } from "zod";
import {
	addDecimals,
	compareDecimals,
	type Decimal,
	decimal,
	decimalFrom,
	decimalText,
	shortest,
	subtractDecimals,
} from "@/lib/core/decimals";
import { never, ok, type Result, refuse } from "@/lib/core/result";
import { type Reading, readingIn, readingInWords, readingParts } from "@/lib/tests/readings";
import { inBase, unitAsWritten } from "@/lib/tests/units";

const number = z.string().refine((text) => decimalFrom(text) !== null, "Write a number, like 0.3.");
const unit = z.string().max(20);
const single = z.discriminatedUnion("kind", [
	z.strictObject({ kind: z.literal("at most"), value: number, unit }),
	z.strictObject({ kind: z.literal("at least"), value: number, unit }),
	z.strictObject({ kind: z.literal("between"), low: number, high: number, unit }),
	/** A nominal value with what it may be off either way. */
	z.strictObject({ kind: z.literal("nominal"), value: number, tolerance: number, unit }),
	/** Kelvins above the temperature around. */
	z.strictObject({ kind: z.literal("rise"), value: number }),
	/** One of these words, upper and lower case being the same. */
	z.strictObject({ kind: z.literal("words"), words: z.array(z.string().min(1)).min(1) }),
	/** So many good ones of so many tries. */
	z.strictObject({ kind: z.literal("count"), atLeast: z.int().min(0), of: z.int().min(1) }),
]);

/** A limit, as it is stored in a test's `limit` as JSON. `in turn`: the first limit is for the first reading, and so on. */
export const limitSchema = z.union([single, z.strictObject({ kind: z.literal("in turn"), limits: z.array(single).min(1) })]);

export type SingleLimit = z.infer<typeof single>;
export type Limit = z.infer<typeof limitSchema>;

/** `unjudged`: no limit was set, or the reading cannot be held against it. */
export type Verdict = "pass" | "fail" | "unjudged";

/** A verdict with the sentence that says what was held against what. */
export type Judgement = { readonly verdict: Verdict; readonly say: string };

/** Reads a stored limit. */
export function readLimit(json: string): Result<Limit> {
	let raw: unknown;
	try {
		raw = JSON.parse(json);
	} catch {
		raw = null;
	}
	const read = limitSchema.safeParse(raw);
	if (!read.success) return refuse("limit-unreadable", "This limit cannot be read: set it again, as a number with its unit or in words.");
	return checkedLimit(read.data);
}

/** A limit that can be kept at all: low is not above high, a tolerance is not below zero, no more good ones than tries. */
export function checkedLimit(limit: Limit): Result<Limit> {
	const wrong = (limit.kind === "in turn" ? limit.limits : [limit]).some((one) => {
		if (one.kind === "between") return compareDecimals(decimal(one.low), decimal(one.high)) > 0;
		if (one.kind === "nominal") return decimal(one.tolerance).digits < 0n;
		return one.kind === "count" && one.atLeast > one.of;
	});
	return wrong
		? refuse("limit-impossible", "Nothing could keep this limit: the lower end lies above the upper one. Swap them.")
		: ok(limit);
}

/** A limit in words: `at most 0.3 Ω`, `24.0 ± 0.5 V`, `at least 98 of 100`. */
export function limitInWords(limit: Limit): string {
	switch (limit.kind) {
		case "at most":
		case "at least":
			return `${limit.kind} ${limit.value} ${unitAsWritten(limit.unit)}`.trim();
		case "between":
			return `${limit.low} to ${limit.high} ${unitAsWritten(limit.unit)}`.trim();
		case "nominal":
			return `${limit.value} \u00b1 ${limit.tolerance} ${unitAsWritten(limit.unit)}`.trim();
		case "rise":
			return `at most ${limit.value} K above the air around`;
		case "words":
			return limit.words.map((words) => `"${words}"`).join(" or ");
		case "count":
			return limit.atLeast === limit.of ? `all ${limit.of} of ${limit.of}` : `at least ${limit.atLeast} of ${limit.of}`;
		case "in turn":
			return limit.limits.map(limitInWords).join(" / ");
		default:
			return never(limit);
	}
}

/** Judges what was written down, in the test's own unit; a test without a limit is unjudged. */
export function judgeText(text: string, testUnit: string, limit: Limit | null): Judgement {
	if (limit === null) return { verdict: "unjudged", say: "No limit was set for this test, so the value is only recorded." };
	// Words are held against words as they stand: "none" is then a word and not an open circuit.
	if (limit.kind === "words") return text.trim() === "" ? NOTHING_YET : judge({ kind: "words", words: text }, limit);
	const readings = readingParts(text).map((part, place): Reading => {
		const own = limit.kind === "in turn" ? limit.limits[place] : limit;
		return own?.kind === "words" ? { kind: "words", words: part } : readingIn(part, testUnit);
	});
	return readings.length === 0 ? NOTHING_YET : judgeAll(readings, limit);
}

/**
 * Judges several readings: all against the one limit, or each against its own when the limit is `in turn`.
 * One failure fails the whole; otherwise one reading that cannot be judged leaves the whole unjudged.
 */
export function judgeAll(readings: readonly Reading[], limit: Limit): Judgement {
	if (limit.kind === "in turn" && limit.limits.length !== readings.length) {
		return {
			verdict: "unjudged",
			say: `${limit.limits.length} readings are wanted, with a slash between them (${limitInWords(limit)}); ${readings.length} were written.`,
		};
	}
	const each = readings.map((reading, place) => {
		const own = limit.kind === "in turn" ? limit.limits[place] : limit;
		return own === undefined ? { verdict: "unjudged" as const, say: "" } : judge(reading, own);
	});
	const verdict = each.some((one) => one.verdict === "fail")
		? "fail"
		: each.some((one) => one.verdict === "unjudged")
			? "unjudged"
			: "pass";
	return { verdict, say: each.map((one) => one.say).join(" ") };
}

/** Judges one reading against one limit. */
export function judge(reading: Reading, limit: SingleLimit): Judgement {
	switch (limit.kind) {
		case "words":
			return judgeWords(reading, limit);
		case "count":
			return judgeCount(reading, limit);
		case "rise":
			return judgeRise(reading, limit);
		case "at most":
			return judgeRange(reading, limit, null, decimal(limit.value), limit.unit);
		case "at least":
			return judgeRange(reading, limit, decimal(limit.value), null, limit.unit);
		case "between":
			return judgeRange(reading, limit, decimal(limit.low), decimal(limit.high), limit.unit);
		case "nominal": {
			const [value, tolerance] = [decimal(limit.value), decimal(limit.tolerance)];
			return judgeRange(reading, limit, subtractDecimals(value, tolerance), addDecimals(value, tolerance), limit.unit);
		}
		default:
			return never(limit);
	}
}

function judgeRange(reading: Reading, limit: SingleLimit, low: Decimal | null, high: Decimal | null, limitUnit: string): Judgement {
	const cannot = (why: string) => unjudged(reading, limit, why);
	// An open circuit lies above every upper limit. As insulation it may be fine, but "OL" does not say how far the meter looked.
	if (reading.kind === "open") {
		return high !== null ? failed(reading, limit) : cannot("write > and the largest value that the meter shows, like >200");
	}
	if (reading.kind === "words" || reading.kind === "count") return cannot("a number is wanted");

	const ends = reading.kind === "span" ? [reading.low, reading.high] : [reading.value];
	const lowest = low === null ? null : inBase(low, limitUnit).value;
	const highest = high === null ? null : inBase(high, limitUnit).value;
	const { measures } = inBase(decimal("0"), limitUnit);
	const read = ends.map((end) => inBase(decimal(end), reading.unit));
	if (read.some((end) => end.measures !== measures)) return cannot(`it was read in ${reading.unit === "" ? "no unit" : reading.unit}`);

	const under = read.some(({ value }) => lowest !== null && compareDecimals(value, lowest) < 0);
	const over = read.some(({ value }) => highest !== null && compareDecimals(value, highest) > 0);
	if (reading.kind === "beyond") return judgeBeyond(reading, limit, read[0]?.value ?? decimal("0"), lowest, highest);
	return under || over ? failed(reading, limit) : passed(reading, limit);
}

/** A value that lies somewhere above (or below) what the meter could show: sometimes that is enough to know. */
function judgeBeyond(
	reading: Extract<Reading, { kind: "beyond" }>,
	limit: SingleLimit,
	edge: Decimal,
	low: Decimal | null,
	high: Decimal | null,
): Judgement {
	const above = reading.side === "above";
	const [near, far] = above ? [low, high] : [high, low];
	const past = (end: Decimal | null) => end !== null && (above ? compareDecimals(edge, end) >= 0 : compareDecimals(edge, end) <= 0);
	if (past(far)) return failed(reading, limit);
	if (far === null && past(near)) return passed(reading, limit);
	return unjudged(reading, limit, "the meter's range ended too early: measure again with another range");
}

function judgeRise(reading: Reading, limit: Extract<SingleLimit, { kind: "rise" }>): Judgement {
	if (reading.kind !== "number" || (reading.unit !== "\u00b0C" && reading.unit !== "K"))
		return unjudged(reading, limit, "a temperature is wanted");
	if (reading.unit === "\u00b0C" && reading.ambient === undefined)
		return unjudged(reading, limit, "write the temperature around as well, like 41 at 21");
	const rise = reading.ambient === undefined ? decimal(reading.value) : subtractDecimals(decimal(reading.value), decimal(reading.ambient));
	const judged = compareDecimals(rise, decimal(limit.value)) <= 0 ? passed(reading, limit) : failed(reading, limit);
	return { ...judged, say: `${decimalText(shortest(rise))} K: ${judged.say}` };
}

function judgeWords(reading: Reading, limit: Extract<SingleLimit, { kind: "words" }>): Judgement {
	const said = reading.kind === "words" ? reading.words : readingInWords(reading);
	const plain = (text: string) => text.trim().replace(/\s+/g, " ").toLocaleLowerCase("en");
	return limit.words.some((words) => plain(words) === plain(said)) ? passed(reading, limit) : failed(reading, limit);
}

function judgeCount(reading: Reading, limit: Extract<SingleLimit, { kind: "count" }>): Judgement {
	if (reading.kind !== "count") return unjudged(reading, limit, `write it like ${limit.of} of ${limit.of}`);
	// Even if every try that is still to be made were good, it would not be enough.
	const still = Math.max(0, limit.of - reading.of);
	const needed = reading.of <= limit.of ? limit.atLeast : Math.ceil((limit.atLeast * reading.of) / limit.of);
	if (reading.count + still < needed) return failed(reading, limit);
	if (reading.of < limit.of) return unjudged(reading, limit, `only ${reading.of} were tried`);
	return passed(reading, limit);
}

const NOTHING_YET: Judgement = { verdict: "unjudged", say: "Nothing was measured yet." };
const passed = (reading: Reading, limit: SingleLimit): Judgement => ({
	verdict: "pass",
	say: `${readingInWords(reading)} keeps the limit: ${limitInWords(limit)}.`,
});
const failed = (reading: Reading, limit: SingleLimit): Judgement => ({
	verdict: "fail",
	say: `${readingInWords(reading)} does not keep the limit: ${limitInWords(limit)}.`,
});
const unjudged = (reading: Reading, limit: SingleLimit, why: string): Judgement => ({
	verdict: "unjudged",
	say: `${readingInWords(reading)} cannot be held against the limit (${limitInWords(limit)}): ${why}.`,
});
