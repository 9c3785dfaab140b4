// Limits and readings of the data in the writing that the test form takes.

import type { SingleLimit, Limit as Stored } from "@/lib/tests/limits";
import type { Limit, MachineTest, TestRun } from "@/seed/data/types";

/** "24.0 ± 0.5 V": how the limit is printed tells a nominal value from two ends. */
const NOMINAL = /([\d.]+) ± ([\d.]+)/;
const OF = /of (\d+)$/;

/** The shortest and the longest of many are one limit, for one span of readings. */
const isShortest = ({ what }: Limit): boolean => what.startsWith("shortest");
const isLongest = ({ what }: Limit): boolean => what.startsWith("longest");

function singles(test: MachineTest): SingleLimit[] {
	const nominal = NOMINAL.exec(test.limitWords);
	return test.limits.flatMap((limit): SingleLimit[] => {
		const { unit, min, max } = limit;
		if (isLongest(limit)) return [];
		if (nominal !== null && (isShortest(limit) || (min !== undefined && max !== undefined)))
			return [{ kind: "nominal", value: nominal[1] ?? "", tolerance: nominal[2] ?? "", unit }];
		if (limit.equals !== undefined) return [{ kind: "words", words: [limit.equals] }];
		const tries = unit === "plays" || unit === "rides" ? min : OF.exec(limit.what)?.[1];
		if (tries !== undefined && min !== undefined) return [{ kind: "count", atLeast: min, of: Number(tries) }];
		if (limit.what.startsWith("rise") && max !== undefined) return [{ kind: "rise", value: String(max) }];
		if (min !== undefined && max !== undefined) return [{ kind: "between", low: String(min), high: String(max), unit }];
		if (max !== undefined) return [{ kind: "at most", value: String(max), unit }];
		if (min !== undefined) return [{ kind: "at least", value: String(min), unit }];
		throw new Error(`a limit without an end: ${limit.what}`);
	});
}

export function limitOf(test: MachineTest): Stored {
	const limits = singles(test);
	const [only] = limits;
	if (only === undefined) throw new Error(`no limit: ${test.what}`);
	return limits.length === 1 ? only : { kind: "in turn", limits };
}

export const unitOf = (test: MachineTest): string => {
	const units = test.limits
		.map(({ unit, what }) => (what.startsWith("rise") ? "°C" : unit))
		.filter((unit) => unit !== "plays" && unit !== "rides" && unit !== "coins");
	return units[0] ?? "";
};

/** What was measured, as it is typed: readings with a slash between them, in the order of the limits; the rest as a remark. */
export function readingOf(test: MachineTest, run: TestRun): { readonly value: string; readonly words: string } {
	const said = run.measured.map(({ words }) => words);
	const remark = (more: readonly string[] = []) => [...more, run.words ?? ""].filter(Boolean).join("; ");
	const numbered = run.measured.filter(({ value }) => value !== undefined);
	if (numbered.length === 0 || test.limits.some(({ equals }) => equals !== undefined)) {
		// "none: two-core flex": what was read, then what is said of it.
		const [value = "", ...rest] = said.join("; ").split(": ");
		return { value, words: remark(rest.length === 0 ? [] : [rest.join(": ")]) };
	}
	const named = (what: string) => run.measured.find((each) => each.what === what)?.value;
	const [ambient] = [named("ambient")];
	const parts = test.limits.flatMap((limit): string[] => {
		if (isLongest(limit)) return [];
		if (isShortest(limit)) {
			const [low, high] = [named(limit.what), named(test.limits.find(isLongest)?.what ?? "")];
			// A run that broke off has no longest play: each was of the length that was set.
			return [low === undefined || high === undefined ? (NOMINAL.exec(test.limitWords)?.[1] ?? "") : `${low}-${high}`];
		}
		const value = named(limit.what);
		if (limit.unit === "plays" || limit.unit === "rides") {
			// The play at which it failed is no good one.
			return value === undefined ? [] : [run.verdict === "fail" ? `${value - 1} of ${value}` : `${value} of ${value}`];
		}
		const tries = OF.exec(limit.what)?.[1];
		if (tries !== undefined) return value === undefined ? [] : [`${value} of ${tries}`];
		if (limit.what.startsWith("rise") && ambient !== undefined) return [`${named(limit.what.replace("rise of the ", ""))} at ${ambient}`];
		return value === undefined ? [] : [String(value)];
	});
	// One limit for several places: each was read.
	const values = parts.length === 0 ? numbered.map(({ value }) => String(value)) : parts;
	const plain = new Set(numbered.map(({ value, unit }) => `${value} ${unit}`));
	const places =
		numbered.length > 1 || parts.length === 0
			? numbered.map(({ what, words }) => `${what} ${words}`)
			: numbered.map(({ words }) => words).filter((words) => !plain.has(words));
	return { value: values.join(" / "), words: remark(places) };
}
