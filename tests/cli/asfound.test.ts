import { spawnSync } from "node:child_process";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { showVerb } from "@/lib/cli/showVerb";
import { verifyVerb } from "@/lib/cli/verifyVerb";
import { instant } from "@/lib/core/instants";
import { type LampShop, lampShop } from "@/tests/ledger/lampShop";
import { behindTheBack } from "@/tests/ledger/tampering";

let shop: LampShop;
beforeAll(async () => {
	shop = await lampShop();
	shop.setClock("2026-03-20T10:00:00.000Z");
	await shop.takeOutLamp();
});
afterAll(() => shop.close());

const now = instant("2026-04-01T12:00:00.000Z");
const run = (args: readonly string[], input = "") => {
	const { status, stdout, stderr } = spawnSync(process.execPath, [path.resolve("lib/cli/asfound.mjs"), ...args], {
		input,
		encoding: "utf8",
		// From elsewhere, so that the alias and the migrations are found from the checkout and not from where one stands.
		cwd: shop.folder,
	});
	return { status, stdout, stderr };
};

describe("asfound verify", () => {
	it("says that the ledger verifies, with its head", async () => {
		const { exitCode, stdout } = await verifyVerb({ data: shop.folder });
		expect(exitCode).toBe(0);
		expect(stdout).toMatch(/^The ledger verifies: 5 entries, 14 rows\.\nIts head is entry 5, [0-9a-f]{64}\.\n$/);
	});

	it("answers as JSON", async () => {
		const { stdout } = await verifyVerb({ data: shop.folder, files: true, json: true });
		expect(JSON.parse(stdout)).toMatchObject({ sound: true, entries: 5, files: 0, flaws: [] });
	});

	it("names what is wrong and ends with 1", async () => {
		const other = await lampShop();
		behindTheBack(other.folder, `UPDATE "Part" SET "name" = 'x' WHERE "id" = '${other.lamp}'`);
		const { exitCode, stdout } = await verifyVerb({ data: other.folder });
		expect(exitCode).toBe(1);
		expect(stdout).toBe(
			'Read 4 entries, 14 rows. One thing is wrong:\n  part 12-0147-K "Lens carriage": name is "x", entry 3 says "Lens carriage"\n',
		);
		await other.close();
	});

	it("says where to look when there is no shop in the folder", async () => {
		const { exitCode, stderr } = await verifyVerb({ data: path.join(shop.folder, "files") });
		expect(exitCode).toBe(2);
		expect(stderr).toMatch(/^There is no shop in .+\. Name its folder with --data FOLDER or ASFOUND_DATA/);
	});
});

describe("asfound show", () => {
	it("shows the build as it was at the end of a day, as a tree", async () => {
		const { exitCode, stdout } = await showVerb({ data: shop.folder, machine: 12, asOf: "2026-03-19" }, now);
		expect(exitCode).toBe(0);
		expect(stdout).toBe(
			[
				"Machine 12, Machine 12, as of 19 March 2026, 23:59 (Europe/Amsterdam), from 3 entries",
				"",
				"k01  Coin door: Door  12-0001-H  original",
				"  k02  Coin door lamp: Lens carriage  12-0147-K  original",
				"",
			].join("\n"),
		);
	});

	it("shows what is out of the machine, and where", async () => {
		const { stdout } = await showVerb({ data: shop.folder, machine: 12, asOf: "2026-03-20" }, now);
		expect(stdout).toContain("  k02  Coin door lamp: empty");
		expect(stdout).toContain("Not in the machine:\n  Lens carriage  12-0147-K  original: in bag 12-0201-J");
	});

	it.each([
		["a day that cannot be read", { machine: 12, asOf: "yesterday" }, /Write a day like 2026-03-20/],
		["a machine that is not there", { machine: 13 }, /There is no machine 13 in this shop/],
		["a day before the machine came", { machine: 12, asOf: "2026-03-01" }, /Machine 12 came on 2 March 2026/],
		["a day before anything was entered", { machine: 12, known: "2026-03-01" }, /Nothing had been entered about machine 12 by then/],
	])("refuses %s and says what to do", async (_, options, sentence) => {
		const { exitCode, stderr } = await showVerb({ data: shop.folder, ...options }, now);
		expect(exitCode).toBe(2);
		expect(stderr).toMatch(sentence);
	});

	it("refuses as an error object with --json", async () => {
		const { stdout } = await showVerb({ data: shop.folder, machine: 13, json: true }, now);
		expect(JSON.parse(stdout)).toEqual({ error: { code: "no-machine", say: "There is no machine 13 in this shop." } });
	});
});

describe("the command line", () => {
	it("runs from any folder, and its exit code tells", () => {
		expect(run(["show", "--data", shop.folder, "--machine", "12", "--as-of", "2026-03-19", "--json"])).toMatchObject({ status: 0 });
		expect(run(["verify", "--data", shop.folder]).status).toBe(0);
	});

	it("ends with 2 where the question cannot be read", () => {
		expect(run(["show", "--machine", "twelve"])).toMatchObject({ status: 2, stderr: expect.stringContaining("It is a whole number") });
		expect(run(["nonsense"])).toMatchObject({ status: 2, stderr: expect.stringContaining("unknown command") });
		expect(run(["plan", "nowhere.json"])).toMatchObject({ status: 2, stderr: expect.stringContaining("nowhere.json cannot be read") });
	});

	it("reads - as standard input, and names the path of each field that is wrong", () => {
		const { status, stdout } = run(["plan", "-", "--json"], '{"format":"asfound.reversal-problem/1"}');
		expect(status).toBe(2);
		expect(JSON.parse(stdout)).toMatchObject({ error: { paths: expect.arrayContaining(["positions", "parts", "now", "target"]) } });
	});
});
