// The demo shop for tests that read it: loaded once a worker, and copied for each test that opens it.

import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { migrate } from "@/lib/db/migrate";
import { databaseFile, openStore, type Store } from "@/lib/db/store";
import { loadDemo } from "@/seed/load";

let loaded: Promise<string> | null = null;

async function load(): Promise<string> {
	const folder = mkdtempSync(path.join(tmpdir(), "asfound-demo-base-"));
	process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
	migrate(databaseFile(folder), path.resolve("prisma/migrations"), () => undefined);
	await loadDemo(folder);
	return folder;
}

/** A demo shop of a test's own. */
export async function demoCopy(): Promise<{ readonly store: Store; readonly folder: string; readonly close: () => Promise<void> }> {
	loaded ??= load();
	const folder = mkdtempSync(path.join(tmpdir(), "asfound-test-demo-"));
	cpSync(await loaded, folder, { recursive: true });
	const store = await openStore(folder);
	return {
		store,
		folder,
		close: async () => {
			await store.close();
			rmSync(folder, { recursive: true, force: true });
		},
	};
}
