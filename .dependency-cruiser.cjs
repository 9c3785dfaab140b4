// Imports point one way: app -> an area -> core. Pure files know neither the screen nor the database.

/** Files of an area that may read or write: everything else in lib/ is pure. */
const TOUCHES_DATABASE = "(queries|changes|buildQueries|[a-zA-Z]*Queries)\\.ts$";
/** Areas and files at the edge: they open, store, serve or talk to the process. */
const EDGE =
	"^lib/(db|cli|files|http|generated)/|^lib/(config|people/current|shop/keys|ledger/(record|refusals|edge|env|verify[a-zA-Z]*|rows|signing|hash|asOf[a-zA-Z]*|history[a-zA-Z]*))\\.ts$|^lib/labels/(labelPdf|paper|labelFonts|qrModules|printer)\\.ts$";

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
	forbidden: [
		{
			name: "pure-files-stay-pure",
			comment:
				"lib/: a file that computes imports neither React, Next, Prisma's client, SQLite nor the file system. Move the read to queries.ts, the write to changes.ts.",
			severity: "error",
			from: { path: "^lib/", pathNot: [`^lib/.*/${TOUCHES_DATABASE}`, `^lib/[a-z]+/${TOUCHES_DATABASE}`, EDGE] },
			to: {
				path: "^node_modules/(next|react|react-dom|@prisma|better-sqlite3|sharp)/|^(node:)?(fs|child_process|http|https|net)(/|$)",
				dependencyTypesNot: ["type-only"],
			},
		},
		{
			name: "core-knows-nothing-of-the-shop",
			severity: "error",
			from: { path: "^lib/core/" },
			to: { path: "^(app|seed|tests)/|^lib/(?!core/)" },
		},
		{
			name: "nothing-imports-from-app",
			severity: "error",
			from: { path: "^(lib|seed)/" },
			to: { path: "^app/" },
		},
		{
			name: "ui-could-ship-in-any-program",
			severity: "error",
			from: { path: "^app/ui/" },
			to: { path: "^(lib/(?!core/)|app/(?!ui/))" },
		},
		{
			name: "links-fetch-nothing-beforehand",
			comment: "Use app/ui/link.tsx: a bare link would fetch its page as soon as it is seen.",
			severity: "error",
			from: { path: "^(app|lib)/", pathNot: "^app/ui/link\\.tsx$" },
			to: { path: "^node_modules/next/link\\.js$" },
		},
		{ name: "tests-stay-outside", severity: "error", from: { path: "^(app|lib|seed)/" }, to: { path: "^tests/" } },
		{
			name: "demo-stays-outside",
			severity: "error",
			from: { path: "^(app|lib)/", pathNot: "^lib/cli/demo\\.ts$" },
			to: { path: "^seed/" },
		},
		{
			name: "no-circles",
			severity: "error",
			from: { pathNot: "^lib/generated/" },
			to: { circular: true, viaOnly: { dependencyTypesNot: ["type-only"] } },
		},
	],
	options: {
		doNotFollow: { path: "(node_modules|lib/generated)" },
		tsConfig: { fileName: "tsconfig.json" },
		tsPreCompilationDeps: true,
		exclude: { path: "^\\.next/" },
		enhancedResolveOptions: {
			exportsFields: ["exports"],
			conditionNames: ["import", "require", "node", "default", "types"],
			extensions: [".ts", ".tsx", ".mts", ".mjs", ".js"],
		},
	},
};
