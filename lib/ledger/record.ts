// The one door. A deed and its entry are written in one transaction, or neither is.
//
// Contract: when `record` returns `ok`, the change and its entry are on the disk (synchronous=FULL), the entry's number
// is given for ever, and numbers have no holes. A refusal has written nothing. The same `deed` id sent again writes
// nothing and returns the first result, or says that other answers were recorded under it.
//
// How: deeds stand in a queue; each reads committed data through the reader, a pure rule decides, and one immediate
// transaction writes entry, seal, rows and receipt. If another process wrote in between, the last number is no longer the
// one that was read before the decision; then nothing is written and the deed is decided again on what is true now.

import { err, ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { Writer } from "@/lib/db/writer";
import { canonical } from "@/lib/ledger/canonical";
import type { Env } from "@/lib/ledger/env";
import { entryHash, sealOf } from "@/lib/ledger/hash";
import { refusalOfDatabase } from "@/lib/ledger/refusals";
import type { Deed, EntryDraft, RowChange } from "@/lib/ledger/rows";
import { insertStatement, type Statement, updateStatement } from "@/lib/ledger/statements";
import { WITHHELD } from "@/lib/ledger/withheld";

/** `prev` of the first entry of a chain. */
export const NO_ENTRY = "0".repeat(64);

/** How often a deed is decided again because another process was first. */
const TRIES = 5;

/**
 * Decides and writes one deed.
 *
 * `decide` reads through `read`, and gives the rows to write or a refusal; it must not change anything anywhere.
 */
export function record<T>(env: Env, decide: (read: Reader) => Promise<Result<Deed<T>>>): Promise<Result<T>> {
	const run = env.store.tail.then(() => decideAndWrite(env, decide));
	// The queue goes on whatever became of this deed; its outcome is the caller's.
	env.store.tail = run.catch(() => undefined);
	return run;
}

async function decideAndWrite<T>(env: Env, decide: (read: Reader) => Promise<Result<Deed<T>>>): Promise<Result<T>> {
	const { read, writer } = env.store;
	for (let attempt = 1; attempt <= TRIES; attempt++) {
		const first = firstResult<T>(env);
		if (first) return first;
		// Before anything is read for the decision: whatever is written elsewhere after this takes the next number.
		const last = lastEntry(writer);
		const ruling = await decide(read);
		if (!ruling.ok) return ruling;
		const written = write(env, last, ruling.value);
		if (written === "written") return ok(ruling.value.result);
		if (written !== "number-taken") return err(written);
	}
	return refuse("busy", "The shop's book is being written from elsewhere. Nothing was changed; try again.");
}

function write<T>(env: Env, last: LastEntry, deed: Deed<T>): "written" | "number-taken" | Refusal {
	if (deed.entries.length === 0) throw new Error("a deed without an entry");
	const { writer } = env.store;
	try {
		return writer.atOnce(() => {
			if (lastEntry(writer).seq !== last.seq) return "number-taken";
			for (const { sql, values } of statementsOf(env, last, deed)) writer.prepared(sql).run(...values);
			return "written";
		});
	} catch (error) {
		return refusalOfDatabase(error);
	}
}

function statementsOf<T>(env: Env, last: LastEntry, deed: Deed<T>): Statement[] {
	const at = env.clock();
	const heads = new Map<string, MachineHead>();
	const ledger: Statement[] = [];
	const rows: Statement[] = [];
	const seen = new Set<string>();
	let { seq, hash } = last;
	for (const draft of deed.entries) {
		seq += 1;
		const { open, withheld } = bodyOf(env, draft);
		const salt = withheld === null ? null : env.salt();
		const head = draft.machine === null ? null : (heads.get(draft.machine) ?? machineHead(env.store.writer, draft.machine));
		const entry = {
			seq,
			machine: draft.machine,
			machineSeq: head ? head.machineSeq + 1 : null,
			at,
			actor: env.actor,
			action: draft.action,
			subject: `${draft.subject.table}/${draft.subject.id}`,
			open: canonical(open),
			seal: salt === null ? null : sealOf(salt, withheld),
			prev: hash,
			prevOfMachine: head ? head.hash : null,
		};
		hash = entryHash(entry);
		if (draft.machine !== null) heads.set(draft.machine, { machineSeq: entry.machineSeq ?? 0, hash });
		ledger.push(insertStatement("Entry", { ...entry, hash }));
		if (salt !== null) ledger.push(insertStatement("Seal", { seq, salt, withheld: canonical(withheld) }));
		for (const change of draft.rows) rows.push(rowStatement(change, seq, seen));
	}
	const kept: Kept = { asked: env.asked ?? null, result: deed.result ?? null };
	// The receipt last: its triggers check what only the whole deed can show.
	const receipt = insertStatement("Receipt", { deed: env.deed, seq: last.seq + 1, result: JSON.stringify(kept) });
	return [...ledger, ...rows, receipt];
}

/** A row with the number of its entry. A row that a deed writes twice is a bug: which of its entries would describe it? */
function rowStatement({ how, table, id, image }: RowChange, seq: number, seen: Set<string>): Statement {
	const key = `${table}/${id}`;
	if (seen.has(key)) throw new Error(`a deed writes ${key} twice`);
	seen.add(key);
	const row = { ...image, entry: seq };
	return how === "change" ? updateStatement(table, row) : insertStatement(table, row);
}

/** Splits what an entry says into what may be shown and what may be withheld (null when nothing is). */
function bodyOf(env: Env, draft: EntryDraft): { open: Record<string, unknown>; withheld: Record<string, unknown> | null } {
	const open: Record<string, Record<string, unknown>> = {};
	const withheld: Record<string, Record<string, unknown>> = {};
	for (const { table, id, image } of draft.rows) {
		const hidden = WITHHELD[table];
		if (!hidden) {
			open[`${table}/${id}`] = image;
			continue;
		}
		open[`${table}/${id}`] = Object.fromEntries(Object.entries(image).filter(([column]) => !hidden.includes(column)));
		withheld[`${table}/${id}`] = Object.fromEntries(hidden.map((column) => [column, image[column] ?? null]));
	}
	return {
		open: { deed: env.deed, facts: draft.facts, rows: open },
		withheld:
			Object.keys(withheld).length > 0 || draft.sealed ? { rows: withheld, ...(draft.sealed ? { facts: draft.sealed } : {}) } : null,
	};
}

/** What a deed came to, and a digest of what was asked, so that the same id with other answers is not taken for a repeat. */
type Kept = { readonly asked: string | null; readonly result: unknown };

function firstResult<T>({ store, deed, asked }: Env): Result<T> | null {
	const receipt = store.writer.prepared(`SELECT "result" FROM "Receipt" WHERE "deed" = ?`).get(deed) as { result: string } | undefined;
	if (!receipt) return null;
	const kept = JSON.parse(receipt.result) as Kept;
	return kept.asked === (asked ?? null) ? ok(kept.result as T) : recordedOtherwise();
}

/** The same deed with other answers: the first ones count. */
export const recordedOtherwise = () =>
	refuse(
		"recorded-otherwise",
		"Your first answers were recorded when you pressed before, though the shop's answer did not reach you. Load the page again to see them, and correct them there.",
	);

type LastEntry = { readonly seq: number; readonly hash: string };

function lastEntry(writer: Writer): LastEntry {
	const last = writer.prepared(`SELECT "seq", "hash" FROM "Entry" ORDER BY "seq" DESC LIMIT 1`).get() as LastEntry | undefined;
	return last ?? { seq: 0, hash: NO_ENTRY };
}

type MachineHead = { readonly machineSeq: number; readonly hash: string };

function machineHead(writer: Writer, machine: string): MachineHead {
	const head = writer
		.prepared(`SELECT "machineSeq", "hash" FROM "Entry" WHERE "machine" = ? ORDER BY "machineSeq" DESC LIMIT 1`)
		.get(machine) as MachineHead | undefined;
	return head ?? { machineSeq: 0, hash: NO_ENTRY };
}
