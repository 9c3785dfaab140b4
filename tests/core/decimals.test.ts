import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	addDecimals,
	compareDecimals,
	type Decimal,
	decimal,
	decimalFrom,
	decimalText,
	dividedHalfUp,
	dividedUp,
	multiplyDecimals,
	shortest,
	subtractDecimals,
	timesTenTo,
} from "@/lib/core/decimals";

const anyDecimal: fc.Arbitrary<Decimal> = fc.record({
	digits: fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }),
	places: fc.integer({ min: 0, max: 6 }),
});

describe("a decimal number", () => {
	it("comes back from its text with all its places", () => {
		fc.assert(
			fc.property(anyDecimal, (value) => {
				expect(decimalFrom(decimalText(value))).toEqual(value);
				expect(compareDecimals(shortest(value), value)).toBe(0);
			}),
			{ seed: 7 },
		);
		expect(decimalText(decimal("0,9240"))).toBe("0.9240");
		expect(decimalText(decimal("-0.05"))).toBe("-0.05");
		expect(decimalText(shortest(decimal("2.50")))).toBe("2.5");
	});

	it.each(["", "1e3", "1,234.5", "0x10", ".5", "5.", "--1", "1 2", "NaN", "9".repeat(41)])("%s is none", (text) => {
		expect(decimalFrom(text)).toBeNull();
		expect(() => decimal(text)).toThrow("not a decimal number");
	});

	it("is added, taken away, multiplied and compared exactly", () => {
		fc.assert(
			fc.property(anyDecimal, anyDecimal, (a, b) => {
				// Both as whole millionths of millionths: the plain arithmetic of whole numbers.
				const fine = (value: Decimal) => value.digits * 10n ** BigInt(12 - value.places);
				expect(fine(addDecimals(a, b))).toBe(fine(a) + fine(b));
				expect(fine(subtractDecimals(a, b))).toBe(fine(a) - fine(b));
				expect(fine(multiplyDecimals(a, b)) * 10n ** 12n).toBe(fine(a) * fine(b));
				expect(Math.sign(compareDecimals(a, b))).toBe(fine(a) < fine(b) ? -1 : fine(a) > fine(b) ? 1 : 0);
			}),
			{ seed: 8 },
		);
	});

	it("moves its point", () => {
		expect(decimalText(timesTenTo(decimal("1.25"), 1))).toBe("12.5");
		expect(decimalText(timesTenTo(decimal("1.25"), 4))).toBe("12500");
		expect(decimalText(timesTenTo(decimal("1.25"), -2))).toBe("0.0125");
	});

	it("is rounded half away from zero, or up", () => {
		expect([5n, 15n, -5n, -15n, 4n, -4n, 6n].map((tenths) => dividedHalfUp(tenths, 10n))).toEqual([1n, 2n, -1n, -2n, 0n, 0n, 1n]);
		expect([0n, 1n, 10n, 11n, -1n, -10n].map((tenths) => dividedUp(tenths, 10n))).toEqual([0n, 1n, 1n, 2n, 0n, -1n]);
		expect(() => dividedHalfUp(1n, 0n)).toThrow("cannot share by 0");
		expect(() => dividedUp(1n, -1n)).toThrow("cannot share by -1");
	});
});
