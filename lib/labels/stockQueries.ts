import type { Reader } from "@/lib/db/store";
import { stockOfRow } from "@/lib/labels/ownStock";
import { FLAG_ROLL, STOCKS, type Stock } from "@/lib/labels/stock";

const MOST_OWN = 200;

/** The shop's own stock by name, what was put away last. */
export async function ownStocks(read: Reader) {
	const rows = await read.labelStock.findMany({ orderBy: [{ stands: "desc" }, { name: "asc" }, { id: "asc" }], take: MOST_OWN });
	return rows.map((row) => ({ entry: row.entry, stands: row.stands, stock: stockOfRow(row) }));
}

/** Stock that can be printed on: the shop's own first, then what most shops have. */
export async function stocksToUse(read: Reader): Promise<Stock[]> {
	const own = await ownStocks(read);
	return [...own.filter(({ stands }) => stands === "yes").map(({ stock }) => stock), ...STOCKS];
}

/** One stock by its id, put away or not: with the row's last entry where it is the shop's own. Null when there is none. */
export async function stockById(
	read: Reader,
	stockId: string,
): Promise<{ stock: Stock; own: { entry: number; stands: "yes" | "no" } | null } | null> {
	const row = await read.labelStock.findUnique({ where: { id: stockId } });
	if (row) return { stock: stockOfRow(row), own: { entry: row.entry, stands: row.stands } };
	const common = [...STOCKS, FLAG_ROLL].find(({ id }) => id === stockId);
	return common ? { stock: common, own: null } : null;
}

/** By how much prints on a stock are moved, in tenths of a millimetre, by the stock's id; one that is not moved is left out. */
export async function nudges(read: Reader): Promise<Map<string, { right: number; down: number }>> {
	const rows = await read.stockNudge.findMany({ take: 500, select: { stock: true, right: true, down: true } });
	return new Map(rows.map(({ stock, ...nudge }) => [stock, nudge]));
}

/** The same of one stock, in millimetres, as a print takes it. */
export async function nudgeOf(read: Reader, stockId: string): Promise<{ nudgeX: number; nudgeY: number }> {
	const row = await read.stockNudge.findUnique({ where: { stock: stockId }, select: { right: true, down: true } });
	return { nudgeX: (row?.right ?? 0) / 10, nudgeY: (row?.down ?? 0) / 10 };
}
