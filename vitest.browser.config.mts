import path from "node:path";
import { defineConfig } from "vitest/config";

// The same far zone as in the other tests: the server that they start inherits it.
process.env.TZ = "Asia/Kathmandu";

// Real Chromium against the built pages. `npm test` builds them first; here they must be there.
export default defineConfig({
	resolve: {
		alias: { "@": path.resolve(import.meta.dirname), "server-only": path.resolve(import.meta.dirname, "tests/support/empty.ts") },
	},
	test: {
		pool: "forks",
		maxWorkers: 2,
		testTimeout: 120_000,
		hookTimeout: 60_000,
		include: ["tests/browser/**/*.test.ts"],
	},
});
