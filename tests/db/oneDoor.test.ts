// One door: only lib/ledger/record.ts writes, and only a few files reach past Prisma to the database itself.

import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";

const sources = ["app", "lib", "seed", "proxy.ts"].flatMap((top) =>
	(top.endsWith(".ts")
		? [top]
		: readdirSync(top, { recursive: true }).map((name) => `${top}/${String(name).split(path.sep).join("/")}`)
	).filter((file) => /\.(ts|tsx|mts|mjs)$/.test(file) && !file.startsWith("lib/generated/")),
);
const texts = new Map(sources.map((file) => [file, withoutComments(readFileSync(file, "utf8"))]));

/** So that a file may explain what it does not do. */
function withoutComments(text: string): string {
	return text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/(^|\s)\/\/.*$/gm, "$1");
}

const filesWith = (pattern: RegExp): string[] => sources.filter((file) => pattern.test(texts.get(file) ?? "")).sort();

/** Opens and closes the clients, and sets them up; never writes a row. */
const OPENS = "lib/db/store.ts";
/** The connection that writes. */
const WRITES = "lib/db/writer.ts";
const DOOR = "lib/ledger/record.ts";

describe("the one door", () => {
	it("sees the sources at all", () => {
		expect(sources.length).toBeGreaterThan(100);
		expect(filesWith(/\brecord\(/)).toContain("lib/captures/changes.ts");
	});

	it("only record takes the writer", () => {
		expect(filesWith(/\bwriter\b/)).toEqual([OPENS, DOOR]);
		expect(filesWith(/\bopenWriter\b/)).toEqual([OPENS, WRITES]);
	});

	it("nothing starts a transaction or executes SQL through Prisma", () => {
		// The store names both only to take them away from the type of its reader.
		expect(filesWith(/\$transaction|\$executeRaw/)).toEqual([OPENS]);
		expect(texts.get(OPENS)?.match(/\$transaction|\$executeRaw\w*/g)).toEqual(["$transaction", "$executeRaw", "$executeRawUnsafe"]);
	});

	it("no query is a write in disguise", () => {
		for (const file of filesWith(/\$queryRaw/)) {
			const written = /\b(INSERT\s+INTO|UPDATE\s+"|DELETE\s+FROM|REPLACE\s+INTO|CREATE\s+(TABLE|TRIGGER|INDEX)|DROP\s|ALTER\s)/i.exec(
				texts.get(file) ?? "",
			);
			expect({ file, written: written?.[0] ?? null }).toEqual({ file, written: null });
		}
	});

	it("no area writes through a model of Prisma", () => {
		expect(
			filesWith(/\.(create|createMany|createManyAndReturn|update|updateMany|updateManyAndReturn|upsert|delete|deleteMany)\(\s*\{/),
		).toEqual([]);
	});

	it("only the store makes clients of Prisma", () => {
		expect(filesWith(/new PrismaClient\b|new PrismaBetterSqlite3\b/)).toEqual([OPENS]);
	});

	it("only the migration runner, the writer and the verifier open the database file themselves", () => {
		expect(filesWith(/from "better-sqlite3"|\("better-sqlite3"\)/)).toEqual([
			"lib/cli/house/prepare.mjs", // only asks whether it loads
			"lib/db/migrate.ts",
			WRITES,
			"lib/ledger/verify.ts",
			"lib/ledger/verifyFiles.ts",
			"lib/ledger/verifyGuards.ts",
			"lib/ledger/verifyRows.ts",
		]);
	});

	it("the verifier opens it to read, and nothing else", () => {
		const text = texts.get("lib/ledger/verify.ts") ?? "";
		expect(text.match(/new Database\(/g)).toHaveLength(1);
		expect(text).toMatch(/new Database\([^\n]+\{ readonly: true, fileMustExist: true \}\)/);
	});

	it("the verifier shares only the format with the writer", () => {
		const shared = sources
			.filter((file) => /^lib\/ledger\/verify/.test(file))
			.flatMap((file) => (texts.get(file) ?? "").match(/from "@\/lib\/[^"]+"/g) ?? []);
		const others = [...new Set(shared)].filter((name) => !/\/verify/.test(name));
		expect(others).toEqual(['from "@/lib/files/storedPath"']);
	});
});
