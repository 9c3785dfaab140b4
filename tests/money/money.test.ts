import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { currencies, currencyName, isCurrency, minorDigits, parseCurrency } from "@/lib/money/currency";
import {
	add,
	decimalAmount,
	formatAmount,
	formatMoney,
	LARGEST_TYPED_MINOR,
	type MinorUnits,
	minor,
	money,
	parseAmount,
	subtract,
	sum,
	sumMinor,
} from "@/lib/money/money";

const typable = fc.integer({ min: 0, max: LARGEST_TYPED_MINOR }).map(minor);

describe("money", () => {
	it("is a whole number of the smallest unit, within the exact range", () => {
		for (const wrong of [0.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53, -(2 ** 53), 2n ** 60n])
			expect(() => minor(wrong)).toThrow("not an exact amount");
		expect(Object.is(minor(-0), 0)).toBe(true);
		expect(minor(12n)).toBe(12);
	});

	it("a sum that leaves the exact range is a bug and not a rounded amount", () => {
		const huge = minor(Number.MAX_SAFE_INTEGER);
		expect(() => sumMinor([huge, minor(1)])).toThrow("not an exact amount");
		expect(sumMinor([huge, huge, minor(-Number.MAX_SAFE_INTEGER)])).toBe(Number.MAX_SAFE_INTEGER);
		expect(sumMinor([])).toBe(0);
	});

	it("euros are not added to dollars", () => {
		const [euros, dollars] = [money(100, "EUR"), money(100, "USD")];
		expect(add(euros, money(50, "EUR"))).toEqual(money(150, "EUR"));
		expect(subtract(euros, money(150, "EUR"))).toEqual(money(-50, "EUR"));
		expect(sum("EUR", [euros, euros])).toEqual(money(200, "EUR"));
		// @ts-expect-error two currencies
		expect(() => add(euros, dollars)).toThrow("cannot add USD to EUR");
		// @ts-expect-error two currencies
		expect(() => subtract(euros, dollars)).toThrow("cannot add USD to EUR");
		// @ts-expect-error two currencies
		expect(() => sum("EUR", [euros, dollars])).toThrow("cannot add USD to EUR");
	});

	it("a plain number is no amount, and neither are minutes", () => {
		// @ts-expect-error a number has not been found exact yet
		const unread: MinorUnits = 12;
		expect(unread).toBe(12);
	});
});

describe("an amount that is written", () => {
	it.each([
		[123450, "EUR", "1,234.50 EUR", "1234.50"],
		[5, "EUR", "0.05 EUR", "0.05"],
		[-5, "EUR", "-0.05 EUR", "-0.05"],
		[-123456789, "USD", "-1,234,567.89 USD", "-1234567.89"],
		[0, "EUR", "0.00 EUR", "0.00"],
		[1234, "JPY", "1,234 JPY", "1234"],
		[1234567, "KWD", "1,234.567 KWD", "1234.567"],
		[12345, "CLF", "1.2345 CLF", "1.2345"],
	] as const)("%i minor units of %s is %s", (amount, currency, people, field) => {
		expect(formatMoney(minor(amount), currency)).toBe(people);
		expect(formatAmount(minor(amount), currency)).toBe(people.slice(0, -4));
		expect(decimalAmount(minor(amount), currency)).toBe(field);
	});

	it("is read back, from a field and from a paper, in every currency", () => {
		fc.assert(
			fc.property(typable, fc.constantFrom(...currencies()), (amount, currency) => {
				expect(parseAmount(decimalAmount(amount, currency), currency)).toEqual({ ok: true, value: amount });
				expect(parseAmount(formatMoney(amount, currency), currency)).toEqual({ ok: true, value: amount });
				const below = minor(-amount);
				expect(parseAmount(decimalAmount(below, currency), currency, { mayBeNegative: true })).toEqual({ ok: true, value: below });
			}),
			{ seed: 10, numRuns: 500 },
		);
	});
});

describe("an amount that is typed", () => {
	it.each([
		["84.5", "EUR", 8450],
		["84,5", "EUR", 8450],
		["84", "EUR", 8400],
		["1,234.50", "EUR", 123450],
		["1.234,50", "EUR", 123450],
		["1 234,50", "EUR", 123450],
		["1'234.50", "EUR", 123450],
		["1\u2019234.50", "EUR", 123450],
		["1\u202f234,50", "EUR", 123450],
		["1,234,567", "EUR", 123456700],
		["1.234.567,8", "EUR", 123456780],
		["EUR 84.50", "EUR", 8450],
		["84.50eur", "EUR", 8450],
		["\u20ac 84.50", "EUR", 8450],
		["84,50 \u20ac", "EUR", 8450],
		["$1,234.50", "USD", 123450],
		[".5", "EUR", 50],
		["007", "EUR", 700],
		["0.123", "KWD", 123],
		["1.234", "KWD", 1234],
		["1,234", "JPY", 1234],
		["1.234", "JPY", 1234],
		["9,999,999,999.99", "EUR", LARGEST_TYPED_MINOR],
	] as const)("%s in %s is %i minor units", (typed, currency, amount) => {
		expect(parseAmount(typed, currency)).toEqual({ ok: true, value: amount });
	});

	it.each([
		["", "EUR", "amount-missing"],
		["EUR", "EUR", "amount-missing"],
		["abc", "EUR", "amount-unreadable"],
		["12 apples", "EUR", "amount-unreadable"],
		["1,23,456.00", "EUR", "amount-unreadable"],
		["1,234,50", "EUR", "amount-unreadable"],
		["1.234.50", "EUR", "amount-unreadable"],
		["1,234.567.8", "EUR", "amount-unreadable"],
		["84.", "EUR", "amount-unreadable"],
		["1e3", "EUR", "amount-unreadable"],
		["EUR 5 EUR", "EUR", "amount-unreadable"],
		["5".repeat(61), "EUR", "amount-unreadable"],
		["84.567", "KWD", null],
		["84.5678", "EUR", "amount-too-many-decimals"],
		["0.001", "EUR", "amount-too-many-decimals"],
		["84.5", "JPY", "amount-too-many-decimals"],
		["1,234", "EUR", "amount-two-ways"],
		["1.234", "EUR", "amount-two-ways"],
		["1,234", "KWD", "amount-two-ways"],
		["-5", "EUR", "amount-negative"],
		["\u22125", "EUR", "amount-negative"],
		["USD 5", "EUR", "amount-other-currency"],
		["5usd", "EUR", "amount-other-currency"],
		["USD five", "EUR", "amount-unreadable"],
		// Words that begin or end with the letters of a currency, or are them: CHE, TOP, ALL, TRY.
		["cheap", "EUR", "amount-unreadable"],
		["the top", "EUR", "amount-unreadable"],
		["all", "EUR", "amount-unreadable"],
		["try", "EUR", "amount-unreadable"],
		["10,000,000,000.00", "EUR", "amount-too-large"],
	] as const)("%s in %s: %s", (typed, currency, code) => {
		const read = parseAmount(typed, currency);
		expect(read.ok ? null : read.error.code).toBe(code);
		if (!read.ok) expect(read.error.say).toMatch(/\.$/);
	});

	it("of another currency is to be converted; what else could be done is said where there is a purchase", () => {
		const read = parseAmount("USD 5", "EUR");
		expect(read.ok === false && read.error.say).toBe("This amount is kept in EUR: convert the USD first.");
	});

	it("what can be read in two ways is answered with both", () => {
		const read = parseAmount("1,234", "EUR");
		expect(read.ok === false && read.error.say).toBe("1,234 can be read in two ways: write 1234 or 1.23.");
	});

	it("no text whatever gives anything but an exact amount or a sentence", () => {
		const piece = fc.constantFrom("1", "23", "456", ".", ",", "'", " ", "-", "EUR", "\u20ac", "x", "e");
		fc.assert(
			fc.property(fc.array(piece, { maxLength: 8 }), fc.constantFrom(...currencies()), (pieces, currency) => {
				const read = parseAmount(pieces.join(""), currency, { mayBeNegative: true });
				if (read.ok) expect(Number.isSafeInteger(read.value)).toBe(true);
				else expect(read.error.say.length).toBeGreaterThan(20);
			}),
			{ seed: 11, numRuns: 3000 },
		);
	});
});

describe("currencies", () => {
	it("money is kept in currencies, not in metals, test codes or words", () => {
		expect(["EUR", "KWD", "XAU", "XTS", "toString", "eur", ""].map(isCurrency)).toEqual([true, true, false, false, false, false, false]);
		expect(parseCurrency(" gbp ")).toEqual({ ok: true, value: "GBP" });
		const read = parseCurrency("pounds");
		expect(read.ok === false && read.error.code).toBe("currency-unknown");
		expect(currencyName("CHF")).toBe("Swiss Franc");
	});

	it("each has its digits", () => {
		for (const code of currencies()) expect([0, 2, 3, 4]).toContain(minorDigits(code));
	});
});
