import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { bagLines } from "@/lib/bags/bagLines";
import { makeBag, moveBag, movePart } from "@/lib/bags/changes";
import { whereIs } from "@/lib/bags/queries";
import { saidOf } from "@/lib/bags/said";
import { moveFixing, takeOut } from "@/lib/fittings/changes";
import { findByWords, tagsMeant } from "@/lib/machines/find";
import { losePart } from "@/lib/parts/changes";
import { addLocation, tagPlaces } from "@/lib/store/changes";
import { contentsOf } from "@/lib/store/contents";
import { bagsOut, lostParts, outside } from "@/lib/store/queries";
import { scannedThing } from "@/lib/store/scanned";
import { type AMachine, aLoosePart, aMachine } from "@/tests/fittings/aMachine";
import { done } from "@/tests/support/answers";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
let machine: AMachine;
let rack: string;
let shelf: string;
let tote: { bagId: string; tag: string };
let bag: { bagId: string; tag: string };

// A bag of screws in a tote, on shelf 2 of rack B in the back room.
beforeEach(async () => {
	shop = await freshShop();
	machine = await aMachine(shop, { lamp: { fixings: 2 } });
	const room = done(await addLocation({ parentId: null, kind: "room", name: "Back room" }, shop.env())).locationId;
	rack = done(await addLocation({ parentId: room, kind: "rack", name: "rack B" }, shop.env())).locationId;
	shelf = done(await addLocation({ parentId: rack, kind: "shelf", name: "shelf 2" }, shop.env())).locationId;
	tote = done(
		await makeBag({ machineId: machine.id, kind: "tote", words: "cabinet", lies: { kind: "location", locationId: shelf } }, shop.env()),
	);
	bag = done(await makeBag({ machineId: machine.id, words: "lamp screws", lies: { kind: "bag", bagId: tote.bagId } }, shop.env()));
	done(await takeOut({ machineId: machine.id, positionId: machine.position("lamp") }, shop.env()));
	done(await moveFixing({ fixingId: machine.fixing("lamp"), count: 2, to: { kind: "bag", bagId: bag.bagId }, note: "" }, shop.env()));
	done(await movePart({ partId: machine.part("lamp"), to: { kind: "bag", bagId: bag.bagId }, why: "" }, shop.env()));
});
afterEach(() => shop.close());

describe("where is it", () => {
	it("is the whole way from the inside out: the bags, then the shelf, its rack, its room", async () => {
		const where = await whereIs(shop.store.read, { bagId: bag.bagId, locationId: null });
		expect(where.bags).toEqual([bag.tag, tote.tag]);
		expect(where.places.map(({ name }) => name)).toEqual(["Back room", "rack B", "shelf 2"]);
		const scanned = done(await scannedThing(shop.store.read, machine.tag("lamp")));
		expect(scanned.where).toBe(`in ${bag.tag} in ${tote.tag} · Back room · rack B · shelf 2`);
		expect(scanned.bags).toEqual([bag.tag, tote.tag]);
	});

	it("finds screws by their size, in the bag in which they lie", async () => {
		const { fixings } = await findByWords(shop.store.read, ["4ba", "cheese"]);
		expect(fixings.rows).toMatchObject([{ count: 2, place: "bag", bag: { tag: { id: bag.tag } }, homes: [{ mark: "lamp" }] }]);
		expect((await findByWords(shop.store.read, ["M3"])).fixings.rows).toEqual([]);
	});

	it("finds a bag by the words on it, and says when nothing is in it any more", async () => {
		const found = async () => (await findByWords(shop.store.read, ["lamp", "screws"])).bags.rows.map(({ isEmpty }) => isEmpty);
		expect(await found()).toEqual([false]);
		done(await moveFixing({ fixingId: machine.fixing("lamp"), count: 2, to: { kind: "bench" }, note: "" }, shop.env()));
		done(await movePart({ partId: machine.part("lamp"), to: { kind: "bench" }, why: "" }, shop.env()));
		expect(await found()).toEqual([true]);
	});

	it("finds a shelf by the words of its way, and no other shelf", async () => {
		done(await addLocation({ parentId: rack, kind: "shelf", name: "shelf 3" }, shop.env()));
		const { places } = await findByWords(shop.store.read, ["rack", "B", "shelf", "2"]);
		expect(places.rows.map(({ id }) => id)).toEqual([shelf]);
	});

	it("offers a shelf's tag for one that was typed with two figures swapped", async () => {
		const tag = done(await tagPlaces({ locationIds: [shelf] }, shop.env())).tags[0]?.tag ?? "";
		const slip = tag.replace(/(\d)(\d)-(.)$/, "$2$1-$3");
		expect(slip).not.toBe(tag);
		expect(await tagsMeant(shop.store.read, slip)).toEqual([tag]);
	});
});

describe("what is at a place", () => {
	it("is told down to the last screw, bags in bags, for the rack as for its shelf", async () => {
		const [whole, ofShelf] = [await contentsOf(shop.store.read, rack), await contentsOf(shop.store.read, shelf)];
		expect(whole).toMatchObject({
			more: false,
			places: [
				{
					locationId: shelf,
					way: "shelf 2",
					things: [
						{
							tag: tote.tag,
							inIt: [{ tag: bag.tag, inIt: [{ tag: machine.tag("lamp") }, { kind: "fixing", words: "2 x 4BA x 1/2, cheese slotted" }] }],
						},
					],
				},
			],
		});
		expect(ofShelf.places[0]?.things).toEqual(whole.places[0]?.things);
	});

	it("is nothing where nothing lies, and of an empty bag that it is empty", async () => {
		const empty = done(await makeBag({ machineId: machine.id, words: "for later" }, shop.env()));
		expect(await bagLines(shop.store.read, empty.bagId)).toEqual(["Nothing: it is empty."]);
		expect(await bagLines(shop.store.read, bag.bagId)).toEqual([`${machine.tag("lamp")} Part lamp`, "2 x 4BA x 1/2, cheese slotted"]);
		const attic = done(await addLocation({ parentId: null, kind: "room", name: "Attic" }, shop.env())).locationId;
		expect((await contentsOf(shop.store.read, attic)).places).toEqual([]);
	});
});

it("what lies nowhere any more is listed with what is known: lost parts, and bags that are not here", async () => {
	const cam = await aLoosePart(shop, machine, "cam");
	done(await losePart({ partId: cam.id, why: "fell behind the bench" }, shop.env()));
	const gone = done(await makeBag({ machineId: machine.id, words: "odd springs" }, shop.env()));
	done(await moveBag({ bagId: gone.bagId, to: { kind: "out", why: "not found where it should be" } }, shop.env()));
	expect(await lostParts(shop.store.read)).toMatchObject([{ tag: cam.tag, why: "fell behind the bench" }]);
	expect(await bagsOut(shop.store.read)).toMatchObject([{ tag: gone.tag, placeWhy: "not found where it should be", things: 0 }]);
});

it("a bag that is not found is missing with all that is in it, originals too: it is not outside the shop", async () => {
	done(await moveBag({ bagId: tote.bagId, to: { kind: "out", why: "Not found, looked in the attic" } }, shop.env()));
	expect(await outside(shop.store.read)).toEqual([]);
	expect((await whereIs(shop.store.read, { bagId: bag.bagId, locationId: null })).last).toBe("Not found, looked in the attic");
	expect((await saidOf(shop.store.read, `Bag/${tote.bagId}`))[0]?.say).toBe(`${tote.tag} was not found, looked in the attic.`);
	done(await movePart({ partId: machine.part("lamp"), to: { kind: "bench" }, why: "" }, shop.env()));
	expect((await saidOf(shop.store.read, `Part/${machine.part("lamp")}`))[0]?.say).toBe("Found again and laid the part lamp on the bench.");
});
