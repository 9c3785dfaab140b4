// From a fresh checkout to one that can run: packages, the database client, the built pages. Each is done only when it is missing or old.
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { hear, installed, npm, quietly, root, stop } from "./run.mjs";

const LEAST_NODE = [20, 19];

function requireNode() {
	const [major, minor] = process.versions.node.split(".").map(Number);
	if (major < LEAST_NODE[0] || (major === LEAST_NODE[0] && minor < LEAST_NODE[1]))
		stop(
			`Asfound needs Node ${LEAST_NODE.join(".")} or later; this is ${process.versions.node}. Install a newer one from your system or nodejs.org.`,
		);
}

/** Whether what is installed is what package-lock.json names. npm keeps its own copy of the lock beside the packages. */
function installedAsLocked() {
	const kept = installed(".package-lock.json");
	if (!existsSync(kept)) return false;
	const wanted = JSON.parse(readFileSync(path.join(root, "package-lock.json"), "utf8")).packages;
	const there = JSON.parse(readFileSync(kept, "utf8")).packages;
	// An optional package may be for another kind of computer, and then is rightly absent.
	const agrees = ([name, { version, optional }]) => name === "" || (there[name] ? there[name].version === version : optional === true);
	return Object.entries(wanted).every(agrees) && Object.keys(there).every((name) => name in wanted);
}

/** The database driver is compiled for one version of Node; after a change of version it does not load. */
function databaseDriverLoads() {
	try {
		const Database = createRequire(path.join(root, "package.json"))("better-sqlite3");
		new Database(":memory:").close();
		return true;
	} catch {
		return false;
	}
}

/** Without the packages' own scripts: the one that matters compiles the database driver, and much can go on meanwhile. */
export async function install() {
	requireNode();
	if (installedAsLocked()) return;
	await quietly(
		"Installing packages (a minute or two, once)",
		...npm(["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"]),
	);
}

/** The database driver, for this Node. */
export async function compile() {
	if (databaseDriverLoads()) return;
	await quietly(
		"Compiling the database driver for this Node",
		...npm(["rebuild", "better-sqlite3", "--foreground-scripts", "--loglevel=error"], { JOBS: "max" }),
	);
	// A native module that failed to load once stays failed in its process, so ask another.
	if (hear(process.execPath, ["-e", "new (require('better-sqlite3'))(':memory:').close()"]).code !== 0)
		stop(
			"The database driver (better-sqlite3) does not load. It needs a C++ compiler, make and Python 3 to be built; install them, then try again.",
		);
}

const digestOf = (...texts) => texts.reduce((hash, text) => hash.update(text), createHash("sha256")).digest("hex");
const readIfThere = (file) => (existsSync(file) ? readFileSync(file, "utf8") : "");

/** The database client. */
export async function generate() {
	const stamp = path.join(root, "lib/generated/made-from");
	const made = digestOf(readFileSync(path.join(root, "prisma/schema.prisma")), readFileSync(installed("prisma/package.json")));
	if (readIfThere(stamp) === made && existsSync(path.join(root, "lib/generated/prisma/client.ts"))) return;
	await quietly("Generating the database client", process.execPath, [path.join(root, "lib/cli/generate.mjs")]);
	writeFileSync(stamp, made);
}

/** Packages and the database client: enough to read the sources. */
export async function prepareToRead() {
	await install();
	await generate();
}

/** The same, and the database driver compiled for this Node: enough to run. */
export async function prepare() {
	await prepareToRead();
	await compile();
}

const SOURCES = ["app", "lib", "prisma/schema.prisma", "public", "proxy.ts", "instrumentation.ts", "next.config.js", "postcss.config.mjs"];
const ALSO = ["package-lock.json", "tsconfig.json", ".env"];
const NOT_BUILT = /^lib\/(generated|cli)\//;

function sourceFiles() {
	const found = [];
	const walk = (name) => {
		const full = path.join(root, name);
		if (!existsSync(full)) return;
		const inside = statSync(full).isDirectory() ? readdirSync(full).sort() : null;
		if (inside === null) found.push(name);
		else for (const each of inside) walk(`${name}/${each}`);
	};
	for (const name of [...SOURCES, ...ALSO]) walk(name);
	return found.filter((name) => !NOT_BUILT.test(name));
}

/** The pages, built again when any source has changed since the last build. */
export async function build() {
	const stamp = path.join(root, ".next/made-from");
	const made = digestOf(process.versions.node, ...sourceFiles().flatMap((name) => [`\n${name}\n`, readFileSync(path.join(root, name))]));
	if (readIfThere(stamp) === made && existsSync(path.join(root, ".next/BUILD_ID"))) return;
	await quietly("Building the pages", process.execPath, [installed("next/dist/bin/next"), "build"], {
		env: { ...process.env, NODE_ENV: "production" },
	});
	writeFileSync(stamp, made);
}
