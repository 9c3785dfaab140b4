// The one command each: `npm run demo`, `npm start`, `npm run dev`, `npm test`, `npm run check`, `npm run bench`.
// Plain Node, since it has to run in a fresh checkout in which nothing is installed yet.
import path from "node:path";
import { BEFORE_COMMIT, runStages, TESTS } from "./house/checks.mjs";
import { build, compile, generate, install, prepare, prepareToRead } from "./house/prepare.mjs";
import { inFront, installed, root, say, seconds, stop } from "./house/run.mjs";
import { testNeeds } from "./house/testNeeds.mjs";

const here = (name) => path.join(root, "lib/cli", name);
const typescript = (file, ...args) => ["--import", "tsx", file, ...args];
const production = { ...process.env, NODE_ENV: "production" };

const verbs = {
	/** The shop of the acceptance scenario, in a folder of its own. */
	async demo() {
		await prepare();
		const env = { ...production, ASFOUND_DATA: process.env.ASFOUND_DATA || "./data/demo" };
		await build();
		const filled = await inFront(process.execPath, typescript(here("demo.ts")), { env });
		if (filled !== 0) return filled;
		return inFront(process.execPath, typescript(here("server.ts")), { env });
	},
	/** The shop's own book. */
	async start() {
		await prepare();
		await build();
		return inFront(process.execPath, typescript(here("server.ts")), { env: production });
	},
	async dev() {
		await prepare();
		const host = process.env.ASFOUND_HOST || "127.0.0.1";
		const port = process.env.ASFOUND_PORT || "3200";
		return inFront(process.execPath, [installed("next/dist/bin/next"), "dev", "--hostname", host, "--port", port]);
	},
	/** Everything, from types to a real browser. */
	async test() {
		const since = performance.now();
		await install();
		// Beside each other, for two processors: the sources are checked and built without the compiled driver.
		const compiled = compile();
		await generate();
		const env = testNeeds();
		const [types, ...others] = BEFORE_COMMIT;
		await Promise.all([compiled, runStages([types], env), runStages(others, env).then(build)]);
		await runStages([TESTS.unit, TESTS.browser], env);
		say(`All good in ${seconds(since)}.`);
		return 0;
	},
	/** What is quick: before each commit. */
	async check() {
		await prepareToRead();
		await runStages(BEFORE_COMMIT);
		return 0;
	},
	/** Measures, and asserts nothing. */
	async bench() {
		await prepare();
		return inFront(process.execPath, typescript(path.join(root, "tests/bench/run.ts"), ...process.argv.slice(3)));
	},
	/** Packages, database client and pages, and no more. */
	async prepare() {
		await prepare();
		await build();
		return 0;
	},
};

const verb = process.argv[2] ?? "";
const run = Object.hasOwn(verbs, verb) ? verbs[verb] : null;
if (!run) stop(`Say one of: ${Object.keys(verbs).join(", ")}.`, 2);
process.chdir(root);
process.exit(await run());
