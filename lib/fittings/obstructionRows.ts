// What a take-out or a put-in teaches about what covers what, as rows.

import type { Reader } from "@/lib/db/store";
import type { Cover } from "@/lib/fittings/reach";
import { add, change, type RowChange } from "@/lib/ledger/rows";

type Anyway = { readonly reason: string; readonly covers: "withdraw" | "note" };

/** Obstructions that were passed by are withdrawn or noted; parts that had to come off first are added. */
export async function obstructionsAfterTakeOut(
	read: Reader,
	said: { positionId: string; anyway?: Anyway | null | undefined; cameBefore: readonly { partId: string; side: string }[] },
	covers: readonly Cover[],
	machineId: string,
	newId: () => string,
): Promise<RowChange[]> {
	const rows = said.anyway ? await passedBy(read, said.anyway, covers) : [];
	const passed = new Set(covers.map((cover) => `${cover.partId}/${cover.side}`));
	const known = await read.obstruction.findMany({ where: { positionId: said.positionId } });
	const done = new Set<string>();
	for (const { partId, side } of said.cameBefore) {
		const key = `${partId}/${side}`;
		if (done.has(key) || passed.has(key)) continue;
		done.add(key);
		const before = known.find((row) => row.partId === partId && row.side === side);
		if (!before) {
			rows.push(
				add("Obstruction", { id: newId(), machineId, partId, positionId: said.positionId, side, stands: "yes", note: "came off first" }),
			);
		} else if (before.stands === "no") rows.push(change("Obstruction", before, { stands: "yes" }));
	}
	return rows;
}

/** Obstructions that were passed by, and those that the part takes over from `like`. */
export async function obstructionsAfterPutIn(
	read: Reader,
	anyway: Anyway | null,
	covers: readonly Cover[],
	like: string | null,
	partId: string,
	positionId: string,
	newId: () => string,
): Promise<{ rows: RowChange[]; covers: Cover[] }> {
	const rows = anyway ? await passedBy(read, anyway, covers) : [];
	const taken: Cover[] = [];
	if (like === null || like === partId) return { rows, covers: taken };
	const [theirs, own] = await Promise.all([
		read.obstruction.findMany({ where: { partId: like, stands: "yes", positionId: { not: positionId } }, orderBy: { id: "asc" } }),
		read.obstruction.findMany({ where: { partId } }),
	]);
	for (const { machineId, positionId: covered, side, note } of theirs) {
		// Said or withdrawn of this very part already: that is better knowledge than what is said of the one before.
		if (own.some((row) => row.positionId === covered && row.side === side)) continue;
		const id = newId();
		rows.push(add("Obstruction", { id, machineId, partId, positionId: covered, side, stands: "yes", note }));
		taken.push({ obstructionId: id, partId, positionId: covered, side });
	}
	return { rows, covers: taken };
}

async function passedBy(read: Reader, anyway: Anyway, covers: readonly Cover[]): Promise<RowChange[]> {
	const rows = await read.obstruction.findMany({
		where: { id: { in: covers.map((cover) => cover.obstructionId) } },
		orderBy: { id: "asc" },
	});
	return rows.map((row) =>
		change("Obstruction", row, {
			stands: anyway.covers === "withdraw" ? "no" : "yes",
			note: [row.note, `passed by: ${anyway.reason}`].filter(Boolean).join("; ").slice(0, 1000),
		}),
	);
}
