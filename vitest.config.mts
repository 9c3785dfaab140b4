import path from "node:path";
import { defineConfig } from "vitest/config";

// Every test runs in a zone 5 h 45 min off UTC, so that a forgotten time zone fails at once.
process.env.TZ = "Asia/Kathmandu";

export default defineConfig({
	resolve: {
		alias: { "@": path.resolve(import.meta.dirname), "server-only": path.resolve(import.meta.dirname, "tests/support/empty.ts") },
	},
	oxc: { jsx: { runtime: "automatic" } },
	test: {
		pool: "forks",
		// Both cores work, and a worker keeps the modules that it has loaded: no test changes what another sees.
		maxWorkers: 2,
		isolate: false,
		testTimeout: 30_000,
		include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
		exclude: ["tests/browser/**", "tests/bench/**", "node_modules/**"],
	},
});
