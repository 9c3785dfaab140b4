// A recorded write (entry, row, receipt, all triggers) against the same rows written with bare better-sqlite3, both with
// synchronous=FULL.

import Database from "better-sqlite3";
import { ok } from "@/lib/core/result";
import { databaseFile } from "@/lib/db/store";
import { record } from "@/lib/ledger/record";
import { add, type Draft, deed } from "@/lib/ledger/rows";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";
import { report, timed } from "./timing";

const RUNS = 400;

const aPart = (id: string, machineId: string, at: string): Draft<"Part"> => ({
	id,
	machineId,
	name: "lamp",
	count: 1,
	maker: "",
	type: "",
	material: "",
	made: null,
	origin: "original",
	works: "works",
	condition: "",
	place: "bench",
	positionId: null,
	bagId: null,
	locationId: null,
	partyId: null,
	sinceAt: at,
	dueDay: null,
	placeWhy: "",
	lineId: null,
});

async function writeOne(shop: FreshShop, machineId: string): Promise<void> {
	const env = shop.env();
	const id = shop.newId();
	const done = await record(env, async () =>
		ok(
			deed(machineId, "part.added", { table: "Part", id }, { say: "Added a lamp." }, [add("Part", aPart(id, machineId, env.clock()))], id),
		),
	);
	if (!done.ok) throw new Error(done.error.say);
}

export async function recordedWrite(): Promise<void> {
	const shop = await freshShop();
	try {
		const machineId = shop.newId();
		const env = shop.env();
		const taken = await record(env, async () =>
			ok(
				deed(
					machineId,
					"machine.taken-in",
					{ table: "Machine", id: machineId },
					{ say: "Took in a machine." },
					[
						add("Machine", {
							id: machineId,
							number: 1,
							name: "BENCH",
							kind: "",
							maker: "",
							model: "",
							serial: "",
							made: null,
							ownership: "shop",
							state: "intake",
							sellerId: null,
							ownerId: null,
							priceMinor: null,
							carriageMinor: null,
							soldMinor: null,
							carried: "",
							condition: "",
							hazards: "",
							receivedDay: "2026-03-02",
							asFoundAt: null,
							promisedDay: null,
							leftDay: null,
							portraitSha: null,
						}),
					],
					null,
				),
			),
		);
		if (!taken.ok) throw new Error(taken.error.say);
		const recorded = await timed(RUNS, () => writeOne(shop, machineId), 100);

		const db = new Database(databaseFile(shop.folder));
		db.pragma("synchronous = FULL");
		const tables = ["Entry", "Part", "Receipt"] as const;
		const bare = tables.map((table) => {
			const row = db.prepare(`SELECT * FROM "${table}" ORDER BY rowid DESC LIMIT 1`).get() as Record<string, unknown>;
			db.exec(`CREATE TABLE "bare${table}" AS SELECT * FROM "${table}" WHERE 0`);
			const columns = Object.keys(row);
			return {
				insert: db.prepare(
					`INSERT INTO "bare${table}" (${columns.map((column) => `"${column}"`).join(",")}) VALUES (${columns.map(() => "?").join(",")})`,
				),
				values: Object.values(row),
			};
		});
		const write = db.transaction(() => {
			for (const { insert, values } of bare) insert.run(...values);
		});
		const raw = await timed(RUNS, () => write.immediate(), 100);
		db.close();
		report("a recorded write, against the same rows in bare better-sqlite3 (synchronous=FULL)", recorded, raw, 5);
	} finally {
		await shop.close();
	}
}
