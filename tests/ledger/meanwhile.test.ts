// Two pages made from the same row, sent one after the other.

import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { linksMeanwhile, type Seen } from "@/lib/ledger/meanwhile";
import { verifyLedger } from "@/lib/ledger/verify";
import { describeMachine, takeInMachine } from "@/lib/machines/changes";
import { describeMachineSchema, takeInMachineSchema } from "@/lib/machines/schema";
import { addPositionsAsText, describePosition } from "@/lib/positions/changes";
import { describePositionSchema } from "@/lib/positions/schema";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
let machineId: string;
let seen: number;
const words = { name: "TIN HERON", hazards: "Mains on the coin door.", condition: "Damp.", price: "120.00", receivedDay: "2026-03-02" };
const machine = () => shop.store.read.machine.findUniqueOrThrow({ where: { id: machineId } });
const send = (changed: Partial<typeof words>, from: number | null, told: Seen["told"] = null) =>
	describeMachine(describeMachineSchema("EUR").parse({ ...words, ...changed, machineId }), { ...shop.env(), seen: { seen: from, told } });

beforeEach(async () => {
	shop = await freshShop();
	const taken = await takeInMachine(takeInMachineSchema("EUR").parse(words), shop.env());
	if (!taken.ok) throw new Error(taken.error.say);
	machineId = taken.value.id;
	seen = (await machine()).entry;
});
afterEach(() => shop.close());

const aPosition = (positionId: string) => ({
	positionId,
	name: "Motor",
	area: "",
	kind: "seat",
	sides: [],
	note: "",
	hostMark: "",
	mirrorMark: "",
	in: { low: "", likely: "", high: "" },
});

describe("two pages made from the same row", () => {
	it("what one only showed and did not touch keeps what the other said", async () => {
		expect(await send({ hazards: "Mains on the coin door.\nMercury in the tilt." }, seen)).toMatchObject({ ok: true });
		expect(await send({ name: "THE TIN HERON" }, seen)).toMatchObject({ ok: true });
		expect(await machine()).toMatchObject({ name: "THE TIN HERON", hazards: "Mains on the coin door.\nMercury in the tilt." });
		expect((await verifyLedger(shop.folder)).flaws).toEqual([]);
	});

	it("what both changed is refused at its field; sent again it is written over that, and over nothing else", async () => {
		await send({ condition: "Dry by now.", hazards: "Mains. Mercury in the tilt." }, seen);
		const mine = { condition: "Wet.", name: "THE TIN HERON" };
		const refused = await send(mine, seen);
		if (refused.ok) throw new Error("it was not refused");
		const told = { entry: (await machine()).entry, fields: ["condition"] };
		expect(refused.error).toMatchObject({ code: "changed-meanwhile", facts: { told } });
		expect(Object.keys(refused.error.fields ?? {})).toEqual(["condition"]);
		expect(await machine()).toMatchObject({ condition: "Dry by now.", name: "TIN HERON" });
		expect(await send(mine, seen, told)).toMatchObject({ ok: true });
		expect(await machine()).toMatchObject({ ...mine, hazards: "Mains. Mercury in the tilt." });
	});

	it("who was told of one change is told again of another", async () => {
		await send({ condition: "Dry by now." }, seen);
		const told = { entry: (await machine()).entry, fields: ["condition"] };
		await send({ condition: "Dry, and swept." }, told.entry);
		expect(await send({ condition: "Wet." }, seen, told)).toMatchObject({ ok: false, error: { code: "changed-meanwhile" } });
		const now = { entry: (await machine()).entry, fields: ["condition"] };
		await send({ condition: "Dry, and swept.", hazards: "Mains." }, now.entry);
		const both = { condition: "Wet.", hazards: "None known." };
		const later = { entry: (await machine()).entry, fields: ["condition"] };
		expect(await send(both, seen, later)).toMatchObject({ ok: false, error: { facts: { told: { fields: ["condition", "hazards"] } } } });
	});

	it("what only makes sense together is one person's or the other's", async () => {
		const text = "Motor (original)";
		await addPositionsAsText({ machineId, wasThere: true, text, origin: "unknown" }, shop.env());
		const position = await shop.store.read.position.findFirstOrThrow({ where: { machineId } });
		const say = (out: object, from: number | null, note = "") =>
			describePosition(describePositionSchema.parse({ ...aPosition(position.id), out, note }), {
				...shop.env(),
				seen: { seen: from, told: null },
			});
		const row = () => shop.store.read.position.findFirstOrThrow({ where: { machineId } });
		expect(await say({ low: "10", likely: "20", high: "30" }, null)).toMatchObject({ ok: true });
		const then = (await row()).entry;
		expect(await say({ low: "10", likely: "20", high: "22" }, then)).toMatchObject({ ok: true });
		// 10, 25 and 22 would be no estimate at all.
		expect(await say({ low: "10", likely: "25", high: "30" }, then)).toMatchObject({ ok: false, error: { code: "changed-meanwhile" } });
		expect(await say({ low: "10", likely: "20", high: "30" }, then, "Behind the motor.")).toMatchObject({ ok: true });
		expect(await row()).toMatchObject({ outLikely: 20, outHigh: 22, note: "Behind the motor." });
	});

	it("a need that was added meanwhile stays, and so does a withdrawal", () => {
		const link = (id: string, stands: "yes" | "no", entry: number) => ({ id, stands, entry });
		const links = [link("old", "yes", 3), link("dead", "yes", 9), link("gone", "no", 9), link("withdrawn", "no", 2)];
		const to = ({ id }: { id: string }) => id;
		expect(linksMeanwhile(links, to, ["old", "gone"], 5).sort()).toEqual(["dead", "old"]);
		expect(linksMeanwhile(links, to, ["gone", "mine", "withdrawn"], 5).sort()).toEqual(["dead", "mine", "withdrawn"]);
		expect(linksMeanwhile(links, to, ["old", "gone"], null)).toEqual(["old", "gone"]);
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
