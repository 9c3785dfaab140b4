// What the boundary checker (.dependency-cruiser.cjs) cannot say, and that it does say what it should.

import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it } from "vitest";

const filesIn = (top: string): string[] =>
	readdirSync(top, { recursive: true, withFileTypes: true })
		.filter((entry) => entry.isFile())
		.map((entry) => path.join(entry.parentPath, entry.name).split(path.sep).join("/"))
		.filter((file) => !file.startsWith("lib/generated/"));

const sources = ["app", "lib", "seed", "tests"].flatMap(filesIn).filter((file) => /\.(ts|tsx|mts|mjs)$/.test(file));
const program = sources.filter((file) => /^(app|lib)\//.test(file));
const textOf = (file: string): string => readFileSync(file, "utf8");

describe("the layout", () => {
	it("has no drawers: every file and folder is named for one thing", () => {
		const drawers = sources.filter((file) => /(^|\/)(utils?|helpers?|misc|common|shared|index)(\/|\.[a-z]+$)/i.test(file));
		// Give it the name of what is in it, or put it with the area or the screen that uses it.
		expect(drawers).toEqual([]);
	});

	it("leaves no way around the types", () => {
		const around = [...program, ...sources.filter((file) => file.startsWith("seed/"))].filter((file) =>
			/@ts-(ignore|expect-error|nocheck)/.test(textOf(file)),
		);
		expect(around).toEqual([]);
	});
});

describe("nothing that computes looks at the clock, draws lots, or asks for the time zone of the computer", () => {
	/** At the edge of the program: they hand the clock and the chance on. Temporary file names are nobody's business. */
	const edge = ["lib/core/clock.ts", "lib/db/migrate.ts", "lib/files/keepFile.ts", "lib/files/smallPicture.ts", "lib/ledger/edge.ts"];
	it.each([
		["the clock", /\bDate\.now\(|\bnew Date\(\)|\bperformance\.now\(/],
		["chance", /\bMath\.random\(|\{[^}]*\brandom(UUID|Bytes|Int)\b[^}]*\} from "node:crypto"|\bcrypto\.(randomUUID|getRandomValues)/],
		["the computer's zone", /\.getTimezoneOffset\(|\.toLocale(Date|Time)?String\(/],
	])("%s", (_, pattern) => {
		const files = program.filter((file) => file.startsWith("lib/") && file.endsWith(".ts") && pattern.test(withoutComments(textOf(file))));
		expect(files.filter((file) => !edge.includes(file))).toEqual([]);
	});
});

it("the tool never says that something is safe", () => {
	const said = program.filter((file) => /\b(is|are|now|perfectly|completely|electrically) safe\b/i.test(withoutComments(textOf(file))));
	expect(said).toEqual([]);
});

it("pages load nothing from elsewhere", () => {
	const addresses = program.flatMap((file) =>
		(withoutComments(textOf(file)).match(/https?:\/\/[a-z0-9.-]+\.[a-z]{2,}/gi) ?? [])
			.filter((address) => !/\.example$|w3\.org$/.test(address))
			.map((address) => `${file}: ${address}`),
	);
	expect(addresses).toEqual([]);
});

describe("the boundary checker", () => {
	/** Runs it on a small program of these files. */
	function check(files: Record<string, string>): string[] {
		const folder = mkdtempSync(path.join(tmpdir(), "asfound-boundaries-"));
		try {
			for (const [name, text] of Object.entries({ "tsconfig.json": "{}", ...files })) {
				mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
				writeFileSync(path.join(folder, name), text);
			}
			const { stdout } = spawnSync(
				process.execPath,
				[
					path.resolve("node_modules/dependency-cruiser/bin/dependency-cruise.mjs"),
					...["--config", path.resolve(".dependency-cruiser.cjs"), "--output-type", "json"],
					...["app", "lib"].filter((top) => Object.keys(files).some((name) => name.startsWith(`${top}/`))),
				],
				{ cwd: folder, encoding: "utf8" },
			);
			const { summary } = JSON.parse(stdout) as { summary: { violations: { rule: { name: string } }[] } };
			return [...new Set(summary.violations.map(({ rule }) => rule.name))].sort();
		} finally {
			rmSync(folder, { recursive: true, force: true });
		}
	}

	it.each([
		[
			"a program that keeps them",
			{ "lib/money/rules.ts": "export const a = 1;", "app/page.ts": 'import { a } from "../lib/money/rules"; a;' },
			[],
		],
		[
			"an area that imports a screen",
			{ "lib/money/rules.ts": 'import { a } from "../../app/page"; a;', "app/page.ts": "export const a = 1;" },
			["nothing-imports-from-app"],
		],
		[
			"core that knows an area",
			{ "lib/core/days.ts": 'import { a } from "../money/rules"; a;', "lib/money/rules.ts": "export const a = 1;" },
			["core-knows-nothing-of-the-shop"],
		],
		[
			"a rule that reads files",
			{ "lib/money/rules.ts": 'import { readFileSync } from "node:fs"; readFileSync;' },
			["pure-files-stay-pure"],
		],
		[
			"two files that import each other",
			{
				"lib/money/a.ts": 'import { b } from "./b"; export const a = b;',
				"lib/money/b.ts": 'import { a } from "./a"; export const b = a;',
			},
			["no-circles"],
		],
	])("names what breaks a boundary: %s", (_, files, names) => {
		expect(check(files)).toEqual(names);
	});
});

/** So that a file may explain what it does not do. */
function withoutComments(text: string): string {
	return text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/(^|\s)\/\/.*$/gm, "$1");
}
