// The demo shop in a folder of its own, for tests that look at filled pages.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { migrate } from "@/lib/db/migrate";
import { databaseFile } from "@/lib/db/store";
import { loadDemo } from "@/seed/load";

/** A folder that holds the demo shop, and the way to be rid of it. */
export async function demoFolder(): Promise<{ readonly folder: string; readonly remove: () => void }> {
	const folder = mkdtempSync(path.join(tmpdir(), "asfound-demo-"));
	migrate(databaseFile(folder), path.resolve("prisma/migrations"), () => undefined);
	await loadDemo(folder);
	return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
