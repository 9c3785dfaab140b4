import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { makeBag, movePart } from "@/lib/bags/changes";
import { day } from "@/lib/core/days";
import { takeOut } from "@/lib/fittings/changes";
import {
	closeFault,
	describeMachine,
	handOver,
	sayFault,
	sayNote,
	setMachineState,
	setPortrait,
	stampAsFound,
	takeInMachine,
} from "@/lib/machines/changes";
import { takeInMachineSchema } from "@/lib/machines/schema";
import { aMachine, aPosition, got, machineWords, refused } from "@/tests/machines/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
beforeEach(async () => {
	shop = await freshShop();
});
afterEach(() => shop.close());

const row = (id: string) => shop.store.read.machine.findUniqueOrThrow({ where: { id } });
const leaving = (machineId: string, why = "") => ({ machineId, leftDay: day("2026-06-01"), buyerId: null, buyerName: "", sold: null, why });

describe("taking in", () => {
	it("gives the number asked for, or one above the highest", async () => {
		expect(got(await takeInMachine(machineWords({ number: 12 }), shop.env())).number).toBe(12);
		expect(got(await takeInMachine(machineWords(), shop.env())).number).toBe(13);
		expect(refused(await takeInMachine(machineWords({ number: 12 }), shop.env()))).toBe("number-taken");
	});

	it("keeps the price and the seller's name out of the open part of the entry", async () => {
		got(await takeInMachine(machineWords({ price: 15_000, sellerName: "A fairground's estate" }), shop.env()));
		const entry = await shop.store.read.entry.findFirstOrThrow({ orderBy: { seq: "desc" } });
		expect(entry.open).not.toContain("15000");
		expect(entry.open).not.toContain("fairground");
		expect((await shop.store.read.party.findFirstOrThrow()).name).toBe("A fairground's estate");
	});

	it("reads a date as people write it down, and refuses with what was probably meant", () => {
		const read = (made: string) => takeInMachineSchema("EUR").safeParse({ name: "x", receivedDay: "2026-03-02", made });
		expect(read("1957~").data?.made).toBe("1957~");
		expect(read("").data?.made).toBeNull();
		expect(read("c. 1957").error?.issues[0]?.message).toContain("Did you mean 1957~");
	});

	it("wants an owner for a customer's machine", () => {
		const read = takeInMachineSchema("EUR").safeParse({ name: "x", receivedDay: "2026-03-02", ownership: "customer" });
		expect(read.error?.issues[0]?.path).toEqual(["ownerName"]);
	});

	it("reads amounts in the shop's currency, and takes none for none", () => {
		const read = takeInMachineSchema("EUR").parse({ name: "x", receivedDay: "2026-03-02", price: "150.00" });
		expect([read.price, read.carriage]).toEqual([15_000, null]);
	});
});

describe("as found", () => {
	it("is stamped once, and work begins after it", async () => {
		const machine = await aMachine(shop, [aPosition("lamp")]);
		expect(refused(await setMachineState({ machineId: machine.id, state: "work" }, shop.env()))).toBe("not-stamped");
		got(await stampAsFound({ machineId: machine.id }, shop.env()));
		expect((await row(machine.id)).state).toBe("waiting");
		expect(refused(await stampAsFound({ machineId: machine.id }, shop.env()))).toBe("already-stamped");
		got(await setMachineState({ machineId: machine.id, state: "work" }, shop.env()));
	});

	it("is not stamped on nothing", async () => {
		const machine = await aMachine(shop);
		expect(refused(await stampAsFound({ machineId: machine.id }, shop.env()))).toBe("nothing-found");
	});
});

describe("handing over", () => {
	it("waits for the bags that should be empty, or for words that say why not", async () => {
		const machine = await aMachine(shop, [aPosition("lamp", { mark: "k18" })]);
		got(await stampAsFound({ machineId: machine.id }, shop.env()));
		got(await takeOut({ machineId: machine.id, positionId: machine.position("k18") }, shop.env()));
		const bag = got(await makeBag({ machineId: machine.id, words: "lamp", role: "holding" }, shop.env()));
		got(await movePart({ partId: machine.part("k18"), to: { kind: "bag", bagId: bag.bagId } }, shop.env()));
		const refusal = await handOver(leaving(machine.id), shop.env());
		expect(refused(refusal)).toBe("not-complete");
		if (!refusal.ok) expect(refusal.error.say).toContain("1 bag that should be empty");
		got(await handOver(leaving(machine.id, "the owner fits the lamp"), shop.env()));
		expect((await row(machine.id)).state).toBe("left");
	});

	it("needs the stamp, and a machine that left comes back only by saying so", async () => {
		const machine = await aMachine(shop, [aPosition("lamp")]);
		expect(refused(await handOver(leaving(machine.id), shop.env()))).toBe("not-stamped");
		got(await stampAsFound({ machineId: machine.id }, shop.env()));
		got(await handOver(leaving(machine.id), shop.env()));
		expect(refused(await handOver(leaving(machine.id), shop.env()))).toBe("has-left");
		got(await setMachineState({ machineId: machine.id, state: "work" }, shop.env()));
		expect((await row(machine.id)).leftDay).toBeNull();
	});
});

describe("what is said of a machine", () => {
	it("is corrected, and the entry names what changed but no price", async () => {
		const machine = await aMachine(shop);
		const { number: _, ...words } = machineWords({ name: "SKERRY LIGHT No. 2", price: 9900 });
		got(await describeMachine({ ...words, machineId: machine.id }, shop.env()));
		const entry = await shop.store.read.entry.findFirstOrThrow({ orderBy: { seq: "desc" } });
		expect(entry.open).toContain("Corrected the name and what was paid.");
		expect(entry.open).not.toContain("9900");
	});

	it("keeps who said a note withheld", async () => {
		const machine = await aMachine(shop);
		got(await sayNote({ machineId: machine.id, kind: "told", words: "It stood in an arcade.", whoSaid: "the seller" }, shop.env()));
		const entry = await shop.store.read.entry.findFirstOrThrow({ orderBy: { seq: "desc" } });
		expect(entry.open).toContain("It stood in an arcade.");
		expect(entry.open).not.toContain("the seller");
	});

	it("takes only a photo that is in the book for its portrait", async () => {
		const machine = await aMachine(shop);
		expect(refused(await setPortrait({ machineId: machine.id, fileSha: "0".repeat(64) }, shop.env()))).toBe("no-such-photo");
	});
});

describe("a fault", () => {
	it("is noted, mended, and opened again when it was not", async () => {
		const machine = await aMachine(shop, [aPosition("lamp", { mark: "k18" })]);
		const faultId = got(
			await sayFault(
				{ machineId: machine.id, positionId: machine.position("k18"), partId: null, kind: "seen", words: "flickers", how: "" },
				shop.env(),
			),
		);
		got(await closeFault({ faultId, state: "mended" }, shop.env()));
		expect(refused(await closeFault({ faultId, state: "mended" }, shop.env()))).toBe("same-state");
		got(await closeFault({ faultId, state: "open" }, shop.env()));
		expect((await shop.store.read.fault.findUniqueOrThrow({ where: { id: faultId } })).state).toBe("open");
	});

	it("is not noted at another machine's position", async () => {
		const one = await aMachine(shop, [aPosition("lamp", { mark: "k18" })]);
		const other = await aMachine(shop);
		const refusal = await sayFault(
			{ machineId: other.id, positionId: one.position("k18"), partId: null, kind: "seen", words: "flickers", how: "" },
			shop.env(),
		);
		expect(refused(refusal)).toBe("no-such-position");
	});
});
