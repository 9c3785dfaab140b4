// Beforehand, asked of a real record: a bag, a step, a part that is another machine's.

import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { makeBag, movePart } from "@/lib/bags/changes";
import { putIn, takeOut } from "@/lib/fittings/changes";
import { stampAsFound } from "@/lib/machines/changes";
import { foresee, foreseeStep, positionsLostWith, positionsLostWithBag } from "@/lib/reversal/beforehandQueries";
import { aMachine, aPosition, got, partWords, refused } from "@/tests/machines/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("beforehand", () => {
	let shop: FreshShop;
	let machine: Awaited<ReturnType<typeof aMachine>>;
	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, [
			aPosition("sign box", { mark: "k03" }),
			aPosition("lamp", { mark: "k05", hostMark: "k03" }),
			aPosition("clock", { mark: "k12", part: partWords({ origin: "modern" }) }),
			aPosition("shell", { mark: "k40", kind: "place" }),
			aPosition("buzzer", { mark: "k41", finding: "missing" }),
		]);
		got(await stampAsFound({ machineId: machine.id }, shop.env()));
	});
	afterEach(() => shop.close());
	const out = async (mark: string) => got(await takeOut({ machineId: machine.id, positionId: machine.position(mark) }, shop.env()));
	const step = (about: { partId?: string; positionId?: string }) =>
		foreseeStep(shop.store.read, machine.id, { partId: null, positionId: null, ...about });

	test("a bag counts with all that lies in it and in the bags within it", async () => {
		await out("k03");
		await out("k12");
		const outer = got(await makeBag({ machineId: machine.id, role: "keeping", words: "all" }, shop.env())).bagId;
		const inner = got(
			await makeBag({ machineId: machine.id, role: "keeping", words: "clock", lies: { kind: "bag", bagId: outer } }, shop.env()),
		).bagId;
		expect(await positionsLostWithBag(shop.store.read, outer)).toEqual([]);
		got(await movePart({ partId: machine.part("k03"), to: { kind: "bag", bagId: outer } }, shop.env()));
		got(await movePart({ partId: machine.part("k12"), to: { kind: "bag", bagId: inner } }, shop.env()));
		expect(await positionsLostWithBag(shop.store.read, outer)).toEqual([
			{ mark: "k03", name: "sign box", original: true },
			{ mark: "k05", name: "lamp", original: true },
			{ mark: "k12", name: "clock", original: false },
		]);
		expect(await positionsLostWithBag(shop.store.read, inner)).toEqual([{ mark: "k12", name: "clock", original: false }]);
		expect(await positionsLostWithBag(shop.store.read, "no such bag")).toEqual([]);
	});

	test("a step says what it could lose of its part, or of the part in its position, or of the position itself", async () => {
		expect((await step({ positionId: machine.position("k05") }))?.say).toMatch(/k05 lamp\./);
		expect((await step({ partId: machine.part("k05") }))?.say).toMatch(/k05 lamp\./);
		expect((await step({ positionId: machine.position("k40") }))?.say).toMatch(/k40 shell\./);
		expect(await step({})).toBeNull();
	});

	test("a step on what the shop itself put in loses nothing, and nothing is said", async () => {
		await out("k12");
		const other = await aMachine(shop, [aPosition("spare clock", { mark: "x01", part: partWords({ origin: "modern" }) })]);
		got(await takeOut({ machineId: other.id, positionId: other.position("x01") }, shop.env()));
		got(await putIn({ positionId: machine.position("k12"), partId: other.part("x01") }, shop.env()));
		expect(await step({ partId: other.part("x01") })).toBeNull();
	});

	test("a part of another machine that carries its original goes in with a reason, and that machine's loss is known beforehand", async () => {
		await out("k03");
		const other = await aMachine(shop, [aPosition("front", { mark: "x01", finding: "missing" })]);
		expect((await positionsLostWith(shop.store.read, machine.part("k03"))).map(({ mark }) => mark)).toEqual(["k03", "k05"]);
		const put = { positionId: other.position("x01"), partId: machine.part("k03") };
		expect(refused(await putIn(put, shop.env()))).toBe("original-of-another");
		got(await putIn({ ...put, reason: "for the fair, until June" }, shop.env()));
	});

	test("nothing is said of a thing that is not on the machine's record", async () => {
		const asked = [
			{ does: "parting", partId: "nobody" },
			{ does: "alter", positionId: "nowhere", partId: null, undo: "never" },
			{ does: "nothing" },
		] as const;
		expect((await foresee(shop.store.read, machine.id, asked)).map((each) => each?.say ?? null)).toEqual([
			null,
			null,
			"Reversal loses nothing by it.",
		]);
		expect(await foresee(shop.store.read, "no machine", asked)).toEqual([null, null, null]);
	});
});
