// A machine's costs as a table for the bookkeeper. Pure.

import type { CsvCell, CsvTable } from "@/lib/core/csv";
import type { SheetLine } from "@/lib/money/costSheet";
import type { CurrencyCode } from "@/lib/money/currency";
import { decimalAmount, type MinorUnits } from "@/lib/money/money";

export const COST_COLUMNS = ["day", "kind", "words", "purchase", "person", "minutes", "rate an hour", "amount", "currency"] as const;

const text = (words: string): CsvCell => (words === "" ? null : { text: words });

/** Every line, then what they come to, then what the machine stands in the books for. */
export function costTable(
	lines: readonly SheetLine[],
	sums: { readonly spent: MinorUnits; readonly bought: MinorUnits; readonly carriage: MinorUnits; readonly books: MinorUnits },
	currency: CurrencyCode,
): CsvTable {
	const money = (amount: MinorUnits | null): CsvCell => (amount === null ? null : { figure: decimalAmount(amount, currency) });
	const sum = (kind: string, words: string, amount: MinorUnits): CsvCell[] => [
		null,
		text(kind),
		text(words),
		...[null, null, null, null],
		money(amount),
		text(currency),
	];
	return {
		columns: COST_COLUMNS,
		rows: [
			...lines.map((line): CsvCell[] => [
				text(line.day),
				text(line.kind),
				text(line.words),
				line.purchase === null ? null : { figure: line.purchase },
				text(line.person),
				line.minutes === null ? null : { figure: line.minutes },
				money(line.rate),
				money(line.amount),
				text(currency),
			]),
			sum("total", "spent on the restoration", sums.spent),
			sum("besides", "bought for", sums.bought),
			sum("besides", "carriage home", sums.carriage),
			sum("in the books", "bought, carried home and spent", sums.books),
		],
	};
}
