// The reads of a machine's pages, 300 positions in a shop of 100 such machines, against the very statements they come
// to, run with bare better-sqlite3.

import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import Database from "better-sqlite3";
import { type Day, day } from "@/lib/core/days";
import { databaseFile } from "@/lib/db/store";
import { PrismaClient } from "@/lib/generated/prisma/client";
import { stampAsFound, takeInMachine } from "@/lib/machines/changes";
import { benches, faultsOf, notesOf, partsOutside } from "@/lib/machines/queries";
import { takeInMachineSchema } from "@/lib/machines/schema";
import { machineMoney } from "@/lib/money/queries";
import { originFacts } from "@/lib/originality/queries";
import { buildFacts } from "@/lib/positions/buildQueries";
import { addPositions } from "@/lib/positions/changes";
import { addPositionsSchema } from "@/lib/positions/schema";
import type { FreshShop } from "@/tests/support/freshShop";
import { report, timed } from "./timing";

const MACHINES = 100;
const POSITIONS = 300;
const TODAY: Day = day("2026-03-02");

/** Takes in the machines; gives the id of one in the middle. */
export async function fill(shop: FreshShop): Promise<string> {
	let middle = "";
	for (let number = 1; number <= MACHINES; number++) {
		const taken = await takeInMachine(takeInMachineSchema("EUR").parse({ name: `MACHINE ${number}`, receivedDay: TODAY }), shop.env());
		if (!taken.ok) throw new Error(taken.error.say);
		const positions = Array.from({ length: POSITIONS }, (_, index) => ({
			name: `part ${index + 1}`,
			area: `area ${index % 9}`,
			hostMark: index % 5 === 0 ? null : `p${index - (index % 5) + 1}`,
			mark: `p${index + 1}`,
			evidence: [{ kind: "seen", claim: "made", how: "untouched fixings" }],
		}));
		const added = await addPositions(addPositionsSchema.parse({ machineId: taken.value.id, positions }), shop.env());
		if (!added.ok) throw new Error(added.error.say);
		const stamped = await stampAsFound({ machineId: taken.value.id }, shop.env());
		if (!stamped.ok) throw new Error(stamped.error.say);
		if (number === MACHINES / 2) middle = taken.value.id;
	}
	return middle;
}

export async function machinePage(shop: FreshShop, machineId: string): Promise<void> {
	const url = `file:${databaseFile(shop.folder)}`;
	const read = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url, readonly: true }), log: [{ emit: "event", level: "query" }] });
	const pages: readonly { readonly name: string; readonly run: () => Promise<unknown> }[] = [
		{
			name: "Now",
			run: () =>
				Promise.all([
					originFacts(read, [machineId]),
					benches(read, [machineId], shop.now()),
					partsOutside(read, machineId),
					machineMoney(read, machineId, TODAY),
					faultsOf(read, machineId),
					notesOf(read, machineId),
				]),
		},
		{ name: "Build", run: () => buildFacts(read, machineId) },
	];
	const db = new Database(databaseFile(shop.folder), { readonly: true });
	let heard: { sql: string; values: unknown[] }[] = [];
	read.$on("query", ({ query, params }) => {
		if (/^\s*SELECT/i.test(query)) heard.push({ sql: query, values: JSON.parse(params) as unknown[] });
	});
	for (const page of pages) {
		heard = [];
		await page.run();
		const statements = heard.map(({ sql, values }) => ({ run: db.prepare(sql), values }));
		if (statements.length === 0) throw new Error(`no statement was heard of the page ${page.name}`);
		const asked = await timed(60, page.run, 10);
		const raw = await timed(60, () => statements.map(({ run, values }) => run.all(...values)), 10);
		report(
			`reads of the page ${page.name}, ${POSITIONS} positions in a shop of ${MACHINES} machines, against their ${statements.length} statements in bare better-sqlite3`,
			asked,
			raw,
			5,
		);
	}
	db.close();
	await read.$disconnect();
}
