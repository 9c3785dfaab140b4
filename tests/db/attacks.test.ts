// Straight at the database, past the program: what the rules of the shop say must be refused by the tables themselves.

import path from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { verifyLedger } from "@/lib/ledger/verify";
import { type LampShop, lampShop } from "@/tests/ledger/lampShop";

let shop: LampShop;
let db: Database.Database;
beforeEach(async () => {
	shop = await lampShop();
	db = new Database(path.join(shop.folder, "asfound.db"));
});
afterEach(async () => {
	db.close();
	await shop.close();
});

/** What the database says to it, or null when it let it through. */
function refusalOf(sql: string): string | null {
	try {
		db.exec(`BEGIN; ${sql}; COMMIT`);
		return null;
	} catch (error) {
		if (db.inTransaction) db.exec("ROLLBACK");
		return error instanceof Error ? error.message : String(error);
	}
}

// The entries of the shop are 1 to 4; its parts and positions were written by 3, so 4 is a number that they may take.
const partRow = (id: string, more: Record<string, string> = {}) => {
	const row: Record<string, string> = {
		id: `'${id}'`,
		entry: "4",
		machineId: `'${shop.machine}'`,
		name: "'x'",
		count: "1",
		maker: "''",
		type: "''",
		material: "''",
		origin: "'original'",
		works: "'works'",
		condition: "''",
		place: "'bench'",
		sinceAt: "'2026-03-02T08:00:00.000Z'",
		placeWhy: "''",
		...more,
	};
	return `INSERT INTO "Part" (${Object.keys(row).map((name) => `"${name}"`)}) VALUES (${Object.values(row)})`;
};
const bagRow = (id: string, parentId: string) =>
	`INSERT INTO "Bag" VALUES ('${id}', 4, '${shop.machine}', 'bag', 'holding', '', '', 'bag', '${parentId}', NULL, '2026-03-02T08:00:00.000Z', '')`;
const positionRow = (id: string, mark: string, kind: string, host: string | null) =>
	`INSERT INTO "Position" VALUES ('${id}', 4, '${shop.machine}', '${mark}', 'x', 'x', '${kind}', ${host === null ? "NULL" : `'${host}'`}, 1, '[]', 'yes', NULL, NULL, NULL, NULL, NULL, NULL, NULL, '')`;
const fittingRow = (id: string, part: string, position: string) =>
	`INSERT INTO "Fitting" VALUES ('${id}', 4, '${shop.machine}', '${part}', '${position}', '2026-03-02T08:00:00.000Z', NULL, NULL, NULL, NULL, NULL, '')`;
const receipt = `INSERT INTO "Receipt" VALUES ('d', 4, 'null')`;
const set = (table: string, id: string, what: string) => `UPDATE "${table}" SET ${what}, "entry" = 4 WHERE "id" = '${id}'`;

describe("rule 1: a part is in exactly one place, a position holds at most one part, nothing is inside itself", () => {
	it.each([
		["a part in a position and in a bag", () => set("Part", shop.lamp, `"bagId" = '${shop.bag}'`), /CHECK constraint failed.*bagId/],
		["a fitted part without a position", () => set("Part", shop.lamp, `"positionId" = NULL`), /CHECK constraint failed.*positionId/],
		[
			"a part in a bag that is not named",
			() => set("Part", shop.lamp, `"place" = 'bag', "positionId" = NULL`),
			/CHECK constraint failed.*bagId/,
		],
		[
			"a part at a place of no kind",
			() => set("Part", shop.lamp, `"place" = 'elsewhere', "positionId" = NULL`),
			/CHECK constraint failed.*place/,
		],
		[
			"a part with whom nobody answers",
			() => set("Part", shop.lamp, `"place" = 'out', "positionId" = NULL`),
			/CHECK constraint failed: place/,
		],
		[
			"two parts in one position",
			() => partRow("p1", { place: "'fitted'", positionId: `'${shop.lampSeat}'` }),
			/UNIQUE constraint failed: Part\.positionId/,
		],
		[
			"two open fittings of one part",
			() => `${positionRow("s1", "k09", "seat", null)}; ${fittingRow("f1", shop.lamp, "s1")}`,
			/UNIQUE constraint failed: Fitting\.partId/,
		],
		[
			"two open fittings at one position",
			() => `${partRow("p1")}; ${fittingRow("f1", "p1", shop.lampSeat)}`,
			/UNIQUE constraint failed: Fitting\.positionId/,
		],
		[
			"a fitted part without a fitting",
			() => `${positionRow("s1", "k09", "seat", null)}; ${partRow("p1", { place: "'fitted'", positionId: "'s1'" })}; ${receipt}`,
			/fitting-missing/,
		],
		[
			"a part that left while its fitting stays open",
			() => `${set("Part", shop.lamp, `"place" = 'bench', "positionId" = NULL`)}; ${receipt}`,
			/fitting-open/,
		],
		[
			"a fitting that ends while its part stays",
			() => `${set("Fitting", shop.lampFitting, `"untilAt" = '2026-03-03T08:00:00.000Z'`)}; ${receipt}`,
			/fitting-missing|fitting-open/,
		],
		[
			"a fitting that ends before it began",
			() => set("Fitting", shop.lampFitting, `"untilAt" = '2026-03-01T08:00:00.000Z'`),
			/CHECK constraint failed/,
		],
		["a bag in itself", () => set("Bag", shop.bag, `"place" = 'bag', "parentId" = '${shop.bag}'`), /bag-inside-itself/],
		[
			"a bag in a bag that is in it",
			() => `${bagRow("b1", shop.bag)}; UPDATE "Bag" SET "entry" = 4, "place" = 'bag', "parentId" = 'b1' WHERE "id" = '${shop.bag}'`,
			/bag-inside-itself|no-entry/,
		],
		["an assembly that sits on itself", () => set("Part", shop.door, `"positionId" = '${shop.lampSeat}'`), /assembly-hosts-itself|UNIQUE/],
		[
			"an assembly that carries what carries it",
			() => set("Position", shop.doorSeat, `"hostId" = '${shop.lamp}'`),
			/assembly-hosts-itself/,
		],
		[
			"a part in a place that holds none",
			() => `${positionRow("s1", "k09", "place", null)}; ${partRow("p1", { place: "'fitted'", positionId: "'s1'" })}`,
			/place-holds-no-part/,
		],
	])("%s is refused", (_, sql, refusal) => {
		expect(refusalOf(sql())).toMatch(refusal);
	});

	it("a bag in a bag that is in it is refused, also a step later", () => {
		expect(refusalOf(bagRow("b1", shop.bag))).toBeNull();
		expect(refusalOf(`UPDATE "Bag" SET "entry" = 5, "place" = 'bag', "parentId" = 'b1' WHERE "id" = '${shop.bag}'`)).toMatch(
			/bag-inside-itself|no-entry/,
		);
	});
});

describe("rule 2: nothing is deleted, and history stands", () => {
	it.each(["Shop", "Person", "Party", "Machine", "Position", "Part", "Fitting", "Bag", "Tag"])("a row of %s", (table) => {
		expect(refusalOf(`DELETE FROM "${table}"`)).toMatch(/^never-deleted: a correction is a new entry/);
	});

	it("in no table is a deletion unguarded", () => {
		const unguarded = db
			.prepare<[], { name: string }>(
				`SELECT name FROM sqlite_master t WHERE type = 'table' AND name NOT LIKE '\\_%' ESCAPE '\\' AND name NOT LIKE 'sqlite%'
				AND NOT EXISTS (SELECT 1 FROM sqlite_master g WHERE g.type = 'trigger' AND g.tbl_name = t.name AND g.sql LIKE '%BEFORE DELETE%RAISE(ABORT%')`,
			)
			.all();
		expect(unguarded).toEqual([]);
	});

	it("a fitting that has ended is not written anew", async () => {
		await shop.takeOutLamp();
		expect(refusalOf(`UPDATE "Fitting" SET "entry" = 6, "untilAt" = NULL WHERE "id" = '${shop.lampFitting}'`)).toMatch(
			/fitting-stands|no-entry/,
		);
		expect(refusalOf(`UPDATE "Fitting" SET "untilAt" = NULL WHERE "id" = '${shop.lampFitting}'`)).toMatch(/no-entry|fitting-stands/);
	});

	it("as found is stamped once, and nothing is found before the stamp any more", () => {
		expect(refusalOf(set("Machine", shop.machine, `"asFoundAt" = '2026-03-02T12:00:00.000Z'`))).toBeNull();
		expect(refusalOf(`UPDATE "Machine" SET "asFoundAt" = NULL, "entry" = 4`)).toMatch(/as-found-stands|no-entry/);
		expect(
			refusalOf(
				`INSERT INTO "Finding" VALUES ('f', 4, '${shop.machine}', '${shop.lampSeat}', '2026-03-02T11:00:00.000Z', 'missing', NULL, '')`,
			),
		).toMatch(/^as-found-stands: later knowledge is added after the as found record/);
	});
});

describe("rule 3: an original does not go without a reason", () => {
	it.each(["scrapped", "lost", "void"])("%s, and nobody says why", (place) => {
		const gone = `"place" = '${place}', "positionId" = NULL`;
		expect(refusalOf(set("Part", shop.lamp, gone))).toMatch(/CHECK constraint failed: place/);
		expect(refusalOf(set("Part", shop.lamp, `${gone}, "placeWhy" = 'broken in two'`))).toBeNull();
	});
});

describe("rule 4: nothing changes without an entry, and the ledger is only added to", () => {
	const entry = (seq: number, prev: string, more: { machine?: string; machineSeq?: number; prevOfMachine?: string } = {}) =>
		`INSERT INTO "Entry" VALUES (${seq}, ${more.machine ? `'${more.machine}'` : "NULL"}, ${more.machineSeq ?? "NULL"}, '2026-03-02T08:00:00.000Z', 'p', 'a', 's', '{}', NULL, '${prev}', ${more.prevOfMachine ? `'${more.prevOfMachine}'` : "NULL"}, '${"e".repeat(64)}')`;
	const hashOf = (seq: number) => db.prepare<[number], { hash: string }>(`SELECT hash FROM "Entry" WHERE seq = ?`).get(seq)?.hash ?? "";
	const head = () => hashOf(4);

	it.each([
		[
			"a row changed under its old entry",
			() => `UPDATE "Part" SET "name" = 'x' WHERE "id" = '${shop.lamp}'`,
			/^no-entry: nothing changes without an entry/,
		],
		[
			"a row changed under an entry that is not there",
			() => `UPDATE "Part" SET "name" = 'x', "entry" = 99 WHERE "id" = '${shop.lamp}'`,
			/^no-entry/,
		],
		["a row put back to an earlier entry", () => `UPDATE "Part" SET "entry" = 1 WHERE "id" = '${shop.lamp}'`, /^no-entry/],
		["a row that takes another's id", () => set("Part", shop.lamp, `"id" = 'other'`), /^no-entry/],
		[
			"a row added under an entry that is not there",
			() => partRow("p1", { entry: "99" }),
			/^no-entry: nothing is written without an entry/,
		],
		[
			"an entry changed",
			() => `UPDATE "Entry" SET "at" = '2020-01-01T00:00:00.000Z' WHERE "seq" = 2`,
			/^entry-stands: an entry is never changed/,
		],
		["an entry deleted", () => `DELETE FROM "Entry" WHERE "seq" = 4`, /^entry-stands: an entry is never deleted/],
		["a number left out", () => entry(6, head()), /^entry-gap|^entry-chain/],
		["a number used twice", () => entry(4, hashOf(3)), /^entry-gap/],
		["an entry that names another one before it", () => entry(5, "0".repeat(64)), /^entry-chain/],
		[
			"an entry that leaves out one of its machine",
			() => entry(5, head(), { machine: shop.machine, machineSeq: 4, prevOfMachine: head() }),
			/^entry-chain/,
		],
		[
			"an entry that names another one before it in its machine",
			() => entry(5, head(), { machine: shop.machine, machineSeq: 3, prevOfMachine: "0".repeat(64) }),
			/^entry-chain/,
		],
		["an entry put over another", () => entry(4, hashOf(3)).replace("INSERT INTO", "INSERT OR REPLACE INTO"), /^entry-gap/],
		[
			"what a seal withholds changed",
			() => `UPDATE "Seal" SET "withheld" = '{}'`,
			/^entry-stands: what a seal withholds may be erased, never changed/,
		],
		["a seal deleted", () => `DELETE FROM "Seal"`, /^entry-stands: a seal is never deleted/],
		["a receipt changed", () => `UPDATE "Receipt" SET "result" = '1'`, /^entry-stands: a receipt is never changed/],
		["a receipt deleted", () => `DELETE FROM "Receipt"`, /^entry-stands: a receipt is never deleted/],
	])("%s is refused", (_, sql, refusal) => {
		expect(refusalOf(sql())).toMatch(refusal);
	});
});

describe("what the tables cannot refuse, the verifier names", () => {
	it.each([
		["a row changed under the number of an entry of something else", () => set("Part", shop.lamp, `"name" = 'x'`)],
		["a row put over another", () => partRow(shop.lamp, { entry: "3" }).replace("INSERT INTO", "INSERT OR REPLACE INTO")],
		["a row slipped in under an old entry", () => partRow("p1")],
		[
			"what a seal withholds put over",
			() => `INSERT OR REPLACE INTO "Seal" SELECT "seq", "salt", replace("withheld", '120000', '1') FROM "Seal" WHERE "seq" = 3`,
		],
	])("%s", async (_, sql) => {
		// Either the tables refuse it, or it is named.
		const refusal = refusalOf(sql());
		const { flawCount } = await verifyLedger(shop.folder);
		expect(refusal === null ? flawCount : 1).toBeGreaterThan(0);
		if (refusal !== null) expect(flawCount).toBe(0);
	});
});

describe("rules 6 and 7: money is whole and not below nothing, days and moments have one form", () => {
	it.each([
		["a price below nothing", () => set("Machine", shop.machine, `"priceMinor" = -1`), /CHECK constraint failed/],
		["a price with a fraction", () => set("Machine", shop.machine, `"priceMinor" = 1.5`), /cannot store REAL value/],
		["a price in words", () => set("Machine", shop.machine, `"priceMinor" = 'much'`), /cannot store TEXT value/],
		["a day in another form", () => set("Machine", shop.machine, `"receivedDay" = '2.3.2026'`), /CHECK constraint failed/],
		["a moment with an offset", () => set("Part", shop.lamp, `"sinceAt" = '2026-03-02T08:00:00.000+00:00'`), /CHECK constraint failed/],
		["a moment without milliseconds", () => set("Part", shop.lamp, `"sinceAt" = '2026-03-02T08:00:00Z'`), /CHECK constraint failed/],
		[
			"minutes whose likely is above their high",
			() => set("Position", shop.lampSeat, `"outLow" = 1, "outLikely" = 9, "outHigh" = 5`),
			/CHECK constraint failed/,
		],
		["a count of nothing", () => set("Part", shop.lamp, `"count" = 0`), /CHECK constraint failed/],
		["a word that is in no list", () => set("Part", shop.lamp, `"origin" = 'genuine'`), /CHECK constraint failed/],
		[
			"a tag that says another number than its own",
			() => `INSERT INTO "Tag" VALUES ('12-0099-X', 4, 12, 98, '${shop.lamp}', NULL)`,
			/CHECK constraint failed/,
		],
		[
			"a tag on two things",
			() => `INSERT INTO "Tag" VALUES ('12-0099-X', 4, 12, 99, '${shop.lamp}', '${shop.bag}')`,
			/CHECK constraint failed/,
		],
		[
			"a machine of the same number",
			() =>
				`INSERT INTO "Machine" SELECT 'other', 4, "number", "name", "kind", "maker", "model", "serial", "made", "ownership", "state", NULL, NULL, NULL, NULL, NULL, "carried", "condition", "hazards", "receivedDay", NULL, NULL, NULL, NULL FROM "Machine"`,
			/UNIQUE constraint failed: Machine\.number/,
		],
		["a part of a machine that is not there", () => partRow("p1", { machineId: "'nowhere'" }), /FOREIGN KEY constraint failed/],
	])("%s is refused", (_, sql, refusal) => {
		expect(refusalOf(sql())).toMatch(refusal);
	});
});

describe("rule 9: a deed is done once", () => {
	it("a second receipt of the same deed is refused", () => {
		expect(refusalOf(`INSERT INTO "Receipt" SELECT "deed", 4, '1' FROM "Receipt" LIMIT 1`)).toMatch(
			/UNIQUE constraint failed: Receipt\.deed/,
		);
	});
});

it("a step never needs itself, however far around", () => {
	const step = (id: string, number: number) =>
		`INSERT INTO "Step" ("id","entry","machineId","number","kind","title","state","lowMinutes","likelyMinutes","highMinutes","waitMinutes","waitWhy","addedWhy","words","caution")
		VALUES ('${id}', 4, '${shop.machine}', ${number}, 'clean', 'x', 'planned', 1, 2, 3, 0, '', '', '', '')`;
	const needs = (id: string, from: string, to: string) => `INSERT INTO "Need" VALUES ('${id}', 4, '${from}', '${to}', 'yes')`;
	expect(refusalOf(`${step("a", 1)}; ${step("b", 2)}; ${step("c", 3)}; ${needs("n1", "a", "b")}; ${needs("n2", "b", "c")}`)).toBeNull();
	expect(refusalOf(needs("n3", "c", "a"))).toMatch(/^needs-loop: a step never needs itself/);
	expect(refusalOf(needs("n4", "a", "a"))).toMatch(/^needs-loop/);
});

it("two clocks of one person do not run at the same time", () => {
	const work = (id: string) =>
		`INSERT INTO "Work" VALUES ('${id}', 4, '${shop.machine}', 's', '${shop.person}', '2026-03-02T08:00:00.000Z', NULL, NULL, 'timed', '')`;
	const step = `INSERT INTO "Step" ("id","entry","machineId","number","kind","title","state","lowMinutes","likelyMinutes","highMinutes","waitMinutes","waitWhy","addedWhy","words","caution")
		VALUES ('s', 4, '${shop.machine}', 1, 'clean', 'x', 'doing', 1, 2, 3, 0, '', '', '', '')`;
	expect(refusalOf(`${step}; ${work("w1")}`)).toBeNull();
	expect(refusalOf(work("w2"))).toMatch(/UNIQUE constraint failed: Work\.personId/);
});
