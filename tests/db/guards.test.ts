import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { guardsOf, madeByMigrations } from "@/lib/ledger/verifyGuards";
import { difference, MIGRATIONS } from "@/tests/db/schemaEngine";

const LIST = path.resolve("tests/db/guards.txt");

/** Each table's CHECKs, each trigger with what it raises, each index: a line each, in a stable order. */
function guardLines(): string[] {
	const db = madeByMigrations(MIGRATIONS);
	try {
		return guardsOf(db).flatMap(({ type, name, sql }) => {
			const flat = sql.replace(/\s+/g, " ");
			if (type !== "table") return [`${type} ${name}: ${flat}`];
			return [
				`table ${name}${flat.endsWith("STRICT") ? " STRICT" : ""}`,
				...checksOf(flat).map((check) => `table ${name}: ${check}`),
				...(flat.match(/FOREIGN KEY .*?(?=, CONSTRAINT|, CHECK|\) STRICT|\)$)/g) ?? []).map((key) => `table ${name}: ${key}`),
			];
		});
	} finally {
		db.close();
	}
}

/** The CHECK clauses of a table's text, with their brackets matched. */
function checksOf(sql: string): string[] {
	const checks: string[] = [];
	for (let at = sql.indexOf("CHECK ("); at !== -1; at = sql.indexOf("CHECK (", at + 1)) {
		let depth = 0;
		let end = at + "CHECK ".length;
		do {
			if (sql[end] === "(") depth += 1;
			if (sql[end] === ")") depth -= 1;
			end += 1;
		} while (depth > 0 && end < sql.length);
		checks.push(sql.slice(at, end));
	}
	return checks;
}

describe("the tables that the migrations make", () => {
	it("are those of the schema", async () => {
		expect(await difference(false)).toEqual({ text: expect.stringContaining("No difference"), agrees: true });
	});

	it("are not taken for those of the schema when a column is missing", async () => {
		const schema = readFileSync(path.resolve("prisma/schema.prisma"), "utf8").replace(
			"  skills   String\n",
			"  skills   String\n  extra String?\n",
		);
		expect((await difference(true, schema)).text).toMatch(/ALTER TABLE "Person" ADD COLUMN\s+"extra" TEXT/);
	});

	it("have every guard of the committed list: a lost trigger, CHECK or index is lost on purpose or not at all", () => {
		const lines = guardLines();
		// To accept a change on purpose: ASFOUND_TEST_GUARDS=write npx vitest run tests/db/guards
		if (process.env.ASFOUND_TEST_GUARDS === "write") writeFileSync(LIST, `${lines.join("\n")}\n`);
		expect(lines).toEqual(readFileSync(LIST, "utf8").trimEnd().split("\n"));
	});
});
