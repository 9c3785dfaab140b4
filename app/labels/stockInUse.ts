// Which label stock is in the printer: each browser remembers the last one that was printed on.

export const STOCK_COOKIE = "asfound-stock";
const YEAR_SECONDS = 365 * 24 * 60 * 60;

/** Keeps the stock in this browser. Requires the id of a stock. */
export const stockCookie = (stockId: string): string =>
	`${STOCK_COOKIE}=${encodeURIComponent(stockId)}; Path=/; Max-Age=${YEAR_SECONDS}; SameSite=Lax; HttpOnly`;
