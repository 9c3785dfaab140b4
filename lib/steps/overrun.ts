// The shop's own record: how much longer its steps took than was thought, by kind, and what the next estimate is multiplied by. Pure.
//
// A factor is pulled towards 1 while there is little behind it: of n steps the record counts for n parts in n + 5, no correction for the
// rest. That is the credibility Z = n / (n + K) of H. Buehlmann (1967; from memory), with K = 5 of our own: below five steps a shop's
// record says little.

import { expectedSixths, type ThreePoint } from "@/lib/money/pert";
import type { STEP_KINDS } from "@/lib/steps/schema";

export type StepKind = (typeof STEP_KINDS)[number];

/** A step that is done. */
export type DoneStep = {
	readonly kind: StepKind;
	/** For one person. */
	readonly estimate: ThreePoint;
	/** Persons planned; 0 when nobody was named. */
	readonly crew: number;
	/** Minutes of everybody who worked on it, and how many they were. */
	readonly minutes: number;
	readonly workers: number;
};

export type Overrun = {
	readonly kind: StepKind;
	readonly steps: number;
	/** Sixths of a minute, all persons, as it was expected. */
	readonly expectedSixths: number;
	readonly actual: number;
	/** Actual over expected, as it was. */
	readonly ratio: number;
	/** What the next estimate is multiplied by. */
	readonly factor: number;
};

/** So many steps weigh as much as no correction at all. */
export const NO_CORRECTION_WEIGHS = 5;
/** Below so many steps a page says that they are too few to tell. */
export const TOO_FEW = 5;

/** By kind, in the order in which kinds first occur. Steps without an estimate or without any time say nothing. */
export function overruns(done: readonly DoneStep[]): Overrun[] {
	const telling = done.filter(({ estimate, minutes }) => expectedSixths(estimate) > 0 && minutes > 0);
	return [...new Set(telling.map(({ kind }) => kind))].map((kind) => {
		const mine = telling.filter((step) => step.kind === kind);
		const expected = mine.reduce((sum, { estimate, crew, workers }) => sum + expectedSixths(estimate) * (crew || workers || 1), 0);
		const actual = mine.reduce((sum, { minutes }) => sum + minutes, 0);
		const ratio = (6 * actual) / expected;
		const weight = mine.length / (mine.length + NO_CORRECTION_WEIGHS);
		return { kind, steps: mine.length, expectedSixths: expected, actual, ratio, factor: 1 + weight * (ratio - 1) };
	});
}

/** What estimates of a kind are multiplied by: 1 where there is no record. */
export const factorOf = (record: readonly Overrun[], kind: StepKind): number => record.find((one) => one.kind === kind)?.factor ?? 1;

/** An estimate as the record corrects it, in whole minutes. */
export const corrected = ({ low, likely, high }: ThreePoint, factor: number): ThreePoint => ({
	low: Math.round(low * factor),
	likely: Math.round(likely * factor),
	high: Math.round(high * factor),
});

/** `1.23`, for words. */
export const factorInWords = (factor: number): string => factor.toFixed(2);
