// Which shop the command line speaks of.

import { existsSync } from "node:fs";
import path from "node:path";
import { readConfig } from "@/lib/config";
import { ok, type Result, refuse } from "@/lib/core/result";
import { databaseFile } from "@/lib/db/store";

/** The checkout's migrations, wherever the command was called from. */
export const MIGRATIONS = path.resolve(import.meta.dirname, "../../prisma/migrations");

/** The data folder that was named, or the configured one; refused when there is no shop in it. */
export function shopFolder(named: string | undefined): Result<string> {
	const settings = readConfig(process.env);
	if (!settings.ok) return refuse("settings", ["The settings cannot be used:", ...settings.error].join("\n  "));
	const folder = named === undefined ? settings.value.dataFolder : path.resolve(named);
	if (existsSync(databaseFile(folder))) return ok(folder);
	return refuse(
		"no-shop",
		`There is no shop in ${folder}. Name its folder with --data FOLDER or ASFOUND_DATA (the demo shop is in ./data/demo).`,
	);
}
