// Applies the migrations under prisma/migrations in the order of their names, and records them as Prisma does.
import { createHash, randomUUID } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { systemClock } from "@/lib/core/clock";

/** Gives the names of the migrations that were applied. `clock` dates them, and nothing else depends on it. */
export function migrate(
	file: string,
	dir = path.resolve("prisma/migrations"),
	log: (s: string) => void = console.log,
	clock: () => string = systemClock,
): string[] {
	mkdirSync(path.dirname(file), { recursive: true });
	const db = new Database(file, { timeout: 10_000 });
	const applied: string[] = [];
	try {
		db.pragma("journal_mode = WAL");
		db.pragma("foreign_keys = OFF"); // table rebuilds; every migration is checked before its commit
		db.exec(`CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
    "id"                    TEXT PRIMARY KEY NOT NULL,
    "checksum"              TEXT NOT NULL,
    "finished_at"           DATETIME,
    "migration_name"        TEXT NOT NULL,
    "logs"                  TEXT,
    "rolled_back_at"        DATETIME,
    "started_at"            DATETIME NOT NULL DEFAULT current_timestamp,
    "applied_steps_count"   INTEGER UNSIGNED NOT NULL DEFAULT 0
)`);
		const names = readdirSync(dir, { withFileTypes: true })
			.filter((e) => e.isDirectory() && existsSync(path.join(dir, e.name, "migration.sql")))
			.map((e) => e.name)
			.sort();
		const now = () => clock().replace("Z", "+00:00");
		for (const name of names) {
			const bytes = readFileSync(path.join(dir, name, "migration.sql"));
			const checksum = createHash("sha256").update(bytes).digest("hex");
			const started = now();
			db.exec("BEGIN IMMEDIATE"); // also the lock between two starting processes
			try {
				const row = db
					.prepare(`SELECT checksum, finished_at FROM _prisma_migrations WHERE migration_name = ? AND rolled_back_at IS NULL`)
					.get(name) as { checksum: string; finished_at: string | null } | undefined;
				if (row && !row.finished_at) throw new Error(`migration ${name} failed earlier`);
				if (row && row.checksum !== checksum) throw new Error(`migration ${name} was changed after it was applied`);
				if (!row) {
					db.exec(bytes.toString("utf8"));
					const bad = db.pragma("foreign_key_check") as unknown[];
					if (bad.length) throw new Error(`migration ${name} leaves broken references: ${JSON.stringify(bad.slice(0, 3))}`);
					db.prepare(
						`INSERT INTO _prisma_migrations (id, checksum, finished_at, migration_name, started_at, applied_steps_count) VALUES (?,?,?,?,?,1)`,
					).run(randomUUID(), checksum, now(), name, started);
					applied.push(name);
				}
				db.exec("COMMIT");
			} catch (e) {
				if (db.inTransaction) db.exec("ROLLBACK");
				throw e;
			}
		}
		const known = new Set(names);
		const extra = (
			db.prepare(`SELECT migration_name n FROM _prisma_migrations WHERE rolled_back_at IS NULL`).all() as { n: string }[]
		).filter((r) => !known.has(r.n));
		if (extra.length) throw new Error(`database is newer than this program: ${extra.map((r) => r.n).join(", ")}`);
	} finally {
		db.close();
	}
	for (const n of applied) log(`applied ${n}`);
	return applied;
}
