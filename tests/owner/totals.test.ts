import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { minor } from "@/lib/money/money";
import { parsePercent } from "@/lib/owner/percent";
import { type TaxedLine, totalsOf } from "@/lib/owner/totals";

const line = (net: number, taxPercent: string): TaxedLine => ({ net: minor(net), taxPercent });

/** Half up, away from zero, by long division on text: shares nothing with the program. `percent` is decimal text. */
function taxByHand(net: number, percent: string): number {
	const [whole = "0", part = ""] = percent.split(".");
	const scale = 100n * BigInt(`1${"0".repeat(part.length)}`);
	const product = BigInt(Math.abs(net)) * BigInt(whole + part);
	const cut = Number(product / scale);
	const rounded = 2n * (product % scale) >= scale ? cut + 1 : cut;
	return net < 0 ? 0 - rounded : rounded;
}

const RATES = ["", "0", "7.7", "7.70", "9", "21", "25", "5.5", "33.3333"];
const someLines = fc.array(
	fc.record({ net: fc.integer({ min: -5_000_000, max: 5_000_000 }).map(minor), taxPercent: fc.constantFrom(...RATES) }),
	{
		minLength: 1,
		maxLength: 40,
	},
);
const ofSameRate = (a: string, b: string) => (a === "" || b === "" ? a === b : Number(a) === Number(b));

describe("what a paper comes to", () => {
	it("is the same in whatever order its lines stand", () => {
		fc.assert(
			fc.property(
				someLines.chain((lines) => fc.tuple(fc.constant(lines), fc.shuffledSubarray(lines, { minLength: lines.length }))),
				([lines, shuffled]) => {
					expect(totalsOf(shuffled)).toEqual(totalsOf(lines));
				},
			),
		);
	});

	it("is the sum of the figures that are shown", () => {
		fc.assert(
			fc.property(someLines, (lines) => {
				const { net, taxes, untaxed, tax, total } = totalsOf(lines);
				expect(net).toBe(lines.reduce((sum, one) => sum + one.net, 0));
				expect(taxes.reduce((sum, rate) => sum + rate.net, 0) + untaxed).toBe(net);
				expect(taxes.reduce((sum, rate) => sum + rate.tax, 0)).toBe(tax);
				expect(net + tax).toBe(total);
			}),
		);
	});

	it("is taxed once a rate, on what all lines of the rate come to, and nothing rounds twice", () => {
		fc.assert(
			fc.property(someLines, (lines) => {
				for (const { percent, net, tax } of totalsOf(lines).taxes) {
					const nets = lines.filter(({ taxPercent }) => ofSameRate(taxPercent, percent)).map((one) => one.net as number);
					expect(net).toBe(nets.reduce((sum, one) => sum + one, 0));
					expect(tax).toBe(taxByHand(net, percent));
				}
			}),
		);
	});

	it("is mirrored when everything is given back", () => {
		fc.assert(
			fc.property(someLines, (lines) => {
				const back = totalsOf(lines.map(({ net, taxPercent }) => ({ net: minor(-net), taxPercent })));
				expect(back.total).toBe(0 - totalsOf(lines).total || 0);
			}),
		);
	});

	it("has no tax where the shop charges none, and a rate of nothing is not the same as none", () => {
		expect(totalsOf([line(12_345, ""), line(-45, "")])).toEqual({ net: 12_300, taxes: [], untaxed: 12_300, tax: 0, total: 12_300 });
		expect(totalsOf([line(100, "0"), line(100, "")]).taxes).toEqual([{ percent: "0", net: 100, tax: 0 }]);
	});

	it("takes a discount off before it is taxed", () => {
		// 200.00 less 20.00 at 7.7 %: 13.86, by hand.
		expect(totalsOf([line(20_000, "7.7"), line(-2000, "7.70")])).toMatchObject({
			taxes: [{ percent: "7.7", net: 18_000, tax: 1386 }],
			total: 19_386,
		});
	});
});

describe("a percentage", () => {
	it.each([
		["21", "21"],
		["7.7", "7.7"],
		["7,70", "7.7"],
		[" 21 % ", "21"],
		["0", "0"],
		["0.0", "0"],
		["", ""],
	])("%j is read as %j", (typed, read) => expect(parsePercent(typed)).toEqual({ ok: true, value: read }));

	it.each(["-5", "101", "abc", "%", "1e1", "7.77777", "1,000.5", "x".repeat(10_000)])("%j is refused with a sentence", (typed) => {
		const read = parsePercent(typed);
		expect(read.ok ? "" : read.error.say).toMatch(/^[A-Z].+\.$/);
	});
});
