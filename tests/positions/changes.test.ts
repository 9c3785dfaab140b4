import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { stampAsFound } from "@/lib/machines/changes";
import { addPositions, addPositionsAsText, copyBuild, recordFinding } from "@/lib/positions/changes";
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
