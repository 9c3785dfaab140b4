// Compares every row of every table with the last entry that describes it. Reads one row at a time; keeps only what is wrong.
//
// How: each entry names the rows it describes, and each row names the entry that described it last. So, walking the entries,
// a row named by entry n must be there and say n (then it must look as n says), or a later number. Every row that is matched
// so is counted; when a table holds more rows than were matched, the others are looked for one by one.

import type Database from "better-sqlite3";
import type { Flaw, OpenPart, StoredEntry, StoredSeal } from "@/lib/ledger/verifyChain";
import { withheldRows } from "@/lib/ledger/verifyChain";
import { rowInWords, valueInWords } from "@/lib/ledger/verifyNames";

type Value = string | number | null;
/** The values of a row, in the order of the table's columns: half the time of an object a row. */
type Row = readonly Value[];
type Image = Readonly<Record<string, unknown>>;
type Table = {
	readonly columns: readonly { readonly name: string; readonly byDefault: string | null }[];
	/** Where the number of the entry stands among the columns. */
	readonly entryAt: number;
	readonly byId: Database.Statement<[string], Row>;
	matched: number;
};

/** Tables that hold the ledger itself, or nothing of the shop. */
const NOT_DESCRIBED = ["Entry", "Seal", "Receipt", "_prisma_migrations"];

export type RowChecker = {
	/** Compares the rows that this entry describes. */
	readonly entry: (entry: StoredEntry, open: OpenPart, kept: StoredSeal | null) => void;
	/** After the last entry: rows that no entry describes. Gives how many rows there are. */
	readonly end: () => number;
};

/** Makes a checker on an open database; every flaw goes to `flaw`. */
export function rowChecker(db: Database.Database, flaw: (flaw: Flaw) => void): RowChecker {
	const tables = new Map<string, Table>();
	for (const { name } of db
		.prepare<[], { name: string }>(`SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'`)
		.all()) {
		const columns = db
			.prepare<[string], { name: string; byDefault: string | null }>(`SELECT name, dflt_value AS byDefault FROM pragma_table_info(?)`)
			.all(name);
		const described = ["id", "entry"].every((needed) => columns.some((column) => column.name === needed));
		if (NOT_DESCRIBED.includes(name) || !described) continue;
		tables.set(name, {
			columns,
			entryAt: columns.findIndex((column) => column.name === "entry"),
			byId: db
				.prepare<[string], Row>(`SELECT ${columns.map((column) => `"${column.name}"`).join(",")} FROM "${name}" WHERE "id" = ?`)
				.raw(),
			matched: 0,
		});
	}
	const tagOf = tables.has("Tag")
		? db.prepare<[string, string], { id: string }>(`SELECT id FROM "Tag" WHERE "partId" = ? OR "bagId" = ?`)
		: null;
	const named = (table: string, id: string, image: Image): string =>
		rowInWords(table, id, image, table === "Part" || table === "Bag" ? (tagOf?.get(id, id)?.id ?? null) : null);

	// A row that is gone, or was put back, is named once and not at every entry that ever described it.
	const told = new Set<string>();
	const once = (key: string, next: () => Flaw) => {
		if (told.has(key)) return;
		told.add(key);
		flaw(next());
	};

	const compare = (table: Table, name: string, id: string, row: Row, expected: Image, seq: number, erased: boolean) => {
		for (const [place, column] of table.columns.entries()) {
			if (place === table.entryAt) continue;
			const value = row[place] ?? null;
			const said = expected[column.name];
			if (said !== undefined) {
				if (said === value) continue;
				flaw({
					code: "row-changed",
					say: `${named(name, id, expected)}: ${column.name} is ${valueInWords(value)}, entry ${seq} says ${valueInWords(said)}`,
					entry: seq,
					table: name,
					id,
				});
			} else if (!isDefault(value, column.byDefault) && !(erased && value === "")) {
				// What was erased from the entry is gone from the row as well: a value that stands there vouches for itself alone.
				flaw({
					code: "row-undescribed",
					say: `${named(name, id, expected)}: ${column.name} is ${valueInWords(value)}, and entry ${seq} ${erased ? "can no longer vouch for it: what it withheld was erased" : "says nothing of it"}`,
					entry: seq,
					table: name,
					id,
				});
			}
		}
	};

	return {
		entry: ({ seq, seal }, open, kept) => {
			const erased = seal !== null && (kept === null || kept.salt === null);
			const withheld = erased ? {} : withheldRows(kept);
			for (const [key, image] of Object.entries(open.rows)) {
				const [name, id] = keyParts(key);
				const table = tables.get(name);
				if (!table) {
					flaw({ code: "table-missing", say: `entry ${seq}: it describes a row of "${name}", and there is no such table`, entry: seq });
					continue;
				}
				const row = table.byId.get(id);
				const of = row?.[table.entryAt];
				const expected: Image = withheld[key] ? { ...image, ...withheld[key] } : image;
				if (!row) {
					once(key, () => ({
						code: "row-gone",
						say: `${named(name, id, expected)}: it is gone, and entry ${seq} put it there`,
						entry: seq,
						table: name,
						id,
					}));
				} else if (of === seq) {
					table.matched += 1;
					compare(table, name, id, row, expected, seq, erased);
				} else if (typeof of !== "number" || of < seq) {
					once(key, () => ({
						code: "row-put-back",
						say: `${named(name, id, expected)}: it stands as entry ${of} left it, and entry ${seq} changed it since`,
						entry: seq,
						table: name,
						id,
					}));
				}
			}
		},
		end: () => {
			let rows = 0;
			for (const [name, table] of tables) {
				const count = db.prepare<[], { n: number }>(`SELECT count(*) AS n FROM "${name}"`).get()?.n ?? 0;
				rows += count;
				if (count !== table.matched) undescribedRows(db, name, named, told, flaw);
			}
			return rows;
		},
	};
}

function undescribedRows(
	db: Database.Database,
	name: string,
	named: (table: string, id: string, image: Image) => string,
	told: ReadonlySet<string>,
	flaw: (flaw: Flaw) => void,
): void {
	const describes = db.prepare<[number, string], { found: number }>(
		`SELECT 1 AS found FROM "Entry", json_each("Entry"."open", '$.rows') AS r WHERE "Entry"."seq" = ? AND r.key = ?`,
	);
	for (const row of db.prepare<[], Readonly<Record<string, Value>> & { id: string; entry: number }>(`SELECT * FROM "${name}"`).iterate()) {
		const key = `${name}/${row.id}`;
		if (told.has(key) || describes.get(row.entry, key)) continue;
		flaw({
			code: "row-unknown",
			say: `${named(name, row.id, row)}: no entry describes it, though it names entry ${row.entry}`,
			table: name,
			id: row.id,
		});
	}
}

/** "Part/0193..." as its two halves. */
function keyParts(key: string): [string, string] {
	const cut = key.indexOf("/");
	return [key.slice(0, cut), key.slice(cut + 1)];
}

/** Whether the value is the one that a column which is younger than the entry was given when it was added. */
const isDefault = (value: Value, byDefault: string | null): boolean =>
	byDefault === null ? value === null : String(value) === byDefault.replace(/^'([\s\S]*)'$/, "$1");
