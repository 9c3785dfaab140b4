import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decimal } from "@/lib/core/decimals";
import { convert, parseRate, percentOf } from "@/lib/money/exchange";
import { landed, POTS, type PurchaseToLand } from "@/lib/money/landed";
import { costOfUse, type LineUse, leftOfLine } from "@/lib/money/lineUse";
import { LARGEST_TYPED_MINOR, minor, sumMinor } from "@/lib/money/money";

const amount = (max: number) => fc.integer({ min: 0, max }).map(minor);
const pot = fc.record({
	minor: amount(100_000),
	in: fc.constantFrom("purchase" as const, "shop" as const),
	by: fc.constantFrom("value" as const, "weight" as const),
});
const purchase: fc.Arbitrary<PurchaseToLand> = fc
	.record({
		currency: fc.constantFrom("EUR" as const, "USD" as const, "JPY" as const, "KWD" as const),
		rate: fc.integer({ min: 1, max: 50_000 }).map((digits) => ({ digits: BigInt(digits), places: 4 })),
		lines: fc.array(fc.record({ net: amount(1_000_000), weightGrams: fc.integer({ min: 0, max: 50_000 }) }), {
			minLength: 1,
			maxLength: 12,
		}),
		pots: fc.record({ discount: pot, freight: pot, duty: pot, handling: pot, tax: pot }, { requiredKeys: [] }),
	})
	.map((drawn) => ({ ...drawn, shopCurrency: "EUR" as const, lines: drawn.lines.map((line, place) => ({ ...line, id: `l${place}` })) }));

const order = (changes: Partial<PurchaseToLand> = {}): PurchaseToLand => ({
	shopCurrency: "EUR",
	currency: "EUR",
	rate: decimal("1"),
	lines: [
		{ id: "a", net: minor(400), weightGrams: 100 },
		{ id: "b", net: minor(100), weightGrams: 300 },
	],
	pots: {},
	...changes,
});
const codeOf = (changes: Partial<PurchaseToLand>) => {
	const result = landed(order(changes));
	return result.ok ? "landed" : result.error.code;
};

describe("a purchase on the bench", () => {
	it("lands at what was paid, to the last unit, line by line and column by column", () => {
		fc.assert(
			fc.property(purchase, (bought) => {
				const result = landed(bought);
				if (!result.ok) throw new Error(result.error.say);
				const { lines, total } = result.value;
				for (const line of lines) expect(line.landed).toBe(line.net - line.discount + line.freight + line.duty + line.handling + line.tax);
				for (const column of ["net", "landed", ...POTS] as const) expect(total[column]).toBe(sumMinor(lines.map((line) => line[column])));
				expect(total.landed).toBe(total.net - total.discount + total.freight + total.duty + total.handling + total.tax);
				for (const kind of POTS) {
					const given = bought.pots[kind];
					if (given === undefined) expect(total[kind]).toBe(0);
					else if (given.in === "shop" || bought.currency === "EUR") expect(total[kind]).toBe(given.minor);
				}
				expect(landed({ ...bought, paid: total.landed })).toEqual(result);
			}),
			{ seed: 18, numRuns: 300 },
		);
	});

	it("shares freight by weight where that is asked, and by value where it is not", () => {
		const freight = (by: "value" | "weight") => landed(order({ pots: { freight: { minor: minor(400), in: "purchase", by } } }));
		expect(freight("value")).toMatchObject({ value: { lines: [{ freight: 320 }, { freight: 80 }] } });
		expect(freight("weight")).toMatchObject({ value: { lines: [{ freight: 100 }, { freight: 300 }] } });
	});

	it("shares the freight of gifts evenly", () => {
		const gifts = [
			{ id: "a", net: minor(0) },
			{ id: "b", net: minor(0) },
			{ id: "c", net: minor(0) },
		];
		expect(landed(order({ lines: gifts, pots: { freight: { minor: minor(100), in: "purchase", by: "value" } } }))).toMatchObject({
			value: { lines: [{ landed: 34 }, { landed: 33 }, { landed: 33 }] },
		});
	});

	it("is refused without lines, with a line or pot below zero, with a line not weighed, and when it does not add up", () => {
		const freight = { minor: minor(5), in: "purchase", by: "weight" } as const;
		expect(codeOf({ lines: [] })).toBe("purchase-empty");
		expect(codeOf({ lines: [{ id: "a", net: minor(-1) }] })).toBe("line-below-zero");
		expect(codeOf({ pots: { discount: { ...freight, minor: minor(-5) } } })).toBe("pot-below-zero");
		expect(codeOf({ lines: [{ id: "a", net: minor(1) }], pots: { freight } })).toBe("line-not-weighed");
		expect(codeOf({ paid: minor(500) })).toBe("landed");
		expect(codeOf({ paid: minor(499) })).toBe("purchase-does-not-add-up");
	});

	it("that does not add up says by how much and what to do", () => {
		const short = landed(order({ paid: minor(512) }));
		expect(short.ok === false && short.error.say).toBe(
			"The lines and costs come to 5.00 EUR, but 5.12 EUR was paid. Enter the missing 0.12 EUR, as handling if the bank took it, or correct the line that is wrong.",
		);
		expect(short.ok === false && short.error.facts).toEqual({ paid: 512, sum: 500, difference: 12 });
		const over = landed(order({ paid: minor(480) }));
		expect(over.ok === false && over.error.say).toContain("Take off 0.20 EUR, as discount");
	});

	it("at a rate that cannot be is refused", () => {
		const huge = { currency: "USD" as const, rate: decimal("1000000"), lines: [{ id: "a", net: minor(LARGEST_TYPED_MINOR) }] };
		expect(codeOf(huge)).toBe("amount-too-large");
		expect(
			codeOf({
				...huge,
				lines: [{ id: "a", net: minor(1) }],
				pots: { freight: { minor: minor(LARGEST_TYPED_MINOR), in: "purchase", by: "value" } },
			}),
		).toBe("amount-too-large");
	});
});

describe("money of another country", () => {
	it.each([
		[1840, "USD", "EUR", "0.9240", 1700],
		[2700, "USD", "EUR", "0.9240", 2495],
		[1650, "USD", "EUR", "0.9240", 1525],
		[1, "USD", "EUR", "0.5", 1],
		[-1, "USD", "EUR", "0.5", -1],
		[10000, "JPY", "EUR", "0.0061", 6100],
		[100, "EUR", "JPY", "163.5", 164],
		[1000, "KWD", "EUR", "3.01", 301],
	] as const)("%i minor units of %s in %s at %s are %i, half a unit going up", (from, currency, to, rate, result) => {
		expect(convert(minor(from), currency, to, decimal(rate))).toEqual({ ok: true, value: result });
	});

	it.each(["", "0", "-0.9", "one", "1e3", "0.12345678901", "1".repeat(17)])("%s is no rate", (typed) => {
		expect(parseRate(typed).ok).toBe(false);
	});

	it("tax is rounded half up from the exact product", () => {
		expect(percentOf(minor(15520), decimal("21"))).toBe(3259);
		expect(percentOf(minor(50), decimal("1"))).toBe(1);
		expect(percentOf(minor(-50), decimal("1"))).toBe(-1);
		expect(percentOf(minor(1000), decimal("19.6"))).toBe(196);
		expect(parseRate("0,9240")).toEqual({ ok: true, value: { digits: 9240n, places: 4 } });
		expect(() => convert(minor(1), "USD", "EUR", decimal("0"))).toThrow("above zero");
	});
});

describe("a line used piece by piece", () => {
	const line = fc.record({ landed: amount(1_000_000), count: fc.integer({ min: 1, max: 200 }) });

	it("charges exactly its landed cost once the last piece is used, in whatever portions", () => {
		fc.assert(
			fc.property(line, fc.array(fc.integer({ min: 1, max: 40 }), { maxLength: 300 }), (bought, portions) => {
				const uses: LineUse[] = [];
				let left = bought.count;
				for (const portion of [...portions, bought.count]) {
					if (left === 0) break;
					const count = Math.min(portion, left);
					const charged = costOfUse(bought, uses, count);
					if (!charged.ok) throw new Error(charged.error.say);
					uses.push({ count, charged: charged.value });
					left -= count;
					const rest = leftOfLine(bought, uses);
					expect(rest.count).toBe(left);
					expect(sumMinor([...uses.map((use) => use.charged), rest.value])).toBe(bought.landed);
					// Never more than half a unit away from the exact share.
					const used = bought.count - left;
					const off = BigInt(sumMinor(uses.map((use) => use.charged))) * BigInt(bought.count) - BigInt(bought.landed) * BigInt(used);
					expect(2n * (off < 0n ? -off : off) <= BigInt(bought.count)).toBe(true);
				}
				expect(leftOfLine(bought, uses)).toEqual({ count: 0, value: 0 });
			}),
			{ seed: 19, numRuns: 200 },
		);
	});

	it("still adds up when an earlier use was entered in error and struck out", () => {
		const bought = { landed: minor(100), count: 3 };
		const take = (before: readonly LineUse[]) => {
			const charged = costOfUse(bought, before, 1);
			if (!charged.ok) throw new Error(charged.error.say);
			return { count: 1, charged: charged.value };
		};
		const first = take([]);
		const second = take([first]);
		expect([first.charged, second.charged]).toEqual([33, 34]);
		// The first is struck out: the second stands, and two more are used.
		const third = take([second]);
		const fourth = take([second, third]);
		expect(sumMinor([second, third, fourth].map((use) => use.charged))).toBe(100);
	});

	it("never charges below zero, when those that stand were rounded up", () => {
		const bought = { landed: minor(3), count: 8 };
		const take = (before: readonly LineUse[]): LineUse => {
			const charged = costOfUse(bought, before, 1);
			if (!charged.ok) throw new Error(charged.error.say);
			return { count: 1, charged: charged.value };
		};
		const uses: LineUse[] = [];
		for (let piece = 0; piece < 8; piece++) uses.push(take(uses));
		// By hand: 3/8, 6/8, 9/8, ... rounded half up are 0 1 1 2 2 2 3 3.
		expect(uses.map((use) => use.charged)).toEqual([0, 1, 0, 1, 0, 0, 1, 0]);
		const standing = uses.filter((_, index) => [1, 3, 6].includes(index));
		for (let piece = 0; piece < 5; piece++) standing.push(take(standing));
		expect(standing.map((use) => use.charged)).toEqual([1, 1, 1, 0, 0, 0, 0, 0]);
	});

	it("whatever is used and struck out, no charge is below zero, and all of it used is the landed cost to the last unit", () => {
		// Each round uses some, in portions, and then strikes out whatever is marked, as far as it stands.
		const round = fc.record({
			portions: fc.array(fc.oneof(fc.constant(1), fc.integer({ min: 1, max: 5 })), { maxLength: 24 }),
			struck: fc.array(fc.boolean(), { minLength: 24, maxLength: 24 }),
		});
		// Few minor units for many pieces: there the rounding tells most.
		const cheap = fc.record({ landed: fc.oneof(amount(12), amount(1_000_000)), count: fc.integer({ min: 1, max: 24 }) });
		fc.assert(
			fc.property(cheap, fc.array(round, { maxLength: 4 }), (bought, rounds) => {
				let standing: LineUse[] = [];
				const use = (wanted: number) => {
					const count = Math.min(wanted, leftOfLine(bought, standing).count);
					if (count === 0) return;
					const charged = costOfUse(bought, standing, count);
					if (!charged.ok) throw new Error(charged.error.say);
					expect(charged.value).toBeGreaterThanOrEqual(0);
					standing.push({ count, charged: charged.value });
					expect(leftOfLine(bought, standing).value).toBeGreaterThanOrEqual(0);
				};
				for (const { portions, struck } of rounds) {
					portions.forEach(use);
					standing = standing.filter((_, index) => !struck[index]);
				}
				use(bought.count);
				expect(sumMinor(standing.map((each) => each.charged))).toBe(bought.landed);
			}),
			{ seed: 23, numRuns: 500 },
		);
	});

	it("never gives more than was bought", () => {
		const bought = { landed: minor(100), count: 3 };
		const codeOfUse = (before: readonly LineUse[], taking: number) => {
			const cost = costOfUse(bought, before, taking);
			return cost.ok ? "used" : `${cost.error.code}: ${cost.error.say}`;
		};
		expect(codeOfUse([{ count: 2, charged: minor(67) }], 2)).toBe(
			"use-more-than-left: Only 1 of 3 are left: use 1 or fewer, or correct an earlier use.",
		);
		expect(codeOfUse([{ count: 3, charged: minor(100) }], 1)).toContain("Nothing of this line is left");
		for (const wrong of [0, -1, 0.5, Number.NaN]) expect(codeOfUse([], wrong)).toContain("use-not-whole");
		expect(() => costOfUse({ landed: minor(1), count: 0 }, [], 1)).toThrow("at least one");
		expect(() => leftOfLine(bought, [{ count: 4, charged: minor(100) }])).toThrow("4 used of a line of 3");
	});
});
