// Setting a test by a form: a limit chosen from those that are usual, or one of the shop's own, as it is typed. Pure.

import { z } from "zod";
import { decimalFrom, decimalText } from "@/lib/core/decimals";
import { ok, type Result, refuse } from "@/lib/core/result";
import { chosen, line, optionalChosen, optionalLine } from "@/lib/core/words";
import { checkedLimit, type Limit, type SingleLimit } from "@/lib/tests/limits";
import type { PlanTest } from "@/lib/tests/schema";
import {
	type Backing,
	fuseLimit,
	noLoadLimit,
	protectiveConductorLimit,
	railLimit,
	USUAL_LIMITS,
	type UsualLimit,
} from "@/lib/tests/usualLimits";

/** The kinds of limit that a form can write, with a word for each. "none" only records. */
export const LIMIT_KINDS = {
	"at most": "at most",
	"at least": "at least",
	between: "between two values",
	nominal: "a value, give or take",
	rise: "warmer than the air by at most",
	words: "words",
	count: "so many of so many",
	none: "no limit, only recorded",
} as const;
export type LimitKind = keyof typeof LIMIT_KINDS;

/** Limits that follow from one figure of the machine: which figure, and in what. */
export const LIMITS_BY_FIGURE: Readonly<
	Record<
		string,
		{ readonly label: string; readonly asks: string; readonly unit: string; readonly limit: (figure: string) => Result<UsualLimit> }
	>
> = {
	"earth-by-cord": {
		label: "protective earth, by the length of the cord",
		asks: "Length of the cord",
		unit: "m",
		limit: protectiveConductorLimit,
	},
	"rail-80": { label: "current on a supply's rail", asks: "The supply's rated current", unit: "A", limit: railLimit },
	"fuse-as-drawn": { label: "fuse link, by the drawing", asks: "The fuse as drawn", unit: "A", limit: fuseLimit },
	"no-load": { label: "transformer winding without load", asks: "The winding's rated voltage", unit: "V", limit: noLoadLimit },
};

/** The usual limit of that id, from the figure where it needs one. */
export function usualLimit(id: string, figure: string): Result<UsualLimit> {
	const byFigure = LIMITS_BY_FIGURE[id];
	if (byFigure) return byFigure.limit(figure.replace(",", "."));
	const found = USUAL_LIMITS.find((limit) => limit.id === id);
	return found ? ok(found) : refuse("no-such-limit", "Choose a limit from the list, or write your own.");
}

/** How far a limit is to be trusted stands in its source, so that a paper of ten years later still says it. */
export const sourceWithBacking = ({ source, backing }: { readonly source: string; readonly backing: Backing }): string =>
	backing === "from memory"
		? `${source} (from memory)`
		: backing === "common practice, no source"
			? `${source} (common practice, no source)`
			: source;

/** What a limit's source says about itself: the flag that a list shows beside it, or null. */
export function flagOfSource(source: string): "from memory" | "common practice" | null {
	if (/from memory/i.test(source)) return "from memory";
	return /common practice/i.test(source) ? "common practice" : null;
}

/** The unit in which readings of a limit are written. */
export function unitOfLimit(limit: Limit): string {
	if (limit.kind === "in turn" || limit.kind === "words" || limit.kind === "count") return "";
	return limit.kind === "rise" ? "\u00b0C" : limit.unit;
}

/** How a reading is written for a limit, as a hint beside the field. */
export function readingHint(limit: Limit | null, unit: string): string {
	switch (limit?.kind) {
		case undefined:
			return unit === "" ? "A figure or words, as seen." : `In ${unit}, or words.`;
		case "words":
			return `In words; the limit is ${limit.words.map((words) => `"${words}"`).join(" or ")}.`;
		case "count":
			return `Like ${limit.of} of ${limit.of}.`;
		case "rise":
			return "With the air around: 41 at 21.";
		case "in turn":
			return `${limit.limits.length} readings, in turn, with a slash between: 98 of 100 / 19 of 20.`;
		default:
			return `In ${unit || "the unit of the limit"}. Several with a slash between: 0.07 / 0.08. Beyond the range: >200. Nothing to read: OL.`;
	}
}

const figure = z.string().trim().max(30, "Write a number, like 0.3.").default("");

const typedTest = z.object({
	machineId: chosen("the machine"),
	name: line("what is tested", 200),
	/** The id of a usual limit; "" is a limit of one's own. */
	usual: z.string().max(64).default(""),
	/** What the usual limit follows from: a cord's length, a rated current. */
	figure,
	kind: z.enum(Object.keys(LIMIT_KINDS) as [LimitKind, ...LimitKind[]], "Say what kind of limit it is.").default("at most"),
	value: figure,
	low: figure,
	high: figure,
	tolerance: figure,
	words: optionalLine("the words", 200),
	good: figure,
	tries: figure,
	unit: optionalLine("the unit", 20),
	limitSource: optionalLine("where the limit comes from", 250),
	fromMemory: z.boolean().default(false),
	positionId: optionalChosen,
	partId: optionalChosen,
	stepId: optionalChosen,
	conversionId: optionalChosen,
});
type TypedTest = z.output<typeof typedTest>;

/** Reads the form: gives what `planTest` takes, or a sentence at the field that is wrong. */
export const setTestSchema = typedTest.transform((typed, check): PlanTest => {
	const wrong = (path: keyof TypedTest, message: string) => {
		check.addIssue({ code: "custom", path: [path], message });
		return z.NEVER;
	};
	const { machineId, name, positionId, partId, stepId, conversionId } = typed;
	const of = { machineId, name, positionId, partId, stepId, conversionId };
	if (typed.usual !== "") {
		const usual = usualLimit(typed.usual, typed.figure);
		if (!usual.ok) return wrong(LIMITS_BY_FIGURE[typed.usual] ? "figure" : "usual", usual.error.say);
		const { limit } = usual.value;
		return { ...of, limit, unit: unitOfLimit(limit), limitSource: sourceWithBacking(usual.value) };
	}
	if (typed.kind === "none") return { ...of, limit: null, unit: typed.unit, limitSource: "" };
	const read = ownLimit(typed);
	if ("field" in read) return wrong(read.field, read.say);
	const kept = checkedLimit(read.limit);
	if (!kept.ok) return wrong(read.limit.kind === "nominal" ? "tolerance" : "high", kept.error.say);
	if (typed.limitSource === "")
		return wrong("limitSource", "Say where the limit comes from: a standard and its date, the maker, or that it is your own.");
	return {
		...of,
		limit: read.limit,
		unit: unitOfLimit(read.limit),
		limitSource: typed.fromMemory ? `${typed.limitSource} (from memory)` : typed.limitSource,
	};
});

type Wrong = { readonly field: keyof TypedTest; readonly say: string };

function ownLimit(typed: TypedTest): { readonly limit: SingleLimit } | Wrong {
	const number = (field: "value" | "low" | "high" | "tolerance") => {
		const read = decimalFrom(typed[field].replace(",", "."));
		return read === null ? null : decimalText(read);
	};
	const missing = (field: keyof TypedTest): Wrong => ({ field, say: "Write a number, like 0.3." });
	const { unit } = typed;
	switch (typed.kind) {
		case "at most":
		case "at least": {
			const value = number("value");
			return value === null ? missing("value") : { limit: { kind: typed.kind, value, unit } };
		}
		case "rise": {
			const value = number("value");
			return value === null ? missing("value") : { limit: { kind: "rise", value } };
		}
		case "between": {
			const [low, high] = [number("low"), number("high")];
			if (low === null || high === null) return missing(low === null ? "low" : "high");
			return { limit: { kind: "between", low, high, unit } };
		}
		case "nominal": {
			const [value, tolerance] = [number("value"), number("tolerance")];
			if (value === null || tolerance === null) return missing(value === null ? "value" : "tolerance");
			return { limit: { kind: "nominal", value, tolerance, unit } };
		}
		case "words": {
			const words = typed.words.split(/\s+or\s+|;|,/).flatMap((word) => word.trim() || []);
			return words.length === 0
				? { field: "words", say: 'Write the word that keeps the limit, like "right".' }
				: { limit: { kind: "words", words } };
		}
		case "count": {
			const whole = (text: string) => (/^\d{1,6}$/.test(text) ? Number(text) : null);
			const [atLeast, of] = [whole(typed.good), whole(typed.tries)];
			if (atLeast === null || of === null || of === 0)
				return { field: atLeast === null ? "good" : "tries", say: "Write a whole number, like 200." };
			return atLeast > of
				? { field: "good", say: "There cannot be more good ones than tries." }
				: { limit: { kind: "count", atLeast, of } };
		}
		case "none":
			throw new Error("no limit was to be read");
	}
}
