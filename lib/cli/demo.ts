// Fills the demo folder with the demo shop, once. A folder that holds a shop already is left as it is.

import { existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import path from "node:path";
import { readConfig } from "@/lib/config";
import { migrate } from "@/lib/db/migrate";
import { databaseFile } from "@/lib/db/store";
import { loadDemo } from "@/seed/load";

const settings = readConfig(process.env);
if (!settings.ok) {
	process.stderr.write(`The settings cannot be used:\n${settings.error.map((sentence) => `  ${sentence}\n`).join("")}`);
	process.exit(1);
}
const folder = settings.value.dataFolder;
if (!existsSync(databaseFile(folder))) {
	process.stdout.write("Loading the demo shop ...\n");
	// Filled beside its place and moved there whole, so that an interrupted load leaves no half a shop.
	const unfinished = `${folder}.loading`;
	rmSync(unfinished, { recursive: true, force: true });
	mkdirSync(unfinished, { recursive: true });
	migrate(databaseFile(unfinished), path.resolve(import.meta.dirname, "../../prisma/migrations"), () => undefined);
	await loadDemo(unfinished);
	renameSync(unfinished, folder);
}
