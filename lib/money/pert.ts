// Three-point estimates, by the classical formulas of PERT. Exact: everything is counted in sixths and thirty-sixths.
// Pure. Units are whatever the estimate is in; here, minutes of one person.
import { dividedHalfUp } from "@/lib/core/decimals";
import { ok, type Result, refuse } from "@/lib/core/result";
import { type MinorUnits, minor } from "@/lib/money/money";

/** Low, likely and high, in whole minutes. */
export type ThreePoint = { readonly low: number; readonly likely: number; readonly high: number };

/** A whole number of sixths of a minute. */
export type Sixths = number;

/** Checks an estimate that a person typed: whole, not below zero, low <= likely <= high. */
export function parseThreePoint(estimate: ThreePoint): Result<ThreePoint> {
	const { low, likely, high } = estimate;
	if (![low, likely, high].every((minutes) => Number.isSafeInteger(minutes) && minutes >= 0)) {
		return refuse("estimate-not-whole", "Give low, likely and high in whole minutes, none below zero.");
	}
	if (low > likely || likely > high) {
		return refuse("estimate-out-of-order", "Low is at most likely, and likely at most high: swap what is the wrong way round.");
	}
	return ok(estimate);
}

/** Expected time (low + 4 likely + high) / 6, in sixths so that nothing is rounded before it is added. */
export const expectedSixths = ({ low, likely, high }: ThreePoint): Sixths => low + 4 * likely + high;

/** Sixths as people read them: `758 1/3`, `560`, `55 1/2`. */
export function formatSixths(sixths: Sixths): string {
	if (!Number.isSafeInteger(sixths) || sixths < 0) throw new Error(`not sixths of a minute: ${sixths}`);
	const whole = Math.floor(sixths / 6);
	const part = ["", "1/6", "1/3", "1/2", "2/3", "5/6"][sixths % 6] ?? "";
	if (part === "") return `${whole}`;
	return whole === 0 ? part : `${whole} ${part}`;
}

/** Whole minutes, half up, for a column where fractions do not belong. Never add up what this gave. */
export const sixthsToMinutes = (sixths: Sixths): number => Number(dividedHalfUp(BigInt(sixths), 6n));

/** What an expected time of one person costs at a rate an hour, rounded half up. Requires time and rate not below zero. */
export function costOfExpected(sixths: Sixths, perHour: MinorUnits): MinorUnits {
	return minor(dividedHalfUp(BigInt(sixths) * BigInt(perHour), 360n));
}

/** Classical variance ((high - low) / 6)^2 in thirty-sixths, exactly. */
export const variance36ths = ({ low, high }: ThreePoint): number => (high - low) ** 2;

/**
 * Classical standard deviation of the labour of independent steps, in minutes of people. Two people on one step take
 * longer together, so such a step counts with twice its spread, not as two independent ones.
 */
export function sigmaOfLabour(steps: readonly { readonly estimate: ThreePoint; readonly people: number }[]): number {
	return Math.sqrt(steps.reduce((sum, { estimate, people }) => sum + variance36ths(estimate) * people ** 2, 0)) / 6;
}

/**
 * Variance (mean - low)(high - mean) / 7 of the beta distribution that simulations draw from. It is not the classical
 * ((high - low) / 6)^2, and a page that shows a spread says which of the two it is.
 */
export function betaVariance(step: ThreePoint): number {
	const mean = expectedSixths(step) / 6;
	return ((mean - step.low) * (step.high - mean)) / 7;
}
