// Compares what guards the tables (triggers, indexes, CHECKs in the table texts) with what the migrations make.

import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import type { Flaw } from "@/lib/ledger/verifyChain";

type Guard = { readonly type: string; readonly name: string; readonly sql: string };

const GUARDS = `SELECT type, name, sql FROM sqlite_master WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' AND name <> '_prisma_migrations' ORDER BY type, name`;

/** Every table, index and trigger of a database, with its text. */
export const guardsOf = (db: Database.Database): Guard[] => db.prepare<[], Guard>(GUARDS).all();

/** A database in memory, made by the migrations of the given names (all of them when none are given). */
export function madeByMigrations(folder: string, names?: ReadonlySet<string>): Database.Database {
	const db = new Database(":memory:");
	for (const name of readdirSync(folder).sort()) {
		const file = path.join(folder, name, "migration.sql");
		if (existsSync(file) && (names?.has(name) ?? true)) db.exec(readFileSync(file, "utf8"));
	}
	return db;
}

/** Guards that are gone, changed, or not ours. */
export function guardFlaws(db: Database.Database, migrations: string): Flaw[] {
	const applied = new Set(
		db
			.prepare<[], { name: string }>(`SELECT migration_name AS name FROM _prisma_migrations`)
			.all()
			.map(({ name }) => name),
	);
	const made = madeByMigrations(migrations, applied);
	try {
		const wanted = new Map(guardsOf(made).map((guard) => [`${guard.type} ${guard.name}`, guard.sql]));
		const there = new Map(guardsOf(db).map((guard) => [`${guard.type} ${guard.name}`, guard.sql]));
		const flaws: Flaw[] = [];
		for (const [name, sql] of wanted) {
			const found = there.get(name);
			if (found === undefined)
				flaws.push({ code: "guard-missing", say: `the ${name} is missing: what it guards can be changed behind the ledger's back` });
			else if (found !== sql) flaws.push({ code: "guard-changed", say: `the ${name} is not as it was made` });
		}
		for (const name of there.keys()) if (!wanted.has(name)) flaws.push({ code: "guard-extra", say: `the ${name} was not made by Asfound` });
		return flaws;
	} finally {
		made.close();
	}
}
