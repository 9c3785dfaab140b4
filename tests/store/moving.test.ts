import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { makeBag, moveBag, movePart } from "@/lib/bags/changes";
import { ok } from "@/lib/core/result";
import { record } from "@/lib/ledger/record";
import { add, deed } from "@/lib/ledger/rows";
import { addLocation, moveThings, tagPlaces } from "@/lib/store/changes";
import { whatLiesAt } from "@/lib/store/queries";
import { scannedThing } from "@/lib/store/scanned";
import { readTag } from "@/lib/tags/readTag";
import { type AMachine, aLoosePart, aMachine } from "@/tests/fittings/aMachine";
import { aBag } from "@/tests/ledger/lampShop";
import { done, refused } from "@/tests/support/answers";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
let machine: AMachine;
let one: string;
let two: string;

beforeEach(async () => {
	shop = await freshShop();
	machine = await aMachine(shop, { lamp: {} });
	const room = done(await addLocation({ parentId: null, kind: "room", name: "Back room" }, shop.env())).locationId;
	one = done(await addLocation({ parentId: room, kind: "shelf", name: "shelf 1" }, shop.env())).locationId;
	two = done(await addLocation({ parentId: room, kind: "shelf", name: "shelf 2" }, shop.env())).locationId;
});
afterEach(() => shop.close());

const bag = async (words: string, machineId: string | null = machine.id) => done(await makeBag({ machineId, words }, shop.env()));
const entries = (action: string) => shop.store.read.entry.findMany({ where: { action }, orderBy: { seq: "asc" } });
const at = async (place: string) => {
	const { bags, parts } = await whatLiesAt(shop.store.read, place);
	return [...bags.map(({ id }) => id), ...parts.map(({ id }) => id)].sort();
};

describe("the tag of a place", () => {
	it("is one of the shop's own numbers, read and checked as any other, and leads to the place", async () => {
		const { tags } = done(await tagPlaces({ locationIds: [one, two] }, shop.env()));
		expect(tags.map(({ locationId }) => locationId)).toEqual([one, two]);
		for (const { tag, locationId } of tags) {
			expect(readTag(tag)).toMatchObject({ ok: true, value: { machine: 0, tag } });
			expect(done(await scannedThing(shop.store.read, tag.toLowerCase()))).toMatchObject({ kind: "place", id: locationId });
		}
	});

	it("stays the same when it is asked for again, and nothing is written", async () => {
		const first = done(await tagPlaces({ locationIds: [one] }, shop.env()));
		expect(done(await tagPlaces({ locationIds: [one] }, shop.env()))).toEqual(first);
		expect(await entries("location.tagged")).toHaveLength(1);
	});

	it("is given once, also when two ask for it at the same moment", async () => {
		const [a, b] = await Promise.all([
			tagPlaces({ locationIds: [two, one] }, shop.env()),
			tagPlaces({ locationIds: [two, one] }, shop.env()),
		]);
		expect(done(b)).toEqual(done(a));
		expect(done(a).tags.map(({ locationId }) => locationId)).toEqual([two, one]);
		expect(await entries("location.tagged")).toHaveLength(2);
	});

	it("is never a bag's: neither by the next free number nor by hand", async () => {
		const [place] = done(await tagPlaces({ locationIds: [one] }, shop.env())).tags;
		const made = await bag("odd screws", null);
		expect(made.tag).not.toBe(place?.tag);
		expect(done(await tagPlaces({ locationIds: [two] }, shop.env())).tags[0]?.tag).not.toBe(made.tag);
		const taken = refused(await makeBag({ machineId: null, words: "x", tag: place?.tag ?? "" }, shop.env()));
		expect(taken.code).toBe("tag-taken");
	});

	it("with a slip of the hand is caught, and offered", async () => {
		const [place] = done(await tagPlaces({ locationIds: [one] }, shop.env())).tags;
		const tag = place?.tag ?? "";
		const slip = tag.replace(/\d(?=-.$)/, (digit) => String((Number(digit) + 1) % 10));
		const error = refused(await scannedThing(shop.store.read, slip));
		expect(error.code).toBe("tag-check");
		expect(error.facts?.meant).toContain(tag);
	});
});

describe("moving many things", () => {
	it("lays parts and bags at a place in one deed, an entry for each machine", async () => {
		const other = await aMachine(shop, { bell: {} }, 13);
		const mine = await bag("trims");
		const theirs = await bag("bells", other.id);
		const part = await aLoosePart(shop, machine, "lamp holder");
		const things = [
			{ kind: "bag" as const, id: mine.bagId },
			{ kind: "bag" as const, id: theirs.bagId },
			{ kind: "part" as const, id: part.id },
		];
		expect(done(await moveThings({ things, to: { kind: "location", locationId: one } }, shop.env()))).toMatchObject({
			moved: 3,
			stayed: [],
		});
		expect(await at(one)).toEqual([mine.bagId, theirs.bagId, part.id].sort());
		expect((await entries("things.moved")).map(({ machine: of }) => of)).toEqual([machine.id, other.id]);
	});

	it("moves nothing when one of them cannot go, says which, and on a second word moves the others", async () => {
		const other = await aMachine(shop, { bell: {} }, 13);
		const [mine, theirs] = [await bag("trims"), await bag("bells", other.id)];
		const into = { kind: "bag" as const, bagId: (await bag("tote")).bagId };
		const things = [
			{ kind: "bag" as const, id: mine.bagId },
			{ kind: "bag" as const, id: theirs.bagId },
		];
		const error = refused(await moveThings({ things, to: into }, shop.env()));
		expect(error.say).toContain(theirs.tag);
		expect(await entries("things.moved")).toHaveLength(0);
		const rest = done(await moveThings({ things, to: into, restGoes: true }, shop.env()));
		expect(rest.moved).toBe(1);
		expect(rest.stayed[0]).toContain(theirs.tag);
	});

	it("takes a place for everything that lies right on it", async () => {
		const [first, second] = [await bag("trims"), await bag("lamps")];
		for (const { bagId } of [first, second]) done(await moveBag({ bagId, to: { kind: "location", locationId: one } }, shop.env()));
		done(await moveThings({ things: [{ kind: "place", id: one }], to: { kind: "location", locationId: two } }, shop.env()));
		expect([await at(one), await at(two)]).toEqual([[], [first.bagId, second.bagId].sort()]);
	});

	it("leaves in its bag what lies in one that goes, too, and says so", async () => {
		const [outer, inner] = [await bag("tote"), await bag("trims")];
		const part = await aLoosePart(shop, machine, "lamp holder");
		done(await moveBag({ bagId: inner.bagId, to: { kind: "bag", bagId: outer.bagId } }, shop.env()));
		done(await movePart({ partId: part.id, to: { kind: "bag", bagId: inner.bagId }, why: "" }, shop.env()));
		const things = [
			{ kind: "part" as const, id: part.id },
			{ kind: "bag" as const, id: outer.bagId },
		];
		const moved = done(await moveThings({ things, to: { kind: "location", locationId: one } }, shop.env()));
		expect(moved).toMatchObject({ moved: 1, inside: [expect.stringContaining(`in ${outer.tag}`)] });
		expect(await at(one)).toEqual([outer.bagId]);
		expect(await shop.store.read.part.findUniqueOrThrow({ where: { id: part.id } })).toMatchObject({ bagId: inner.bagId });
	});

	it("does not move a part of what lies on a place as if it were all of it", async () => {
		const rows = Array.from({ length: 1001 }, () => add("Bag", { ...aBag(shop.newId(), null, "odd"), place: "location", locationId: one }));
		const facts = { say: "Many bags." };
		done(await record(shop.env(), async () => ok(deed(null, "bag.made", { table: "Bag", id: rows[0]?.id ?? "" }, facts, rows, null))));
		const all = { things: [{ kind: "place" as const, id: one }], to: { kind: "location" as const, locationId: two } };
		expect(refused(await moveThings(all, shop.env())).code).toBe("too-much-to-move");
	});

	it("does not lay a bag into itself, and says so when all lies there already", async () => {
		const { bagId } = await bag("trims");
		expect(refused(await moveThings({ things: [{ kind: "bag", id: bagId }], to: { kind: "bag", bagId } }, shop.env())).say).toMatch(
			/into itself/,
		);
		done(await moveThings({ things: [{ kind: "bag", id: bagId }], to: { kind: "location", locationId: one } }, shop.env()));
		const again = refused(
			await moveThings({ things: [{ kind: "bag", id: bagId }], to: { kind: "location", locationId: one } }, shop.env()),
		);
		expect(again.code).toBe("nothing-moves");
	});
});
