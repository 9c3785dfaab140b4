// The bookkeeper's table of a machine against its page: read back by another parser, the lines come to the page's sums.

import { parse } from "csv-parse/sync";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { csvOf } from "@/lib/core/csv";
import { day } from "@/lib/core/days";
import { giveCredit } from "@/lib/credits/changes";
import { creditSchema } from "@/lib/credits/schema";
import { addCost } from "@/lib/money/changes";
import { costTable } from "@/lib/money/costSheetCsv";
import { costSheetOf } from "@/lib/money/costSheetQueries";
import { machineMoney } from "@/lib/money/queries";
import { addCostSchema } from "@/lib/money/schema";
import { drawFromLine, returnLine } from "@/lib/purchases/changes";
import { drawFromLineSchema, returnLineSchema } from "@/lib/purchases/schema";
import { addTime, planStep, startClock } from "@/lib/steps/changes";
import { addTimeSchema, planStepSchema } from "@/lib/steps/schema";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { aPurchase, HERE } from "@/tests/purchases/aPurchase";
import { aCrew, done } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("every cost of a machine as a table", () => {
	let shop: FreshShop;
	let machine: AMachine;
	let crew: Awaited<ReturnType<typeof aCrew>>;
	beforeEach(async () => {
		shop = await freshShop();
		shop.setClock("2026-03-20T08:00:00.000Z");
		machine = await aMachine(shop, { k01: {} });
		crew = await aCrew(shop);
	});
	afterEach(() => shop.close());

	const step = async (title: string) =>
		done(await planStep(planStepSchema.parse({ machineId: machine.id, kind: "repair", title }), shop.env())).id;
	const work = async (stepId: string, personId: string, minutes: number, startedAt = "2026-03-03T09:00:00.000Z") =>
		done(await addTime(addTimeSchema.parse({ stepId, personId, minutes, startedAt }), shop.env()));

	async function table() {
		const [sheet, money] = await Promise.all([
			costSheetOf(shop.store.read, machine.id),
			machineMoney(shop.store.read, machine.id, day("2026-03-20")),
		]);
		if (!money) throw new Error("no money");
		const { bought, carriage, books } = money;
		const file = csvOf(costTable(sheet.lines, { spent: sheet.total, bought, carriage, books }, "EUR"));
		const rows: Record<string, string>[] = parse(file, { bom: true, columns: true });
		return { rows, money, file };
	}
	/** Cents of a figure with two decimals, read without the program's own money. */
	const cents = (figure: string | undefined) => Number((figure ?? "").replace(".", ""));
	const OWN = ["total", "besides", "in the books"];

	it("comes to what the page says was spent, line by line", async () => {
		const sand = await step("sand, =fill and paint");
		await work(sand, crew.A, 35);
		await work(sand, crew.B, 7);
		const { id, lineIds } = await aPurchase(shop, [{ what: "clips", count: "7", net: "20" }], { ...HERE, freight: "5.01", tax: "4.99" });
		const of = { lineId: lineIds[0], machineId: machine.id };
		done(await drawFromLine(drawFromLineSchema.parse({ ...of, count: "2" }), shop.env()));
		const { useId } = done(await returnLine(returnLineSchema.parse({ ...of, count: "3", words: "too wide" }), shop.env()));
		const credit = { purchaseId: id, day: "2026-03-20", words: "-their note" };
		done(await giveCredit(creditSchema("EUR").parse({ ...credit, useId, amount: "9" }), shop.env()));
		done(await giveCredit(creditSchema("EUR").parse({ ...credit, machineId: machine.id, amount: "1.50" }), shop.env()));
		const cost = { machineId: machine.id, kind: "consumable", words: "filler", day: "2026-03-04" };
		done(await addCost(addCostSchema("EUR").parse({ ...cost, state: "spent", spent: "4.32" }), shop.env()));
		done(await addCost(addCostSchema("EUR").parse({ ...cost, state: "planned", estimated: "10", spent: "3" }), shop.env()));
		done(await addCost(addCostSchema("EUR").parse({ ...cost, state: "forgone", estimated: "15" }), shop.env()));

		const { rows, money } = await table();
		const lines = rows.filter(({ kind }) => !OWN.includes(kind ?? ""));
		const sum = lines.reduce((total, line) => total + cents(line.amount), 0);
		// By hand: 35 min at 60 cents and 7 at 80; 30.00 over 7 clips, of which 2 and 3; less 9.00 and 1.50; 4.32 and 3.00.
		expect(sum).toBe(2100 + 560 + 857 + 1286 - 900 - 150 + 432 + 300);
		expect(sum).toBe(money.summary.total.spent);
		expect(cents(rows.find(({ kind }) => kind === "total")?.amount)).toBe(sum);
		expect(cents(rows.find(({ kind }) => kind === "in the books")?.amount)).toBe(money.books);
		expect(
			lines.map(({ kind, purchase, minutes, "rate an hour": rate, amount, currency }) => [kind, purchase, minutes, rate, amount, currency]),
		).toEqual([
			["labour", "", "35", "36.00", "21.00", "EUR"],
			["labour", "", "7", "48.00", "5.60", "EUR"],
			["consumables", "", "", "", "4.32", "EUR"],
			["consumables", "", "", "", "3.00", "EUR"],
			["parts and materials", "1", "", "", "8.57", "EUR"],
			["sent back", "1", "", "", "12.86", "EUR"],
			["credited for what was sent back", "1", "", "", "-9.00", "EUR"],
			["taken off the price", "1", "", "", "-1.50", "EUR"],
		]);
		expect(lines.map(({ words }) => words)).toContain("'-their note");
	});

	it("leaves time without a rate out of the sum and says so, and a clock that runs out altogether", async () => {
		const sand = await step("sand");
		await work(sand, shop.person, 60);
		done(await startClock({ stepId: sand, personId: crew.A }, shop.env()));
		const { rows, money } = await table();
		expect(money.summary.total.spent).toBe(0);
		expect(rows.filter(({ kind }) => kind === "labour").map(({ words, minutes, amount }) => [words, minutes, amount])).toEqual([
			["step 1: sand (no rate was in force on this day: not in the sum)", "60", ""],
		]);
	});
});
