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

/** What a correcting page goes by. */
export type Seen = {
	/** The entry that described the row when the page was made; null when nobody knows. */
	readonly seen: number | null;
	/** Of an earlier refusal: how the row stood then, and which fields the person was told of. */
	readonly told: { readonly entry: number; readonly fields: readonly string[] } | null;
};

type Columns = {
	/** Columns whose field on the form has another name. */
	readonly fields?: Readonly<Record<string, string>>;
	/** Columns that only make sense together, such as low, likely and high: one person's, or the other's. */
	readonly together?: readonly (readonly string[])[];
};

/**
 * What a page says of a row, laid over the row as it stands.
 *
 * Columns that the page left as they were keep what was said meanwhile. Columns that both changed, each to something else,
 * are a refusal with a sentence for their fields; its facts hold `told`, and the same answers sent again with it are
 * written over those fields, and over no others.
 */
export async function overMeanwhile<T extends TableName, Patch extends Partial<Tables[T]>>(
	read: Reader,
	table: T,
	before: Tables[T],
	{ seen, told }: Seen,
	patch: Patch,
	{ fields = {}, together = [] }: Columns = {},
): Promise<Result<Patch>> {
	if (seen === null || before.entry <= seen) return ok(patch);
	const was = await rowIn(read, `${table}/${before.id}`, seen);
	if (was === null) return ok(patch);
	const [now, typed]: [Image, Image] = [{ ...before }, { ...patch }];
	const then = (column: string) => (column in was ? was[column] : now[column]);
	const apart = Object.keys(patch).filter((column) => !together.some((group) => group.includes(column)));
	const merged: Record<string, unknown> = { ...patch };
	const both: string[] = [];
	for (const group of [...together, ...apart.map((column) => [column])]) {
		const theirs = group.some((column) => now[column] !== then(column));
		const ours = group.some((column) => typed[column] !== then(column));
		if (theirs && !ours) for (const column of group) merged[column] = now[column];
		if (theirs && ours) both.push(...group.filter((column) => typed[column] !== now[column]).map((column) => fields[column] ?? column));
	}
	const untold = both.filter((field) => told?.entry !== before.entry || !told.fields.includes(field));
	if (untold.length === 0) return ok(merged as Patch);
	return refuse(
		"changed-meanwhile",
		"Somebody else changed the same while this page was open. Nothing of yours is recorded yet: press again to write it over theirs, or load the page again to see it.",
		{
			fields: Object.fromEntries(
				both.map((field) => [field, "Somebody else changed this while your page was open. What you typed is still here."]),
			),
			facts: { told: { entry: before.entry, fields: both } },
		},
	);
}

/** For what no page stands behind. */
export const UNSEEN: Seen = { seen: null, told: null };

type Link = { readonly stands: "yes" | "no"; readonly entry: number };

/** The links that are wanted: those that the page lists, but what was added or withdrawn since it was made stands as it does now. */
export function linksMeanwhile<L extends Link>(
	links: readonly L[],
	to: (link: L) => string,
	listed: readonly string[],
	seen: number | null,
): string[] {
	if (seen === null) return [...listed];
	const since = links.filter(({ entry }) => entry > seen);
	const withdrawn = since.filter(({ stands }) => stands === "no").map(to);
	const added = since.filter(({ stands }) => stands === "yes").map(to);
	return [...new Set([...listed.filter((id) => !withdrawn.includes(id)), ...added])];
}
