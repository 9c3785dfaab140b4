// Prisma's own schema engine, compiled to WebAssembly (an npm package), with better-sqlite3 as its driver: what
// `prisma migrate diff` would say, without a download. For the drift test and for drafting migrations.

import { existsSync, readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";

const SCHEMA = path.resolve("prisma/schema.prisma");
export const MIGRATIONS = path.resolve("prisma/migrations");

export type Difference = {
	/** SQL, or a summary in words, that would take the migrations to the schema; "" when they agree. */
	readonly text: string;
	readonly agrees: boolean;
};

/** What the migrations lack to make the tables of the schema; as SQL when `script` is set. */
export async function difference(script: boolean, schemaText = readFileSync(SCHEMA, "utf8")): Promise<Difference> {
	const engine = await startEngine(schemaText);
	const { stdout, exitCode } = await engine.diff({
		from: { tag: "migrations", ...migrationsList() },
		to: { tag: "schemaDatamodel", files: [{ path: SCHEMA, content: schemaText }] },
		script,
		exitCode: true,
		filters: { externalTables: [], externalEnums: [] },
	});
	return { text: stdout ?? "", agrees: exitCode === 0 };
}

type Engine = typeof import("@prisma/schema-engine-wasm/schema_engine_bg");

let loaded: Promise<Engine> | null = null;

/** The package's module needs its WebAssembly handed in. */
function loadEngine(): Promise<Engine> {
	loaded ??= (async () => {
		const engine: Engine = await import("@prisma/schema-engine-wasm/schema_engine_bg");
		const module = createRequire(import.meta.url).resolve("@prisma/schema-engine-wasm/schema_engine_bg");
		const { instance } = await WebAssembly.instantiate(readFileSync(path.join(path.dirname(module), "schema_engine_bg.wasm")), {
			"./schema_engine_bg.js": engine as unknown as WebAssembly.ModuleImports,
		});
		engine.__wbg_set_wasm(instance.exports);
		const start = instance.exports.__wbindgen_start;
		if (typeof start === "function") start();
		return engine;
	})();
	return loaded;
}

async function startEngine(schemaText: string) {
	const engine = await loadEngine();
	const adapter = bindMigrationAwareSqlAdapterFactory(asTheEngineExpects(new PrismaBetterSqlite3({ url: ":memory:" })));
	return engine.SchemaEngine.new({ datamodels: [[SCHEMA, schemaText]] }, () => undefined, adapter);
}

function migrationsList() {
	const lock = path.join(MIGRATIONS, "migration_lock.toml");
	return {
		baseDir: MIGRATIONS,
		lockfile: { path: "migration_lock.toml", content: existsSync(lock) ? readFileSync(lock, "utf8") : null },
		shadowDbInitScript: "",
		migrationDirectories: readdirSync(MIGRATIONS, { withFileTypes: true })
			.filter((entry) => entry.isDirectory())
			.map((entry) => entry.name)
			.sort()
			.map((name) => ({
				path: name,
				migrationFile: {
					path: "migration.sql",
					content: { tag: "ok" as const, value: readFileSync(path.join(MIGRATIONS, name, "migration.sql"), "utf8") },
				},
			})),
	};
}

/**
 * Two things that the engine does and better-sqlite3 refuses: several statements in one executeRaw, and a string literal
 * in double quotes (better-sqlite3 builds SQLite without that old habit).
 */
function asTheEngineExpects(factory: PrismaBetterSqlite3): PrismaBetterSqlite3 {
	const patched = async (connecting: ReturnType<PrismaBetterSqlite3["connect"]>) => {
		const adapter = await connecting;
		const { executeRaw, queryRaw } = adapter;
		adapter.executeRaw = async (query) => {
			if (query.args.length > 0) return executeRaw.call(adapter, query);
			await adapter.executeScript(query.sql);
			return 0;
		};
		adapter.queryRaw = (query) => queryRaw.call(adapter, { ...query, sql: query.sql.replace(/(AND name = )"([^"]*)"/, "$1'$2'") });
		return adapter;
	};
	const { connect, connectToShadowDb } = factory;
	factory.connect = () => patched(connect.call(factory));
	factory.connectToShadowDb = () => patched(connectToShadowDb.call(factory));
	return factory;
}
