import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Result } from "@/lib/core/result";
import { changeConnection, moveFixing, sayConnection, sayFixing, saySetting, takeOut } from "@/lib/fittings/changes";
import { mirroredFixings } from "@/lib/fittings/fixingOffers";
import { recordPrint } from "@/lib/labels/changes";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

const done = <T>(result: Result<T>): T => {
	if (!result.ok) throw new Error(`${result.error.code}: ${result.error.say}`);
	return result.value;
};
const codeOf = <T>(result: Result<T>): string => (result.ok ? "done" : result.error.code);

describe("what holds a part, what is wired to it, how it is set", () => {
	let shop: FreshShop;
	let machine: AMachine;
	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, { door: { fixings: 4 }, rail: {}, lamp: { wire: "BK" }, free: { empty: true } });
	});
	afterEach(() => shop.close());

	it("fixings of the other side are offered by its name, where nobody said which is its mirror image", async () => {
		const other = await aMachine(shop, { "trim left": { fixings: 3 }, "trim right": {}, strap: {} }, 13);
		const ids = ["trim right", "strap"].map((mark) => other.position(mark));
		const offers = await mirroredFixings(shop.store.read, ids);
		expect([...offers].map(([id, fixings]) => [id, fixings.map(({ count, from }) => `${count} ${from}`)])).toEqual([
			[other.position("trim right"), ["3 as at Place trim left"]],
		]);
	});

	it("one fixing may hold two parts, and stays home while one of them is taken out", async () => {
		const nuts = done(
			await sayFixing(
				{ positionIds: [machine.position("door"), machine.position("rail")], count: 2, thread: "1/4-20", head: "hex" },
				shop.env(),
			),
		);
		done(await takeOut({ machineId: machine.id, positionId: machine.position("rail") }, shop.env()));
		expect(await shop.store.read.fixing.findUniqueOrThrow({ where: { id: nuts.fixingId } })).toMatchObject({ place: "home" });
		done(await takeOut({ machineId: machine.id, positionId: machine.position("door") }, shop.env()));
		expect(await shop.store.read.fixing.findUniqueOrThrow({ where: { id: nuts.fixingId } })).toMatchObject({ place: "bench" });
	});

	it("some of a lot of fixings can be lost, and the rest still know what they held", async () => {
		done(await takeOut({ machineId: machine.id, positionId: machine.position("door") }, shop.env()));
		done(await moveFixing({ fixingId: machine.fixing("door"), count: 1, to: { kind: "lost" } }, shop.env()));
		const lots = await shop.store.read.fixing.findMany({
			where: { holds: { some: { fitting: { positionId: machine.position("door") } } } },
			orderBy: { count: "asc" },
		});
		expect(lots.map((lot) => [lot.count, lot.place])).toEqual([
			[1, "lost"],
			[3, "bench"],
		]);
		expect(codeOf(await moveFixing({ fixingId: machine.fixing("door"), count: 2, to: { kind: "bench" } }, shop.env()))).toBe(
			"fixing-too-many",
		);
	});

	it("a wire colour is kept in the standard's writing, and one that is no colour is refused", async () => {
		const wire = done(await sayConnection({ positionId: machine.position("lamp"), from: "lamp 2", to: "", colour: "burd" }, shop.env()));
		expect(await shop.store.read.connection.findUniqueOrThrow({ where: { id: wire.connectionId } })).toMatchObject({ colour: "RDBU" });
		expect(codeOf(await sayConnection({ positionId: machine.position("lamp"), from: "lamp 2", colour: "XX" }, shop.env()))).toBe(
			"unreadable",
		);
	});

	it("nothing is connected to a part that is out", async () => {
		done(await takeOut({ machineId: machine.id, positionId: machine.position("lamp") }, shop.env()));
		expect(codeOf(await changeConnection({ connectionId: machine.wire("lamp"), state: "connected" }, shop.env()))).toBe("part-is-out");
		done(await changeConnection({ connectionId: machine.wire("lamp"), tagFrom: "L2", tagTo: "B7" }, shop.env()));
		expect(await shop.store.read.connection.findUniqueOrThrow({ where: { id: machine.wire("lamp") } })).toMatchObject({
			state: "parked",
			tagFrom: "L2",
			colour: "BK",
		});
	});

	it("how a part was set can be said in the evening, when it is out already", async () => {
		done(await takeOut({ machineId: machine.id, positionId: machine.position("lamp") }, shop.env()));
		const said = done(await saySetting({ positionId: machine.position("lamp"), kind: "gap", value: "0.4 mm" }, shop.env()));
		const fitting = await shop.store.read.fitting.findFirstOrThrow({ where: { positionId: machine.position("lamp") } });
		expect(await shop.store.read.setting.findUniqueOrThrow({ where: { id: said.settingId } })).toMatchObject({ fittingId: fitting.id });
		expect(codeOf(await saySetting({ positionId: machine.position("free"), kind: "gap", value: "1" }, shop.env()))).toBe("never-filled");
	});

	it("a label printed again says that it is the second print", async () => {
		const tags = [machine.tag("door"), machine.tag("rail")];
		expect(done(await recordPrint({ tags, stock: "roll-62x29" }, shop.env())).printed.map((print) => print.times)).toEqual([1, 1]);
		const again = done(await recordPrint({ tags: [machine.tag("door")], stock: "roll-62x29" }, shop.env()));
		expect(again.printed).toEqual([{ tag: machine.tag("door"), times: 2 }]);
		const entry = await shop.store.read.entry.findFirstOrThrow({ where: { action: "label.printed" }, orderBy: { seq: "desc" } });
		expect(entry.open).toContain("(2nd print)");
		expect(entry.machine).toBe(machine.id);
	});
});
