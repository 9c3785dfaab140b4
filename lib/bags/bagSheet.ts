// What the page of a bag shows.

import { whatIsIn, whereBagIs } from "@/lib/bags/queries";
import { saidOf } from "@/lib/bags/said";
import type { Reader } from "@/lib/db/store";

/** Everything about one bag, or null when there is no such bag. */
export async function bagSheet(read: Reader, bagId: string) {
	const found = await read.bag.findUnique({
		where: { id: bagId },
		select: {
			id: true,
			kind: true,
			role: true,
			words: true,
			caution: true,
			place: true,
			placeWhy: true,
			sinceAt: true,
			parentId: true,
			locationId: true,
			machineId: true,
			tag: { select: { id: true } },
			machine: { select: { id: true, number: true, name: true } },
		},
	});
	if (!found) return null;
	const [inIt, where, said] = await Promise.all([whatIsIn(read, bagId), whereBagIs(read, bagId), saidOf(read, `Bag/${bagId}`)]);
	const { tag, ...bag } = found;
	return {
		...bag,
		tag: tag?.id ?? "",
		inIt,
		where,
		pieces: inIt.pieces,
		said,
	};
}

export type BagSheet = NonNullable<Awaited<ReturnType<typeof bagSheet>>>;
