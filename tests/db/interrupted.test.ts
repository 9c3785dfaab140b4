import { describe, expect, it } from "vitest";
import { ok } from "@/lib/core/result";
import type { Store } from "@/lib/db/store";
import type { Writer } from "@/lib/db/writer";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";
import { verifyLedger } from "@/lib/ledger/verify";
import { aBag, type LampShop, lampShop } from "@/tests/ledger/lampShop";

/** The shop's store, but the n-th statement of each deed cannot be carried out. */
function failingAt(store: Store, n: number): Store {
	let count = 0;
	const writer: Writer = {
		...store.writer,
		atOnce: (work) => {
			count = 0;
			return store.writer.atOnce(work);
		},
		prepared: (sql) => {
			if (/^(INSERT|UPDATE)/.test(sql)) count += 1;
			return store.writer.prepared(/^(INSERT|UPDATE)/.test(sql) && count === n ? `INSERT INTO "NoSuchTable" VALUES (1)` : sql);
		},
	};
	return { ...store, writer, tail: Promise.resolve() };
}

const placeOfLamp = async (shop: LampShop) =>
	(await shop.store.read.part.findUniqueOrThrow({ where: { id: shop.lamp }, select: { place: true } })).place;
const entries = (shop: LampShop) => shop.store.read.entry.count();

describe("a deed that is interrupted", () => {
	it("writes the change and its entry, or neither, wherever it is interrupted", async () => {
		const outcomes: boolean[] = [];
		for (let n = 1, through = false; !through; n++) {
			const shop = await lampShop();
			const before = await entries(shop);
			const broken: LampShop = { ...shop, env: (id) => ({ ...shop.env(id), store: failingAt(shop.store, n) }) };
			const part = await shop.store.read.part.findUniqueOrThrow({ where: { id: shop.lamp } });
			const fitting = await shop.store.read.fitting.findUniqueOrThrow({ where: { id: shop.lampFitting } });
			through = await record(broken.env(), async () =>
				ok(
					deed(
						shop.machine,
						"part.taken-out",
						{ table: "Part", id: shop.lamp },
						{ say: "Took out the lens carriage." },
						[
							change("Part", part, { place: "bench", positionId: null }),
							change("Fitting", fitting, { untilAt: shop.now() }),
							add("Bag", aBag(shop.newId(), shop.machine, "Screws")),
						],
						null,
					),
				),
			).then(
				(result) => result.ok,
				() => false, // the injected failure is a bug to record, and is thrown on
			);
			outcomes.push(through);
			expect((await verifyLedger(shop.folder)).flaws).toEqual([]);
			expect(await placeOfLamp(shop)).toBe(through ? "bench" : "fitted");
			expect((await entries(shop)) - before).toBe(through ? 1 : 0);
			await shop.close();
		}
		// Entry, part, fitting, bag, receipt: each was the one that failed, once.
		expect(outcomes).toEqual([false, false, false, false, false, true]);
	});

	it("on a full disk is refused with what to do, and the next one goes through when there is room", async () => {
		const shop = await lampShop();
		const { page_count: pages } = shop.store.writer.prepared("PRAGMA page_count").get() as { page_count: number };
		const note = () =>
			record(shop.env(), async () => {
				const id = shop.newId();
				return ok(
					deed(
						shop.machine,
						"note.said",
						{ table: "Note", id },
						{ say: "Noted it." },
						[add("Note", { id, machineId: shop.machine, kind: "seen", words: "x".repeat(3000), whoSaid: null, at: shop.now() })],
						id,
					),
				);
			});
		const refusals: string[] = [];
		let written = 0;
		for (let room = 0; room < 12; room++) {
			shop.store.writer.prepared(`PRAGMA max_page_count = ${pages + room}`).get();
			const result = await note();
			if (result.ok) written += 1;
			else refusals.push(result.error.code);
			expect((await verifyLedger(shop.folder)).flaws).toEqual([]);
			expect(await shop.store.read.note.count()).toBe(written);
		}
		expect(written).toBeGreaterThan(0);
		expect(refusals.length).toBeGreaterThan(0);
		expect(new Set(refusals)).toEqual(new Set(["disk-full"]));
		await shop.close();
	});

	it("and sent again with the same id is done once", async () => {
		const shop = await lampShop();
		const id = shop.newId();
		const send = (store: Store) =>
			record({ ...shop.env(id), store }, async () => {
				const bag = shop.newId();
				return ok(
					deed(
						shop.machine,
						"bag.made",
						{ table: "Bag", id: bag },
						{ say: "Made a bag." },
						[add("Bag", aBag(bag, shop.machine, "Screws"))],
						bag,
					),
				);
			});
		await expect(send(failingAt(shop.store, 3))).rejects.toThrow();
		const first = await send(shop.store);
		const again = await Promise.all([send(shop.store), send(shop.store), send(shop.store)]);
		expect(again).toEqual([first, first, first]);
		expect(await shop.store.read.bag.count({ where: { words: "Screws" } })).toBe(1);
		await shop.close();
	});

	it("and sent again with other answers is not taken for done: the person is told that the first ones stand", async () => {
		const shop = await lampShop();
		const id = shop.newId();
		const send = (asked: string) =>
			record({ ...shop.env(id), asked }, async () => {
				const bag = shop.newId();
				const row = add("Bag", aBag(bag, shop.machine, asked));
				return ok(deed(shop.machine, "bag.made", { table: "Bag", id: bag }, { say: "Made a bag." }, [row], bag));
			});
		const first = await send("12 screws");
		expect(await send("12 screws")).toEqual(first);
		expect(await send("10 screws")).toMatchObject({ ok: false, error: { code: "recorded-otherwise" } });
		expect(await shop.store.read.bag.count({ where: { words: "10 screws" } })).toBe(0);
		await shop.close();
	});
});
