// What the last count of a place did not see, and what lies there all the same by the record.

import type { Whereabouts } from "@/lib/bags/queries";
import type { Reader } from "@/lib/db/store";
import { type LastCount, lastCounts } from "@/lib/store/queries";

/** When the last count of its place did not see a thing, or the bag around it, that was laid there before; null when it did. */
export async function unseenAt(
	read: Reader,
	where: Pick<Whereabouts, "bags" | "locationId">,
	own: { readonly tag: string; readonly sinceAt: string },
): Promise<string | null> {
	if (where.locationId === null) return null;
	const count = (await lastCounts(read, where.locationId)).get(where.locationId);
	const tag = where.bags.at(-1) ?? own.tag;
	if (!count?.missing.includes(tag)) return null;
	const around = tag === own.tag ? null : await read.bag.findFirst({ where: { tag: { id: tag } }, select: { sinceAt: true } });
	return count.at > (around?.sinceAt ?? own.sinceAt) ? count.at : null;
}

/** More than so many are looked for shelf by shelf. */
const MOST_UNSEEN = 100;

export type Unseen = { readonly tag: string; readonly name: string; readonly locationId: string; readonly at: string };

/** What these counts did not see and was not moved since, the last count first. A thing without a tag is on its count only. */
export async function unseenSince(read: Reader, counts: ReadonlyMap<string, LastCount>): Promise<Unseen[]> {
	const asked = [...counts]
		.flatMap(([locationId, { at, missing }]) => missing.map((tag) => ({ tag, locationId, at })))
		.sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : 0))
		.slice(0, MOST_UNSEEN);
	if (asked.length === 0) return [];
	const rows = await read.tag.findMany({
		where: { id: { in: asked.map(({ tag }) => tag) } },
		select: {
			id: true,
			part: { select: { name: true, locationId: true, sinceAt: true } },
			bag: { select: { words: true, locationId: true, sinceAt: true } },
		},
	});
	const known = new Map(rows.map(({ id, part, bag }) => [id, part ?? (bag && { ...bag, name: bag.words })]));
	return asked.flatMap(({ tag, locationId, at }): Unseen[] => {
		const thing = known.get(tag);
		return thing?.locationId === locationId && thing.sinceAt < at ? [{ tag, name: thing.name, locationId, at }] : [];
	});
}
