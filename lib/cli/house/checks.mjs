// The stages of `npm run check` and `npm test`. The first that fails ends it, with all that it said.
import { hearLater, installed, say, seconds, stop } from "./run.mjs";

/** Fewer modules than this means that the boundary checker did not read the sources, and its "no violations" says nothing. */
const LEAST_MODULES = 500;

const node = (script, ...args) => [process.execPath, [installed(script), ...args]];

// Of its own settings: what Next writes into .next for the last build or the dev server may be older than the sources.
const types = { name: "types", run: node("typescript/bin/tsc", "-p", "lib/cli/tsconfig.check.json") };
const lint = { name: "lint and format", run: node("@biomejs/biome/bin/biome", "ci", "--colors=off", "--max-diagnostics=60") };
const boundaries = {
	name: "boundaries",
	run: node("dependency-cruiser/bin/dependency-cruise.mjs", "--output-type", "err", "app", "lib", "seed", "tests"),
	refuses: (said) => {
		const read = Number(/\((\d+) modules/.exec(said)?.[1] ?? 0);
		return read < LEAST_MODULES ? `Only ${read} modules were read, fewer than ${LEAST_MODULES}: the check did not see the sources.` : null;
	},
	sums: (said) => /\((\d+ modules, \d+ dependencies)/.exec(said)?.[1],
};
const deadCode = { name: "dead code", run: node("knip/bin/knip.js", "--no-progress") };
const unit = {
	name: "unit and outside tests",
	run: node("vitest/vitest.mjs", "run", "--reporter=dot", "--no-color"),
	sums: (said) => /Tests\s+(.+)/.exec(said)?.[1]?.trim(),
};
const browser = {
	name: "browser tests",
	run: node("vitest/vitest.mjs", "run", "--config", "vitest.browser.config.mts", "--reporter=dot", "--no-color"),
	sums: unit.sums,
};

export const BEFORE_COMMIT = [types, lint, boundaries, deadCode];
export const TESTS = { unit, browser };

/** Runs the stages in order. */
export async function runStages(stages, env = process.env) {
	for (const { name, run, refuses, sums } of stages) {
		const since = performance.now();
		const [program, args] = run;
		const { code, said } = await hearLater(program, args, { env: { ...env, NO_COLOR: "1", FORCE_COLOR: undefined } });
		const refused = code === 0 ? (refuses?.(said) ?? null) : `exit ${code}`;
		if (refused) stop(`${said.trim()}\n\n${name}: failed (${refused}). What comes after it was not run.`);
		const sum = sums?.(said);
		say(`${name}: good${sum ? `, ${sum}` : ""} (${seconds(since)})`);
	}
}
