import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Result } from "@/lib/core/result";
import { putBack, putIn, takeOut } from "@/lib/fittings/changes";
import { sayExclusion } from "@/lib/positions/changes";
import { type AMachine, aLoosePart, aMachine } from "@/tests/fittings/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

const done = <T>(result: Result<T>): T => {
	if (!result.ok) throw new Error(`${result.error.code}: ${result.error.say}`);
	return result.value;
};
const refused = <T>(result: Result<T>) => {
	if (result.ok) throw new Error("it was not refused");
	return result.error;
};

describe("taking out and putting in", () => {
	let shop: FreshShop;
	let machine: AMachine;
	const out = (mark: string, more: object = {}) =>
		takeOut({ machineId: machine.id, positionId: machine.position(mark), ...more }, shop.env());
	const part = (mark: string) => shop.store.read.part.findUniqueOrThrow({ where: { id: machine.part(mark) } });

	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, {
			door: { fixings: 4 },
			lamp: { behind: ["door"], fixings: 2, wire: "RD" },
			tray: {},
			tube: { on: "tray", behind: ["tray"] },
			optic: { sides: ["front", "rear"], behind: ["front:door", "rear:tray"] },
			wall: { place: true },
			free: { empty: true },
		});
	});
	afterEach(() => shop.close());

	it("a part taken out lies in a bag made for it, with its fixings and a tag of its own", async () => {
		const taken = done(
			await out("door", {
				into: { kind: "new-bag", bag: { role: "keeping" } },
				fixings: [{ fixingId: machine.fixing("door"), count: 4, thread: "4BA", length: "1/2" }],
			}),
		);
		expect(taken.bagTag).toBe("12-0201-3");
		expect(taken.opens.map((seat) => seat.mark)).toEqual(["lamp", "optic"]);
		expect(await part("door")).toMatchObject({ place: "bag", bagId: taken.bagId, positionId: null });
		expect(await shop.store.read.fixing.findUniqueOrThrow({ where: { id: machine.fixing("door") } })).toMatchObject({
			place: "bag",
			bagId: taken.bagId,
		});
		expect(await shop.store.read.bag.findUniqueOrThrow({ where: { id: taken.bagId ?? "" } })).toMatchObject({
			role: "keeping",
			words: "Part door",
			place: "bench",
		});
	});

	it("a lamp behind a closed door cannot be taken out, and the door is named", async () => {
		const refusal = refused(await out("lamp"));
		expect(refusal.code).toBe("covered");
		expect(refusal.say).toContain("Take out the part door first");
		expect(refusal.facts?.by).toEqual([machine.part("door")]);
	});

	it("what was reached all the same comes out, and the obstruction is withdrawn with the reason", async () => {
		done(await out("lamp", { anyway: { reason: "through the coin slot", covers: "withdraw" } }));
		const row = await shop.store.read.obstruction.findFirstOrThrow({ where: { positionId: machine.position("lamp") } });
		expect(row.stands).toBe("no");
		expect(row.note).toBe("passed by: through the coin slot");
	});

	it("one free side is enough", async () => {
		expect(refused(await out("optic")).code).toBe("covered");
		done(await out("tray"));
		done(await out("optic"));
	});

	it("an assembly taken out keeps its guests, which are then free of what covered them in the machine", async () => {
		expect(refused(await out("tube")).code).toBe("covered");
		done(await out("tray"));
		expect(await part("tube")).toMatchObject({ place: "fitted", positionId: machine.position("tube") });
		done(await out("tube"));
	});

	it("a position that another phone has emptied says who, when, and where the part lies", async () => {
		const taken = done(await out("door", { into: { kind: "new-bag" }, at: "2026-03-02T08:00:00.000Z" }));
		const where = `T took the part door out on 2 Mar 2026, 09:00: it is in ${taken.bagTag} · on the bench.`;
		expect(refused(await out("door")).say).toBe(`Place door (door) is empty already. ${where} Choose the position that you have in hand.`);
		done(await putIn({ positionId: machine.position("free"), partId: machine.part("door") }, shop.env()));
		expect(refused(await out("door")).say).toContain("it is fitted in place free (free).");
	});

	it("an empty position and a mere place give nothing", async () => {
		expect(refused(await out("free")).code).toBe("position-empty");
		expect(refused(await out("wall")).code).toBe("place-holds-no-part");
	});

	it("fixings that were not named go with the part, and wires that were not named are parked", async () => {
		done(await out("door"));
		done(await out("lamp"));
		expect(await shop.store.read.fixing.findUniqueOrThrow({ where: { id: machine.fixing("lamp") } })).toMatchObject({ place: "bench" });
		expect(await shop.store.read.connection.findUniqueOrThrow({ where: { id: machine.wire("lamp") } })).toMatchObject({ state: "parked" });
	});

	it("a lot of fixings can be split: one kept, one lost", async () => {
		done(await out("door"));
		done(
			await out("lamp", {
				into: { kind: "new-bag" },
				fixings: [
					{ fixingId: machine.fixing("lamp"), count: 1, thread: "4BA" },
					{ fixingId: machine.fixing("lamp"), count: 1, thread: "4BA", went: { kind: "lost" } },
				],
			}),
		);
		const lots = await shop.store.read.fixing.findMany({
			where: { holds: { some: { fitting: { positionId: machine.position("lamp") } } } },
			orderBy: { place: "asc" },
		});
		expect(lots.map((lot) => [lot.count, lot.place])).toEqual([
			[1, "bag"],
			[1, "lost"],
		]);
	});

	it("put back in one tap, a part has its fixings, wires and settings again", async () => {
		done(await out("door"));
		done(await out("lamp", { settings: [{ kind: "gap", value: "0.4 mm" }], wayRound: "contact to the rear" }));
		const back = done(await putBack({ partId: machine.part("lamp") }, shop.env()));
		expect(await part("lamp")).toMatchObject({ place: "fitted", positionId: machine.position("lamp") });
		expect(await shop.store.read.fixing.findUniqueOrThrow({ where: { id: machine.fixing("lamp") } })).toMatchObject({ place: "home" });
		expect(await shop.store.read.connection.findUniqueOrThrow({ where: { id: machine.wire("lamp") } })).toMatchObject({
			state: "connected",
			fittingId: back.fittingId,
		});
		expect(await shop.store.read.setting.findMany({ where: { fittingId: back.fittingId } })).toMatchObject([{ kind: "gap" }]);
	});

	it("a position holds one part at a time, and a part is in one position", async () => {
		const spare = await aLoosePart(shop, machine, "Spare");
		expect(refused(await putIn({ partId: spare.id, positionId: machine.position("door") }, shop.env())).code).toBe("position-taken");
		expect(refused(await putIn({ partId: machine.part("door"), positionId: machine.position("free") }, shop.env())).code).toBe(
			"part-elsewhere",
		);
	});

	it("an assembly never hosts itself", async () => {
		done(await out("tray"));
		done(await out("tube"));
		const refusal = refused(await putIn({ partId: machine.part("tray"), positionId: machine.position("tube") }, shop.env()));
		expect(refusal.code).toBe("assembly-hosts-itself");
	});

	it("an assembly does not go in beside what excludes a part on it, and both are named", async () => {
		const choke = await aLoosePart(shop, machine, "Choke");
		done(await sayExclusion({ partId: choke.id, otherId: machine.part("tube"), note: "same holes" }, shop.env()));
		done(await out("tray"));
		done(await putIn({ partId: choke.id, positionId: machine.position("free") }, shop.env()));
		const into = { partId: machine.part("tray"), positionId: machine.position("tray") };
		expect(refused(await putIn(into, shop.env()))).toMatchObject({
			code: "excluded",
			say: "The part tube on the part tray and the choke cannot be fitted together (same holes). Take the choke out first.",
			facts: { by: [choke.id] },
		});
		expect(refused(await putBack({ partId: into.partId }, shop.env())).code).toBe("excluded");
		// Without the tube on it, nothing stands in the way.
		done(await out("tube"));
		done(await putIn(into, shop.env()));
	});

	it("a part covers what the one before it covered", async () => {
		const spare = await aLoosePart(shop, machine, "New door");
		done(await out("door"));
		const put = done(await putIn({ partId: spare.id, positionId: machine.position("door") }, shop.env()));
		expect(put.closes.map((seat) => seat.mark)).toEqual(["lamp", "optic"]);
		expect(refused(await out("lamp")).say).toContain("the new door");
	});

	it("an original of another machine goes in only with a reason, and both machines' books tell of it", async () => {
		const other = await aMachine(shop, { head: {} }, 13);
		done(await takeOut({ machineId: other.id, positionId: other.position("head") }, shop.env()));
		const plain = await putIn({ partId: other.part("head"), positionId: machine.position("free") }, shop.env());
		expect(refused(plain).code).toBe("original-of-another");
		done(await putIn({ partId: other.part("head"), positionId: machine.position("free"), reason: "13 is the donor" }, shop.env()));
		const entries = await shop.store.read.entry.findMany({ where: { action: "part.put-in" }, orderBy: { seq: "asc" } });
		expect(entries.map((entry) => entry.machine)).toEqual([machine.id, other.id]);
	});

	it("a deed sent twice is done once", async () => {
		const env = shop.env();
		const form = { machineId: machine.id, positionId: machine.position("door") };
		const first = done(await takeOut(form, env));
		expect(done(await takeOut(form, env))).toEqual(first);
		expect(await shop.store.read.entry.count({ where: { action: "part.taken-out" } })).toBe(1);
	});
});
