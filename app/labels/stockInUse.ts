// Which label stock is in the printer: each browser remembers the last one that was printed on.

import { STOCKS, type Stock } from "@/lib/labels/stock";

export const STOCK_COOKIE = "asfound-stock";

/** The stock of an id, or the first of the list when there is none of that id any more. */
export function stockOrFirst(stockId: string | undefined): Stock {
	const [first] = STOCKS;
	const stock = STOCKS.find((known) => known.id === stockId) ?? first;
	if (!stock) throw new Error("there is no label stock");
	return stock;
}
