// The one connection that writes: bare better-sqlite3, which writes a whole deed without leaving the call. The ORM puts a
// promise, a parser and a plan around each statement, and a deed is ten of them; its reads are worth that, its writes not.

import Database from "better-sqlite3";

export type Writer = {
	/** A statement of this connection, prepared once for each text. */
	readonly prepared: (sql: string) => Database.Statement<unknown[], unknown>;
	/** Runs `work` in one immediate transaction: all of it is on the disk afterwards, or, when it throws, nothing. */
	readonly atOnce: <T>(work: () => T) => T;
	readonly close: () => void;
};

/** Opens a database file that has been migrated. A write waits `busyMs` milliseconds at most for another process. */
export function openWriter(file: string, busyMs: number): Writer {
	const db = new Database(file, { fileMustExist: true, timeout: busyMs });
	db.pragma("journal_mode = WAL");
	// A returned write is on the disk, not only in its cache.
	db.pragma("synchronous = FULL");
	db.pragma("foreign_keys = ON");
	const statements = new Map<string, Database.Statement<unknown[], unknown>>();
	const run = db.transaction((work: () => unknown) => work());
	return {
		prepared: (sql) => {
			const known = statements.get(sql);
			if (known) return known;
			const made = db.prepare<unknown[], unknown>(sql);
			statements.set(sql, made);
			return made;
		},
		atOnce: <T>(work: () => T) => run.immediate(work) as T,
		close: () => db.close(),
	};
}
