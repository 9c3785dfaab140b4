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
