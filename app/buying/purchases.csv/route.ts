import { shopStore } from "@/lib/db/shopStore";
import { saidInWords, serveCsv } from "@/lib/http/serveCsv";
import { isCurrency } from "@/lib/money/currency";
import { type PurchaseToSheet, purchaseTable } from "@/lib/purchases/purchaseSheet";
import { purchasesOfPeriod } from "@/lib/purchases/queries";
import { periodSchema } from "@/lib/purchases/schema";
import { theShop } from "@/lib/shop/queries";

/** What was bought in a period, for the bookkeeper: `?from=2026-03-01&until=2026-03-31`. */
export async function GET(request: Request): Promise<Response> {
	const { read } = await shopStore();
	const shop = await theShop(read);
	if (!shop) return saidInWords(404, "The shop's book has not been opened.");
	const period = periodSchema.safeParse(Object.fromEntries(new URL(request.url).searchParams));
	if (!period.success) return saidInWords(400, period.error.issues.map(({ message }) => message).join(" "));
	const { from, until } = period.data;
	const { purchases, credits } = await purchasesOfPeriod(read, from, until);
	const known = purchases.flatMap((purchase): PurchaseToSheet[] =>
		isCurrency(purchase.currency) ? [{ ...purchase, currency: purchase.currency }] : [],
	);
	return serveCsv(purchaseTable(known, credits, shop.currency).table, `purchases-${from}-until-${until}`);
}
