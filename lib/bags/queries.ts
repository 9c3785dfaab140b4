import { bagFact, bagsAround, bagsOutside } from "@/lib/bags/nesting";
import type { Reader } from "@/lib/db/store";
import { formatFixing } from "@/lib/fixings/fixingWords";
import { locationPath } from "@/lib/store/queries";

/** A part or a lot of fixings may lie here by the hundred; a page shows so many. */
const MOST_IN_A_BAG = 200;

const positionShown = {
	select: { id: true, mark: true, name: true, machine: { select: { number: true } }, part: { select: { id: true } } },
} as const;

const lyingPart = {
	id: true,
	name: true,
	count: true,
	origin: true,
	works: true,
	condition: true,
	tag: { select: { id: true } },
	fittings: { orderBy: [{ fromAt: "desc" as const }, { id: "desc" as const }], take: 1, select: { position: positionShown } },
};

const lyingFixing = {
	id: true,
	count: true,
	thread: true,
	length: true,
	head: true,
	drive: true,
	tightness: true,
	differs: true,
	note: true,
	holds: { orderBy: { id: "asc" }, take: 20, select: { fitting: { select: { position: positionShown } } } },
} as const;

/** A position where something was, and whether a part is there now. */
export type Home = { readonly mark: string; readonly name: string; readonly machineNumber: number; readonly filled: boolean };

type PositionShown = { id: string; mark: string; name: string; machine: { number: number }; part: { id: string } | null };
const homeOf = (position: PositionShown): Home => ({
	mark: position.mark,
	name: position.name,
	machineNumber: position.machine.number,
	filled: position.part !== null,
});

/** The positions that a fixing held, each once. */
function homesOf(holds: readonly { fitting: { position: PositionShown } }[]): Home[] {
	const homes = new Map(holds.map(({ fitting }) => [fitting.position.id, homeOf(fitting.position)]));
	return [...homes.values()];
}

/** What lies in a bag: its parts, fixings and bags, each with where it belongs. */
export async function whatIsIn(read: Reader, bagId: string) {
	const [parts, fixings, bags] = await Promise.all([
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
	/** The tag of the bag that is out of the shop with it; null when it is here. */
	readonly outIn: string | null;
};

/** Where a bag is. */
export async function whereBagIs(read: Reader, bagId: string): Promise<Whereabouts> {
	const [self, around] = await Promise.all([bagFact(read, bagId), bagsAround(read, bagId)]);
	const outermost = around.at(-1)?.id ?? bagId;
	const bag = await read.bag.findUnique({ where: { id: outermost }, select: { place: true, locationId: true, placeWhy: true } });
	const path = bag?.locationId ? await locationPath(read, bag.locationId) : null;
	const bags = around.map((outer) => outer.tag);
	const last = { location: path ?? "somewhere", bench: "on the bench", out: `out: ${bag?.placeWhy ?? ""}`, void: "out of use", bag: "" }[
		bag?.place ?? "bench"
	];
	return {
		words: [bags.map((tag) => `in ${tag}`).join(" "), last].filter(Boolean).join(" · "),
		bags,
		locationId: bag?.locationId ?? null,
		path,
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
		const path = await locationPath(read, lies.locationId);
		return { words: path ?? "somewhere", bags: [], locationId: lies.locationId, path, outIn: null };
	}
	return { words: "on the bench", bags: [], locationId: null, path: null, outIn: null };
}

/** A holding bag with something in it whose place in the machine is filled again, or whose machine is finished: something was left out. */
export type LeftOver = {
	readonly bagId: string;
	readonly tag: string;
	readonly words: string;
	readonly machine: { readonly number: number; readonly name: string } | null;
	/** "6 x No.8 wood x 1, round, of lower rear panel (k01)" */
	readonly things: readonly string[];
};

const MOST_LEFT_OVER = 200;
const FINISHED: ("ready" | "left")[] = ["ready", "left"];

/**
 * Holding bags that should be empty by now and are not: of one machine, or of the whole shop. A fixing counts once every
 * position that it held has a part again; a part once its last position has; everything once the machine is finished.
 */
export async function shouldBeEmpty(read: Reader, machineId?: string): Promise<LeftOver[]> {
	const bags = await read.bag.findMany({
		where: {
			role: "holding",
			place: { not: "void" },
			...(machineId === undefined ? {} : { machineId }),
			OR: [
				{ parts: { some: { fittings: { some: { position: { part: { isNot: null } } } } } } },
				{ fixings: { some: { holds: { some: { fitting: { position: { part: { isNot: null } } } } } } } },
				{ machine: { state: { in: FINISHED } }, OR: [{ parts: { some: {} } }, { fixings: { some: {} } }] },
			],
		},
		orderBy: { id: "asc" },
		take: MOST_LEFT_OVER,
		select: {
			id: true,
			words: true,
			tag: { select: { id: true } },
			machine: { select: { number: true, name: true, state: true } },
			parts: { take: MOST_IN_A_BAG, orderBy: { id: "asc" }, select: lyingPart },
			fixings: { take: MOST_IN_A_BAG, orderBy: { id: "asc" }, select: lyingFixing },
		},
	});
	return bags.flatMap((bag) => {
		const finished = FINISHED.some((state) => state === bag.machine?.state);
		const parts = bag.parts
			.map((part) => ({ part, home: part.fittings[0] ? homeOf(part.fittings[0].position) : null }))
			.filter(({ home }) => finished || home?.filled)
			.map(({ part, home }) => `${part.count > 1 ? `${part.count} x ` : ""}${part.name}${home ? `, of ${home.name} (${home.mark})` : ""}`);
		const fixings = bag.fixings
			.map((fixing) => ({ fixing, homes: homesOf(fixing.holds) }))
			.filter(({ homes }) => finished || (homes.length > 0 && homes.every((home) => home.filled)))
			.map(({ fixing, homes }) =>
				homes.length === 0
					? formatFixing(fixing)
					: `${formatFixing(fixing)}, of ${homes.map((home) => `${home.name} (${home.mark})`).join(" and ")}`,
			);
		const things = [...parts, ...fixings];
		if (things.length === 0) return [];
		const machine = bag.machine && { number: bag.machine.number, name: bag.machine.name };
		return [{ bagId: bag.id, tag: bag.tag?.id ?? "", words: bag.words, machine, things }];
	});
}

/** Bags of a machine (null: the shop's own) that something can go into, the last used first. */
export async function bagsToUse(read: Reader, machineId: string | null, most = 60) {
	const bags = await read.bag.findMany({
		where: { place: { not: "void" }, id: { notIn: await bagsOutside(read) }, OR: [{ machineId }, { machineId: null }] },
		orderBy: [{ entry: "desc" }],
		take: most,
		select: { id: true, words: true, kind: true, role: true, tag: { select: { id: true } } },
	});
	return bags.map(({ tag, ...bag }) => ({ ...bag, tag: tag?.id ?? "" }));
}
