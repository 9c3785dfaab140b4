// Draws from the beta distribution that a three-point estimate stands for: alpha = 1 + 4(likely-low)/(high-low),
// beta = 1 + 4(high-likely)/(high-low). Its mean is (low + 4 likely + high)/6. Pure: chance is handed in.

import type { Random } from "@/lib/core/random";
import type { ThreePoint } from "@/lib/money/pert";

/** Gives the next draw, in the unit of the estimate, between low and high. An estimate without spread gives itself. */
export function betaPert({ low, likely, high }: ThreePoint, random: Random): () => number {
	const spread = high - low;
	if (spread === 0) return () => low;
	const first = gamma(1 + (4 * (likely - low)) / spread, random);
	const second = gamma(1 + (4 * (high - likely)) / spread, random);
	return () => {
		const a = first();
		return low + (spread * a) / (a + second());
	};
}

/** Slices of the range in which a mean is worked out: far finer than a minute matters. */
const SLICES = 400;

/** What is left on average of something that has taken `spent` and is not over: 0 when that is its most, or more. */
export function meanLeft({ low, likely, high }: ThreePoint, spent: number): number {
	const spread = high - low;
	if (spent >= high) return 0;
	if (spread === 0) return high - spent;
	const [alpha, beta] = [(4 * (likely - low)) / spread, (4 * (high - likely)) / spread];
	const from = Math.max(0, (spent - low) / spread);
	let [weight, sum] = [0, 0];
	for (let slice = 0; slice < SLICES; slice++) {
		const u = from + ((slice + 0.5) * (1 - from)) / SLICES;
		const density = u ** alpha * (1 - u) ** beta;
		weight += density;
		sum += density * u;
	}
	return weight === 0 ? (high - spent) / 2 : low + (spread * sum) / weight - spent;
}

/**
 * Draws from the gamma distribution of shape >= 1 and scale 1 (G. Marsaglia and W. W. Tsang, 2000, "A simple method for
 * generating gamma variables").
 */
function gamma(shape: number, random: Random): () => number {
	const d = shape - 1 / 3;
	const c = 1 / Math.sqrt(9 * d);
	const normal = normalDraws(random);
	return () => {
		for (;;) {
			const x = normal();
			const v = (1 + c * x) ** 3;
			if (v <= 0) continue;
			const u = random();
			if (u < 1 - 0.0331 * x ** 4 || Math.log(u) < 0.5 * x * x + d * (1 - v + Math.log(v))) return d * v;
		}
	};
}

/** Standard normal draws by the polar method (G. Marsaglia): two at a time, so that every second one is free. */
function normalDraws(random: Random): () => number {
	let spare: number | null = null;
	return () => {
		if (spare !== null) {
			const kept = spare;
			spare = null;
			return kept;
		}
		for (;;) {
			const [x, y] = [2 * random() - 1, 2 * random() - 1];
			const square = x * x + y * y;
			if (square >= 1 || square === 0) continue;
			const scale = Math.sqrt((-2 * Math.log(square)) / square);
			spare = y * scale;
			return x * scale;
		}
	};
}
