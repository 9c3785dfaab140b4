// What is counted in pieces and what is measured, in lists, and in the words of who asks for more than there is.

import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { deliver } from "@/lib/deliveries/changes";
import { deliverSchema } from "@/lib/deliveries/schema";
import { drawFromLine } from "@/lib/purchases/changes";
import { counted, listed, partOf } from "@/lib/purchases/counted";
import { purchases } from "@/lib/purchases/queries";
import { drawFromLineSchema } from "@/lib/purchases/schema";
import { aMachine } from "@/tests/fittings/aMachine";
import { aPurchase, HERE } from "@/tests/purchases/aPurchase";
import { done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

it("pieces are counted, and what is measured keeps its unit, also where there is one of it", () => {
	const wire = { count: 5, unit: "m", what: "cloth wire" };
	const lamp = { count: 2, unit: "piece", what: "lamp" };
	expect([wire, lamp].map(counted)).toEqual(["5 m cloth wire", "2 × lamp"]);
	expect([{ ...wire, count: 1 }, { ...lamp, count: 1 }, lamp].map(listed)).toEqual(["1 m cloth wire", "lamp", "2 × lamp"]);
	expect([partOf(2, wire), partOf(1, lamp)]).toEqual(["2 of 5 m cloth wire", "1 of 2 lamp"]);
});

describe("of a line that came in part", () => {
	let shop: FreshShop;
	beforeEach(async () => {
		shop = await freshShop();
		shop.setClock("2026-03-20T08:00:00.000Z");
	});
	afterEach(() => shop.close());

	it("whoever asks for more than is here is told what is here, however much they ask for", async () => {
		const machine = await aMachine(shop, { k01: {} });
		const { id, lineIds } = await aPurchase(shop, [{ what: "belt", count: "6", net: "12" }]);
		const [lineId = ""] = lineIds;
		done(await deliver(deliverSchema.parse({ purchaseId: id, day: "2026-03-05", lines: [{ lineId, count: "4" }] }), shop.env()));
		const use = (count: string) => drawFromLine(drawFromLineSchema.parse({ lineId, machineId: machine.id, count }), shop.env());
		const say = "Only 4 of it are here, 2 are still in the post: record that it came first.";
		for (const count of ["5", "6", "7", "9"]) expect(refused(await use(count)).fields, count).toEqual({ count: say });
		done(await use("4"));
		expect(refused(await use("9")).say).toMatch(/^None of it .* here, 2 are still in the post/);
	});

	it("of one that is here whole, what is left is said", async () => {
		const machine = await aMachine(shop, { k01: {} });
		const { lineIds } = await aPurchase(shop, [{ what: "belt", count: "6", net: "12" }], HERE);
		const use = drawFromLineSchema.parse({ lineId: lineIds[0], machineId: machine.id, count: "9" });
		expect(refused(await drawFromLine(use, shop.env())).say).toContain("Only 6 of 6 are left");
	});

	it("the list of purchases has the unit", async () => {
		await aPurchase(shop, [{ what: "cloth wire", count: "5", unit: "m", net: "12" }], HERE);
		const { rows } = await purchases(shop.store.read, 1);
		expect(rows[0]?.lines.map(listed)).toEqual(["5 m cloth wire"]);
	});
});
