// The demo shop in a folder of its own, for tests that look at filled pages.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Result } from "@/lib/core/result";
import { migrate } from "@/lib/db/migrate";
import { databaseFile, openStore } from "@/lib/db/store";
import { takeOut } from "@/lib/fittings/changes";
import { envNow } from "@/lib/ledger/edge";
import { sayMadeSafe, startReversal } from "@/lib/reversal/carryingOut/changes";
import { startReversalSchema } from "@/lib/reversal/carryingOut/schema";
import { loadDemo } from "@/seed/load";

/** A folder that holds the demo shop, and the way to be rid of it. */
export async function demoFolder(): Promise<{ readonly folder: string; readonly remove: () => void }> {
	const folder = mkdtempSync(path.join(tmpdir(), "asfound-demo-"));
	migrate(databaseFile(folder), path.resolve("prisma/migrations"), () => undefined);
	await loadDemo(folder);
	await beginReversal(folder);
	return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** Machine 12 goes back to as found at its drive plate: isolated, its first panel off. So the pages of a reversal have something to show. */
async function beginReversal(folder: string): Promise<void> {
	const store = await openStore(folder);
	try {
		const { read } = store;
		const [machine, person] = await Promise.all([
			read.machine.findUniqueOrThrow({ where: { number: 12 }, select: { id: true } }),
			read.person.findFirstOrThrow({ where: { state: "here" }, select: { id: true } }),
		]);
		const at = async (mark: string) =>
			(await read.position.findUniqueOrThrow({ where: { machineId_mark: { machineId: machine.id, mark } }, select: { id: true } })).id;
		const asked = { machineId: machine.id, target: "asFound" as const, positionIds: [await at("k23")] };
		const { number } = must(await startReversal(startReversalSchema.parse(asked), envNow(store, person.id)));
		const reversal = await read.reversal.findFirstOrThrow({ where: { machineId: machine.id, number }, select: { id: true } });
		must(await sayMadeSafe({ reversalId: reversal.id, words: "two-pole tester" }, envNow(store, person.id)));
		must(await takeOut({ machineId: machine.id, positionId: await at("k01") }, envNow(store, person.id)));
	} finally {
		await store.close();
	}
}

function must<T>(done: Result<T>): T {
	if (!done.ok) throw new Error(done.error.say);
	return done.value;
}
