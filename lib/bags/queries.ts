import { homeOf, homesOf, lyingFixing, lyingPart } from "@/lib/bags/lying";
import { bagFact, bagsAround, bagsOutside } from "@/lib/bags/nesting";
import { isNotFound } from "@/lib/bags/rules";
import type { Reader } from "@/lib/db/store";
import { placesUp } from "@/lib/store/queries";

export { leftInBag, shouldBeEmpty } from "@/lib/bags/leftOver";

/** Parts, lots of fixings and bags may lie here by the hundred; a page shows so many of each. */
const MOST_IN_A_BAG = 200;

/**
 * What lies in a bag: its parts, fixings and bags, each with where it belongs. A page shows the first of each; `more` says
 * how many it leaves off, and `pieces` counts those too.
 */
export async function whatIsIn(read: Reader, bagId: string) {
	const [allParts, allFixings, allBags, parts, fixings, bags] = await Promise.all([
		read.part.aggregate({ where: { bagId }, _count: { _all: true }, _sum: { count: true } }),
		read.fixing.aggregate({ where: { bagId }, _count: { _all: true }, _sum: { count: true } }),
		read.bag.count({ where: { parentId: bagId } }),
		read.part.findMany({ where: { bagId }, orderBy: [{ name: "asc" }, { id: "asc" }], take: MOST_IN_A_BAG, select: lyingPart }),
		read.fixing.findMany({ where: { bagId }, orderBy: { id: "asc" }, take: MOST_IN_A_BAG, select: lyingFixing }),
		read.bag.findMany({
			where: { parentId: bagId },
			orderBy: { id: "asc" },
			take: MOST_IN_A_BAG,
			select: {
				id: true,
				words: true,
				kind: true,
				role: true,
				caution: true,
				tag: { select: { id: true } },
				_count: { select: { parts: true, fixings: true, bags: true } },
			},
		}),
	]);
	return {
		parts: parts.map(({ fittings, tag, ...part }) => ({
			...part,
			tag: tag?.id ?? null,
			home: fittings[0] ? homeOf(fittings[0].position) : null,
		})),
		fixings: fixings.map(({ holds, ...fixing }) => ({ ...fixing, homes: homesOf(holds) })),
		bags: bags.map(({ tag, _count, ...bag }) => ({ ...bag, tag: tag?.id ?? null, things: _count.parts + _count.fixings + _count.bags })),
		/** Pieces in it, bags not counted: the figure that a hand checks. */
		pieces: (allParts._sum.count ?? 0) + (allFixings._sum.count ?? 0),
		more: allParts._count._all + allFixings._count._all + allBags - parts.length - fixings.length - bags.length,
	};
}

/** Where a thing is, from the inside out: the bags around it, then the way through the shop. */
export type Whereabouts = {
	/** "in 12-0210-1 in 12-0208-Q · Back room · rack B", "on the bench". */
	readonly words: string;
	/** Tags of the bags around it, innermost first. */
	readonly bags: readonly string[];
	readonly locationId: string | null;
	/** "Back room · rack B · shelf 2"; null when it lies at no place of the shop. */
	readonly path: string | null;
	/** The same way place by place, the room first. */
	readonly places: readonly { readonly id: string; readonly name: string }[];
	/** What is said where there is no way through the shop: "on the bench", "out: lent for a fair". */
	readonly last: string;
	/** The tag of the bag that is out of the shop with it; null when it is here. */
	readonly outIn: string | null;
};

/** Where a bag is. */
export async function whereBagIs(read: Reader, bagId: string): Promise<Whereabouts> {
	const [self, around] = await Promise.all([bagFact(read, bagId), bagsAround(read, bagId)]);
	const outermost = around.at(-1)?.id ?? bagId;
	const bag = await read.bag.findUnique({ where: { id: outermost }, select: { place: true, locationId: true, placeWhy: true } });
	const places = bag?.locationId ? (await placesUp(read, bag.locationId)).reverse() : [];
	const path = places.length > 0 ? pathOf(places) : null;
	const bags = around.map((outer) => outer.tag);
	const why = bag?.placeWhy ?? "";
	const out = isNotFound(why) ? why : `out: ${why}`;
	const last = { location: path ?? "somewhere", bench: "on the bench", out, void: "out of use", bag: "" }[bag?.place ?? "bench"];
	return {
		words: [bags.map((tag) => `in ${tag}`).join(" "), last].filter(Boolean).join(" · "),
		bags,
		locationId: bag?.locationId ?? null,
		path,
		places,
		last,
		outIn: self?.outIn ?? null,
	};
}

/** Where something lies that is in a bag, at a place, or on the bench. */
export async function whereIs(read: Reader, lies: { bagId: string | null; locationId: string | null }): Promise<Whereabouts> {
	if (lies.bagId !== null) {
		const [bag, outside] = await Promise.all([bagFact(read, lies.bagId), whereBagIs(read, lies.bagId)]);
		const tag = bag?.tag ?? "a bag";
		const around = outside.bags.length > 0 ? ` ${outside.words}` : ` · ${outside.words}`;
		return { ...outside, words: `in ${tag}${around}`, bags: [tag, ...outside.bags] };
	}
	if (lies.locationId !== null) {
		const places = (await placesUp(read, lies.locationId)).reverse();
		const path = places.length > 0 ? pathOf(places) : null;
		const words = path ?? "somewhere";
		return { words, bags: [], locationId: lies.locationId, path, places, last: words, outIn: null };
	}
	return { words: "on the bench", bags: [], locationId: null, path: null, places: [], last: "on the bench", outIn: null };
}

const pathOf = (places: readonly { readonly name: string }[]): string => places.map((place) => place.name).join(" · ");

/** Advice on what lies together looks at so many parts of a bag. */
const MOST_ADVISED = 12;

/** Bags of a machine (null: the shop's own) that something can go into, the last used first. */
export async function bagsToUse(read: Reader, machineId: string | null, most = 60) {
	const bags = await read.bag.findMany({
		where: { place: { not: "void" }, id: { notIn: await bagsOutside(read) }, OR: [{ machineId }, { machineId: null }] },
		orderBy: [{ entry: "desc" }],
		take: most,
		select: {
			id: true,
			words: true,
			kind: true,
			role: true,
			tag: { select: { id: true } },
			parts: { take: MOST_ADVISED, orderBy: { id: "asc" }, select: { name: true, material: true } },
		},
	});
	return bags.map(({ tag, parts, ...bag }) => ({ ...bag, tag: tag?.id ?? "", holds: parts }));
}
