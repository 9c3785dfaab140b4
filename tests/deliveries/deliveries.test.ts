import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { arrive, deliver, voidDelivery } from "@/lib/deliveries/changes";
import { mayCome, mayTake, mayTakeBack } from "@/lib/deliveries/rules";
import { arriveSchema, deliverSchema, voidDeliverySchema } from "@/lib/deliveries/schema";
import { inThePost } from "@/lib/machines/queries";
import { buy, drawFromLine, partFromLine, returnLine, voidUse } from "@/lib/purchases/changes";
import { inStock, purchaseByNumber } from "@/lib/purchases/queries";
import { buySchema, drawFromLineSchema, partFromLineSchema, returnLineSchema } from "@/lib/purchases/schema";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { aPurchase, HERE } from "@/tests/purchases/aPurchase";
import { done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("what of a purchase has come", () => {
	let shop: FreshShop;
	let machine: AMachine;

	beforeEach(async () => {
		shop = await freshShop();
		shop.setClock("2026-03-20T08:00:00.000Z");
		machine = await aMachine(shop, { k01: {} });
	});
	afterEach(() => shop.close());

	const wireAndLamp = () =>
		aPurchase(shop, [
			{ what: "wire", count: "5", net: "10" },
			{ what: "lamp", count: "1", net: "4" },
		]);
	const came = (purchaseId: string, on: string, ...lines: readonly { lineId: string | undefined; count: string }[]) =>
		deliver(deliverSchema.parse({ purchaseId, day: on, lines }), shop.env());
	const use = (lineId: string | undefined, count: string) =>
		drawFromLine(drawFromLineSchema.parse({ lineId, machineId: machine.id, count }), shop.env());
	const purchase = async (number: number) => {
		const found = await purchaseByNumber(shop.store.read, number);
		if (!found) throw new Error("no purchase");
		return found;
	};
	const stock = async () => (await inStock(shop.store.read)).map(({ what, left, leftMinor }) => [what, left, leftMinor]);
	const deliveries = async (number: number) => (await purchase(number)).lines.flatMap((line) => line.deliveries);

	it("comes line by line, and has arrived on the day of the last of it, said in whatever order", async () => {
		const { id, number, lineIds } = await wireAndLamp();
		done(await came(id, "2026-03-09", { lineId: lineIds[0], count: "2" }, { lineId: lineIds[1], count: "1" }));
		expect((await purchase(number)).arrivedDay).toBeNull();
		done(await came(id, "2026-03-06", { lineId: lineIds[0], count: "3" }));
		expect((await purchase(number)).arrivedDay).toBe("2026-03-09");
		expect(refused(await came(id, "2026-03-10", { lineId: lineIds[0], count: "1" })).code).toBe("all-came");
	});

	it("that has arrived when the paper is entered came as any delivery does", async () => {
		const { number } = await aPurchase(shop, [{ what: "wire", count: "5", net: "10" }], HERE);
		expect((await deliveries(number)).map(({ count, day: on, stands }) => [count, on, stands])).toEqual([[5, "2026-03-05", "yes"]]);
	});

	it("is stock as far as it is here: 2 of 5 metres at 10.00 stand for 4.00", async () => {
		const { id, lineIds } = await wireAndLamp();
		expect(await stock()).toEqual([]);
		done(await came(id, "2026-03-09", { lineId: lineIds[0], count: "2" }));
		expect(await stock()).toEqual([["wire", 2, 400]]);
	});

	it("what has not come cannot be used, made a part, or sent back, and the words say what to do first", async () => {
		const { id, lineIds } = await wireAndLamp();
		done(await came(id, "2026-03-09", { lineId: lineIds[0], count: "2" }));
		const refusals = [
			refused(await use(lineIds[0], "3")),
			refused(
				await partFromLine(
					partFromLineSchema.parse({ lineId: lineIds[0], machineId: machine.id, count: "3", details: { name: "", origin: "modern" } }),
					shop.env(),
				),
			),
			refused(
				await returnLine(returnLineSchema.parse({ lineId: lineIds[0], machineId: machine.id, count: "3", words: "too thin" }), shop.env()),
			),
		];
		for (const { code, fields } of refusals) {
			expect(code).toBe("not-come");
			expect(fields?.count).toBe("Only 2 of it are here, 3 are still in the post: record that it came first.");
		}
		expect(refused(await use(lineIds[1], "1")).say).toBe("None of it are here, 1 is still in the post: record that it came first.");
		expect(done(await use(lineIds[0], "2")).amountMinor).toBe(400);
		expect(refused(await use(lineIds[0], "4")).say).toMatch(/^None of it/);
	});

	it("a machine that is not in the book gets nothing", async () => {
		const { lineIds } = await aPurchase(shop, [{ what: "wire", count: "5", net: "10" }], HERE);
		const stray = drawFromLineSchema.parse({ lineId: lineIds[0], machineId: shop.newId(), count: "1" });
		expect(refused(await drawFromLine(stray, shop.env()))).toMatchObject({
			code: "no-such-machine",
			fields: { machineId: "Choose again." },
		});
	});

	it("entered in error is taken back, and the purchase is in the post again", async () => {
		const { id, number, lineIds } = await wireAndLamp();
		done(await arrive(arriveSchema.parse({ purchaseId: id, arrivedDay: "2026-03-09" }), shop.env()));
		const [wire] = await deliveries(number);
		done(await voidDelivery(voidDeliverySchema.parse({ deliveryId: wire?.id, why: "it was another parcel" }), shop.env()));
		expect((await purchase(number)).arrivedDay).toBeNull();
		expect((await inThePost(shop.store.read)).map((order) => order.number)).toEqual([number]);
		expect(await stock()).toEqual([["lamp", 1, 400]]);
		expect((await deliveries(number)).find(({ id: each }) => each === wire?.id)).toMatchObject({
			stands: "no",
			words: "it was another parcel",
		});
		expect(refused(await voidDelivery({ deliveryId: wire?.id ?? "", why: "again" }, shop.env())).code).toBe("delivery-void");
		done(await came(id, "2026-03-11", { lineId: lineIds[0], count: "5" }));
		expect((await purchase(number)).arrivedDay).toBe("2026-03-11");
	});

	it("a delivery that was used from stands until those uses are taken back", async () => {
		const { id, number, lineIds } = await wireAndLamp();
		done(await came(id, "2026-03-09", { lineId: lineIds[0], count: "2" }));
		done(await came(id, "2026-03-10", { lineId: lineIds[0], count: "1" }));
		const { useId } = done(await use(lineIds[0], "2"));
		const [two, one] = await deliveries(number);
		const back = (deliveryId: string | undefined) => voidDelivery({ deliveryId: deliveryId ?? "", why: "a slip" }, shop.env());
		expect(refused(await back(two?.id))).toMatchObject({
			code: "taken-since",
			say: "1 of wire was used or sent back since. Take that back first, then this delivery.",
		});
		done(await back(one?.id));
		done(await voidUse({ useId, why: "not this wire" }, shop.env()));
		done(await back(two?.id));
		expect(await stock()).toEqual([]);
	});

	it("on a day that is still to come nothing has come, was used or was sent back, and the day is asked for at its field", async () => {
		const { id, lineIds } = await wireAndLamp();
		const [wire] = lineIds;
		expect(refused(await came(id, "2030-01-01", { lineId: wire, count: "1" })).fields).toHaveProperty("day");
		expect(refused(await arrive(arriveSchema.parse({ purchaseId: id, arrivedDay: "2026-03-21" }), shop.env())).fields).toHaveProperty(
			"arrivedDay",
		);
		const dearer = buySchema("EUR").parse({
			supplierName: "A dealer",
			orderedDay: "2026-03-02",
			arrivedDay: "2026-03-21",
			lines: [{ what: "wire", count: "1", net: "10" }],
		});
		expect(refused(await buy(dearer, shop.env())).fields).toHaveProperty("arrivedDay");
		done(await came(id, "2026-03-20", { lineId: wire, count: "5" }));
		const ahead = { lineId: wire, machineId: machine.id, count: "1", day: "2026-03-21" };
		expect(refused(await drawFromLine(drawFromLineSchema.parse(ahead), shop.env())).fields).toHaveProperty("day");
		expect(refused(await returnLine(returnLineSchema.parse({ ...ahead, words: "too thin" }), shop.env())).fields).toHaveProperty("day");
	});

	it("what was still in the post on a day was not used on it, nor what a later use needs", async () => {
		const { id, lineIds } = await wireAndLamp();
		done(await came(id, "2026-03-09", { lineId: lineIds[0], count: "2" }));
		done(await came(id, "2026-03-12", { lineId: lineIds[0], count: "3" }));
		const on = (day: string, count: string) =>
			drawFromLine(drawFromLineSchema.parse({ lineId: lineIds[0], machineId: machine.id, count, day }), shop.env());
		expect(refused(await on("2026-03-08", "1"))).toMatchObject({
			code: "not-come-then",
			fields: { day: expect.stringMatching(/Check the day/) },
		});
		expect(refused(await on("2026-03-09", "3")).code).toBe("not-come-then");
		done(await on("2026-03-10", "2"));
		// The two that were here on the 9th are the ones that went on the 10th; three more came later.
		expect(refused(await on("2026-03-09", "1")).code).toBe("not-come-then");
		done(await on("2026-03-12", "3"));
	});

	it("more than was ordered, nothing at all, and a day before the order are refused at their fields", async () => {
		const { id, lineIds } = await wireAndLamp();
		expect(refused(await came(id, "2026-03-09", { lineId: lineIds[1], count: "" }, { lineId: lineIds[0], count: "6" })).fields).toEqual({
			"lines.1.count": "Only 5 of wire are still to come.",
		});
		expect(refused(await came(id, "2026-03-09", { lineId: lineIds[0], count: "0" })).fields).toEqual({
			"lines.0.count": "Write how many came, of one line at least.",
		});
		expect(Object.keys(refused(await came(id, "2026-03-01", { lineId: lineIds[0], count: "1" })).fields ?? {})).toEqual(["day"]);
		expect(deliverSchema.safeParse({ purchaseId: id, day: "2026-03-09", lines: [{ lineId: "x", count: "two" }] }).success).toBe(false);
	});
});

describe("whatever comes and is taken", () => {
	it("is never more than was ordered, nor taken before it came", () => {
		type Doing = { readonly kind: "come" | "take" | "back"; readonly count: number };
		const doing = fc.record({ kind: fc.constantFrom<Doing["kind"]>("come", "take", "back"), count: fc.integer({ min: 1, max: 6 }) });
		fc.assert(
			fc.property(fc.integer({ min: 1, max: 12 }), fc.array(doing, { maxLength: 40 }), (count, doings) => {
				const deliveries: number[] = [];
				let taken = 0;
				for (const each of doings) {
					const came = deliveries.reduce((sum, one) => sum + one, 0);
					const line = { id: "line", what: "wire", count, came };
					if (each.kind === "come") {
						const said = { day: day("2026-03-09"), lines: [{ lineId: "line", count: each.count }] };
						const may = mayCome({ orderedDay: "2026-03-02", arrivedDay: came === count ? "2026-03-09" : null }, [line], said);
						expect(may.ok).toBe(came < count && came + each.count <= count);
						if (may.ok) {
							expect(may.value.whole).toBe(came + each.count === count);
							deliveries.push(each.count);
						}
					} else if (each.kind === "take") {
						if (each.count > count - taken) continue; // more than was bought: another rule's business
						const may = mayTake({ count, came, taken }, each.count);
						expect(may.ok).toBe(taken + each.count <= came);
						if (may.ok) taken += each.count;
					} else if (deliveries.length > 0) {
						const [last = 0] = deliveries.slice(-1);
						const may = mayTakeBack({ what: "wire", came, taken }, { count: last, stands: "yes" });
						expect(may.ok).toBe(came - last >= taken);
						if (may.ok) deliveries.pop();
					}
				}
			}),
			{ seed: 31, numRuns: 400 },
		);
	});
});
