// All that is at a place, down to the last screw: the places in it, their bags, the bags in those, parts and fixings.

import type { Reader } from "@/lib/db/store";
import { formatFixing } from "@/lib/fixings/fixingWords";
import { placesWithin } from "@/lib/store/counting";
import { DEEPEST } from "@/lib/store/queries";

export type Content = {
	readonly id: string;
	readonly kind: "bag" | "part" | "fixing";
	readonly tag: string | null;
	readonly words: string;
	/** What is in it, where it is a bag. */
	readonly inIt: readonly Content[];
};
export type PlaceContent = { readonly locationId: string; readonly way: string; readonly things: readonly Content[] };

/** A page lists so many of each; beyond it says that there is more. */
const MOST_LISTED = 1000;
const tag = { select: { id: true } } as const;

/** Place by place in the order of walking; places at which nothing lies are left out. `more`: not everything is listed. */
export async function contentsOf(read: Reader, locationId: string): Promise<{ places: PlaceContent[]; more: boolean }> {
	const ways = await placesWithin(read, locationId);
	const places = [...ways.keys()];
	const bags = await bagsBelow(read, places);
	const bagIds = bags.map(({ id }) => id);
	const lies = { OR: [{ bagId: { in: bagIds } }, { locationId: { in: places } }] };
	const [parts, fixings] = await Promise.all([
		read.part.findMany({
			where: lies,
			orderBy: [{ name: "asc" }, { id: "asc" }],
			take: MOST_LISTED + 1,
			select: { id: true, name: true, count: true, bagId: true, locationId: true, tag },
		}),
		read.fixing.findMany({
			where: { bagId: { in: bagIds } },
			orderBy: { id: "asc" },
			take: MOST_LISTED + 1,
			select: { id: true, count: true, thread: true, length: true, head: true, drive: true, note: true, bagId: true },
		}),
	]);
	const inBag = new Map<string, Content[]>();
	const atPlace = new Map<string, Content[]>();
	const put = (map: Map<string, Content[]>, at: string | null, thing: Content) => {
		if (at !== null) map.set(at, [...(map.get(at) ?? []), thing]);
	};
	for (const part of parts.slice(0, MOST_LISTED)) {
		const words = part.count > 1 ? `${part.count} x ${part.name}` : part.name;
		const thing: Content = { id: part.id, kind: "part", tag: part.tag?.id ?? null, words, inIt: [] };
		put(inBag, part.bagId, thing);
		put(atPlace, part.locationId, thing);
	}
	for (const fixing of fixings.slice(0, MOST_LISTED)) {
		put(inBag, fixing.bagId, { id: fixing.id, kind: "fixing", tag: null, words: formatFixing(fixing), inIt: [] });
	}
	// The innermost first, so that a bag is whole when it goes into the one around it.
	for (const bag of [...bags].reverse()) {
		const thing: Content = { id: bag.id, kind: "bag", tag: bag.tag?.id ?? null, words: bag.words, inIt: inBag.get(bag.id) ?? [] };
		put(inBag, bag.parentId, thing);
		put(atPlace, bag.locationId, thing);
	}
	const found = places.map((id) => ({ locationId: id, way: ways.get(id) ?? "", things: bagsFirst(atPlace.get(id) ?? []) }));
	const more = bags.length >= MOST_LISTED || parts.length > MOST_LISTED || fixings.length > MOST_LISTED;
	return { places: found.filter(({ things }) => things.length > 0), more };
}

/** Bags at these places and all bags in them, each after the one around it. */
async function bagsBelow(read: Reader, places: readonly string[]) {
	const select = { id: true, words: true, parentId: true, locationId: true, tag } as const;
	const found = await read.bag.findMany({
		where: { locationId: { in: [...places] } },
		orderBy: { id: "desc" },
		take: MOST_LISTED,
		select,
	});
	for (let depth = 0, level = found; level.length > 0 && depth < DEEPEST && found.length < MOST_LISTED; depth++) {
		level = await read.bag.findMany({
			where: { parentId: { in: level.map(({ id }) => id) } },
			orderBy: { id: "desc" },
			take: MOST_LISTED - found.length,
			select,
		});
		found.push(...level);
	}
	return found;
}

const bagsFirst = (things: readonly Content[]): Content[] => [
	...things.filter(({ kind }) => kind === "bag"),
	...things.filter(({ kind }) => kind !== "bag"),
];
