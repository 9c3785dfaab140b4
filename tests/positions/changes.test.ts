import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { putIn, takeOut } from "@/lib/fittings/changes";
import { stampAsFound } from "@/lib/machines/changes";
import {
	addPositions,
	addPositionsAsText,
	copyBuild,
	describePosition,
	recordFinding,
	sayExclusion,
	sayObstruction,
	withdrawObstruction,
} from "@/lib/positions/changes";
import { describePositionSchema } from "@/lib/positions/schema";
import { aMachine, aPosition, got, partWords, refused } from "@/tests/machines/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
beforeEach(async () => {
	shop = await freshShop();
});
afterEach(() => shop.close());

const finding = (positionId: string, state: "there" | "missing" | "wrong" | "unseen", more = {}) => ({
	positionId,
	state,
	words: "",
	partId: null,
	part: null,
	evidence: [],
	...more,
});

describe("adding positions", () => {
	it("gives each part that is there a tag, a fitting and a finding, all in one entry", async () => {
		const machine = await aMachine(shop, [aPosition("sign box", { mark: "k03" }), aPosition("tray", { mark: "k04", hostMark: "k03" })]);
		const { read } = shop.store;
		const parts = await read.part.findMany({
			include: { tag: true, position: true, fittings: true, findings: true },
			orderBy: { name: "asc" },
		});
		expect(parts.map((part) => [part.name, part.tag?.number, part.position?.mark, part.fittings.length, part.findings[0]?.state])).toEqual([
			["sign box", 1, "k03", 1, "there"],
			["tray", 2, "k04", 1, "there"],
		]);
		expect((await read.position.findUnique({ where: { id: machine.position("k04") } }))?.hostId).toBe(machine.part("k03"));
		expect(await read.entry.count({ where: { action: "positions.added" } })).toBe(1);
	});

	it("takes a list typed as text, and adds nothing at all when a line cannot be read", async () => {
		const machine = await aMachine(shop);
		const text = "Sound box\n  Speaker\n  4 grille screws\n  Chime bar ?";
		const done = got(await addPositionsAsText({ machineId: machine.id, wasThere: false, text, origin: "original" }, shop.env()));
		expect(done.positions.map((position) => position.mark)).toEqual(["p01", "p02", "p03", "p04"]);
		expect(done.positions[3]?.partId).toBeNull();
		const bad = await addPositionsAsText(
			{ machineId: machine.id, wasThere: false, text: "Lid\n    (missing)", origin: "original" },
			shop.env(),
		);
		expect(refused(bad)).toBe("list-unreadable");
		expect(await shop.store.read.position.count()).toBe(4);
	});
});

describe("what was found", () => {
	it("can be corrected while the as found record is open, and the earlier finding stays readable", async () => {
		const machine = await aMachine(shop, [aPosition("starter", { mark: "k06", finding: "unseen" })]);
		const found = got(
			await recordFinding(finding(machine.position("k06"), "there", { part: partWords({ origin: "modern" }) }), shop.env()),
		);
		expect(found.tag).toMatch(/^1-0001-/);
		const findings = await shop.store.read.finding.findMany({ orderBy: { at: "asc" } });
		expect(findings.map((row) => row.state)).toEqual(["unseen", "there"]);
	});

	it("after the stamp is added as later knowledge, and the part has been fitted since the stamp", async () => {
		const machine = await aMachine(shop, [aPosition("starter", { mark: "k06", finding: "unseen" })]);
		const { asFoundAt } = got(await stampAsFound({ machineId: machine.id }, shop.env()));
		const found = got(await recordFinding(finding(machine.position("k06"), "there"), shop.env()));
		const fitting = await shop.store.read.fitting.findFirst({ where: { partId: found.partId ?? "" } });
		expect(fitting?.fromAt).toBe(asFoundAt);
		expect(refused(await recordFinding(finding(machine.position("k06"), "unseen"), shop.env()))).toBe("was-seen");
	});

	it("strikes out a part that never was, and what sat on it moves up", async () => {
		const machine = await aMachine(shop, [aPosition("lid", { mark: "a1" }), aPosition("lamp", { mark: "a2", hostMark: "a1" })]);
		got(await recordFinding(finding(machine.position("a1"), "missing"), shop.env()));
		const { read } = shop.store;
		expect((await read.part.findUnique({ where: { id: machine.part("a1") } }))?.place).toBe("void");
		expect((await read.position.findUnique({ where: { id: machine.position("a2") } }))?.hostId).toBeNull();
	});
});

describe("beginning from another machine's build", () => {
	it("copies every position as not seen yet, with its host presumed", async () => {
		const from = await aMachine(shop, [aPosition("lid", { mark: "a1" }), aPosition("lamp", { mark: "a2", hostMark: "a1" })]);
		const to = await aMachine(shop);
		const copied = got(await copyBuild({ machineId: to.id, fromMachineId: from.id }, shop.env()));
		expect(copied.positions.map((position) => [position.mark, position.partId !== null])).toEqual([
			["a1", true],
			["a2", false],
		]);
		const findings = await shop.store.read.finding.findMany({ where: { machineId: to.id } });
		expect(new Set(findings.map((row) => row.state))).toEqual(new Set(["unseen"]));
	});
});

describe("after the stamp", () => {
	it("a place that the shop's work makes is empty at first and was not there as found", async () => {
		const machine = await aMachine(shop, [aPosition("tray", { mark: "k04" })]);
		got(await stampAsFound({ machineId: machine.id }, shop.env()));
		const items = [aPosition("light bars", { mark: "n4", hostMark: "k04", part: null })];
		const done = got(await addPositions({ machineId: machine.id, wasThere: false, positions: items }, shop.env()));
		const position = await shop.store.read.position.findUnique({ where: { id: done.positions[0]?.id ?? "" }, include: { findings: true } });
		expect([position?.asFound, position?.findings.length]).toEqual(["no", 0]);
	});
});

describe("describing a position", () => {
	it("a side goes only when nothing is said to be in the way from it", async () => {
		const machine = await aMachine(shop, [
			aPosition("optic", { mark: "k18", sides: ["front", "rear"] }),
			aPosition("door", { mark: "k19" }),
		]);
		const describing = (sides: string[]) =>
			describePosition(describePositionSchema.parse({ positionId: machine.position("k18"), name: "optic", sides }), shop.env());
		const sides = async () => (await shop.store.read.position.findUniqueOrThrow({ where: { id: machine.position("k18") } })).sides;
		const said = { positionId: machine.position("k18"), partId: machine.part("k19"), sides: ["front"], note: "" };
		const [obstructionId = ""] = got(await sayObstruction(said, shop.env()));

		const refusal = await describing(["rear"]);
		expect(refused(refusal)).toBe("side-in-use");
		const say = "door is in the way of k18 from the side front. Withdraw that first, or leave the side as it is.";
		expect(refusal).toMatchObject({ error: { say, fields: { sides: say } } });
		expect(await sides()).toBe('["front","rear"]');
		// The other side, of which nothing is said, goes; and so does this one once the word is withdrawn.
		got(await describing(["front"]));
		got(await withdrawObstruction({ obstructionId, why: "" }, shop.env()));
		got(await describing([]));
		expect(await sides()).toBe("[]");
	});
});

describe("two parts that exclude each other", () => {
	it("are of one machine, or fitted in one, and neither was entered in error", async () => {
		const machine = await aMachine(shop, [aPosition("choke", { mark: "a1" }), aPosition("ballast", { mark: "a2" })]);
		const other = await aMachine(shop, [aPosition("lamp", { mark: "b1" })]);
		const exclude = (partId: string, otherId: string) => sayExclusion({ partId, otherId, note: "" }, shop.env());
		for (const [one, two] of [
			[machine.part("a1"), other.part("b1")],
			[other.part("b1"), machine.part("a1")],
		] as const) {
			const foreign = await exclude(one, two);
			expect(refused(foreign)).toBe("other-machine");
			expect(foreign).toMatchObject({ error: { fields: { otherId: expect.stringContaining("Choose two parts of one machine.") } } });
		}
		got(await recordFinding(finding(machine.position("a2"), "missing"), shop.env()));
		const slip = await exclude(machine.part("a1"), machine.part("a2"));
		expect(refused(slip)).toBe("is-void");
		expect(slip).toMatchObject({ error: { fields: { otherId: "ballast was entered in error. Choose another part." } } });
		expect(await exclude(machine.part("a2"), machine.part("a1"))).toMatchObject({
			error: { fields: { partId: "ballast was entered in error. Choose another part." } },
		});
		expect(await shop.store.read.exclusion.count()).toBe(0);

		// Lent to this machine, the other's part stands where its own would: the word is this machine's.
		got(await takeOut({ machineId: other.id, positionId: other.position("b1") }, shop.env()));
		got(await putIn({ partId: other.part("b1"), positionId: machine.position("a2"), reason: "to try" }, shop.env()));
		got(await exclude(machine.part("a1"), other.part("b1")));
		expect(await shop.store.read.exclusion.findFirst()).toMatchObject({ machineId: machine.id });
	});
});
