// What the lines of a paper for the owner come to: net, tax by rate, total. Pure.
//
// Tax is computed once for each rate, on the sum of the nets of that rate, and rounded half up there and nowhere else: nothing
// rounds twice, and the order of the lines makes no difference. The total is the sum of the figures shown (rule 6).
import { compareDecimals, decimalText } from "@/lib/core/decimals";
import { percentOf } from "@/lib/money/exchange";
import { type MinorUnits, sumMinor } from "@/lib/money/money";
import { percentOfText } from "@/lib/owner/percent";

/** A line before tax; below nought for what is taken off. `taxPercent` is decimal text, "" where no tax is charged. */
export type TaxedLine = { readonly net: MinorUnits; readonly taxPercent: string };

/** One rate: what is taxed at it, and the tax on that. */
export type TaxOfRate = { readonly percent: string; readonly net: MinorUnits; readonly tax: MinorUnits };

export type Totals = {
	readonly net: MinorUnits;
	/** By rate, lowest first. Lines without tax are in none of them. */
	readonly taxes: readonly TaxOfRate[];
	/** The net of lines on which no tax is charged. */
	readonly untaxed: MinorUnits;
	readonly tax: MinorUnits;
	readonly total: MinorUnits;
};

/** Net, tax by rate, and total of the lines. Requires percentages as `parsePercent` gives them. */
export function totalsOf(lines: readonly TaxedLine[]): Totals {
	const netsOf = new Map<string, MinorUnits[]>();
	for (const { net, taxPercent } of lines) {
		// 7.70 and 7.7 are one rate, however they were written down.
		const rate = taxPercent === "" ? "" : decimalText(percentOfText(taxPercent));
		netsOf.set(rate, [...(netsOf.get(rate) ?? []), net]);
	}
	const taxes = [...netsOf]
		.filter(([percent]) => percent !== "")
		.sort(([a], [b]) => compareDecimals(percentOfText(a), percentOfText(b)))
		.map(([percent, nets]): TaxOfRate => {
			const net = sumMinor(nets);
			return { percent, net, tax: percentOf(net, percentOfText(percent)) };
		});
	const net = sumMinor(lines.map((line) => line.net));
	const tax = sumMinor(taxes.map((rate) => rate.tax));
	return { net, taxes, untaxed: sumMinor(netsOf.get("") ?? []), tax, total: sumMinor([net, tax]) };
}
