// Sharing an amount so that the shares add up to it. Pure. Knows numbers and nothing of what they stand for.
import { type MinorUnits, minor, NOTHING } from "@/lib/money/money";

/**
 * Spreads `total` over `weights` by the largest remainder, so that the shares add up to `total`, to the last unit.
 *
 * Each share is first cut towards zero; the units left over go one each to the largest remainders and, between equal
 * remainders, to the earlier line. A negative total mirrors a positive one. A weight of zero gets nothing.
 * Requires whole weights, none below zero, and one above zero unless the total is zero.
 *
 * @example spread(minor(1000), [1, 1, 1]) // [334, 333, 333]
 */
export function spread(total: MinorUnits, weights: readonly (number | bigint)[]): MinorUnits[] {
	const exact = weights.map(weightOf);
	const allWeight = exact.reduce((sum, weight) => sum + weight, 0n);
	if (total === 0) return exact.map(() => NOTHING);
	if (allWeight === 0n) throw new Error(`nothing to spread ${total} over: no weight is above zero`);

	// The product of an amount and a weight leaves the exact range long before either does: hence bigint.
	const size = BigInt(Math.abs(total));
	const lines = exact.map((weight, line) => ({ line, cut: (size * weight) / allWeight, remainder: (size * weight) % allWeight }));
	const left = Number(size - lines.reduce((sum, { cut }) => sum + cut, 0n));
	const oneMore = new Set(
		[...lines]
			.sort((a, b) => (a.remainder === b.remainder ? a.line - b.line : a.remainder > b.remainder ? -1 : 1))
			.slice(0, left)
			.map(({ line }) => line),
	);
	return lines.map(({ line, cut }) => {
		const share = cut + (oneMore.has(line) ? 1n : 0n);
		return minor(total < 0 ? -share : share);
	});
}

function weightOf(weight: number | bigint): bigint {
	if (typeof weight === "number" && !Number.isSafeInteger(weight)) throw new Error(`a weight is a whole number, not ${weight}`);
	const exact = BigInt(weight);
	if (exact < 0n) throw new Error(`a weight is not below zero: ${weight}`);
	return exact;
}
