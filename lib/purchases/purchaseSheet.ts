// Purchases of a period as a table for the bookkeeper: every line with its shares of the pots, every purchase's sums, what
// sellers gave back, and the totals. Pure.

import type { CsvCell, CsvTable } from "@/lib/core/csv";
import { decimal } from "@/lib/core/decimals";
import type { CurrencyCode } from "@/lib/money/currency";
import { type LandedLine, landed, POTS } from "@/lib/money/landed";
import { decimalAmount, type MinorUnits, minor, sumMinor } from "@/lib/money/money";

export type PurchaseToSheet = {
	readonly number: number;
	readonly orderedDay: string;
	readonly arrivedDay: string | null;
	readonly supplier: string;
	readonly currency: CurrencyCode;
	readonly rate: string;
	readonly spreadBy: "value" | "weight";
	readonly discountMinor: number;
	readonly freightMinor: number;
	readonly dutyMinor: number;
	readonly handlingMinor: number;
	readonly taxMinor: number;
	readonly paidMinor: number;
	readonly lines: readonly {
		readonly id: string;
		readonly number: number;
		readonly what: string;
		readonly count: number;
		readonly unit: string;
		readonly netMinor: number;
		readonly weightGrams: number | null;
		readonly landedMinor: number;
	}[];
};

export type CreditToSheet = {
	readonly purchase: number;
	readonly supplier: string;
	readonly day: string;
	readonly words: string;
	readonly amount: MinorUnits;
};

export const PURCHASE_COLUMNS = [
	...["purchase", "kind", "day", "arrived", "supplier", "line", "words", "count", "unit"],
	...["net", "currency", "rate", "net here", ...POTS, "rounding", "landed", "credited", "currency here"],
] as const;

const text = (words: string | null): CsvCell => (words ? { text: words } : null);
const EMPTY = (cells: number): CsvCell[] => Array<CsvCell>(cells).fill(null);

/** The whole table, purchases in the order given. The totals are the sums of the lines over them. */
export function purchaseTable(
	purchases: readonly PurchaseToSheet[],
	credits: readonly CreditToSheet[],
	home: CurrencyCode,
): { readonly table: CsvTable; readonly landed: MinorUnits; readonly credited: MinorUnits } {
	const here = (amount: number): CsvCell => ({ figure: decimalAmount(minor(amount), home) });
	const shares = (of: Omit<LandedLine, "id">): CsvCell[] => [
		here(of.net),
		...POTS.map((pot) => here(of[pot])),
		here(of.rounding),
		here(of.landed),
	];
	const rows: CsvCell[][] = [];
	const sums: Omit<LandedLine, "id">[] = [];
	for (const purchase of purchases) {
		const again = landedAgain(purchase, home);
		const head = [text(purchase.orderedDay), text(purchase.arrivedDay), text(purchase.supplier)];
		for (const [index, line] of purchase.lines.entries()) {
			const of = again.lines[index];
			rows.push([
				{ figure: purchase.number },
				text("line"),
				...head,
				{ figure: line.number },
				text(line.what),
				{ figure: line.count },
				text(line.unit),
				{ figure: decimalAmount(minor(line.netMinor), purchase.currency) },
				text(purchase.currency),
				{ figure: purchase.rate },
				...(of ? shares(of) : EMPTY(3 + POTS.length)),
				null,
				text(home),
			]);
		}
		sums.push(again.total);
		rows.push([
			{ figure: purchase.number },
			text("purchase"),
			...head,
			null,
			text("paid in all"),
			null,
			null,
			{ figure: decimalAmount(sumMinor(purchase.lines.map((line) => minor(line.netMinor))), purchase.currency) },
			text(purchase.currency),
			{ figure: purchase.rate },
			...shares(again.total),
			null,
			text(home),
		]);
	}
	for (const credit of credits)
		rows.push([
			{ figure: credit.purchase },
			text("credit"),
			text(credit.day),
			null,
			text(credit.supplier),
			null,
			text(credit.words),
			...EMPTY(13),
			here(credit.amount),
			text(home),
		]);
	const column = (name: keyof Omit<LandedLine, "id">) => sumMinor(sums.map((of) => of[name]));
	const [paid, credited] = [column("landed"), sumMinor(credits.map(({ amount }) => amount))];
	rows.push([
		null,
		text("total"),
		...EMPTY(4),
		text("paid, and credited"),
		...EMPTY(5),
		here(column("net")),
		...POTS.map((pot) => here(column(pot))),
		here(column("rounding")),
		here(paid),
		here(credited),
		text(home),
	]);
	return { table: { columns: PURCHASE_COLUMNS, rows }, landed: paid, credited };
}

/** The spreading once more, from what the paper said. It came out whole when the purchase was entered, and must again. */
export function landedAgain(purchase: Omit<PurchaseToSheet, "supplier" | "orderedDay" | "arrivedDay">, home: CurrencyCode) {
	const pot = (amount: number, where: "purchase" | "shop", by: "value" | "weight" = "value") => ({ minor: minor(amount), in: where, by });
	const again = landed({
		shopCurrency: home,
		currency: purchase.currency,
		rate: decimal(purchase.rate),
		lines: purchase.lines.map((line) => ({ id: line.id, net: minor(line.netMinor), weightGrams: line.weightGrams })),
		pots: {
			discount: pot(purchase.discountMinor, "purchase"),
			freight: pot(purchase.freightMinor, "purchase", purchase.spreadBy),
			duty: pot(purchase.dutyMinor, "shop"),
			handling: pot(purchase.handlingMinor, "shop", purchase.spreadBy),
			tax: pot(purchase.taxMinor, "shop"),
		},
		paid: minor(purchase.paidMinor),
	});
	if (!again.ok) throw new Error(`purchase ${purchase.number}: ${again.error.say}`);
	return again.value;
}
