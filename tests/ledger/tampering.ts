// Opens a shop's database the way someone would who goes behind the ledger's back: with the guards taken away.

import path from "node:path";
import Database from "better-sqlite3";

/** Runs SQL with every trigger dropped, and puts the triggers back, so that only the rows tell. */
export function behindTheBack(folder: string, sql: string): void {
	const db = new Database(path.join(folder, "asfound.db"));
	try {
		const triggers = db.prepare<[], { name: string; sql: string }>("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'").all();
		db.pragma("foreign_keys = OFF");
		for (const { name } of triggers) db.exec(`DROP TRIGGER "${name}"`);
		db.exec(sql);
		for (const trigger of triggers) db.exec(trigger.sql);
	} finally {
		db.close();
	}
}

/** Runs SQL as it is, guards and all. */
export function straightIn(folder: string, sql: string): void {
	const db = new Database(path.join(folder, "asfound.db"));
	try {
		db.exec(sql);
	} finally {
		db.close();
	}
}
