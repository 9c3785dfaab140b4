// The one door. A deed and its entry are written in one transaction, or neither is.
//
// Contract: when `record` returns `ok`, the change and its entry are on the disk (synchronous=FULL), the entry's number
// is given for ever, and numbers have no holes. A refusal has written nothing. The same `deed` id sent again writes
// nothing and returns the first result.
//
// How: deeds stand in a queue; each reads committed data through the reader, a pure rule decides, and one batch writes
// entry, seal, rows and receipt. Every writer must take the next entry number, so if another process wrote in between,
// the number is taken, the batch fails as a whole, and the deed is decided again on what is true now.

import { err, ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import type { Reader, Store } from "@/lib/db/store";
import { canonical } from "@/lib/ledger/canonical";
import type { Env } from "@/lib/ledger/env";
import { entryHash, sealOf } from "@/lib/ledger/hash";
import { refusalOfDatabase } from "@/lib/ledger/refusals";
import type { Deed, EntryDraft, RowChange } from "@/lib/ledger/rows";
import { insertStatements, type Statement, updateStatement } from "@/lib/ledger/statements";
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
	for (let attempt = 1; ; attempt++) {
		const first = await firstResult<T>(env);
		if (first) return ok(first.result);
		// Before anything is read for the decision: whatever is written elsewhere after this takes the next number.
		const last = await lastEntry(env.store);
		const ruling = await decide(env.store.read);
		if (!ruling.ok) return ruling;
		const written = await write(env, last, ruling.value);
		if (written === "written") return ok(ruling.value.result);
		if (written !== "number-taken") return err(written);
		if (attempt === TRIES) return refuse("busy", "The shop's book is being written from elsewhere. Nothing was changed; try again.");
	}
}

async function firstResult<T>(env: Env): Promise<{ result: T } | null> {
	const receipt = await env.store.read.receipt.findUnique({ where: { deed: env.deed }, select: { result: true } });
	return receipt ? { result: JSON.parse(receipt.result) as T } : null;
}

async function write<T>(env: Env, last: LastEntry, deed: Deed<T>): Promise<"written" | "number-taken" | Refusal> {
	if (deed.entries.length === 0) throw new Error("a deed without an entry");
	const statements = await statementsOf(env, last, deed);
	try {
		// The first statement is an insert, so the lock is taken at once and no read of ours can grow stale.
		await env.store.writer.$transaction(statements.map(({ sql, values }) => env.store.writer.$executeRawUnsafe(sql, ...values)));
		return "written";
	} catch (error) {
		return refusalOfDatabase(error);
	}
}

async function statementsOf<T>(env: Env, last: LastEntry, deed: Deed<T>): Promise<Statement[]> {
	const at = env.clock();
	const machines = await machineHeads(env.store, deed.entries);
	const statements: Statement[] = [];
	const rows: { seq: number; change: RowChange }[] = [];
	let { seq, hash } = last;
	const firstSeq = seq + 1;
	for (const draft of deed.entries) {
		seq += 1;
		const { open, withheld } = bodyOf(env, draft);
		const salt = withheld === null ? null : env.salt();
		const ofMachine = draft.machine === null ? null : (machines.get(draft.machine) ?? { machineSeq: 0, hash: NO_ENTRY });
		const entry = {
			seq,
			machine: draft.machine,
			machineSeq: ofMachine ? ofMachine.machineSeq + 1 : null,
			at,
			actor: env.actor,
			action: draft.action,
			subject: `${draft.subject.table}/${draft.subject.id}`,
			open,
			seal: salt === null ? null : sealOf(salt, withheld),
			prev: hash,
			prevOfMachine: ofMachine ? ofMachine.hash : null,
		};
		hash = entryHash(entry);
		if (draft.machine !== null) machines.set(draft.machine, { machineSeq: entry.machineSeq ?? 0, hash });
		statements.push(...insertStatements("Entry", [{ ...entry, open: canonical(open), hash }]));
		if (salt !== null) statements.push(...insertStatements("Seal", [{ seq, salt, withheld: canonical(withheld) }]));
		for (const change of draft.rows) rows.push({ seq, change });
	}
	statements.push(...rowStatements(rows));
	// Last: the triggers on Receipt check what only the whole deed can show.
	statements.push(...insertStatements("Receipt", [{ deed: env.deed, seq: firstSeq, result: JSON.stringify(deed.result) }]));
	return statements;
}

/** Rows in the order given; neighbours that are added to the same table go in one statement. */
function rowStatements(rows: readonly { seq: number; change: RowChange }[]): Statement[] {
	const seen = new Set<string>();
	const statements: Statement[] = [];
	let batch: Record<string, string | number | null>[] = [];
	let batchTable = "";
	const flush = () => {
		if (batch.length > 0) statements.push(...insertStatements(batchTable, batch));
		batch = [];
	};
	for (const { seq, change } of rows) {
		const key = `${change.table}/${change.id}`;
		if (seen.has(key)) throw new Error(`a deed writes ${key} twice`);
		seen.add(key);
		const row = { ...change.image, entry: seq };
		if (change.how === "change") {
			flush();
			statements.push(updateStatement(change.table, row));
		} else {
			if (change.table !== batchTable) flush();
			batchTable = change.table;
			batch.push(row);
		}
	}
	flush();
	return statements;
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
		withheld: Object.keys(withheld).length > 0 ? { rows: withheld } : null,
	};
}

type LastEntry = { readonly seq: number; readonly hash: string };

async function lastEntry(store: Store): Promise<LastEntry> {
	const last = await store.read.entry.findFirst({ orderBy: { seq: "desc" }, select: { seq: true, hash: true } });
	return last ?? { seq: 0, hash: NO_ENTRY };
}

type MachineHead = { readonly machineSeq: number; readonly hash: string };

async function machineHeads(store: Store, entries: readonly EntryDraft[]): Promise<Map<string, MachineHead>> {
	const heads = new Map<string, MachineHead>();
	for (const machine of new Set(entries.flatMap((entry) => entry.machine ?? []))) {
		const head = await store.read.entry.findFirst({
			where: { machine },
			orderBy: { machineSeq: "desc" },
			select: { machineSeq: true, hash: true },
		});
		if (head) heads.set(machine, { machineSeq: head.machineSeq ?? 0, hash: head.hash });
	}
	return heads;
}
