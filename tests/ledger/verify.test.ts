import { createHash } from "node:crypto";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { storedPath } from "@/lib/files/storedPath";
import { add } from "@/lib/ledger/rows";
import { verifyLedger } from "@/lib/ledger/verify";
import { type LampShop, lampShop } from "@/tests/ledger/lampShop";
import { behindTheBack, straightIn } from "@/tests/ledger/tampering";

let shop: LampShop;
beforeEach(async () => {
	shop = await lampShop();
	await shop.takeOutLamp();
});
afterEach(() => shop.close());

const says = async (options = {}) => (await verifyLedger(shop.folder, options)).flaws.map(({ say }) => say);

describe("a ledger that nobody touched", () => {
	it("is sound, and says what it read", async () => {
		const report = await verifyLedger(shop.folder);
		expect(report.flaws).toEqual([]);
		expect(report.flawCount).toBe(0);
		expect(report).toMatchObject({ entries: 5, rows: 14, files: null, erased: 0, head: { seq: 5 } });
	});

	it("is sound with a person's data erased", async () => {
		straightIn(shop.folder, `UPDATE "Seal" SET "salt" = NULL, "withheld" = NULL WHERE "seq" = 2`);
		behindTheBack(shop.folder, `UPDATE "Party" SET "name" = '', "contact" = NULL`);
		expect(await verifyLedger(shop.folder)).toMatchObject({ flaws: [], erased: 1 });
	});

	it("is not, when the entry was erased and the row speaks on: nothing vouches for it", async () => {
		straightIn(shop.folder, `UPDATE "Seal" SET "salt" = NULL, "withheld" = NULL WHERE "seq" = 2`);
		const report = await verifyLedger(shop.folder);
		expect(report.flaws.map(({ code, entry, table }) => ({ code, entry, table }))).toContainEqual({
			code: "row-undescribed",
			entry: 2,
			table: "Party",
		});
		expect(report.flaws[0]?.say).toContain("can no longer vouch for it: what it withheld was erased");
	});
});

describe("whoever goes behind the ledger's back is named", () => {
	it.each([
		[
			"a name changed in a row",
			() => `UPDATE "Part" SET "name" = 'x' WHERE "id" = '${shop.lamp}'`,
			() => ['part 12-0147-K "Lens carriage": name is "x", entry 5 says "Lens carriage"'],
		],
		[
			"a price changed in a row",
			() => `UPDATE "Machine" SET "priceMinor" = 1`,
			() => ['machine 12 "Machine 12": priceMinor is 1, entry 3 says 120000'],
		],
		[
			"a part put back to an earlier entry",
			() =>
				`UPDATE "Part" SET "entry" = 3, "place" = 'fitted', "sinceAt" = '2026-03-02T08:00:00.000Z', "bagId" = NULL, "positionId" = '${shop.lampSeat}' WHERE "id" = '${shop.lamp}'`,
			() => ['part 12-0147-K "Lens carriage": it stands as entry 3 left it, and entry 5 changed it since'],
		],
		[
			"a row taken away",
			() => `DELETE FROM "Fitting" WHERE "id" = '${shop.lampFitting}'`,
			() => [`fitting ${shop.lampFitting}: it is gone, and entry 3 put it there`],
		],
		[
			"a row slipped in",
			() => `INSERT INTO "Location" VALUES ('l1', 2, NULL, 'room', 'Cellar', 1)`,
			() => ['location "Cellar": no entry describes it, though it names entry 2'],
		],
		[
			"a row slipped in under an entry that is not there",
			() => `INSERT INTO "Location" VALUES ('l1', 99, NULL, 'room', 'Cellar', 1)`,
			() => ['location "Cellar": no entry describes it, though it names entry 99'],
		],
		[
			"an entry's sentence changed",
			() => `UPDATE "Entry" SET "open" = replace("open", 'Made a bag', 'Lost a bag') WHERE "seq" = 4`,
			() => ["entry 4: its hash does not match what it says"],
		],
		[
			"an entry's day changed",
			() => `UPDATE "Entry" SET "at" = '2020-01-01T00:00:00.000Z' WHERE "seq" = 4`,
			() => ["entry 4: its hash does not match what it says"],
		],
		[
			"an entry's person changed",
			() => `UPDATE "Entry" SET "actor" = 'someone' WHERE "seq" = 4`,
			() => ["entry 4: its hash does not match what it says"],
		],
		[
			"an entry written with a space too many",
			() => `UPDATE "Entry" SET "open" = replace("open", '"deed":', '"deed": ') WHERE "seq" = 5`,
			() => ["entry 5: what it says is not written in the canonical form"],
		],
		[
			"a price changed under its seal",
			() => `UPDATE "Seal" SET "withheld" = replace("withheld", '120000', '1200') WHERE "seq" = 3`,
			() => ["entry 3: what it withholds does not match its seal", 'machine 12 "Machine 12": priceMinor is 120000, entry 3 says 1200'],
		],
		["a seal taken away", () => `DELETE FROM "Seal" WHERE "seq" = 2`, () => ["entry 2: what it withholds is missing"]],
		[
			"a seal slipped in",
			() => `INSERT INTO "Seal" VALUES (4, '00000000000000000000000000000000', '{}')`,
			() => ["entry 4: something is kept as withheld that it never sealed"],
		],
		["a receipt taken away", () => `DELETE FROM "Receipt" WHERE "seq" = 4`, () => ["entry 4: the receipt of its deed is missing"]],
		["a receipt slipped in", () => `INSERT INTO "Receipt" VALUES ('d', 4, '1')`, () => ["one receipt belongs to no deed in the ledger"]],
		["a receipt moved", () => `UPDATE "Receipt" SET "seq" = 5 WHERE "seq" = 4`, () => ["entry 4: the receipt of its deed names entry 5"]],
	])("%s", async (_, sql, sentences) => {
		behindTheBack(shop.folder, sql());
		expect((await says()).slice(0, sentences().length)).toEqual(sentences());
	});

	it("an entry taken away from the middle", async () => {
		behindTheBack(shop.folder, `DELETE FROM "Entry" WHERE "seq" = 4`);
		const found = await says();
		expect(found).toContain("entry 5: entry 4 before it is missing");
		expect(found).toContain("entry 5: it is number 3 of its machine, and the one before it is number 1");
		expect(found).toContain('bag 12-0201-J "Lamp": no entry describes it, though it names entry 4');
	});

	it("the last entry taken away shows at the row that it described", async () => {
		behindTheBack(shop.folder, `DELETE FROM "Entry" WHERE "seq" = 5`);
		expect(await says()).toContain('part 12-0147-K "Lens carriage": no entry describes it, though it names entry 5');
	});

	it("an entry rewritten with its hash does not fit the next one", async () => {
		const forged = "f".repeat(64);
		behindTheBack(shop.folder, `UPDATE "Entry" SET "hash" = '${forged}' WHERE "seq" = 3`);
		expect(await says()).toEqual([
			"entry 3: its hash does not match what it says",
			"entry 4: it does not follow on entry 3: it names another hash",
			"entry 4: it does not follow on number 1 of its machine: it names another hash",
		]);
	});

	it("two entries swapped", async () => {
		behindTheBack(
			shop.folder,
			`UPDATE "Entry" SET "seq" = 40 WHERE "seq" = 4; UPDATE "Entry" SET "seq" = 4 WHERE "seq" = 5; UPDATE "Entry" SET "seq" = 5 WHERE "seq" = 40`,
		);
		expect((await verifyLedger(shop.folder)).flaws[0]).toMatchObject({ entry: 4 });
	});
});

describe("the guards of the tables", () => {
	it("a trigger taken away is named", async () => {
		straightIn(shop.folder, `DROP TRIGGER "part_no_delete"`);
		expect(await says()).toEqual(["the trigger part_no_delete is missing: what it guards can be changed behind the ledger's back"]);
	});

	it("a trigger made weaker is named", async () => {
		straightIn(shop.folder, `DROP TRIGGER "part_no_delete"; CREATE TRIGGER "part_no_delete" BEFORE DELETE ON "Part" BEGIN SELECT 1; END`);
		expect(await says()).toEqual(["the trigger part_no_delete is not as it was made"]);
	});

	it("an index that keeps one part a position, taken away, is named", async () => {
		straightIn(shop.folder, `DROP INDEX "Part_positionId_key"`);
		expect(await says()).toEqual(["the index Part_positionId_key is missing: what it guards can be changed behind the ledger's back"]);
	});

	it("a trigger that is not ours is named", async () => {
		straightIn(shop.folder, `CREATE TRIGGER "quiet" AFTER INSERT ON "Note" BEGIN SELECT 1; END`);
		expect(await says()).toEqual(["the trigger quiet was not made by Asfound"]);
	});
});

describe("stored files", () => {
	const bytes = Buffer.from("what the seller wrote\n");
	const sha = createHash("sha256").update(bytes).digest("hex");
	beforeEach(async () => {
		const file = storedPath(shop.folder, sha);
		mkdirSync(path.dirname(file), { recursive: true });
		writeFileSync(file, bytes);
		await shop.write([
			{
				machine: shop.machine,
				action: "file.kept",
				subject: { table: "StoredFile", id: sha },
				facts: { say: "Kept a letter." },
				rows: [add("StoredFile", { id: sha, bytes: bytes.length, mediaType: "text/plain", name: "letter.txt" })],
			},
		]);
	});
	const named = `file ${sha.slice(0, 12)}… "letter.txt"`;

	it("that are all there are counted", async () => {
		expect(await verifyLedger(shop.folder, { files: true })).toMatchObject({ flaws: [], files: 1 });
	});

	it("one that is missing is named", async () => {
		rmSync(storedPath(shop.folder, sha));
		expect(await says({ files: true })).toEqual([`${named}: it is missing from the data folder`]);
	});

	it("one of another length is named", async () => {
		writeFileSync(storedPath(shop.folder, sha), "short");
		expect(await says({ files: true })).toEqual([`${named}: it has 5 bytes, and had 22 when it came`]);
	});

	it("one with a byte changed is named", async () => {
		writeFileSync(storedPath(shop.folder, sha), Buffer.from("What the seller wrote\n"));
		expect(await says({ files: true })).toEqual([`${named}: its bytes are not those that came`]);
	});
});
