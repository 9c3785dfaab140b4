// Two pages made from the same row, sent one after the other.

import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { verifyLedger } from "@/lib/ledger/verify";
import { describeMachine, takeInMachine } from "@/lib/machines/changes";
import { describeMachineSchema, takeInMachineSchema } from "@/lib/machines/schema";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
let machineId: string;
let seen: number;
const words = { name: "TIN HERON", hazards: "Mains on the coin door.", condition: "Damp.", price: "120.00", receivedDay: "2026-03-02" };
const machine = () => shop.store.read.machine.findUniqueOrThrow({ where: { id: machineId } });
const send = (changed: Partial<typeof words>, from: number | null) =>
	describeMachine(describeMachineSchema("EUR").parse({ ...words, ...changed, machineId }), { ...shop.env(), seen: from });

beforeEach(async () => {
	shop = await freshShop();
	const taken = await takeInMachine(takeInMachineSchema("EUR").parse(words), shop.env());
	if (!taken.ok) throw new Error(taken.error.say);
	machineId = taken.value.id;
	seen = (await machine()).entry;
});
afterEach(() => shop.close());

describe("two pages made from the same row", () => {
	it("what one only showed and did not touch keeps what the other said", async () => {
		expect(await send({ hazards: "Mains on the coin door.\nMercury in the tilt." }, seen)).toMatchObject({ ok: true });
		expect(await send({ name: "THE TIN HERON" }, seen)).toMatchObject({ ok: true });
		expect(await machine()).toMatchObject({ name: "THE TIN HERON", hazards: "Mains on the coin door.\nMercury in the tilt." });
		expect((await verifyLedger(shop.folder)).flaws).toEqual([]);
	});

	it("what both changed is refused at its field, and the same answers sent on top of what is new are written", async () => {
		await send({ condition: "Dry by now." }, seen);
		const refused = await send({ condition: "Wet.", name: "THE TIN HERON" }, seen);
		if (refused.ok) throw new Error("it was not refused");
		const now = (await machine()).entry;
		expect(refused.error).toMatchObject({ code: "changed-meanwhile", facts: { seen: now } });
		expect(Object.keys(refused.error.fields ?? {})).toEqual(["condition"]);
		expect(await machine()).toMatchObject({ condition: "Dry by now.", name: "TIN HERON" });
		expect(await send({ condition: "Wet.", name: "THE TIN HERON" }, now)).toMatchObject({ ok: true });
		expect(await machine()).toMatchObject({ condition: "Wet.", name: "THE TIN HERON" });
	});

	it("goes for what is withheld, too, under the name of its field", async () => {
		await send({ price: "125.00" }, seen);
		expect(await send({ price: "130.00" }, seen)).toMatchObject({ ok: false, error: { fields: { price: expect.any(String) } } });
		expect(await send({ name: "THE TIN HERON" }, seen)).toMatchObject({ ok: true });
		expect(await machine()).toMatchObject({ priceMinor: 12_500 });
	});

	it("is no quarrel when both say the same, or when nothing was said meanwhile", async () => {
		await send({ condition: "Dry." }, seen);
		expect(await send({ condition: "Dry." }, seen)).toMatchObject({ ok: true });
		expect(await send({ condition: "Very dry." }, (await machine()).entry)).toMatchObject({ ok: true });
	});
});
