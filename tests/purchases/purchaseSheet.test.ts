// The bookkeeper's table of purchases, read back by another parser.

import { parse } from "csv-parse/sync";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { csvOf } from "@/lib/core/csv";
import { day } from "@/lib/core/days";
import { giveCredit } from "@/lib/credits/changes";
import { creditSchema } from "@/lib/credits/schema";
import { isCurrency } from "@/lib/money/currency";
import { purchaseTable } from "@/lib/purchases/purchaseSheet";
import { purchasesOfPeriod } from "@/lib/purchases/queries";
import { periodSchema } from "@/lib/purchases/schema";
import { aPurchase } from "@/tests/purchases/aPurchase";
import { done } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("purchases of a period as a table", () => {
	let shop: FreshShop;
	beforeEach(async () => {
		shop = await freshShop();
		shop.setClock("2026-04-02T08:00:00.000Z");
	});
	afterEach(() => shop.close());

	async function table(from: string, until: string) {
		const { purchases, credits } = await purchasesOfPeriod(shop.store.read, day(from), day(until));
		const known = purchases.flatMap((one) => (isCurrency(one.currency) ? [{ ...one, currency: one.currency }] : []));
		const rows: Record<string, string>[] = parse(csvOf(purchaseTable(known, credits, "EUR").table), { bom: true, columns: true });
		return rows;
	}
	const cents = (figure: string | undefined) => Number((figure ?? "").replace(".", ""));
	const column = (rows: readonly Record<string, string>[], kind: string, name: string) =>
		rows.filter((row) => row.kind === kind).reduce((sum, row) => sum + cents(row[name]), 0);
	const MONEY = ["net here", "discount", "freight", "duty", "handling", "tax", "landed"];

	/** Orders o4 and o5 of the acceptance scenario (TRADE.md 4.4): one from abroad, one from here. */
	const abroad = () =>
		aPurchase(
			shop,
			[
				{ what: "bush set", count: "1", net: "18.40" },
				{ what: "unused period switch", count: "1", net: "27.00" },
			],
			{ currency: "USD", rate: "0.9240", freight: "16.50", duty: "2.70", handling: "6", tax: "12.58", paid: "78.48" },
		);
	const here = (orderedDay = "2026-03-06") =>
		aPurchase(
			shop,
			[
				{ what: "steel plate", count: "1", net: "12" },
				{ what: "inserts", count: "25", net: "9.50" },
				{ what: "screws", count: "10", net: "4.20" },
			],
			{ orderedDay, freight: "5.20", tax: "6.49", paid: "37.39" },
		);

	it("lands each line as the scenario does, and the lines, the purchases and the total are the same money", async () => {
		await abroad();
		await here();
		const rows = await table("2026-03-01", "2026-03-31");
		expect(rows.filter(({ kind }) => kind === "line").map(({ words, landed }) => [words, landed])).toEqual([
			["bush set", "31.80"],
			["unused period switch", "46.68"],
			["steel plate", "17.46"],
			["inserts", "13.82"],
			["screws", "6.11"],
		]);
		for (const name of MONEY) {
			expect(column(rows, "line", name), name).toBe(column(rows, "total", name));
			expect(column(rows, "purchase", name), name).toBe(column(rows, "total", name));
		}
		expect(rows.filter(({ kind }) => kind === "purchase").map(({ landed }) => landed)).toEqual(["78.48", "37.39"]);
		expect(rows.find(({ kind }) => kind === "total")?.landed).toBe("115.87");
		for (const row of rows.filter(({ kind }) => kind !== "credit"))
			expect(
				cents(row["net here"]) - cents(row.discount) + cents(row.freight) + cents(row.duty) + cents(row.handling) + cents(row.tax),
			).toBe(cents(row.landed));
		expect(rows[0]).toMatchObject({ currency: "USD", rate: "0.9240", net: "18.40", "net here": "17.00", "currency here": "EUR" });
	});

	it("holds what was ordered, and what was credited, from the first day to the last, both included", async () => {
		await here("2026-02-28");
		const { id } = await here("2026-03-01");
		await here("2026-03-31");
		await here("2026-04-01");
		const give = async (on: string, amount: string) =>
			done(await giveCredit(creditSchema("EUR").parse({ purchaseId: id, day: on, amount, words: "late" }), shop.env()));
		await give("2026-03-31", "2.39");
		await give("2026-04-01", "5");
		const rows = await table("2026-03-01", "2026-03-31");
		expect(rows.filter(({ kind }) => kind === "purchase").map((row) => [row.purchase, row.day])).toEqual([
			["2", "2026-03-01"],
			["3", "2026-03-31"],
		]);
		expect(rows.filter(({ kind }) => kind === "credit").map((row) => [row.purchase, row.day, row.credited])).toEqual([
			["2", "2026-03-31", "2.39"],
		]);
		expect(rows.find(({ kind }) => kind === "total")).toMatchObject({ landed: "74.78", credited: "2.39" });
	});

	it("of a period in which nothing was bought is nothing, with its total", async () => {
		expect(await table("2026-03-01", "2026-03-31")).toMatchObject([{ kind: "total", landed: "0.00", credited: "0.00" }]);
	});

	it.each([
		[{ from: "2026-03-31", until: "2026-03-01" }, "The period ends before it begins: swap the two days."],
		[{ from: "2026-02-30", until: "2026-03-01" }, "2026-02-30 is not in the calendar: check the month and the day."],
		[{ until: "2026-03-01" }, "Write the day from which purchases are listed, like 2026-03-02."],
	])("an address with %j is refused in words", (asked, words) => {
		const read = periodSchema.safeParse(asked);
		expect(read.success ? [] : read.error.issues.map(({ message }) => message)).toEqual([words]);
	});
});
