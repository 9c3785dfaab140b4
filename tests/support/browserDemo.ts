// The demo shop in a folder of its own, for tests that look at filled pages.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { addCapture } from "@/lib/captures/changes";
import type { Result } from "@/lib/core/result";
import { migrate } from "@/lib/db/migrate";
import { databaseFile, openStore } from "@/lib/db/store";
import { takeOut } from "@/lib/fittings/changes";
import { envNow } from "@/lib/ledger/edge";
import { addPin } from "@/lib/pins/changes";
import { sayMadeSafe, startReversal } from "@/lib/reversal/carryingOut/changes";
import { startReversalSchema } from "@/lib/reversal/carryingOut/schema";
import { loadDemo } from "@/seed/load";

/** A folder that holds the demo shop, and the way to be rid of it. */
export async function demoFolder(): Promise<{ readonly folder: string; readonly remove: () => void }> {
	const folder = mkdtempSync(path.join(tmpdir(), "asfound-demo-"));
	migrate(databaseFile(folder), path.resolve("prisma/migrations"), () => undefined);
	await loadDemo(folder);
	await beginReversal(folder);
	await leaveForTheEvening(folder);
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

/** A tag was scanned and has no words yet, and a drawing of machine 12 has two pins: so the pages of both have something to show. */
async function leaveForTheEvening(folder: string): Promise<void> {
	const store = await openStore(folder);
	try {
		const { read } = store;
		const person = await read.person.findFirstOrThrow({ where: { state: "here" }, select: { id: true } });
		const drawing = await read.capture.findFirstOrThrow({
			where: { machine: { number: 12 }, kind: "drawing", stands: "yes" },
			orderBy: { id: "asc" },
			select: { id: true, machineId: true },
		});
		const position = await read.position.findFirstOrThrow({ where: { machine: { number: 12 }, mark: "k02" }, select: { id: true } });
		const pin = { captureId: drawing.id, y: 4000, words: "" };
		must(await addPin({ ...pin, x: 2500, thing: `position:${position.id}` }, envNow(store, person.id)));
		must(await addPin({ ...pin, x: 7500, words: "a pencil mark" }, envNow(store, person.id)));
		const { id: tag } = await read.tag.findFirstOrThrow({ where: { machineNumber: 12, number: 2 }, select: { id: true } });
		must(await addCapture({ machineId: drawing.machineId, kind: "tag", file: null, tag }, envNow(store, person.id)));
	} finally {
		await store.close();
	}
}

function must<T>(done: Result<T>): T {
	if (!done.ok) throw new Error(done.error.say);
	return done.value;
}
