import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { makeBag } from "@/lib/bags/changes";
import { day } from "@/lib/core/days";
import { sendOut } from "@/lib/parts/changes";
import { addLocation, renameLocation } from "@/lib/store/changes";
import { locationPath, notPutAway, outside, pathsOf, placesInOrder, whatLiesAt } from "@/lib/store/queries";
import { type AMachine, aLoosePart, aMachine } from "@/tests/fittings/aMachine";
import { done, refused } from "@/tests/support/answers";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("places in the shop", () => {
	let shop: FreshShop;
	let machine: AMachine;
	const add = async (parentId: string | null, kind: "room" | "rack" | "shelf" | "bin", name: string) =>
		done(await addLocation({ parentId, kind, name }, shop.env())).locationId;

	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, { lamp: {} });
	});
	afterEach(() => shop.close());

	it("are walked in the order in which they were added, each under what it stands in", async () => {
		const room = await add(null, "room", "Back room");
		const b = await add(room, "rack", "rack B");
		await add(null, "room", "Attic");
		await add(room, "rack", "rack A");
		await add(b, "shelf", "shelf 2");
		const places = await placesInOrder(shop.store.read);
		expect(places.map((place) => `${"  ".repeat(place.depth)}${place.name}`)).toEqual([
			"Back room",
			"  rack B",
			"    shelf 2",
			"  rack A",
			"Attic",
		]);
		expect(pathsOf(places).map((place) => place.path)).toEqual([
			"Back room",
			"Back room · rack B",
			"Back room · rack B · shelf 2",
			"Back room · rack A",
			"Attic",
		]);
	});

	it("a place is never inside itself, and the way is named", async () => {
		const room = await add(null, "room", "Room");
		const rack = await add(room, "rack", "Rack");
		const shelf = await add(rack, "shelf", "Shelf");
		const loop = refused(await renameLocation({ locationId: room, name: "Room", parentId: shelf }, shop.env()));
		expect(loop.code).toBe("location-inside-itself");
		expect(loop.say).toContain("Shelf is in Rack is in Room");
		expect(refused(await renameLocation({ locationId: room, name: "Room", parentId: room }, shop.env())).code).toBe(
			"location-inside-itself",
		);
	});

	it("two places of one name do not stand in the same place, not even two rooms", async () => {
		const room = await add(null, "room", "Back room");
		await add(room, "rack", "A");
		expect(refused(await addLocation({ parentId: room, kind: "rack", name: "a" }, shop.env())).code).toBe("name-taken");
		expect(refused(await addLocation({ parentId: null, kind: "room", name: "back room" }, shop.env())).code).toBe("name-taken");
		const other = await add(null, "room", "Attic");
		await add(other, "rack", "A");
		expect(refused(await renameLocation({ locationId: other, name: "Back room" }, shop.env())).code).toBe("name-taken");
	});

	it("what lies on a shelf moves with it when the shelf is carried elsewhere", async () => {
		const room = await add(null, "room", "Back room");
		const shelf = await add(room, "shelf", "shelf 1");
		const bag = done(await makeBag({ machineId: machine.id, words: "screws", lies: { kind: "location", locationId: shelf } }, shop.env()));
		const attic = await add(null, "room", "Attic");
		done(await renameLocation({ locationId: shelf, name: "shelf 9", parentId: attic }, shop.env()));
		expect(await locationPath(shop.store.read, shelf)).toBe("Attic · shelf 9");
		expect((await whatLiesAt(shop.store.read, shelf)).bags).toMatchObject([{ tag: bag.tag, words: "screws" }]);
	});

	it("a part outside is listed with who has it, the first due first, and one without a day last", async () => {
		const [a, b, c] = [
			await aLoosePart(shop, machine, "A", { origin: "original" }),
			await aLoosePart(shop, machine, "B"),
			await aLoosePart(shop, machine, "C"),
		];
		const out = async (partId: string, dueDay: string | null) =>
			done(
				await sendOut(
					{ partId, partyId: null, partyName: "the plater", dueDay: dueDay === null ? null : day(dueDay), why: "nickel" },
					shop.env(),
				),
			);
		await out(b.id, null);
		await out(c.id, "2026-05-01");
		await out(a.id, "2026-04-01");
		const rows = await outside(shop.store.read);
		expect(rows.map((row) => [row.name, row.dueDay])).toEqual([
			["A", "2026-04-01"],
			["C", "2026-05-01"],
			["B", null],
		]);
		expect(rows[0]).toMatchObject({ party: "the plater", why: "nickel", origin: "original", tag: a.tag });
		expect((await outside(shop.store.read, "no machine")).length).toBe(0);
	});

	it("what is on the bench is listed until it is put away", async () => {
		const spare = await aLoosePart(shop, machine, "Spare");
		const bag = done(await makeBag({ machineId: machine.id, words: "screws" }, shop.env()));
		const before = await notPutAway(shop.store.read);
		expect(before.parts.map((part) => part.id)).toEqual([spare.id]);
		expect(before.bags.map((row) => row.tag)).toEqual([bag.tag]);
	});

	it("no place can be added to one that is not there", async () => {
		expect(refused(await addLocation({ parentId: shop.newId(), kind: "shelf", name: "x" }, shop.env())).code).toBe("no-location");
	});
});
