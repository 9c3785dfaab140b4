// The built program, started as a shop starts it: a child process with an empty data folder and a port of its own.

import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";

const ROOT = path.resolve(import.meta.dirname, "../..");
const START_MS = 40_000;
const STOP_MS = 15_000;

export type ServedShop = {
	/** http://127.0.0.1:PORT */
	readonly base: string;
	readonly port: number;
	readonly folder: string;
	/** Everything the server said, for when something went wrong. */
	readonly said: () => string;
	readonly stop: () => Promise<void>;
	/** Stops it, and is rid of the folder if it was made for it. */
	readonly remove: () => Promise<void>;
};

const freePort = (): Promise<number> =>
	new Promise((resolve, reject) => {
		const probe = createServer();
		probe.on("error", reject);
		probe.listen(0, "127.0.0.1", () => {
			const at = probe.address();
			probe.close(() => (at !== null && typeof at === "object" ? resolve(at.port) : reject(new Error("no port"))));
		});
	});

const ended = (child: ChildProcess): Promise<void> =>
	child.exitCode !== null || child.signalCode !== null ? Promise.resolve() : new Promise((resolve) => child.once("exit", () => resolve()));

/** Starts the program on a folder of its own, or on the one given, and waits until it answers; at the port of before, if one is given. */
export async function serveShop(given?: string, before?: number): Promise<ServedShop> {
	if (!existsSync(path.join(ROOT, ".next/BUILD_ID")))
		throw new Error("The pages are not built, and these tests look at built pages. Run `npm test`, or `npx next build` first.");
	const folder = given ?? mkdtempSync(path.join(tmpdir(), "asfound-browser-"));
	const port = before ?? (await freePort());
	const own = Object.entries(process.env).filter(([name]) => !name.startsWith("ASFOUND_") && !name.startsWith("VITEST"));
	const child = spawn(process.execPath, ["--import", "tsx", "lib/cli/server.ts"], {
		cwd: ROOT,
		env: {
			...Object.fromEntries(own),
			NODE_ENV: "production",
			ASFOUND_DATA: folder,
			ASFOUND_HOST: "127.0.0.1",
			ASFOUND_PORT: String(port),
		},
		stdio: ["ignore", "pipe", "pipe"],
	});
	let words = "";
	const up = new Promise<void>((resolve, reject) => {
		const late = setTimeout(() => reject(new Error(`The server did not start:\n${words}`)), START_MS);
		const hear = (chunk: Buffer) => {
			words += chunk.toString("utf8");
			if (words.includes("Asfound is at")) {
				clearTimeout(late);
				resolve();
			}
		};
		child.stdout.on("data", hear);
		child.stderr.on("data", hear);
		child.once("exit", (code) => {
			clearTimeout(late);
			reject(new Error(`The server ended (${code}) before it served:\n${words}`));
		});
	});
	// A test that is broken off must not leave a server behind.
	const abandon = () => child.kill("SIGKILL");
	process.once("exit", abandon);
	await up;
	const stop = async () => {
		child.kill("SIGTERM");
		const hard = setTimeout(() => child.kill("SIGKILL"), STOP_MS);
		await ended(child);
		clearTimeout(hard);
		process.off("exit", abandon);
	};
	return {
		base: `http://127.0.0.1:${port}`,
		port,
		folder,
		said: () => words,
		stop,
		remove: async () => {
			await stop();
			if (given === undefined) rmSync(folder, { recursive: true, force: true });
		},
	};
}
