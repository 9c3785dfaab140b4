// A shop of a test's own: a migrated database in a folder of its own, real SQLite, at the price of a file copy.

import { copyFileSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { addMinutes, type Instant, instant } from "@/lib/core/instants";
import { ok } from "@/lib/core/result";
import { migrate } from "@/lib/db/migrate";
import { databaseFile, openStore, type Store } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, deed } from "@/lib/ledger/rows";

export type FreshShop = {
	readonly store: Store;
	readonly folder: string;
	readonly person: string;
	/** A new deed; the clock moves on by a minute each time. */
	readonly env: (deed?: string) => Env;
	readonly now: () => Instant;
	readonly setClock: (at: string) => void;
	/** Ids as the program makes them, but the same in every run. */
	readonly newId: () => string;
	readonly close: () => Promise<void>;
};

let base: string | null = null;

function baseFile(): string {
	if (base) return base;
	const folder = mkdtempSync(path.join(tmpdir(), "asfound-base-"));
	base = path.join(folder, "asfound.db");
	migrate(base, path.resolve("prisma/migrations"), () => undefined);
	process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
	return base;
}

/** Opens a fresh shop with one person, "Tester" (T). The clock starts on 2 March 2026, 08:00 UTC. */
export async function freshShop(): Promise<FreshShop> {
	const folder = mkdtempSync(path.join(tmpdir(), "asfound-test-"));
	mkdirSync(folder, { recursive: true });
	copyFileSync(baseFile(), databaseFile(folder));
	const store = await openStore(folder);
	let now = instant("2026-03-02T08:00:00.000Z");
	let made = 0;
	const newId = () => `00000000-0000-7000-8000-${(made++).toString(16).padStart(12, "0")}`;
	const person = newId();
	const env = (deedId: string = newId()): Env => {
		now = addMinutes(now, 1);
		const at = now;
		return { store, clock: () => at, actor: person, deed: deedId, newId, salt: () => (made++).toString(16).padStart(32, "0") };
	};
	const opened = await record(env(), async () =>
		ok(
			deed(
				null,
				"shop.opened",
				{ table: "Shop", id: "shop" },
				{ say: "Opened the shop." },
				[
					add("Shop", { id: "shop", name: "Test shop", currency: "EUR", timeZone: "Europe/Amsterdam", address: null, publicKey: "" }),
					add("Person", { id: person, name: "Tester", initials: "T", skills: "", state: "here" }),
				],
				person,
			),
		),
	);
	if (!opened.ok) throw new Error(opened.error.say);
	return {
		store,
		folder,
		person,
		env,
		now: () => now,
		setClock: (at) => {
			now = instant(at);
		},
		newId,
		close: async () => {
			await store.close();
			rmSync(folder, { recursive: true, force: true });
		},
	};
}
