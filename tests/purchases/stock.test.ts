// Stock that is used later costs what it cost, through the doors a person uses, against a published example: OpenStax,
// Principles of Financial Accounting, m67890 and m67891, "Spy Who Loves You" (seen; tests/outside/data/inventory).

import { afterEach, beforeEach, expect, it } from "vitest";
import { costOfUse, leftOfLine } from "@/lib/money/lineUse";
import { minor } from "@/lib/money/money";
import { drawFromLine } from "@/lib/purchases/changes";
import { inStock } from "@/lib/purchases/queries";
import { buySchema, drawFromLineSchema } from "@/lib/purchases/schema";
import { aMachine } from "@/tests/fittings/aMachine";
import costings from "@/tests/outside/data/inventory/costing.json";
import { aPurchase, HERE } from "@/tests/purchases/aPurchase";
import { done } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
beforeEach(async () => {
	shop = await freshShop();
	shop.setClock("2026-03-20T08:00:00.000Z");
});
afterEach(() => shop.close());

it("three lots bought at 21.00, 27.00 and 33.00 a piece, used by the lot they came from, cost and leave what the book says", async () => {
	const published = costings.find(({ name }) => name === "specific");
	const [first, second] = [await aMachine(shop, { k01: {} }, 12), await aMachine(shop, { k01: {} }, 13)];
	const lots: string[] = [];
	for (const [count, net] of [
		["150", "3150"],
		["225", "6075"],
		["210", "6930"],
	] as const) {
		const { lineIds } = await aPurchase(shop, [{ what: "tracker", count, net }], HERE);
		lots.push(lineIds[0] ?? "");
	}
	let cost = 0;
	for (const [sale, taken] of (published?.soldFrom ?? []).entries())
		for (const { lot, units } of taken) {
			const machineId = sale === 0 ? first.id : second.id;
			const use = drawFromLineSchema.parse({ lineId: lots[lot - 1], machineId, count: units });
			cost += done(await drawFromLine(use, shop.env())).amountMinor;
		}
	const stock = await inStock(shop.store.read);
	expect(cost).toBe(published?.costOfSales);
	expect(stock.reduce((sum, { leftMinor }) => sum + leftMinor, 0)).toBe(published?.endingInventory);
	expect(stock.reduce((sum, { left }) => sum + left, 0)).toBe(285);
});

it("what is here of a line that came in part stands for what it would be charged at, and so does the rest when it comes", () => {
	// 10.00 over 3 pieces: 3.33, 3.34 and 3.33 by the rule that charges never drift by more than half a cent.
	const line = { landed: minor(1000), count: 3 };
	const two = costOfUse(line, [], 2);
	expect(two).toEqual({ ok: true, value: 667 });
	expect(leftOfLine(line, [{ count: 2, charged: minor(667) }])).toEqual({ count: 1, value: 333 });
});

const wrongAt = (typed: object) => {
	const order = { supplierName: "A dealer", orderedDay: "2026-03-02", lines: [{ what: "wire", count: "1", net: "10" }], ...typed };
	const read = buySchema("EUR").safeParse(order);
	return read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`);
};

it.each([
	[
		{ currency: "USD", rate: "" },
		"rate: Write the rate of the day: what one USD costs in EUR, like 0.9240. Without it nothing can be landed.",
	],
	[{ currency: "USD", rate: "nought" }, "rate: Write the rate as what one unit of the foreign currency costs here, like 0.9240."],
	[{ currency: "USD", rate: "0" }, "rate: Write the rate as what one unit of the foreign currency costs here, like 0.9240."],
	[{ currency: "Doubloons" }, "currency: Write the three letters of the currency as banks do, like EUR, GBP or USD."],
	[{ lines: [{ what: "wire", count: "1", net: "   " }] }, "lines.0.net: Write what the line cost; 0 if it came free."],
	[{ lines: [{ what: "wire", count: "1", net: "ten" }] }, "lines.0.net: Write the amount in figures, like 84.50."],
	[{ freight: "1,234" }, "freight: 1,234 can be read in two ways: write 1234 or 1.23."],
	// Tax is paid here, in the shop's own currency, whatever the purchase is in.
	[{ tax: "5 USD" }, "tax: This amount is kept in EUR: convert the USD first."],
	[{ freight: "5 USD" }, "freight: This amount is kept in EUR: convert the USD first. Or change the currency of the purchase."],
	[{ freight: "cheap" }, "freight: Write the amount in figures, like 84.50."],
])("%j is refused at its field, in words that say how to mend it", (typed, words) => {
	expect(wrongAt(typed)).toContain(words);
});

it("blanks where the sum paid would stand are no sum: nothing is held against them", () => {
	const order = buySchema("EUR").parse({
		supplierName: "A dealer",
		orderedDay: "2026-03-02",
		paid: "  ",
		lines: [{ what: "wire", count: "1", net: "0" }],
	});
	expect([order.paid, order.lines[0]?.net]).toEqual([null, 0]);
});
