// Opens a shop's data folder: Prisma's client, read-only, for every query, and the writer, which only
// lib/ledger/record.ts may take (tests/db/oneDoor.test.ts holds that up).
//
// Why two: the stock adapter has one connection, and whatever runs on a client while a transaction is open on it runs
// inside that transaction. A reader of its own sees committed data only.

import path from "node:path";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { openWriter, type Writer } from "@/lib/db/writer";
import { PrismaClient } from "@/lib/generated/prisma/client";

export type Reader = Omit<PrismaClient, "$transaction" | "$executeRaw" | "$executeRawUnsafe">;

export type Store = {
	/** The data folder. */
	readonly folder: string;
	readonly read: Reader;
	/** For `record` alone. */
	readonly writer: Writer;
	/** Waits for the writes under way, then closes both. */
	readonly close: () => Promise<void>;
	/** The end of the queue of writes; one at a time. */
	tail: Promise<unknown>;
};

/** Milliseconds that a write waits for another process: short, since SQLite waits inside the event loop. */
const BUSY_MS = 2000;

export const databaseFile = (folder: string): string => path.join(folder, "asfound.db");

/** Opens the folder's database. Requires that it has been migrated (lib/db/migrate.ts). */
export async function openStore(folder: string): Promise<Store> {
	const writer = openWriter(databaseFile(folder), BUSY_MS);
	const read = new PrismaClient({
		adapter: new PrismaBetterSqlite3({ url: `file:${databaseFile(folder)}`, readonly: true, timeout: BUSY_MS }),
	});
	const store: Store = {
		folder,
		read,
		writer,
		tail: Promise.resolve(),
		close: async () => {
			await store.tail;
			await read.$disconnect();
			writer.close();
		},
	};
	return store;
}
