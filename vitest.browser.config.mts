import path from "node:path";
import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

// The same far zone as in the other tests: the server that they start inherits it.
process.env.TZ = "Asia/Kathmandu";

/** The longest first, so that no long one begins when the others are done. */
const LONGEST = ["axe", "jobByKeyboard", "badInput", "jobByTouch", "twoTabs", "carryOut"];
class LongestFirst extends BaseSequencer {
	override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
		const rank = ({ moduleId }: TestSpecification): number => LONGEST.indexOf(path.basename(moduleId, ".test.ts"));
		return files.toSorted((a, b) => rank(a) - rank(b));
	}
}

// Real Chromium against the built pages. `npm test` builds them first; here they must be there.
export default defineConfig({
	resolve: {
		alias: { "@": path.resolve(import.meta.dirname), "server-only": path.resolve(import.meta.dirname, "tests/support/empty.ts") },
	},
	test: {
		pool: "forks",
		maxWorkers: 2,
		sequence: { sequencer: LongestFirst },
		testTimeout: 120_000,
		hookTimeout: 60_000,
		include: ["tests/browser/**/*.test.ts"],
	},
});
