// Two people correct the same row at once, or one in two tabs. Each page was made from the row as one entry left it; what
// was only shown and not touched must not undo what somebody else said since. The ledger has every row as it ever was.

import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { TableName, Tables } from "@/lib/ledger/rows";

type Image = Readonly<Record<string, unknown>>;

/** A row as entry `seq` says it was, or null when that entry does not speak of it. What was erased is left out. */
async function rowIn(read: Reader, key: string, seq: number): Promise<Image | null> {
	const entry = await read.entry.findUnique({ where: { seq }, select: { open: true } });
	const seal = await read.seal.findUnique({ where: { seq }, select: { withheld: true } });
	const images = (text: string | null | undefined) => (JSON.parse(text ?? `{"rows":{}}`) as { rows: Record<string, Image> }).rows;
	const open = entry && images(entry.open)[key];
	return open ? { ...open, ...images(seal?.withheld)[key] } : null;
}

/**
 * What a page says of a row, laid over the row as it stands. `seen` is the entry that described the row when the page was
 * made; null when nobody knows.
 *
 * A column that the page left as it was keeps what was said meanwhile. A column that both changed, each to something else,
 * is a refusal with a sentence for its field (named by `fields` where it is not the column's own name); its facts hold the
 * new `seen`, so that the same answers sent again are written over it.
 */
export async function overMeanwhile<T extends TableName, Patch extends Partial<Tables[T]>>(
	read: Reader,
	table: T,
	before: Tables[T],
	seen: number | null,
	patch: Patch,
	fields: Readonly<Record<string, string>> = {},
): Promise<Result<Patch>> {
	if (seen === null || before.entry <= seen) return ok(patch);
	const was = await rowIn(read, `${table}/${before.id}`, seen);
	if (was === null) return ok(patch);
	const stands: Image = { ...before };
	const merged: Record<string, unknown> = { ...patch };
	const both: Record<string, string> = {};
	for (const [column, typed] of Object.entries(patch)) {
		const then = column in was ? was[column] : stands[column];
		const now = stands[column];
		if (now === then || typed === now) continue;
		if (typed === then) merged[column] = now;
		else both[fields[column] ?? column] = "Somebody else changed this while your page was open. What you typed is still here.";
	}
	if (Object.keys(both).length === 0) return ok(merged as Patch);
	return refuse(
		"changed-meanwhile",
		"Somebody else changed the same while this page was open. Nothing of yours is recorded yet: press again to write it over theirs, or load the page again to see it.",
		{ fields: both, facts: { seen: before.entry } },
	);
}
