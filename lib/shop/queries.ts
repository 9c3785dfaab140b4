import type { Reader } from "@/lib/db/store";
import { type CurrencyCode, isCurrency } from "@/lib/money/currency";

/** The shop, or null while its book has not been opened. */
export async function theShop(read: Reader): Promise<{
	/** The entry that describes it. */
	entry: number;
	name: string;
	currency: CurrencyCode;
	timeZone: string;
	address: string | null;
	publicKey: string;
} | null> {
	const shop = await read.shop.findUnique({ where: { id: "shop" } });
	if (!shop) return null;
	if (!isCurrency(shop.currency)) throw new Error(`the shop keeps money in ${shop.currency}, which is no currency`);
	return { ...shop, currency: shop.currency };
}

/** The shop, where a page cannot be reached before it was opened. */
export async function requireShop(read: Reader) {
	const shop = await theShop(read);
	if (!shop) throw new Error("the shop's book has not been opened");
	return shop;
}
