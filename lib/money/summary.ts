// Estimated, spent, still to come, at completion, and what the machine stands in the books for.
// Pure. Rule 6: every total here is the sum of the lines shown with it.
import { dividedHalfUp } from "@/lib/core/decimals";
import { type MinorUnits, minor, NOTHING, sumMinor } from "@/lib/money/money";

/** One line of the summary: labour of a person, parts, consumables, outside work, disposal, carriage, a deposit lost. */
export type CostRow = {
	readonly what: string;
	/** The first plan. */
	readonly estimated: MinorUnits;
	readonly spent: MinorUnits;
	readonly toCome: MinorUnits;
};

/** A row with what it will have come to: spent and still to come. */
export type CostAtCompletion = CostRow & { readonly atCompletion: MinorUnits };

export type CostSummary = { readonly lines: readonly CostAtCompletion[]; readonly total: Omit<CostAtCompletion, "what"> };

/** The four figures for each row, and their sums. */
export function costSummary(rows: readonly CostRow[]): CostSummary {
	const lines = rows.map((row) => ({ ...row, atCompletion: minor(row.spent + row.toCome) }));
	const column = (name: Exclude<keyof CostAtCompletion, "what">) => sumMinor(lines.map((line) => line[name]));
	return {
		lines,
		total: { estimated: column("estimated"), spent: column("spent"), toCome: column("toCome"), atCompletion: column("atCompletion") },
	};
}

/** What a machine stands in the books for: bought, carried home, and spent on so far. */
export function inTheBooks(costs: { readonly bought: MinorUnits; readonly carriage: MinorUnits; readonly spent: MinorUnits }): MinorUnits {
	return sumMinor([costs.bought, costs.carriage, costs.spent]);
}

export type Margin = {
	/** Price less what the machine stands in the books for; negative when it is sold at a loss. */
	readonly margin: MinorUnits;
	/** An hour of labour, after that labour was paid at cost rates; null when no time was recorded. */
	readonly anHour: MinorUnits | null;
	/** An hour of labour before own labour is counted as a cost; null when no time was recorded. */
	readonly anHourBeforeLabour: MinorUnits | null;
};

/** What a sale leaves. `labour` is the part of `books` that is own labour, `minutes` the time behind it. */
export function marginOf(sale: {
	readonly price: MinorUnits;
	readonly books: MinorUnits;
	readonly labour: MinorUnits;
	readonly minutes: number;
}): Margin {
	const margin = minor(sale.price - sale.books);
	return {
		margin,
		anHour: anHourOf(margin, sale.minutes),
		anHourBeforeLabour: anHourOf(minor(margin + sale.labour), sale.minutes),
	};
}

/** An amount an hour over so many minutes, rounded half up; null for no minutes. */
export function anHourOf(amount: MinorUnits, minutes: number): MinorUnits | null {
	if (!Number.isSafeInteger(minutes) || minutes < 0) throw new Error(`not whole minutes: ${minutes}`);
	return minutes === 0 ? null : minor(dividedHalfUp(BigInt(amount) * 60n, BigInt(minutes)));
}

/** How far the cost at completion lies over a limit agreed with the owner; nothing while it does not. */
export function overLimit(atCompletion: MinorUnits, limit: MinorUnits): MinorUnits {
	return atCompletion > limit ? minor(atCompletion - limit) : NOTHING;
}
