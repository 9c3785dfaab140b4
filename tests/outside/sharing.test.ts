// Sharing a cost and costing stock against textbooks; sources stand in the data files beside each case.
import { describe, expect, it } from "vitest";
import { decimal } from "@/lib/core/decimals";
import { landed } from "@/lib/money/landed";
import { costOfUse, type LineUse, leftOfLine } from "@/lib/money/lineUse";
import { minor, sumMinor } from "@/lib/money/money";
import { spread } from "@/lib/money/spread";
import apportioned from "./data/apportion/largest-remainder.json";
import costings from "./data/inventory/costing.json";

describe("largest remainder", () => {
	// OpenStax, Contemporary Mathematics, m00028 and m00029 (seen), an examination question (seen), own cases (reference).
	it.each(apportioned)("$name: $total over $weights is $expected", ({ weights, total, expected }) => {
		expect(spread(minor(total), weights)).toEqual(expected);
	});

	it("ordinary rounding would have given 71 of 70 lights, and a larger total can shrink a share", () => {
		const [lights, ten, eleven] = ["emergency-lights", "alabama-10", "alabama-11"].map((name) =>
			apportioned.find((row) => row.name === name),
		);
		const rounded = lights?.weights.map((weight) => Math.round((weight * lights.total) / lights.weights.reduce((a, b) => a + b, 0)));
		expect(rounded?.reduce((a, b) => a + b, 0)).toBe(71);
		expect((ten?.expected[2] ?? 0) > (eleven?.expected[2] ?? 0)).toBe(true);
	});
});

it("charges of 230 over goods of 400 and 100 land as 184 and 46 (an examination question, seen)", () => {
	const shipment = landed({
		shopCurrency: "EUR",
		currency: "EUR",
		rate: decimal("1"),
		lines: [
			{ id: "first", net: minor(400) },
			{ id: "second", net: minor(100) },
		],
		pots: { freight: { minor: minor(230), in: "shop", by: "value" } },
	});
	expect(shipment).toMatchObject({ ok: true, value: { lines: [{ landed: 584 }, { landed: 146 }] } });
});

describe("stock used by the lot it came from", () => {
	// OpenStax, Principles of Financial Accounting, m67890 and m67891 (seen). The shop knows which line a piece came from,
	// which is specific identification; first in, first out is the same with the older line used up first. Averages are not ours.
	const lots = [
		{ landed: minor(150 * 2100), count: 150 },
		{ landed: minor(225 * 2700), count: 225 },
		{ landed: minor(210 * 3300), count: 210 },
	];

	function costed(takings: readonly (readonly [lot: number, units: number])[]) {
		const uses: LineUse[][] = lots.map(() => []);
		for (const [lot, count] of takings) {
			const [line, before] = [lots[lot], uses[lot]];
			if (line === undefined || before === undefined) throw new Error(`no lot ${lot}`);
			const charged = costOfUse(line, before, count);
			if (!charged.ok) throw new Error(charged.error.say);
			before.push({ count, charged: charged.value });
		}
		const left = lots.map((line, lot) => leftOfLine(line, uses[lot] ?? []));
		return {
			costOfSales: sumMinor(uses.flat().map((use) => use.charged)),
			endingInventory: sumMinor(left.map((rest) => rest.value)),
			endingUnits: left.reduce((sum, rest) => sum + rest.count, 0),
		};
	}

	const published = (name: string) => costings.find((row) => row.name === name);

	it("older lots first gives the book's first-in, first-out figures", () => {
		const answer = costed([
			[0, 120],
			[0, 30],
			[1, 150],
		]);
		const { costOfSales, endingInventory, endingUnits } = published("fifo") ?? {};
		expect(answer).toEqual({ costOfSales, endingInventory, endingUnits });
	});

	it("the lots named give the book's figures for specific identification", () => {
		const named = published("specific")?.soldFrom?.flat() ?? [];
		expect(named).toHaveLength(3);
		const answer = costed(named.map(({ lot, units }) => [lot - 1, units] as const));
		expect(answer.costOfSales).toBe(published("specific")?.costOfSales);
		expect(answer.endingInventory).toBe(published("specific")?.endingInventory);
	});

	it("what was sold and what is left are the goods there were", () => {
		expect(sumMinor(lots.map((lot) => lot.landed))).toBe(published("goods-available")?.goodsAvailable);
	});
});
