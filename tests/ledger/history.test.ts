import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { historyOf, writersOf } from "@/lib/ledger/historyQueries";
import { type LampShop, lampShop } from "@/tests/ledger/lampShop";

let shop: LampShop;
beforeEach(async () => {
	shop = await lampShop();
	await shop.takeOutLamp();
});
afterEach(() => shop.close());

const says = async (filter: Parameters<typeof historyOf>[2]) =>
	(await historyOf(shop.store.read, shop.machine, filter)).entries.map(({ say }) => say);

describe("a machine's history", () => {
	it("is its entries in plain sentences, newest first, with who and when", async () => {
		const { entries, next } = await historyOf(shop.store.read, shop.machine, { take: 10 });
		expect(entries.map(({ say, by, machineSeq }) => [machineSeq, by, say])).toEqual([
			[3, "Tester", "Took out the lens carriage and put it in bag 12-0201-J."],
			[2, "Tester", "Made a bag for the lamp."],
			[1, "Tester", "Took in machine 12."],
		]);
		expect(entries[0]?.at).toBe("2026-03-02T08:04:00.000Z");
		expect(next).toBeNull();
	});

	it("comes in pages that leave nothing out and show nothing twice", async () => {
		const first = await historyOf(shop.store.read, shop.machine, { take: 2 });
		expect(first.next).toBe(2);
		const second = await historyOf(shop.store.read, shop.machine, { take: 2, before: first.next ?? 0 });
		expect([...first.entries, ...second.entries].map(({ machineSeq }) => machineSeq)).toEqual([3, 2, 1]);
		expect(second.next).toBeNull();
	});

	it("is found by a word, in whatever case, and a percent sign is only a percent sign", async () => {
		expect(await says({ word: "BAG FOR", take: 10 })).toEqual(["Made a bag for the lamp."]);
		expect(await says({ word: "%", take: 10 })).toEqual([]);
	});

	it("is found by who did it", async () => {
		expect(await says({ person: shop.person, take: 10 })).toHaveLength(3);
		expect(await says({ person: shop.machine, take: 10 })).toEqual([]);
		expect(await writersOf(shop.store.read, shop.machine)).toEqual([{ id: shop.person, name: "Tester" }]);
	});

	it("holds nothing of another machine or of the shop alone", async () => {
		expect(await says({ word: "owner", take: 10 })).toEqual([]);
	});
});
