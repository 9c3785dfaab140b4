// A process that writes is killed at any moment (SIGKILL, as when the power switch of the shop's computer is hit; what the
// disk itself loses then cannot be tried here). `npm test` kills six times, the long run two hundred: ASFOUND_KILLS=200.

import { spawn } from "node:child_process";
import { once } from "node:events";
import path from "node:path";
import Database from "better-sqlite3";
import { expect, it } from "vitest";
import { seededRandom } from "@/lib/core/random";
import { verifyLedger } from "@/lib/ledger/verify";
import { lampShop } from "@/tests/ledger/lampShop";

const KILLS = Number(process.env.ASFOUND_KILLS ?? 6);
const SEED = 20260302;

/** Lets the writer run until it has acknowledged something, then so many milliseconds longer. Gives what it acknowledged. */
async function writeAndKill(args: readonly string[], milliseconds: number): Promise<{ deed: string; note: string }[]> {
	const child = spawn(process.execPath, ["--import", "tsx", path.resolve("tests/db/killedWriter.ts"), ...args], {
		stdio: ["ignore", "pipe", "pipe"],
	});
	let said = "";
	let complaint = "";
	child.stderr.on("data", (bytes: Buffer) => {
		complaint += bytes.toString();
	});
	child.stdout.on("data", (bytes: Buffer) => {
		if (said === "") setTimeout(() => child.kill("SIGKILL"), milliseconds);
		said += bytes.toString();
	});
	const [code, signal] = (await once(child, "close")) as [number | null, string | null];
	if (signal !== "SIGKILL") throw new Error(`the writer ended by itself, ${code}: ${complaint}`);
	// The last line may be cut off: that deed was not acknowledged.
	return said
		.slice(0, said.lastIndexOf("\n"))
		.split("\n")
		.map((line) => {
			const [deed = "", note = ""] = line.split(" ");
			return { deed, note };
		});
}

it(
	`of ${KILLS} killed writers, every acknowledged deed is in the book, none is there by half, and both chains verify (seed ${SEED})`,
	async () => {
		const shop = await lampShop();
		const random = seededRandom(SEED);
		let acknowledged = 0;
		try {
			for (let kill = 1; kill <= KILLS; kill++) {
				const deeds = await writeAndKill([shop.folder, shop.person, shop.machine, shop.lamp], Math.floor(random() * 120));
				acknowledged += deeds.length;
				const db = new Database(path.join(shop.folder, "asfound.db"));
				try {
					for (const { deed, note } of deeds) {
						const receipt = db.prepare<[string], { result: string }>(`SELECT "result" FROM "Receipt" WHERE "deed" = ?`).get(deed);
						expect({ kill, deed, kept: JSON.parse(receipt?.result ?? "null") }).toEqual({
							kill,
							deed,
							kept: { asked: null, result: note },
						});
						expect(db.prepare(`SELECT "id" FROM "Note" WHERE "id" = ?`).get(note)).toEqual({ id: note });
					}
					// Two entries, one note and one receipt a deed, acknowledged or not.
					const counted = db
						.prepare<[], { entries: number; notes: number; receipts: number }>(
							`SELECT (SELECT count(*) FROM "Entry" WHERE "seq" > 4) AS entries, (SELECT count(*) FROM "Note") AS notes, (SELECT count(*) FROM "Receipt" WHERE "seq" > 4) AS receipts`,
						)
						.get();
					expect(counted).toEqual({ entries: 2 * (counted?.notes ?? 0), notes: counted?.receipts, receipts: counted?.notes });
				} finally {
					db.close();
				}
				expect((await verifyLedger(shop.folder)).flaws).toEqual([]);
			}
			expect(acknowledged).toBeGreaterThanOrEqual(KILLS);
		} finally {
			await shop.close();
		}
	},
	20_000 * KILLS,
);
