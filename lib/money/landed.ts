// What each line of a purchase cost once it lay on the bench: its net value and its shares of the pots.
// Pure. The landed lines add up to what was paid, to the last unit.
import type { Decimal } from "@/lib/core/decimals";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { CurrencyCode } from "@/lib/money/currency";
import { convert, convertsExactly } from "@/lib/money/exchange";
import { formatMoney, type MinorUnits, minor, NOTHING, sumMinor } from "@/lib/money/money";
import { spread } from "@/lib/money/spread";

/** The amounts of a purchase that belong to no line, in the order in which they are shown. */
export const POTS = ["discount", "freight", "duty", "handling", "tax"] as const;
export type PotKind = (typeof POTS)[number];

export type Pot = {
	readonly minor: MinorUnits;
	/** In the purchase's currency (on the supplier's paper) or in the shop's (paid here on arrival). */
	readonly in: "purchase" | "shop";
	/** Shared by net value, or by weight. */
	readonly by: "value" | "weight";
};

export type PurchaseLine = {
	readonly id: string;
	/** Price of the whole line before the pots, in the purchase's currency. */
	readonly net: MinorUnits;
	/** Whole grams; needed where a pot is shared by weight. */
	readonly weightGrams?: number | null;
};

export type PurchaseToLand = {
	readonly shopCurrency: CurrencyCode;
	readonly currency: CurrencyCode;
	/** Shop's currency for one unit of the purchase's currency; not used when they are the same. */
	readonly rate: Decimal;
	readonly lines: readonly PurchaseLine[];
	readonly pots: Partial<Readonly<Record<PotKind, Pot>>>;
	/** What left the shop's account in all, when known: the landed lines must add up to it. */
	readonly paid?: MinorUnits | null;
};

/** One line, all amounts in the shop's currency; landed = net - discount + freight + duty + handling + tax + rounding. */
export type LandedLine = {
	readonly id: string;
	readonly net: MinorUnits;
	/** What rounding each converted figure by itself put beside what was paid; on one line at most, perhaps below nought. */
	readonly rounding: MinorUnits;
	readonly landed: MinorUnits;
} & Readonly<Record<PotKind, MinorUnits>>;

export type Landed = {
	readonly lines: readonly LandedLine[];
	/** The sums of the columns; `total.landed` is what was paid. */
	readonly total: Omit<LandedLine, "id">;
};

/**
 * Spreads the pots over the lines by largest remainder, ties to the earlier line. Foreign amounts are converted first,
 * line by line and pot by pot, half up, so that every figure shown is a whole minor unit and the columns add up.
 * Lines that are all worth nothing (or weigh nothing) share a pot evenly.
 *
 * The bank converts the sum, not its figures: what was paid may differ from theirs by half a unit for each figure that had
 * to be rounded. So much is taken as rounding, on the line that landed at most (ties to the earlier line).
 */
export function landed(purchase: PurchaseToLand): Result<Landed> {
	const { lines, shopCurrency } = purchase;
	if (lines.length === 0) return refuse("purchase-empty", "Add at least one line: there is nothing yet to share the costs over.");
	const negative = lines.find((line) => line.net < 0);
	if (negative !== undefined) {
		return refuse("line-below-zero", "A line cannot cost less than nothing: enter what the seller took off as discount.", {
			facts: { line: negative.id },
		});
	}
	for (const kind of POTS) {
		const pot = purchase.pots[kind];
		if (pot !== undefined && pot.minor < 0) {
			return refuse(
				"pot-below-zero",
				`Write the ${kind} without a minus: ${kind === "discount" ? "it is taken off by itself" : "what was taken off belongs under discount"}.`,
				{
					facts: { pot: kind },
				},
			);
		}
		const unweighed = pot?.by === "weight" && pot.minor !== 0 ? lines.find((line) => (line.weightGrams ?? null) === null) : undefined;
		if (unweighed !== undefined) {
			return refuse("line-not-weighed", `Weigh every line, in grams, or share the ${kind} by value: one line has no weight yet.`, {
				facts: { line: unweighed.id, pot: kind },
			});
		}
	}

	const nets: MinorUnits[] = [];
	for (const line of lines) {
		const net = atHome(line.net, purchase);
		if (!net.ok) return net;
		nets.push(net.value);
	}
	const weights = lines.map((line) => line.weightGrams ?? 0);
	const shares: Record<PotKind, readonly MinorUnits[]> = { discount: [], freight: [], duty: [], handling: [], tax: [] };
	for (const kind of POTS) {
		const pot = purchase.pots[kind];
		if (pot === undefined) continue;
		const amount = pot.in === "purchase" ? atHome(pot.minor, purchase) : ok(pot.minor);
		if (!amount.ok) return amount;
		shares[kind] = spread(amount.value, evenWhereNothing(pot.by === "value" ? nets : weights));
	}

	const landedLines = lines.map((line, place): LandedLine => {
		const of = (kind: PotKind) => shares[kind][place] ?? NOTHING;
		const net = nets[place] ?? NOTHING;
		const [discount, freight, duty, handling, tax] = [of("discount"), of("freight"), of("duty"), of("handling"), of("tax")];
		const whole = minor(net - discount + freight + duty + handling + tax);
		return { id: line.id, net, discount, freight, duty, handling, tax, rounding: NOTHING, landed: whole };
	});
	const sum = sumMinor(landedLines.map((line) => line.landed));
	const difference = minor((purchase.paid ?? sum) - sum);
	const largest = landedLines.reduce((most, line, place) => (line.landed > (landedLines[most]?.landed ?? 0) ? place : most), 0);
	const bearer = landedLines[largest];
	if (difference !== 0 && bearer !== undefined) {
		if (Math.abs(difference) > mostByRounding(purchase) || bearer.landed + difference < 0)
			return doesNotAddUp(sum, difference, shopCurrency);
		landedLines[largest] = { ...bearer, rounding: difference, landed: minor(bearer.landed + difference) };
	}
	const column = (name: Exclude<keyof LandedLine, "id">) => sumMinor(landedLines.map((line) => line[name]));
	const total = {
		net: column("net"),
		discount: column("discount"),
		freight: column("freight"),
		duty: column("duty"),
		handling: column("handling"),
		tax: column("tax"),
		rounding: column("rounding"),
		landed: column("landed"),
	};
	return ok({ lines: landedLines, total });
}

function doesNotAddUp(sum: MinorUnits, difference: MinorUnits, currency: CurrencyCode): Result<never> {
	const paid = minor(sum + difference);
	const mend =
		difference > 0
			? `Enter the missing ${formatMoney(difference, currency)}, as handling if the bank took it`
			: `Take off ${formatMoney(minor(-difference), currency)}, as discount if it was one`;
	return refuse(
		"purchase-does-not-add-up",
		`The lines and costs come to ${formatMoney(sum, currency)}, but ${formatMoney(paid, currency)} was paid. ${mend}, or correct the line that is wrong.`,
		{ facts: { paid, sum, difference } },
	);
}

/** Half a unit for each figure that could not be converted without rounding; whole units, since money has no halves. */
function mostByRounding(purchase: PurchaseToLand): number {
	const pots = POTS.flatMap((kind) => purchase.pots[kind] ?? []).filter((pot) => pot.in === "purchase");
	const figures = [...purchase.lines.map(({ net }) => net), ...pots.map((pot) => pot.minor)];
	const { currency, shopCurrency, rate } = purchase;
	const rounded = figures.filter((figure) => currency !== shopCurrency && !convertsExactly(figure, currency, shopCurrency, rate));
	return Math.floor(rounded.length / 2);
}

function atHome(amount: MinorUnits, { currency, shopCurrency, rate }: PurchaseToLand): Result<MinorUnits> {
	return currency === shopCurrency ? ok(amount) : convert(amount, currency, shopCurrency, rate);
}

function evenWhereNothing(weights: readonly number[]): readonly number[] {
	return weights.some((weight) => weight > 0) ? weights : weights.map(() => 1);
}
