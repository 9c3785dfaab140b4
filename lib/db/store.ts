// Opens a shop's data folder. The one place that makes Prisma clients: a read-only one for every query, and the
// writer, which only lib/ledger/record.ts may take (tests/db/oneDoor.test.ts holds that up).
//
// Why two: the stock adapter has one connection, and whatever runs on a client while a transaction is open on it runs
// inside that transaction. A reader of its own sees committed data only.

import path from "node:path";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { PrismaClient } from "@/lib/generated/prisma/client";

export type Reader = Omit<PrismaClient, "$transaction" | "$executeRaw" | "$executeRawUnsafe">;

export type Store = {
	/** The data folder. */
	readonly folder: string;
	readonly read: Reader;
	/** For `record` alone. */
	readonly writer: PrismaClient;
	/** Waits for the writes under way, then closes both clients. */
	readonly close: () => Promise<void>;
	/** The end of the queue of writes; one at a time. */
	tail: Promise<unknown>;
};

/** Milliseconds that a write waits for another process: short, since SQLite waits inside the event loop. */
const BUSY_MS = 2000;

export const databaseFile = (folder: string): string => path.join(folder, "asfound.db");

/** Opens the folder's database. Requires that it has been migrated (lib/db/migrate.ts). */
export async function openStore(folder: string): Promise<Store> {
	const url = `file:${databaseFile(folder)}`;
	const writer = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url, timeout: BUSY_MS }) });
	await writer.$queryRawUnsafe("PRAGMA journal_mode = WAL");
	// A returned write is on the disk, not only in its cache.
	await writer.$queryRawUnsafe("PRAGMA synchronous = FULL");
	const read = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url, readonly: true, timeout: BUSY_MS }) });
	const store: Store = {
		folder,
		read,
		writer,
		tail: Promise.resolve(),
		close: async () => {
			await store.tail;
			await read.$disconnect();
			await writer.$disconnect();
		},
	};
	return store;
}
