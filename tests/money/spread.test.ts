import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { minor } from "@/lib/money/money";
import { spread } from "@/lib/money/spread";

const weights = fc
	.array(fc.integer({ min: 0, max: 10_000_000 }), { minLength: 1, maxLength: 30 })
	.filter((all) => all.some((weight) => weight > 0));
const total = fc.integer({ min: -(10 ** 12), max: 10 ** 12 }).map(minor);

/** Largest remainder as one would do it by hand, one spare unit after the other; too simple to be wrong, and slow. */
function byHand(amount: number, over: readonly number[]): number[] {
	const all = over.reduce((sum, weight) => sum + BigInt(weight), 0n);
	const exact = over.map((weight) => BigInt(amount) * BigInt(weight));
	const shares = exact.map((share) => share / all);
	const rest = exact.map((share) => share % all);
	for (let left = BigInt(amount) - shares.reduce((sum, share) => sum + share, 0n); left > 0n; left--) {
		let best = 0;
		for (let line = 1; line < rest.length; line++) if ((rest[line] ?? 0n) > (rest[best] ?? 0n)) best = line;
		shares[best] = (shares[best] ?? 0n) + 1n;
		rest[best] = -1n;
	}
	return shares.map(Number);
}

describe("an amount spread over lines", () => {
	it("gives shares that add up to it", () => {
		fc.assert(
			fc.property(total, weights, (amount, over) => {
				expect(spread(amount, over).reduce((sum, share) => sum + BigInt(share), 0n)).toBe(BigInt(amount));
			}),
			{ seed: 12 },
		);
	});

	it("gives no share that is a whole unit away from its exact share", () => {
		fc.assert(
			fc.property(total, weights, (amount, over) => {
				const all = over.reduce((sum, weight) => sum + BigInt(weight), 0n);
				spread(amount, over).forEach((share, line) => {
					const off = BigInt(share) * all - BigInt(amount) * BigInt(over[line] ?? 0);
					expect(off < all && off > -all).toBe(true);
				});
			}),
			{ seed: 13 },
		);
	});

	it("is the same when all weights are doubled", () => {
		fc.assert(
			fc.property(total, weights, (amount, over) => {
				expect(
					spread(
						amount,
						over.map((weight) => weight * 2),
					),
				).toEqual(spread(amount, over));
			}),
			{ seed: 14 },
		);
	});

	it("mirrors when it is taken back", () => {
		fc.assert(
			fc.property(total, weights, (amount, over) => {
				expect(spread(minor(-amount), over)).toEqual(spread(amount, over).map((share) => minor(-share)));
			}),
			{ seed: 15 },
		);
	});

	it("is what one would work out by hand", () => {
		fc.assert(
			fc.property(fc.integer({ min: 0, max: 10 ** 12 }), weights, (amount, over) => {
				expect(spread(minor(amount), over)).toEqual(byHand(amount, over));
			}),
			{ seed: 16 },
		);
	});

	it("gives nothing to a line without weight, and to the heavier line never less", () => {
		fc.assert(
			fc.property(fc.integer({ min: 0, max: 10 ** 9 }).map(minor), weights, (amount, over) => {
				const shares = spread(amount, over);
				over.forEach((weight, line) => {
					if (weight === 0) expect(shares[line]).toBe(0);
					over.forEach((other, place) => {
						if (weight > other) expect(shares[line] ?? 0).toBeGreaterThanOrEqual(shares[place] ?? 0);
					});
				});
			}),
			{ seed: 17 },
		);
	});

	it("gives spare units to the earlier of equal lines", () => {
		expect(spread(minor(1000), [1, 1, 1])).toEqual([334, 333, 333]);
		expect(spread(minor(2), [1, 1, 1])).toEqual([1, 1, 0]);
		expect(spread(minor(-2), [1, 1, 1])).toEqual([-1, -1, 0]);
		expect(spread(minor(1), [0, 5, 5])).toEqual([0, 1, 0]);
	});

	it("stays exact where the product of amount and weight would not", () => {
		const huge = minor(Number.MAX_SAFE_INTEGER);
		expect(spread(huge, [Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER, 1n])).toEqual([4503599627370495, 4503599627370495, 1]);
		expect(spread(huge, [10n ** 30n])).toEqual([huge]);
	});

	it("over nothing is nothing, and a weight that is none is a bug", () => {
		expect(spread(minor(0), [])).toEqual([]);
		expect(spread(minor(0), [0, 0])).toEqual([0, 0]);
		for (const over of [[], [0, 0]]) expect(() => spread(minor(5), over)).toThrow("nothing to spread 5 over");
		for (const over of [[-1, 2], [0.5, 1], [Number.NaN]]) expect(() => spread(minor(5), over)).toThrow("a weight is");
	});
});
