// What a simulated sample says, and how sure it is of it. Pure.

export type SampleSummary = {
	readonly runs: number;
	readonly mean: number;
	/** Standard deviation of the sample. */
	readonly deviation: number;
	/** Standard error of the mean. */
	readonly meanError: number;
	/** By percentage: a value that so many per cent of the runs do not pass. */
	readonly quantiles: readonly Quantile[];
};

export type Quantile = {
	/** 10, 50, 80, 90. */
	readonly percent: number;
	readonly value: number;
	/** Between these lies the true quantile, two times in three (one standard error of the rank on either side). */
	readonly low: number;
	readonly high: number;
};

export const PERCENTS = [10, 50, 80, 90] as const;

/** Sums up a sample of one or more values. */
export function summaryOf(values: readonly number[] | Float64Array, percents: readonly number[] = PERCENTS): SampleSummary {
	const sorted = Float64Array.from(values).sort();
	const runs = sorted.length;
	if (runs === 0) throw new Error("a sample of nothing");
	const mean = sorted.reduce((sum, value) => sum + value, 0) / runs;
	const deviation = runs < 2 ? 0 : Math.sqrt(sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (runs - 1));
	return {
		runs,
		mean,
		deviation,
		meanError: deviation / Math.sqrt(runs),
		quantiles: percents.map((percent) => {
			const p = percent / 100;
			// How many of the runs lie below it is binomial: its standard error in ranks needs no density.
			const slip = Math.sqrt(runs * p * (1 - p));
			return { percent, value: at(sorted, p * runs), low: at(sorted, p * runs - slip), high: at(sorted, p * runs + slip) };
		}),
	};
}

/** The value that `rank` of the sorted values do not pass. */
const at = (sorted: Float64Array, rank: number): number => sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(rank) - 1))] ?? 0;
