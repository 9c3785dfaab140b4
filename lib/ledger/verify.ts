// Verifies a shop's book from its bytes: both chains, the seals, the receipts, every row of every table, the guards, and
// on request every stored file. Independent of the writer: it reads with better-sqlite3, one snapshot, read-only, and streams.

import path from "node:path";
import Database from "better-sqlite3";
import {
	chainChecker,
	type Flaw,
	formFlaw,
	openPart,
	openText,
	type StoredEntry,
	type StoredSeal,
	sealFlaw,
} from "@/lib/ledger/verifyChain";
import { checkFiles } from "@/lib/ledger/verifyFiles";
import { guardFlaws } from "@/lib/ledger/verifyGuards";
import { rowChecker } from "@/lib/ledger/verifyRows";

export type LedgerReport = {
	readonly entries: number;
	readonly rows: number;
	/** Stored files that were read again; null when that was not asked for. */
	readonly files: number | null;
	/** Seals whose withheld part was erased; that is allowed. */
	readonly erased: number;
	/** The last entry; written down elsewhere, it shows later that nothing before it was rewritten. */
	readonly head: { readonly seq: number; readonly hash: string } | null;
	/** How many things are wrong. */
	readonly flawCount: number;
	/** The first of them, in the order found. */
	readonly flaws: readonly Flaw[];
};

/** No report names more than this many; when everything is wrong, the first hundred say so. */
const MOST_FLAWS = 1000;

export type VerifyOptions = {
	/** Read every stored file again. */
	readonly files?: boolean;
	/** Chains and seals only, for measuring. */
	readonly chainsOnly?: boolean;
	readonly migrations?: string;
	/** Called with each flaw as it is found. */
	readonly onFlaw?: (flaw: Flaw) => void;
};

/** Verifies the shop in a data folder. The server may run meanwhile: what is read is one moment's state. */
export async function verifyLedger(folder: string, options: VerifyOptions = {}): Promise<LedgerReport> {
	const db = new Database(path.join(folder, "asfound.db"), { readonly: true, fileMustExist: true });
	const flaws: Flaw[] = [];
	let flawCount = 0;
	const flaw = (found: Flaw) => {
		flawCount += 1;
		if (flaws.length < MOST_FLAWS) flaws.push(found);
		options.onFlaw?.(found);
	};
	try {
		db.pragma("cache_size = -65536");
		db.exec("BEGIN"); // one snapshot for all that follows
		if (!options.chainsOnly) {
			for (const damage of damages(db)) flaw(damage);
			for (const each of guardFlaws(db, options.migrations ?? path.resolve("prisma/migrations"))) flaw(each);
		}
		const ledger = checkEntries(db, flaw, options.chainsOnly ?? false);
		const files = options.files ? await checkFiles(db, folder, flaw) : null;
		return { ...ledger, files, flawCount, flaws };
	} finally {
		db.close();
	}
}

function damages(db: Database.Database): Flaw[] {
	return db
		.prepare<[], { quick_check: string }>("PRAGMA quick_check(10)")
		.all()
		.filter(({ quick_check }) => quick_check !== "ok")
		.map(({ quick_check }) => ({ code: "file-damaged", say: `the database file is damaged: ${quick_check}` }));
}

function checkEntries(
	db: Database.Database,
	flaw: (flaw: Flaw) => void,
	chainsOnly: boolean,
): Pick<LedgerReport, "entries" | "rows" | "erased" | "head"> {
	const check = chainChecker("shop");
	const rows = chainsOnly ? null : rowChecker(db, flaw);
	const receipts = chainsOnly ? null : receiptChecker(db, flaw);
	let entries = 0;
	let sealed = 0;
	let erased = 0;
	let head: LedgerReport["head"] = null;
	for (const { entry, kept } of storedEntries(db)) {
		entries += 1;
		if (kept) sealed += 1;
		if (kept && kept.salt === null) erased += 1;
		const found = check(entry);
		for (const each of found) flaw(each);
		const broken = sealFlaw(entry, kept);
		if (broken) flaw(broken);
		if (rows && receipts) {
			const text = openText(entry);
			const form = found.some(({ code }) => code === "entry-not-canonical") ? null : formFlaw(entry, text);
			if (form) flaw(form);
			const open = openPart(text);
			if (open) {
				rows.entry(entry, open, kept);
				receipts.entry(entry.seq, open.deed);
			} else flaw({ code: "entry-shape", say: `entry ${entry.seq}: what it says has not the shape of an entry`, entry: entry.seq });
		}
		head = { seq: entry.seq, hash: entry.hash };
	}
	const seals = countOf(db, "Seal");
	if (seals !== sealed) flaw({ code: "seal-extra", say: `${seals - sealed} of the seals kept belong to no entry` });
	receipts?.end();
	return { entries, rows: rows?.end() ?? 0, erased, head };
}

type Raw = [
	...[seq: number, machine: string | null, machineSeq: number | null, at: string, actor: string, action: string, subject: string],
	...[open: Buffer, seal: string | null, prev: string, prevOfMachine: string | null, hash: string],
	...[sealed: number | null, salt: string | null, withheld: string | null],
];

/** All entries, each with what it withholds, row by row: memory stays flat. */
function* storedEntries(db: Database.Database): Generator<{ entry: StoredEntry; kept: StoredSeal | null }> {
	// As arrays: the driver makes an object of fifteen members in twice the time.
	const rows = db
		.prepare<[], Raw>(
			`SELECT e."seq", e."machine", e."machineSeq", e."at", e."actor", e."action", e."subject", CAST(e."open" AS BLOB), e."seal", e."prev", e."prevOfMachine", e."hash", s."seq", s."salt", s."withheld"
			FROM "Entry" e LEFT JOIN "Seal" s ON s."seq" = e."seq" ORDER BY e."seq"`,
		)
		.raw()
		.iterate() as IterableIterator<Raw>;
	for (const [
		seq,
		machine,
		machineSeq,
		at,
		actor,
		action,
		subject,
		open,
		seal,
		prev,
		prevOfMachine,
		hash,
		sealed,
		salt,
		withheld,
	] of rows) {
		yield {
			entry: { seq, machine, machineSeq, at, actor, action, subject, open, seal, prev, prevOfMachine, hash },
			kept: sealed === null ? null : { salt, withheld },
		};
	}
}

const countOf = (db: Database.Database, table: string): number =>
	db.prepare<[], { n: number }>(`SELECT count(*) AS n FROM "${table}"`).get()?.n ?? 0;

/** Each deed has one receipt, which names its first entry; that is what makes a repeat of a deed harmless. */
function receiptChecker(
	db: Database.Database,
	flaw: (flaw: Flaw) => void,
): { entry: (seq: number, deed: string) => void; end: () => void } {
	const receiptOf = db.prepare<[string], { seq: number }>(`SELECT "seq" FROM "Receipt" WHERE "deed" = ?`);
	let lastDeed: string | null = null;
	let deeds = 0;
	return {
		entry: (seq, deed) => {
			if (deed === lastDeed) return;
			lastDeed = deed;
			deeds += 1;
			const receipt = receiptOf.get(deed);
			if (!receipt) flaw({ code: "receipt-missing", say: `entry ${seq}: the receipt of its deed is missing`, entry: seq });
			else if (receipt.seq !== seq)
				flaw({ code: "receipt-wrong", say: `entry ${seq}: the receipt of its deed names entry ${receipt.seq}`, entry: seq });
		},
		end: () => {
			const extra = countOf(db, "Receipt") - deeds;
			if (extra > 0)
				flaw({
					code: "receipt-extra",
					say: `${extra === 1 ? "one receipt belongs" : `${extra} receipts belong`} to no deed in the ledger`,
				});
		},
	};
}
