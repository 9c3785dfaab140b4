// What a bank took for a foreign purchase is the sum converted once; the book converts figure by figure. Both are right,
// and the lines add up to what was paid. Oracle: whole-number arithmetic of the test's own.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decimal } from "@/lib/core/decimals";
import { landed, type PurchaseToLand } from "@/lib/money/landed";
import { minor } from "@/lib/money/money";

const inPurchase = (amount: number) => ({ minor: minor(amount), in: "purchase", by: "value" }) as const;
const here = (amount: number) => ({ minor: minor(amount), in: "shop", by: "value" }) as const;

/** Common practice, no source: 131.19 USD at 0.8617 leave the account as 113.05 EUR, and figure by figure they are 113.06. */
const fromAbroad = (paid: number): PurchaseToLand => ({
	shopCurrency: "EUR",
	currency: "USD",
	rate: decimal("0.8617"),
	lines: [
		{ id: "a", net: minor(4500) },
		{ id: "b", net: minor(3170) },
		{ id: "c", net: minor(1999) },
	],
	pots: { discount: inPurchase(400), freight: inPurchase(3850), duty: here(513), handling: here(700), tax: here(2870) },
	paid: minor(paid),
});

describe("what was paid beside the sum of what was converted figure by figure", () => {
	it("is taken where rounding made the difference: the dearest line bears it, and the lines add up to what was paid", () => {
		const land = landed(fromAbroad(15388));
		if (!land.ok) throw new Error(land.error.say);
		expect(land.value.lines.map(({ rounding }) => rounding)).toEqual([-1, 0, 0]);
		expect(land.value.lines.reduce((sum, line) => sum + line.landed, 0)).toBe(15388);
		expect(land.value.total).toMatchObject({ rounding: -1, landed: 15388 });
	});

	it("is taken up to half a cent for each figure that was rounded, and no further", () => {
		// Five figures were converted, and none of them comes out even: two and a half cents.
		const taken = [15386, 15387, 15388, 15389, 15390, 15391, 15392].map((paid) => landed(fromAbroad(paid)).ok);
		expect(taken).toEqual([false, true, true, true, true, true, false]);
	});

	it("at home nothing is rounded, so that a cent is a mistake", () => {
		expect(landed({ ...fromAbroad(14332), currency: "EUR", rate: decimal("1") })).toMatchObject({
			ok: false,
			error: { facts: { sum: 17202 } },
		});
		expect(landed({ ...fromAbroad(17201), currency: "EUR", rate: decimal("1") }).ok).toBe(false);
		expect(landed({ ...fromAbroad(17202), currency: "EUR", rate: decimal("1") }).ok).toBe(true);
	});

	it("a figure that converts to whole cents leaves no room for a cent", () => {
		const even = (paid: number) =>
			landed({ ...fromAbroad(paid), rate: decimal("0.5"), lines: [{ id: "a", net: minor(1000) }], pots: { freight: inPurchase(200) } });
		expect([599, 600, 601].map((paid) => even(paid).ok)).toEqual([false, true, false]);
	});

	it("of two lines that landed alike the earlier one bears it", () => {
		const alike = landed({
			...fromAbroad(1011),
			rate: decimal("0.5"),
			lines: [
				{ id: "a", net: minor(1011) },
				{ id: "b", net: minor(1011) },
			],
			pots: {},
		});
		expect(alike).toMatchObject({
			value: {
				lines: [
					{ landed: 505, rounding: -1 },
					{ landed: 506, rounding: 0 },
				],
			},
		});
	});

	it("whatever was bought abroad, the paper's sum converted once is taken, and the lines come to it to the cent", () => {
		const amount = fc.integer({ min: 0, max: 500_000 });
		fc.assert(
			fc.property(
				fc.array(amount, { minLength: 1, maxLength: 15 }),
				amount,
				fc.integer({ min: 0, max: 100 }),
				fc.integer({ min: 1000, max: 90_000 }),
				amount,
				(nets, freight, discountPercent, rate, tax) => {
					const goods = nets.reduce((sum, net) => sum + net, 0);
					const discount = Math.floor((goods * discountPercent) / 100);
					// Half up, in whole numbers: (x * rate / 10000) is (2 * x * rate + 10000) / 20000, cut off.
					const paid = Math.floor((2 * (goods - discount + freight) * rate + 10_000) / 20_000) + tax;
					const land = landed({
						shopCurrency: "EUR",
						currency: "USD",
						rate: { digits: BigInt(rate), places: 4 },
						lines: nets.map((net, place) => ({ id: String(place), net: minor(net) })),
						pots: { discount: inPurchase(discount), freight: inPurchase(freight), tax: here(tax) },
						paid: minor(paid),
					});
					// A few cents' worth of goods cannot bear a cent less each; whoever sells those converts nothing.
					fc.pre(paid - tax > 100);
					if (!land.ok) throw new Error(land.error.say);
					const { lines } = land.value;
					expect(lines.reduce((sum, line) => sum + line.landed, 0)).toBe(paid);
					expect(lines.filter(({ rounding }) => rounding !== 0).length).toBeLessThanOrEqual(1);
					for (const line of lines)
						expect(line.landed).toBe(line.net - line.discount + line.freight + line.duty + line.handling + line.tax + line.rounding);
				},
			),
			{ seed: 44, numRuns: 500 },
		);
	});
});
