// The server: reads the settings, brings the database up to date, serves, and stops cleanly.

import { mkdirSync, readFileSync } from "node:fs";
import { createServer as createHttp, type RequestListener, type Server } from "node:http";
import { createServer as createHttps } from "node:https";
import { networkInterfaces } from "node:os";
import path from "node:path";
import next from "next";
import { type Config, readConfig } from "@/lib/config";
import { migrate } from "@/lib/db/migrate";
import { databaseFile, type Store } from "@/lib/db/store";
import { sweepIncoming } from "@/lib/files/keepFile";

const ROOT = path.resolve(import.meta.dirname, "../..");
/** Long enough for a large photo over a workshop's weak wireless. */
const REQUEST_MS = 15 * 60_000;
/** How long requests under way may take to finish once we were told to stop. */
const LAST_REQUESTS_MS = 10_000;

const say = (line: string): boolean => process.stdout.write(`${line}\n`);

function stop(...sentences: readonly string[]): never {
	process.stderr.write(`${sentences.join("\n")}\n`);
	process.exit(1);
}

function settings(): Config {
	const read = readConfig(process.env);
	return read.ok ? read.value : stop("The settings cannot be used:", ...read.error.map((sentence) => `  ${sentence}`));
}

function readyFolder(folder: string): void {
	try {
		mkdirSync(folder, { recursive: true });
		migrate(databaseFile(folder), path.join(ROOT, "prisma/migrations"), (line) => say(`Database: ${line}`));
	} catch (error) {
		stop(`The data folder ${folder} cannot be used: ${error instanceof Error ? error.message : String(error)}.`);
	}
}

function serverOf({ tls }: Config, handle: RequestListener): Server {
	if (!tls) return createHttp(handle);
	try {
		return createHttps({ key: readFileSync(tls.key), cert: readFileSync(tls.cert) }, handle);
	} catch (error) {
		return stop(
			`The certificate cannot be used: ${error instanceof Error ? error.message : String(error)}. ASFOUND_TLS_KEY and ASFOUND_TLS_CERT must be a pair, in PEM form.`,
		);
	}
}

/** The addresses to tell people, ours first. */
function addresses({ host, port, address, tls }: Config): string[] {
	const scheme = tls ? "https" : "http";
	const everywhere = host === "0.0.0.0" || host === "::";
	const network = everywhere
		? Object.values(networkInterfaces()).flatMap((cards) =>
				(cards ?? []).filter((card) => card.family === "IPv4" && !card.internal).map((card) => `${card.address}:${port}`),
			)
		: [];
	const own = everywhere ? `127.0.0.1:${port}` : `${host.includes(":") ? `[${host}]` : host}:${port}`;
	return [...new Set([own, ...(address ? [address] : []), ...network])].map((each) => `${scheme}://${each}`);
}

/** Ends the server once what is under way has been answered and written. */
function stopOnSignal(server: Server): void {
	let stopping = false;
	const end = () => {
		if (stopping) process.exit(1); // asked twice
		stopping = true;
		setTimeout(() => process.exit(0), LAST_REQUESTS_MS).unref();
		server.close(async () => {
			const { asfoundStore } = globalThis as typeof globalThis & { asfoundStore?: Promise<Store> };
			await (await asfoundStore)?.close();
			process.exit(0);
		});
		server.closeIdleConnections();
	};
	process.on("SIGTERM", end);
	process.on("SIGINT", end);
}

const config = settings();
readyFolder(config.dataFolder);
await sweepIncoming(config.dataFolder);
const app = next({ dev: false, dir: ROOT, hostname: config.host, port: config.port });
await app.prepare();
const handle = app.getRequestHandler();
const server = serverOf(config, (request, response) => void handle(request, response));
server.requestTimeout = REQUEST_MS;
server.on("error", (error: NodeJS.ErrnoException) =>
	stop(
		error.code === "EADDRINUSE"
			? `Port ${config.port} is taken by another program. Stop that one, or choose a port with ASFOUND_PORT.`
			: `The server cannot listen on ${config.host}:${config.port}: ${error.message}.`,
	),
);
server.listen(config.port, config.host, () => {
	const [own, ...others] = addresses(config);
	say(`Asfound is at ${own}`);
	for (const other of others) say(`  and for phones in the shop's network at ${other}`);
	say(`The shop's book is in ${config.dataFolder}. Stop with Ctrl-C.`);
});
stopOnSignal(server);
