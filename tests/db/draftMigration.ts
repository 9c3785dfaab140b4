// Drafts a migration from the difference between schema.prisma and the migrations:
//   npx tsx tests/db/draftMigration.ts name-of-the-change
// A draft that rebuilds a table drops that table's triggers, partial indexes and CHECKs without a word. Write such a
// change by hand as ALTERs, or carry them over; tests/db/guards.test.ts names what is missing.

import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { difference, MIGRATIONS } from "@/tests/db/schemaEngine";

const name = process.argv[2] ?? "";
if (!/^[a-z][a-z0-9-]*$/.test(name)) {
	process.stderr.write("Give the change a name in small letters: npx tsx tests/db/draftMigration.ts add-colour\n");
	process.exit(2);
}
const { text, agrees } = await difference(true);
if (agrees) {
	process.stdout.write("The migrations make the tables of the schema; there is nothing to draft.\n");
} else {
	const stamp = new Date().toISOString().replace(/\D/g, "").slice(0, 14);
	const folder = path.join(MIGRATIONS, `${stamp}_${name.replaceAll("-", "_")}`);
	mkdirSync(folder);
	writeFileSync(path.join(folder, "migration.sql"), text);
	process.stdout.write(`Drafted ${path.join(folder, "migration.sql")}\n`);
	if (/RedefineTables|DROP TABLE/.test(text))
		process.stdout.write("It rebuilds a table: carry its triggers, CHECKs and partial indexes over by hand.\n");
}
