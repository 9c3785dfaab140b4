// Verifying the ledger of a shop of 100 machines against SHA-256 of the same bytes.

import { createHash } from "node:crypto";
import Database from "better-sqlite3";
import { databaseFile } from "@/lib/db/store";
import { verifyLedger } from "@/lib/ledger/verify";
import type { FreshShop } from "@/tests/support/freshShop";
import { report, timed } from "./timing";

export async function verifying(shop: FreshShop): Promise<void> {
	const db = new Database(databaseFile(shop.folder), { readonly: true });
	const texts = db
		.prepare<[], { bytes: string }>(
			`SELECT "open" || "at" || "actor" || "action" || "subject" || "prev" || "hash" AS bytes FROM "Entry" ORDER BY "seq"`,
		)
		.all()
		.map(({ bytes }) => Buffer.from(bytes, "utf8"));
	db.close();
	const bytes = texts.reduce((sum, text) => sum + text.length, 0);
	const hashed = await timed(9, () => texts.map((text) => createHash("sha256").update(text).digest("hex")), 2);
	const chains = await timed(9, () => verifyLedger(shop.folder, { chainsOnly: true }), 2);
	const whole = await timed(3, () => verifyLedger(shop.folder), 1);
	console.log(`the ledger: ${texts.length} entries, ${(bytes / 1e6).toFixed(1)} MB`);
	report("verifying both chains and all seals, by hash and link, against SHA-256 of the same bytes", chains, hashed, 4);
	report(
		"verifying everything (the same, the written form, every row, every guard), against SHA-256 of the same bytes",
		whole,
		hashed,
		null,
	);
}
