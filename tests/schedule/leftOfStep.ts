// What is planned for a step of which some is done, by Simpson's rule. Shares no code with the planner.

type ThreePoint = { readonly low: number; readonly likely: number; readonly high: number };

/** The likely minutes; of a step that has begun at least the mean of what is longer than the likely, and than what was put in. */
export function leftOfStep({ low, likely, high }: ThreePoint, spent: number): number {
	if (spent === 0) return likely;
	const from = Math.max(spent, likely);
	const least = from >= high ? 0 : Math.ceil(meanAbove({ low, likely, high }, from) - from);
	return Math.max(0, likely - spent, least);
}

function meanAbove({ low, likely, high }: ThreePoint, from: number): number {
	const [a, b] = [(4 * (likely - low)) / (high - low), (4 * (high - likely)) / (high - low)];
	const density = (x: number): number => ((x - low) / (high - low)) ** a * ((high - x) / (high - low)) ** b;
	const [steps, width] = [2000, (high - from) / 2000];
	let [weight, sum] = [0, 0];
	for (let at = 0; at <= steps; at++) {
		const x = from + at * width;
		const simpson = at === 0 || at === steps ? 1 : at % 2 === 1 ? 4 : 2;
		weight += simpson * density(x);
		sum += simpson * density(x) * x;
	}
	return sum / weight;
}
