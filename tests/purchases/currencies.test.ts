import { afterEach, beforeEach, expect, it } from "vitest";
import { currencies, currenciesToChoose } from "@/lib/money/currency";
import { currenciesBoughtIn } from "@/lib/purchases/queries";
import { aPurchase } from "@/tests/purchases/aPurchase";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
beforeEach(async () => {
	shop = await freshShop();
	shop.setClock("2026-03-20T08:00:00.000Z");
});
afterEach(() => shop.close());

it("the shop's own currency comes first, then those bought in before, the last first, then all others by their letters", async () => {
	const line = [{ what: "lamp", count: "1", net: "10" }];
	for (const more of [{ currency: "USD", rate: "0.9" }, { currency: "GBP", rate: "1.2" }, {}, { currency: "USD", rate: "0.91" }])
		await aPurchase(shop, line, more);
	const offered = currenciesToChoose("EUR", await currenciesBoughtIn(shop.store.read));
	expect(offered.slice(0, 5)).toEqual(["EUR", "USD", "GBP", "AED", "AFN"]);
	expect([...offered].sort()).toEqual(currencies());
});
