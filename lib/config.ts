// The settings, read from the environment once at start. Everything that is wrong is listed at once, with the remedy.

import path from "node:path";
import { z } from "zod";
import { err, ok, type Result } from "@/lib/core/result";

const schema = z.object({
	ASFOUND_DATA: z.string().min(1, "ASFOUND_DATA names the data folder; leave it out for ./data.").default("./data"),
	ASFOUND_HOST: z
		.string()
		.regex(
			/^[A-Za-z0-9.:-]+$/,
			"ASFOUND_HOST is the address to listen on, like 127.0.0.1 (this computer only) or 0.0.0.0 (the shop's network).",
		)
		.default("127.0.0.1"),
	ASFOUND_PORT: z.coerce
		.number("ASFOUND_PORT is a number between 1 and 65535.")
		.int("ASFOUND_PORT is a whole number.")
		.min(1, "ASFOUND_PORT is a number between 1 and 65535.")
		.max(65535, "ASFOUND_PORT is a number between 1 and 65535.")
		.default(3200),
	ASFOUND_ADDRESS: z
		.string()
		.regex(
			/^[A-Za-z0-9.-]+(:\d{1,5})?$/,
			"ASFOUND_ADDRESS is the name by which phones reach this computer, like shop.local:3200 or 10.0.0.5:3200, without http:// and without a path.",
		)
		.optional(),
});

export type Config = {
	/** Absolute path of the data folder. */
	readonly dataFolder: string;
	readonly host: string;
	readonly port: number;
	/** Host and port that phones use; labels and the host guard go by it. */
	readonly address: string | null;
};

/** Reads the settings, or gives every sentence that says what is wrong with them. */
export function readConfig(env: Readonly<Record<string, string | undefined>>): Result<Config, readonly string[]> {
	// An empty variable means the same as none.
	const given = Object.fromEntries(Object.entries(env).filter(([name, value]) => name.startsWith("ASFOUND_") && value !== ""));
	const read = schema.safeParse(given);
	if (!read.success) return err(read.error.issues.map((issue) => issue.message));
	const { ASFOUND_DATA, ASFOUND_HOST, ASFOUND_PORT, ASFOUND_ADDRESS } = read.data;
	return ok({ dataFolder: path.resolve(ASFOUND_DATA), host: ASFOUND_HOST, port: ASFOUND_PORT, address: ASFOUND_ADDRESS ?? null });
}

/** The settings of this process; a mistake in them ends it with every sentence. */
export function config(): Config {
	const read = readConfig(process.env);
	if (!read.ok) throw new Error(`The settings cannot be used:\n${read.error.map((sentence) => `  ${sentence}`).join("\n")}`);
	return read.value;
}
