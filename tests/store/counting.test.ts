import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { makeBag, moveBag, movePart } from "@/lib/bags/changes";
import { whereBagIs, whereIs } from "@/lib/bags/queries";
import { verifyLedger } from "@/lib/ledger/verify";
import { addLocation, countPlace } from "@/lib/store/changes";
import { lyingFor } from "@/lib/store/counting";
import { lastCounts, whatLiesAt } from "@/lib/store/queries";
import { unseenAt, unseenSince } from "@/lib/store/unseen";
import { type AMachine, aLoosePart, aMachine } from "@/tests/fittings/aMachine";
import { done, refused } from "@/tests/support/answers";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
let machine: AMachine;
let rack: string;
let one: string;
let two: string;

beforeEach(async () => {
	shop = await freshShop();
	machine = await aMachine(shop, { lamp: {} });
	const add = async (parentId: string | null, kind: "room" | "rack" | "shelf", name: string) =>
		done(await addLocation({ parentId, kind, name }, shop.env())).locationId;
	rack = await add(await add(null, "room", "Back room"), "rack", "rack B");
	one = await add(rack, "shelf", "shelf 1");
	two = await add(rack, "shelf", "shelf 2");
});
afterEach(() => shop.close());

const aBag = async (words: string, locationId: string | null) =>
	done(
		await makeBag(
			{ machineId: machine.id, words, lies: locationId === null ? { kind: "bench" } : { kind: "location", locationId } },
			shop.env(),
		),
	);
const aPart = async (name: string, locationId: string, origin: "original" | "modern" = "modern") => {
	const part = await aLoosePart(shop, machine, name, { origin });
	done(await movePart({ partId: part.id, to: { kind: "location", locationId }, why: "" }, shop.env()));
	return part;
};
const counts = () => shop.store.read.entry.findMany({ where: { action: "place.counted" }, orderBy: { seq: "asc" } });
const at = async (place: string) => {
	const { bags, parts } = await whatLiesAt(shop.store.read, place);
	return [...bags.map(({ id }) => id), ...parts.map(({ id }) => id)].sort();
};
const partNow = (id: string) => shop.store.read.part.findUniqueOrThrow({ where: { id } });

describe("a count", () => {
	it("is an entry with the tags of what is there, missing and not expected, and lays here what is said to lie here", async () => {
		const [here, gone, strange] = [await aBag("trims", one), await aBag("lamps", one), await aBag("coils", null)];
		const counted = done(
			await countPlace(
				{ locationId: one, expected: [here.bagId, gone.bagId], seen: [here.bagId, strange.bagId], layHere: [strange.bagId] },
				shop.env(),
			),
		);
		expect(counted).toEqual({ here: 1, missing: [`${gone.tag} lamps`], unexpected: [`${strange.tag} coils`] });
		expect(await at(one)).toEqual([here.bagId, gone.bagId, strange.bagId].sort());
		const last = await lastCounts(shop.store.read);
		expect(last.get(one)).toMatchObject({
			by: "T",
			missing: [gone.tag],
			say: `Counted Back room · rack B · shelf 1: 1 there, missing ${gone.tag} lamps, not expected ${strange.tag} coils.`,
		});
		expect([last.size, (await lastCounts(shop.store.read, two)).size]).toEqual([1, 0]);
		const [entry] = await counts();
		expect(JSON.parse(entry?.open ?? "{}").facts).toMatchObject({ here: [here.tag], missing: [gone.tag], unexpected: [strange.tag] });
		expect((await verifyLedger(shop.folder)).flaws).toEqual([]);
	});

	it("leaves a mark on what it did not see, and on what lies in it, until that is laid anew", async () => {
		const gone = await aBag("lamps", one);
		const inIt = await aLoosePart(shop, machine, "Lamp");
		done(await movePart({ partId: inIt.id, to: { kind: "bag", bagId: gone.bagId }, why: "" }, shop.env()));
		shop.setClock("2026-03-05T09:00:00.000Z");
		done(await countPlace({ locationId: one, expected: [gone.bagId] }, shop.env()));
		const unseen = async () => {
			const bag = await shop.store.read.bag.findUniqueOrThrow({ where: { id: gone.bagId }, select: { sinceAt: true } });
			return [
				await unseenAt(shop.store.read, await whereBagIs(shop.store.read, gone.bagId), { tag: gone.tag, ...bag }),
				await unseenAt(shop.store.read, await whereIs(shop.store.read, { bagId: gone.bagId, locationId: null }), {
					tag: inIt.tag,
					sinceAt: "2026-03-06T09:00:00.000Z",
				}),
				(await unseenSince(shop.store.read, await lastCounts(shop.store.read))).map(({ tag, locationId }) => [tag, locationId]),
			];
		};
		const at = (await lastCounts(shop.store.read)).get(one)?.at;
		expect(await unseen()).toEqual([at, at, [[gone.tag, one]]]);
		shop.setClock("2026-03-05T10:00:00.000Z");
		done(await moveBag({ bagId: gone.bagId, to: { kind: "location", locationId: one } }, shop.env()));
		expect(await unseen()).toEqual([null, null, []]);
	});

	it("is an entry also when nothing was wrong, and moves nothing that is only said to have been seen", async () => {
		const { bagId, tag } = await aBag("trims", null);
		done(await countPlace({ locationId: one }, shop.env()));
		done(await countPlace({ locationId: one, seen: [bagId] }, shop.env()));
		expect(await counts()).toHaveLength(2);
		expect(await at(one)).toEqual([]);
		expect((await lastCounts(shop.store.read, one)).get(one)?.say).toContain(tag);
	});

	it("says in the same deed where a missing thing lies, and that another is lost; what is left open stays on its shelf", async () => {
		const [open, lost] = [await aPart("spring", one), await aPart("cam", one, "original")];
		const known = await aBag("lamps", one);
		const expected = [open.id, lost.id, known.bagId];
		const elsewhere = [{ kind: "bag" as const, id: known.bagId, to: { kind: "location" as const, locationId: two } }];
		const before = await shop.store.read.entry.count();
		done(await countPlace({ locationId: one, expected, elsewhere, lost: [{ partId: lost.id, why: "looked under the rack" }] }, shop.env()));
		expect([await at(one), await at(two)]).toEqual([[open.id], [known.bagId]]);
		expect(await partNow(lost.id)).toMatchObject({ place: "lost", placeWhy: "looked under the rack" });
		// The count, what was moved, what was lost: one deed, three entries.
		expect((await shop.store.read.entry.count()) - before).toBe(3);
		expect((await verifyLedger(shop.folder)).flaws).toEqual([]);
	});

	it("takes what is said twice to be lost once", async () => {
		const cam = await aPart("cam", one);
		const said = { partId: cam.id, why: "gone" };
		done(await countPlace({ locationId: one, expected: [cam.id], lost: [said, said] }, shop.env()));
		expect(await partNow(cam.id)).toMatchObject({ place: "lost" });
	});

	it("leaves in its bag what was not expected, where the bag is laid here", async () => {
		const strange = await aBag("coils", null);
		const part = await aLoosePart(shop, machine, "coil");
		done(await movePart({ partId: part.id, to: { kind: "bag", bagId: strange.bagId }, why: "" }, shop.env()));
		const both = [strange.bagId, part.id];
		expect(done(await countPlace({ locationId: one, seen: both, layHere: both }, shop.env())).unexpected).toHaveLength(2);
		expect([await at(one), (await partNow(part.id)).bagId]).toEqual([[strange.bagId], strange.bagId]);
	});

	it("gives no original up as lost without a reason: nothing at all is recorded then, and the field is named", async () => {
		const cam = await aPart("cam", one, "original");
		const known = await aBag("lamps", one);
		const error = refused(
			await countPlace(
				{
					locationId: one,
					expected: [cam.id, known.bagId],
					elsewhere: [{ kind: "bag", id: known.bagId, to: { kind: "bench" } }],
					lost: [{ partId: cam.id, why: "" }],
				},
				shop.env(),
			),
		);
		expect(error.code).toBe("original-needs-reason");
		expect(Object.keys(error.fields ?? {})).toEqual(["lost.0.why"]);
		expect([await counts(), await at(one)]).toEqual([[], [cam.id, known.bagId].sort()]);
	});

	it("does not take for missing, lost or elsewhere what was seen", async () => {
		const cam = await aPart("cam", one);
		done(
			await countPlace(
				{
					locationId: one,
					expected: [cam.id],
					seen: [cam.id],
					elsewhere: [{ kind: "part", id: cam.id, to: { kind: "bench" } }],
					lost: [{ partId: cam.id, why: "gone" }],
				},
				shop.env(),
			),
		);
		expect(await at(one)).toEqual([cam.id]);
	});

	it("of a rack with its shelves knows what lies on which, and moves nothing from shelf to shelf", async () => {
		const [a, b] = [await aBag("trims", two), await aBag("lamps", one)];
		const lying = await lyingFor(shop.store.read, rack, true);
		expect(lying?.map(({ id, at: way }) => [id, way])).toEqual([
			[b.bagId, "shelf 1"],
			[a.bagId, "shelf 2"],
		]);
		expect(await lyingFor(shop.store.read, rack, false)).toEqual([]);
		const counted = done(
			await countPlace({ locationId: rack, inside: true, expected: [a.bagId, b.bagId], seen: [b.bagId], layHere: [b.bagId] }, shop.env()),
		);
		expect(counted).toEqual({ here: 1, missing: [`${a.tag} trims`], unexpected: [] });
		expect(await at(one)).toEqual([b.bagId]);
	});

	it("is not recorded over what came or went meanwhile: it is named", async () => {
		const [came, went] = [await aBag("trims", one), await aBag("lamps", null)];
		const error = refused(await countPlace({ locationId: one, expected: [went.bagId], seen: [went.bagId] }, shop.env()));
		expect(error.say).toMatch(new RegExp(`${came.tag} trims came here, and ${went.tag} lamps went`));
		expect(error.facts).toEqual({ came: [came.bagId], went: [went.bagId] });
		expect(await counts()).toHaveLength(0);
	});

	it("sent twice is counted once, and moves once", async () => {
		const strange = await aBag("coils", null);
		const deed = shop.newId();
		const count = { locationId: one, seen: [strange.bagId], layHere: [strange.bagId] };
		const first = done(await countPlace(count, shop.env(deed)));
		expect(done(await countPlace(count, shop.env(deed)))).toEqual(first);
		expect(await counts()).toHaveLength(1);
	});

	it("of what cannot lie there says which, and records nothing", async () => {
		const error = refused(await countPlace({ locationId: one, seen: [machine.part("lamp")], layHere: [machine.part("lamp")] }, shop.env()));
		expect(error.say).toContain(machine.tag("lamp"));
		expect(await counts()).toHaveLength(0);
	});
});
