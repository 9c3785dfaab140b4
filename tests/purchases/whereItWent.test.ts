// Used, sent back and left of a purchase are what was paid for it, through the doors that a person uses.

import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { giveCredit } from "@/lib/credits/changes";
import { creditSchema } from "@/lib/credits/schema";
import { minor } from "@/lib/money/money";
import { drawFromLine, returnLine, voidUse } from "@/lib/purchases/changes";
import { purchaseByNumber } from "@/lib/purchases/queries";
import { drawFromLineSchema, returnLineSchema } from "@/lib/purchases/schema";
import { type WhereItWent, whereItWent } from "@/lib/purchases/whereItWent";
import { aMachine } from "@/tests/fittings/aMachine";
import { aPurchase, HERE } from "@/tests/purchases/aPurchase";
import { done } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("where the money of a purchase is", () => {
	let shop: FreshShop;
	beforeEach(async () => {
		shop = await freshShop();
		shop.setClock("2026-03-20T08:00:00.000Z");
	});
	afterEach(() => shop.close());

	it("what was sent back is neither used nor in stock: it stands by itself, credited or lost, and the head adds up", async () => {
		const machine = await aMachine(shop, { k01: {} });
		const lines = [
			{ what: "lamp", count: "2", net: "36.48" },
			{ what: "belt", count: "6", net: "35.82" },
		];
		const { id, lineIds } = await aPurchase(shop, lines, HERE);
		const [lamp = "", belt = ""] = lineIds;
		const went = async (): Promise<WhereItWent> => {
			const found = await purchaseByNumber(shop.store.read, 1);
			if (!found) throw new Error("no purchase");
			const standing = found.credits.filter(({ stands }) => stands === "yes");
			return whereItWent(
				found.lines,
				standing.map(({ useId, amountMinor }) => ({ useId, amount: minor(amountMinor) })),
			);
		};
		done(await drawFromLine(drawFromLineSchema.parse({ lineId: lamp, machineId: machine.id, count: "2" }), shop.env()));
		const back = { lineId: belt, machineId: machine.id, count: "2", words: "too short" };
		const { useId } = done(await returnLine(returnLineSchema.parse(back), shop.env()));
		expect(await went()).toEqual({ used: 3648, back: { cost: 1194, credited: 0, awaited: 1194, kept: 0 }, left: 2388 });
		const credit = { purchaseId: id, useId, day: "2026-03-20", amount: "9", words: "less restocking" };
		done(await giveCredit(creditSchema("EUR").parse(credit), shop.env()));
		expect(await went()).toEqual({ used: 3648, back: { cost: 1194, credited: 900, awaited: 0, kept: 294 }, left: 2388 });
		const wrong = { lineId: belt, machineId: machine.id, count: "1", words: "the wrong one" };
		const again = done(await returnLine(returnLineSchema.parse(wrong), shop.env()));
		done(await voidUse({ useId: again.useId, why: "it is here" }, shop.env()));
		expect(await went()).toMatchObject({ used: 3648, back: { cost: 1194 }, left: 2388 });
	});
});

it("whatever was used, sent back or taken back, the three are the landed cost of all lines", () => {
	const use = fc.record({
		kind: fc.constantFrom("used" as const, "returned" as const, "void" as const),
		count: fc.integer({ min: 1, max: 20 }),
		amountMinor: fc.integer({ min: 0, max: 900 }),
		credited: fc.option(fc.integer({ min: 0, max: 900 })),
	});
	const line = fc.record({ landedMinor: fc.integer({ min: 0, max: 100_000 }), uses: fc.array(use, { maxLength: 8 }) });
	fc.assert(
		fc.property(fc.array(line, { maxLength: 6 }), (drawn) => {
			const lines = drawn.map(({ landedMinor, uses }, at) => ({
				landedMinor,
				count: 1 + uses.reduce((sum, { count }) => sum + count, 0),
				uses: uses.map((one, place) => ({ ...one, id: `${at}.${place}` })),
			}));
			const credits = lines.flatMap(({ uses }) =>
				uses.flatMap(({ id, kind, credited }) =>
					kind === "returned" && credited !== null ? [{ useId: id, amount: minor(credited) }] : [],
				),
			);
			const { used, back, left } = whereItWent(lines, credits);
			expect(used + back.cost + left).toBe(drawn.reduce((sum, { landedMinor }) => sum + landedMinor, 0));
			expect(back.credited + back.awaited + back.kept).toBe(back.cost);
		}),
		{ seed: 21, numRuns: 300 },
	);
});
