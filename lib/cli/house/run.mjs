// Starts other programs for lib/cli/house.mjs. Plain Node: it runs before anything is installed.
import { spawn, spawnSync } from "node:child_process";
import path from "node:path";

/** The checkout's folder. */
export const root = path.resolve(import.meta.dirname, "../../..");

export const say = (line) => process.stdout.write(`${line}\n`);

/** Ends this program after a sentence that says what to do. */
export function stop(sentence, code = 1) {
	process.stderr.write(`${sentence}\n`);
	process.exit(code);
}

export const seconds = (since) => `${((performance.now() - since) / 1000).toFixed(1)} s`;

/** Runs a program to its end and gives its exit code with everything that it said. */
export function hear(program, args, more = {}) {
	const run = spawnSync(program, args, { cwd: root, encoding: "utf8", maxBuffer: 256 * 1024 * 1024, ...more });
	return { code: run.status ?? 1, said: `${run.stdout ?? ""}${run.stderr ?? ""}${run.error ? run.error.message : ""}` };
}

/** Programs under way: none outlives this one, also when another has failed meanwhile. */
const underWay = new Set();
process.on("exit", () => {
	for (const child of underWay) child.kill();
});
for (const [signal, number] of Object.entries({ SIGINT: 2, SIGTERM: 15 }))
	process.on(signal, () => {
		if (underWay.size > 0) process.exit(128 + number);
	});

/** The same as `hear`, while other things go on. */
export function hearLater(program, args, more = {}) {
	return new Promise((resolve) => {
		const child = spawn(program, args, { cwd: root, stdio: ["ignore", "pipe", "pipe"], ...more });
		underWay.add(child);
		const said = [];
		for (const stream of [child.stdout, child.stderr]) stream.on("data", (chunk) => said.push(chunk));
		const end = (code, words = "") => {
			underWay.delete(child);
			resolve({ code: code ?? 1, said: Buffer.concat(said).toString("utf8") + words });
		};
		child.on("error", (error) => end(1, error.message));
		child.on("close", (code) => end(code));
	});
}

/** Runs something that should take a moment; says its name, and what it said only when it fails. */
export async function quietly(name, program, args, more = {}) {
	const since = performance.now();
	say(`${name} ...`);
	const { code, said } = await hearLater(program, args, more);
	if (code !== 0) stop(`${said.trim()}\n\n${name}: failed.`, code);
	say(`${name}: done in ${seconds(since)}`);
}

/** Runs a program in front of the person until it ends; signals that reach us reach it. Gives its exit code. */
export function inFront(program, args, more = {}) {
	return new Promise((resolve) => {
		const child = spawn(program, args, { cwd: root, stdio: "inherit", ...more });
		const passOn = (signal) => child.kill(signal);
		process.on("SIGINT", passOn);
		process.on("SIGTERM", passOn);
		child.on("error", (error) => stop(`${program} did not start: ${error.message}`));
		child.on("exit", (code, signal) => resolve(code ?? (signal === "SIGINT" || signal === "SIGTERM" ? 0 : 1)));
	});
}

/** npm, the one that runs us where there is one. */
export function npm(args, more = {}) {
	const own = process.env.npm_execpath;
	const env = { ...process.env, ...more };
	if (own && /npm-cli\.[cm]?js$/.test(own)) return [process.execPath, [own, ...args], { env }];
	return ["npm", args, { env, shell: process.platform === "win32" }];
}

/** A program of an installed package, by the path of its script. */
export const installed = (script) => path.join(root, "node_modules", script);
