// From one currency to another at the rate of the day. The rate is kept as the text that was typed.
import { type Decimal, decimalFrom, dividedHalfUp } from "@/lib/core/decimals";
import { ok, type Result, refuse } from "@/lib/core/result";
import { type CurrencyCode, minorDigits } from "@/lib/money/currency";
import { formatMoney, LARGEST_TYPED_MINOR, type MinorUnits, minor } from "@/lib/money/money";

/** Reads a rate: how much of the shop's currency one unit of the other costs, `0.9240`. */
export function parseRate(text: string): Result<Decimal> {
	const rate = decimalFrom(text);
	if (rate === null || rate.digits <= 0n) {
		return refuse("rate-unreadable", "Write the rate as what one unit of the foreign currency costs here, like 0.9240.");
	}
	if (rate.places > 10 || rate.digits > 10n ** 15n) {
		return refuse("rate-too-fine", "Write the rate with at most ten decimals and fifteen digits, like 0.9240.");
	}
	return ok(rate);
}

/** The amount in the other currency, rounded half up (away from zero) to its smallest unit. Requires a rate above zero. */
export function convert(amount: MinorUnits, from: CurrencyCode, to: CurrencyCode, rate: Decimal): Result<MinorUnits> {
	if (rate.digits <= 0n) throw new Error("a rate of exchange is above zero");
	const fine = BigInt(amount) * rate.digits * 10n ** BigInt(minorDigits(to));
	const converted = dividedHalfUp(fine, 10n ** BigInt(rate.places + minorDigits(from)));
	const limit = BigInt(LARGEST_TYPED_MINOR);
	if (converted > limit || converted < -limit) {
		return refuse(
			"amount-too-large",
			`At this rate the amount is larger than ${formatMoney(minor(limit), to)}: check the rate and the amount.`,
		);
	}
	return ok(minor(converted));
}

/** Whether the amount converts to whole units of the other currency, so that nothing of it is rounded. */
export const convertsExactly = (amount: MinorUnits, from: CurrencyCode, to: CurrencyCode, rate: Decimal): boolean =>
	(BigInt(amount) * rate.digits * 10n ** BigInt(minorDigits(to))) % 10n ** BigInt(rate.places + minorDigits(from)) === 0n;

/** So many per cent of an amount, rounded half up: tax of 21 on 155.20 is 32.59. `percent` is decimal text. */
export function percentOf(amount: MinorUnits, percent: Decimal): MinorUnits {
	return minor(dividedHalfUp(BigInt(amount) * percent.digits, 100n * 10n ** BigInt(percent.places)));
}
