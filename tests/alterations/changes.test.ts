import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { markUndone, recordAlteration, voidAlteration } from "@/lib/alterations/changes";
import { alterationOf, alterationsOf } from "@/lib/alterations/queries";
import { recordAlterationFormSchema, recordAlterationSchema } from "@/lib/alterations/schema";
import { putIn, takeOut } from "@/lib/fittings/changes";
import { voidPart } from "@/lib/parts/changes";
import { type AMachine, aLoosePart, aMachine } from "@/tests/fittings/aMachine";
import { done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("alterations", () => {
	let shop: FreshShop;
	let machine: AMachine;
	const alter = (more: object) => recordAlteration(recordAlterationSchema.parse({ machineId: machine.id, ...more }), shop.env());
	const hole = { place: "rear wall", what: "cable hole 12 to 16 mm", undo: "never", reason: "strain relief" };
	const pads = { place: "tray", what: "4 removable pads", undo: "clean", undoHow: "warm air", undoMinutes: { likely: 10 } };

	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, { k21: {}, k23: {} });
	});
	afterEach(() => shop.close());

	it("an alteration is numbered in its machine and says where, how far and how long it is undone", async () => {
		done(await alter(hole));
		done(await alter({ ...pads, place: "", positionId: machine.position("k23") }));
		done(await alter({ ...pads, place: "", partId: machine.part("k21"), undo: "trace", undoWait: "24 h" }));
		const rows = await alterationsOf(shop.store.read, machine.id);
		expect(rows.map(({ number, place, position, part, undo }) => [number, place ?? position?.mark ?? part?.name, undo])).toEqual([
			[1, "rear wall", "never"],
			[2, "k23", "clean"],
			[3, "Part k21", "trace"],
		]);
		expect(rows.map(({ undoLow, undoLikely, undoHigh, undoWait }) => [undoLow, undoLikely, undoHigh, undoWait])).toEqual([
			[null, null, null, null],
			[7, 10, 20, 0],
			[7, 10, 20, 1440],
		]);
	});

	it("what can never be undone needs a reason, on an original and anywhere else", async () => {
		const noReason = { ...recordAlterationSchema.parse({ machineId: machine.id, ...hole }), reason: "" };
		expect(refused(await recordAlteration(noReason, shop.env()))).toMatchObject({
			code: "never-undone",
			fields: { reason: expect.any(String) },
		});
		const onOriginal = { ...noReason, place: "", partId: machine.part("k21") };
		expect(refused(await recordAlteration(onOriginal, shop.env())).say).toContain("the original Part k21");
		expect(recordAlterationFormSchema.safeParse({ machineId: machine.id, ...hole, reason: "" }).error?.issues[0]?.path).toEqual(["reason"]);
	});

	it("an alteration is on one thing: not on none, and not on two", () => {
		const wrong = (more: object) =>
			recordAlterationFormSchema.safeParse({ machineId: machine.id, ...pads, ...more }).error?.issues.map(({ path }) => path.join("."));
		expect(wrong({ place: "" })).toEqual(["place"]);
		expect(wrong({ partId: machine.part("k21") })).toEqual(["place"]);
		expect(wrong({})).toBeUndefined();
	});

	it("what is altered is of this machine or fitted in it, and was not entered in error", async () => {
		const other = await aMachine(shop, { lamp: {} }, 13);
		const on = (target: object) => alter({ ...pads, place: "", ...target });
		expect(refused(await on({ positionId: other.position("lamp") }))).toMatchObject({
			code: "other-machine",
			fields: { positionId: "Place lamp is a position of another machine. Choose one of this machine." },
		});
		expect(refused(await on({ partId: other.part("lamp") }))).toMatchObject({
			code: "other-machine",
			fields: { partId: "Part lamp belongs to another machine and is not fitted in this one. Choose a part of this machine." },
		});
		const slip = await aLoosePart(shop, machine, "Slip");
		done(await voidPart({ partId: slip.id, why: "typed twice" }, shop.env()));
		expect(refused(await on({ partId: slip.id }))).toMatchObject({
			code: "is-void",
			fields: { partId: "Slip was entered in error. Choose another part." },
		});
		expect(await alterationsOf(shop.store.read, machine.id)).toEqual([]);
		// One of another machine that is fitted here is altered here.
		done(await takeOut({ machineId: machine.id, positionId: machine.position("k21") }, shop.env()));
		done(await takeOut({ machineId: other.id, positionId: other.position("lamp") }, shop.env()));
		const lent = { partId: other.part("lamp"), positionId: machine.position("k21"), reason: "for the show" };
		done(await putIn(lent, shop.env()));
		done(await on({ partId: other.part("lamp") }));
	});

	it("an alteration that is undone stands no more; one that never can be is not marked undone", async () => {
		const one = done(await alter(pads));
		const two = done(await alter(hole));
		done(await markUndone({ alterationId: one.id, words: "no residue" }, shop.env()));
		expect(await alterationOf(shop.store.read, machine.id, 1)).toMatchObject({ state: "undone", undoneAt: expect.any(String) });
		expect(refused(await markUndone({ alterationId: one.id, words: "" }, shop.env())).code).toBe("not-standing");
		expect(refused(await markUndone({ alterationId: two.id, words: "" }, shop.env())).code).toBe("never-undone");
	});

	it("an alteration entered in error stays readable, and its number is not given again", async () => {
		const { id } = done(await alter(hole));
		done(await voidAlteration({ alterationId: id, why: "the hole was there when it came" }, shop.env()));
		expect((await alterationsOf(shop.store.read, machine.id)).map(({ state }) => state)).toEqual(["void"]);
		expect(done(await alter(pads)).number).toBe(2);
		const entry = await shop.store.read.entry.findFirst({ where: { action: "alteration.voided" } });
		expect(entry?.open).toContain("the hole was there when it came");
	});

	it("who agreed is kept, and stays out of the open part of the entry", async () => {
		done(await alter({ ...hole, agreedBy: "Mevrouw Example" }));
		expect((await alterationOf(shop.store.read, machine.id, 1))?.agreedBy).toBe("Mevrouw Example");
		const entry = await shop.store.read.entry.findFirstOrThrow({ where: { action: "alteration.recorded" } });
		expect(entry.open).not.toContain("Mevrouw Example");
		expect(entry.seal).not.toBeNull();
	});
});
