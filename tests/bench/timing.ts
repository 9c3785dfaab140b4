// Medians, and ratios of one to another in the same run. A figure alone says more of the computer than of the program.

/** Milliseconds of each of `times` runs, sorted, after `warm` runs that are not counted. */
export async function timed(times: number, run: () => unknown, warm = 20): Promise<number[]> {
	for (let i = 0; i < warm; i++) await run();
	const taken: number[] = [];
	for (let i = 0; i < times; i++) {
		const start = performance.now();
		await run();
		taken.push(performance.now() - start);
	}
	return taken.sort((a, b) => a - b);
}

/** The value that so many of a hundred lie below. Requires at least one value. */
export const percentile = (sorted: readonly number[], of: number): number =>
	sorted[Math.min(sorted.length - 1, Math.floor((sorted.length * of) / 100))] ?? Number.NaN;

const ms = (value: number): string => (value < 10 ? value.toFixed(3) : value.toFixed(1));

/** One line of the report: the thing, its baseline, their ratio of medians, and the goal. */
export function report(what: string, thing: readonly number[], baseline: readonly number[], goal: number | null): void {
	const ratio = percentile(thing, 50) / percentile(baseline, 50);
	const met = goal === null ? "" : `, goal ${goal}x: ${ratio <= goal ? "met" : "not met"}`;
	console.log(
		`${what}: ${ratio.toFixed(2)}x (median ${ms(percentile(thing, 50))} ms against ${ms(percentile(baseline, 50))} ms; p95 ${ms(percentile(thing, 95))} ms)${met}`,
	);
}
