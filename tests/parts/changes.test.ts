import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { takeOut } from "@/lib/fittings/changes";
import {
	addPart,
	comeBack,
	describePart,
	losePart,
	sayEvidence,
	scrapPart,
	sellPart,
	sendOut,
	voidPart,
	withdrawEvidence,
} from "@/lib/parts/changes";
import { addPartSchema, sayEvidenceSchema } from "@/lib/parts/schema";
import { aMachine, aPosition, got, partWords, refused } from "@/tests/machines/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
beforeEach(async () => {
	shop = await freshShop();
});
afterEach(() => shop.close());

/** A sign box with a tray on it, both original; the box is out, on the bench. */
async function boxOnTheBench() {
	const machine = await aMachine(shop, [aPosition("sign box", { mark: "k03" }), aPosition("tray", { mark: "k04", hostMark: "k03" })]);
	got(await takeOut({ machineId: machine.id, positionId: machine.position("k03") }, shop.env()));
	return machine;
}
const partRow = (id: string) => shop.store.read.part.findUniqueOrThrow({ where: { id } });

describe("an original assembly", () => {
	it("is scrapped only with a reason, and takes the originals on it along", async () => {
		const machine = await boxOnTheBench();
		const refusal = await scrapPart({ partId: machine.part("k03"), why: "" }, shop.env());
		expect(refused(refusal)).toBe("original-needs-reason");
		if (!refusal.ok) expect(refusal.error.say).toContain("2 positions can never be original again: k03 sign box, k04 tray.");
		const done = got(await scrapPart({ partId: machine.part("k03"), why: "crushed in carriage" }, shop.env()));
		expect(done.loses).toEqual(["k03", "k04"]);
		expect((await partRow(machine.part("k03"))).place).toBe("scrapped");
	});

	it("refused, leaves no entry behind", async () => {
		const machine = await boxOnTheBench();
		const before = await shop.store.read.entry.count();
		await scrapPart({ partId: machine.part("k03"), why: "" }, shop.env());
		expect(await shop.store.read.entry.count()).toBe(before);
	});

	it("that is fitted cannot be sold, lost, lent or struck out", async () => {
		const machine = await aMachine(shop, [aPosition("motor", { mark: "k25" })]);
		const partId = machine.part("k25");
		expect(refused(await sellPart({ partId, partyId: null, partyName: "", why: "x" }, shop.env()))).toBe("still-fitted");
		expect(refused(await losePart({ partId, why: "x" }, shop.env()))).toBe("still-fitted");
		expect(refused(await voidPart({ partId, why: "x" }, shop.env()))).toBe("still-fitted");
		expect(refused(await sendOut({ partId, partyId: null, partyName: "Rewinder", dueDay: day("2026-05-01"), why: "" }, shop.env()))).toBe(
			"still-fitted",
		);
	});
});

describe("a part that goes out", () => {
	it("is with somebody who answers for it, until it comes back to a place", async () => {
		const machine = await boxOnTheBench();
		const partId = machine.part("k03");
		got(await sendOut({ partId, partyId: null, partyName: "Sign writer", dueDay: day("2026-05-01"), why: "new gold" }, shop.env()));
		const out = await shop.store.read.part.findUniqueOrThrow({ where: { id: partId }, include: { party: true } });
		expect([out.place, out.party?.name, out.dueDay, out.locationId]).toEqual(["out", "Sign writer", "2026-05-01", null]);
		got(await comeBack({ partId, locationId: null, bagId: null, why: "" }, shop.env()));
		const back = await partRow(partId);
		expect([back.place, back.partyId, back.dueDay, back.placeWhy]).toEqual(["bench", null, null, ""]);
	});

	it("keeps the name of whoever has it out of the open part of the entry", async () => {
		const machine = await boxOnTheBench();
		got(
			await sendOut(
				{ partId: machine.part("k03"), partyId: null, partyName: "Sign writer", dueDay: day("2026-05-01"), why: "" },
				shop.env(),
			),
		);
		const entry = await shop.store.read.entry.findFirstOrThrow({ orderBy: { seq: "desc" } });
		expect(entry.action).toBe("part.sent-out");
		expect(entry.open).not.toContain("Sign writer");
	});
});

describe("a part entered in error", () => {
	it("is struck out with a word, and stays in the book", async () => {
		const machine = await boxOnTheBench();
		const made = got(await addPart(addPartSchema.parse({ machineId: machine.id, name: "washer", origin: "modern" }), shop.env()));
		expect(refused(await voidPart({ partId: made.id, why: "" }, shop.env()))).toBe("needs-reason");
		got(await voidPart({ partId: made.id, why: "counted twice" }, shop.env()));
		const row = await partRow(made.id);
		expect([row.place, row.placeWhy]).toEqual(["void", "counted twice"]);
		expect(refused(await describePart({ ...partWords(), partId: made.id, name: "washer" }, shop.env()))).toBe("is-void");
	});
});

describe("what is said of a part", () => {
	it("is corrected in the book, and the entry says what its origin was", async () => {
		const machine = await aMachine(shop, [aPosition("lamp", { mark: "k18", part: partWords({ origin: "unknown" }) })]);
		got(await describePart({ ...partWords({ origin: "original" }), partId: machine.part("k18"), name: "lamp" }, shop.env()));
		expect((await partRow(machine.part("k18"))).origin).toBe("original");
		const entry = await shop.store.read.entry.findFirstOrThrow({ orderBy: { seq: "desc" } });
		expect(entry.open).toContain("Its origin was unknown and is now original.");
	});

	it("is backed by evidence; who told it is withheld, and withdrawn evidence stays readable", async () => {
		const machine = await aMachine(shop, [aPosition("glass", { mark: "k12" })]);
		const said = sayEvidenceSchema.parse({
			partId: machine.part("k12"),
			positionId: machine.position("k12"),
			kind: "told",
			claim: "came",
			whoSaid: "the seller",
		});
		const id = got(await sayEvidence(said, shop.env()));
		const entry = await shop.store.read.entry.findFirstOrThrow({ orderBy: { seq: "desc" } });
		expect(entry.open).not.toContain("the seller");
		got(await withdrawEvidence({ evidenceId: id, why: "" }, shop.env()));
		expect((await shop.store.read.evidence.findUniqueOrThrow({ where: { id } })).stands).toBe("no");
		expect(refused(await withdrawEvidence({ evidenceId: id, why: "" }, shop.env()))).toBe("withdrawn");
	});

	it("and what was told says by whom", () => {
		const read = sayEvidenceSchema.safeParse({ partId: "x", kind: "told", claim: "came" });
		expect(read.error?.issues.map((issue) => issue.path.join("."))).toEqual(["whoSaid"]);
	});
});

it("a deed sent twice is done once", async () => {
	const machine = await boxOnTheBench();
	const deed = shop.newId();
	const input = { partId: machine.part("k03"), why: "crushed" };
	const first = got(await scrapPart(input, shop.env(deed)));
	const entries = await shop.store.read.entry.count();
	expect(got(await scrapPart(input, shop.env(deed)))).toEqual(first);
	expect(await shop.store.read.entry.count()).toBe(entries);
});
