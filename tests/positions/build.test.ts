import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { recordAlteration } from "@/lib/alterations/changes";
import { recordAlterationSchema } from "@/lib/alterations/schema";
import { putBack, takeOut } from "@/lib/fittings/changes";
import { stampAsFound } from "@/lib/machines/changes";
import { countOriginality } from "@/lib/originality/counts";
import { originFacts } from "@/lib/originality/queries";
import { losePart } from "@/lib/parts/changes";
import { type BuildRow, buildRows, holdingOf, type Which } from "@/lib/positions/build";
import { buildFacts } from "@/lib/positions/buildQueries";
import { rowsShown, viewAsked } from "@/lib/positions/buildView";
import { addPositions, recordFinding, sayObstruction, withdrawObstruction } from "@/lib/positions/changes";
import { positionByMark } from "@/lib/positions/positionQueries";
import { aMachine, aPosition, got, partWords } from "@/tests/machines/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
beforeEach(async () => {
	shop = await freshShop();
});
afterEach(() => shop.close());

const NOW: Which = { state: "now" };
const rows = async (machineId: string, which: Which = NOW) => buildRows(await buildFacts(shop.store.read, machineId), which);
const shape = (list: readonly BuildRow[]) => list.map((row) => `${"  ".repeat(row.depth)}${row.mark} ${row.state}`);

/** A sign box that carries a tray, which carries a lamp; a glass in front; nobody has looked at the mirror. */
const signBox = () =>
	aMachine(shop, [
		aPosition("sign box", { mark: "k03" }),
		aPosition("tray", { mark: "k04", hostMark: "k03" }),
		aPosition("lamp", { mark: "k05", hostMark: "k04", part: partWords({ origin: "modern" }) }),
		aPosition("glass", { mark: "k10", sides: ["front", "rear"] }),
		aPosition("mirror", { mark: "k11", finding: "unseen" }),
	]);

describe("the build", () => {
	it("stands as a tree, each position under what carries it", async () => {
		const machine = await signBox();
		expect(shape(await rows(machine.id))).toEqual(["k03 original", "  k04 original", "    k05 not-original", "k10 original", "k11 unseen"]);
	});

	it("an assembly that is out keeps its own small build, under its own name", async () => {
		const machine = await signBox();
		got(await takeOut({ machineId: machine.id, positionId: machine.position("k03") }, shop.env()));
		const now = await rows(machine.id);
		expect(shape(now)).toEqual(["k03 kept", "k10 original", "k11 unseen", "  k04 original", "    k05 not-original"]);
		expect(now.at(-1)?.looseOn?.name).toBe("sign box");
	});

	it("shows a past day as it was then, whatever was done since", async () => {
		const machine = await signBox();
		const before = (await rows(machine.id)).map((row) => [row.mark, row.part?.id ?? null]);
		shop.setClock("2026-03-10T08:00:00.000Z");
		got(await takeOut({ machineId: machine.id, positionId: machine.position("k03") }, shop.env()));
		got(await losePart({ partId: machine.part("k03"), why: "left on the pavement" }, shop.env()));
		const then = await rows(machine.id, { state: "at", before: "2026-03-10T00:00:00.000Z" });
		expect(then.map((row) => [row.mark, row.part?.id ?? null])).toEqual(before);
		expect((await rows(machine.id))[0]?.state).toBe("lost");
	});

	it("as found shows what had been altered before the stamp, and a past day what had been by then", async () => {
		const machine = await signBox();
		const drilled = { machineId: machine.id, what: "a hole", positionId: machine.position("k10"), undo: "never", reason: "the cable" };
		got(await recordAlteration(recordAlterationSchema.parse(drilled), shop.env()));
		const altered = async (which: Which) => (await rows(machine.id, which)).find((row) => row.mark === "k10")?.altered;
		expect(await altered(NOW)).toBe("never");
		expect(await altered({ state: "at", before: shop.now() })).toBe(null);
		expect(await altered({ state: "as-found" })).toBe("never");
		const stamped = await aMachine(shop, [aPosition("glass", { mark: "k10" })]);
		got(await stampAsFound({ machineId: stamped.id }, shop.env()));
		const later = { ...drilled, machineId: stamped.id, positionId: stamped.position("k10") };
		got(await recordAlteration(recordAlterationSchema.parse(later), shop.env()));
		const ofGlass = async (which: Which) => (await rows(stamped.id, which))[0]?.altered;
		expect([await ofGlass(NOW), await ofGlass({ state: "as-found" })]).toEqual(["never", null]);
	});

	it("a place that the work made is not in the build as found, nor on a day before anything was in it", async () => {
		const machine = await signBox();
		got(await stampAsFound({ machineId: machine.id }, shop.env()));
		got(
			await addPositions(
				{ machineId: machine.id, wasThere: false, positions: [aPosition("board", { mark: "n1", part: null })] },
				shop.env(),
			),
		);
		expect((await rows(machine.id)).map((row) => row.mark)).toContain("n1");
		expect((await rows(machine.id, { state: "as-found" })).map((row) => row.mark)).not.toContain("n1");
		expect((await rows(machine.id, { state: "at", before: "2027-01-01T00:00:00.000Z" })).map((row) => row.mark)).not.toContain("n1");
	});

	it("as found takes in what was learnt later", async () => {
		const machine = await signBox();
		got(await stampAsFound({ machineId: machine.id }, shop.env()));
		const later = {
			positionId: machine.position("k11"),
			state: "there" as const,
			words: "",
			partId: null,
			part: partWords(),
			evidence: [],
		};
		const { partId } = got(await recordFinding(later, shop.env()));
		const facts = await buildFacts(shop.store.read, machine.id);
		expect(holdingOf(facts, { state: "as-found" }).get(machine.position("k11"))).toBe(partId);
		expect(buildRows(facts, { state: "as-found" }).find((row) => row.mark === "k11")?.state).toBe("original");
	});

	it("says what comes off first, by side, while it is fitted, until that is withdrawn", async () => {
		const machine = await signBox();
		const said = { positionId: machine.position("k10"), partId: machine.part("k03"), sides: ["front"], note: "" };
		const [obstructionId = ""] = got(await sayObstruction(said, shop.env()));
		const behind = async () => (await rows(machine.id)).find((row) => row.mark === "k10")?.behind;
		expect(await behind()).toEqual([{ side: "front", parts: [{ name: "sign box", mark: "k03" }] }]);
		got(await takeOut({ machineId: machine.id, positionId: machine.position("k03") }, shop.env()));
		expect(await behind()).toEqual([]);
		got(await putBack({ partId: machine.part("k03") }, shop.env()));
		got(await withdrawObstruction({ obstructionId, why: "" }, shop.env()));
		expect(await behind()).toEqual([]);
	});

	it("is filtered and sorted as the address says, and unknown words in it do no harm", async () => {
		const machine = await signBox();
		const all = await rows(machine.id);
		const marks = (asked: Record<string, string>) => rowsShown(all, viewAsked(asked)).map((row) => row.mark);
		expect(marks({ show: "unseen" })).toEqual(["k11"]);
		expect(marks({ show: "not-original" })).toEqual(["k05"]);
		expect(marks({ word: "sign" })).toEqual(["k03"]);
		expect(marks({ sort: "name", down: "1" })).toEqual(["k04", "k03", "k11", "k05", "k10"]);
		expect(marks({ sort: "nonsense", show: "?" })).toEqual(["k03", "k04", "k05", "k10", "k11"]);
	});
});

describe("the page of a position", () => {
	it("knows what it held and holds, what it carries and what it stands in the way of", async () => {
		const machine = await signBox();
		got(await sayObstruction({ positionId: machine.position("k10"), partId: machine.part("k03"), sides: [], note: "" }, shop.env()));
		const page = await positionByMark(shop.store.read, machine.id, "k03");
		expect([page?.fittings.length, page?.guests.map((guest) => guest.mark), page?.inTheWayOf.map((row) => row.position.mark)]).toEqual([
			1,
			["k04"],
			["k10"],
		]);
		expect(await positionByMark(shop.store.read, machine.id, "zz")).toBeNull();
	});
});

it("the counts of two machines read together are those of each alone", async () => {
	const one = await signBox();
	const two = await aMachine(shop, [aPosition("plate", { mark: "k40" })]);
	const together = await originFacts(shop.store.read, [one.id, two.id]);
	for (const { id } of [one, two]) {
		const alone = (await originFacts(shop.store.read, [id])).get(id);
		expect(together.get(id)).toEqual(alone);
	}
	expect(countOriginality(together.get(two.id) ?? { positions: [], parts: [] }).now.original).toBe(1);
});
