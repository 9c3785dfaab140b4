// The settings, read from the environment once at start. Everything that is wrong is listed at once, with the remedy.

import { existsSync } from "node:fs";
import path from "node:path";
import { z } from "zod";
import { err, ok, type Result } from "@/lib/core/result";

const pemFile = (name: string, what: string) =>
	z
		.string()
		.refine((file) => existsSync(file), `${name} names a file that is not there; it is the path of the ${what}, in PEM form.`)
		.optional();

/** The words of a command, split at blanks, what stands in quotes kept whole. Null when a quote is left open. No sign means anything else. */
function commandWords(command: string): string[] | null {
	const words = [...command.matchAll(/(?:[^\s"']|"[^"]*"|'[^']*')+/g)].map(([word]) => word);
	const isWhole = words.join("") === command.replace(/("[^"]*"|'[^']*')|\s+/g, (_, quoted: string | undefined) => quoted ?? "");
	return isWhole ? words.map((word) => word.replace(/"([^"]*)"|'([^']*)'/g, (_, double, single) => double ?? single ?? "")) : null;
}

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
	ASFOUND_HOSTS: z
		.string()
		.regex(
			/^[A-Za-z0-9.-]+( *, *[A-Za-z0-9.-]+)*$/,
			"ASFOUND_HOSTS lists further names under which the shop may be called, like shop.example,bench.example: no http://, no port, no path.",
		)
		.optional(),
	ASFOUND_PRINT: z
		.string()
		.refine(
			(command) => (commandWords(command)?.length ?? 0) > 0,
			"ASFOUND_PRINT is a program with its words, like lp -d labels -o fit-to-page=false; close every quote that you open.",
		)
		.optional(),
	ASFOUND_TLS_KEY: pemFile("ASFOUND_TLS_KEY", "private key for https"),
	ASFOUND_TLS_CERT: pemFile("ASFOUND_TLS_CERT", "certificate for https"),
});

const NAMES = Object.keys(schema.shape);
/** Read by the tests and the measurements, not by the program. */
const OTHERS = /^ASFOUND_(CHROMIUM|KILLS|(BENCH|TEST)(_\w+)?)$/;

export type Config = {
	/** Absolute path of the data folder. */
	readonly dataFolder: string;
	readonly host: string;
	readonly port: number;
	/** Host and port that phones use; labels and the host guard go by it. */
	readonly address: string | null;
	/** The program that takes labels as a PDF on its standard input, with its words; null when labels are opened as a PDF. */
	readonly print: readonly string[] | null;
	/** Absolute paths of the key and the certificate; null for plain http. */
	readonly tls: { readonly key: string; readonly cert: string } | null;
};

/** Reads the settings, or gives every sentence that says what is wrong with them. */
export function readConfig(env: Readonly<Record<string, string | undefined>>): Result<Config, readonly string[]> {
	// An empty variable means the same as none.
	const given = Object.fromEntries(Object.entries(env).filter(([name, value]) => name.startsWith("ASFOUND_") && value !== ""));
	const unknown = Object.keys(given)
		.filter((name) => !NAMES.includes(name) && !OTHERS.test(name))
		.map((name) => `${name} is no setting of Asfound. The settings are ${NAMES.join(", ")}.`);
	const read = schema.safeParse(given);
	const unread = read.success ? [] : read.error.issues.map((issue) => issue.message);
	const half =
		(given.ASFOUND_TLS_KEY === undefined) !== (given.ASFOUND_TLS_CERT === undefined)
			? ["ASFOUND_TLS_KEY and ASFOUND_TLS_CERT go together: give both for https, or neither for http."]
			: [];
	const wrong = [...unread, ...half, ...unknown];
	if (!read.success || wrong.length > 0) return err(wrong);
	const { ASFOUND_DATA, ASFOUND_HOST, ASFOUND_PORT, ASFOUND_ADDRESS, ASFOUND_PRINT, ASFOUND_TLS_KEY, ASFOUND_TLS_CERT } = read.data;
	return ok({
		dataFolder: path.resolve(ASFOUND_DATA),
		host: ASFOUND_HOST,
		port: ASFOUND_PORT,
		address: ASFOUND_ADDRESS ?? null,
		print: ASFOUND_PRINT === undefined ? null : commandWords(ASFOUND_PRINT),
		tls: ASFOUND_TLS_KEY && ASFOUND_TLS_CERT ? { key: path.resolve(ASFOUND_TLS_KEY), cert: path.resolve(ASFOUND_TLS_CERT) } : null,
	});
}

/** The settings of this process; a mistake in them ends it with every sentence. */
export function config(): Config {
	const read = readConfig(process.env);
	if (!read.ok) throw new Error(`The settings cannot be used:\n${read.error.map((sentence) => `  ${sentence}`).join("\n")}`);
	return read.value;
}
