// Where the money of a purchase is: used on machines, sent back, or still in stock and post. Pure. The three are what was paid.

import { type Credited, sentBack } from "@/lib/credits/rules";
import { leftOfLine } from "@/lib/money/lineUse";
import { type MinorUnits, minor, sumMinor } from "@/lib/money/money";

export type LineWithUses = {
	readonly count: number;
	readonly landedMinor: number;
	readonly uses: readonly {
		readonly id: string;
		readonly kind: "used" | "returned" | "void";
		readonly count: number;
		readonly amountMinor: number;
	}[];
};

export type WhereItWent = {
	readonly used: MinorUnits;
	/** What was sent back cost so much: what the seller gave for it, what is awaited, and what stays a cost. */
	readonly back: { readonly cost: MinorUnits; readonly credited: MinorUnits; readonly awaited: MinorUnits; readonly kept: MinorUnits };
	/** In stock or in the post. */
	readonly left: MinorUnits;
};

export function whereItWent(lines: readonly LineWithUses[], credits: readonly Credited[]): WhereItWent {
	const uses = lines.flatMap((line) => line.uses);
	const cost = (kind: "used" | "returned") => uses.filter((use) => use.kind === kind).map((use) => minor(use.amountMinor));
	const returns = uses
		.filter(({ kind }) => kind === "returned")
		.map(({ id, amountMinor }) => sentBack({ id, cost: minor(amountMinor) }, credits));
	const left = lines.map((line) => {
		const standing = line.uses.filter(({ kind }) => kind !== "void");
		const charged = standing.map((use) => ({ count: use.count, charged: minor(use.amountMinor) }));
		return leftOfLine({ landed: minor(line.landedMinor), count: line.count }, charged).value;
	});
	return {
		used: sumMinor(cost("used")),
		back: {
			cost: sumMinor(cost("returned")),
			credited: sumMinor(returns.map(({ credited }) => credited)),
			awaited: sumMinor(returns.map(({ awaited }) => awaited)),
			kept: sumMinor(returns.map(({ kept }) => kept)),
		},
		left: sumMinor(left),
	};
}
