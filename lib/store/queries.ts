import { z } from "zod";
import { partsAway } from "@/lib/bags/nesting";
import type { Reader } from "@/lib/db/store";
import type { PlaceFact } from "@/lib/store/rules";

/** Room, rack, shelf, bin, and room to spare; deeper is a slip. */
export const DEEPEST = 16;

/** A place and the places around it, innermost first; empty when there is no such place. */
export async function placesUp(read: Reader, locationId: string): Promise<PlaceFact[]> {
	const up: PlaceFact[] = [];
	for (let id: string | null = locationId; id !== null && up.length < DEEPEST; ) {
		const place: { id: string; name: string; parentId: string | null } | null = await read.location.findUnique({
			where: { id },
			select: { id: true, name: true, parentId: true },
		});
		if (!place) break;
		up.push({ id: place.id, name: place.name });
		id = place.parentId;
	}
	return up;
}

/** The way to a place in the shop, "Back room · rack B · shelf 2", or null when there is no such place. */
export async function locationPath(read: Reader, locationId: string): Promise<string | null> {
	const up = await placesUp(read, locationId);
	return up.length === 0
		? null
		: up
				.reverse()
				.map((place) => place.name)
				.join(" · ");
}

/** A shop has some hundreds of shelves; more than this are not walked. */
export const MOST_PLACES = 3000;
const MOST_AT_A_PLACE = 300;

export type PlaceInTree = {
	readonly id: string;
	readonly name: string;
	readonly kind: "room" | "rack" | "shelf" | "bin";
	readonly parentId: string | null;
	readonly depth: number;
	/** Things that lie right here, not further inside. */
	readonly bags: number;
	readonly parts: number;
};

/** Every place in the shop in the order of walking, with how much lies at each. */
export async function placesInOrder(read: Reader): Promise<PlaceInTree[]> {
	const [rows, bags, parts] = await Promise.all([
		read.location.findMany({
			orderBy: [{ rank: "asc" }, { name: "asc" }, { id: "asc" }],
			take: MOST_PLACES,
			select: { id: true, name: true, kind: true, parentId: true },
		}),
		read.bag.groupBy({ by: ["locationId"], where: { locationId: { not: null } }, _count: { _all: true } }),
		read.part.groupBy({ by: ["locationId"], where: { locationId: { not: null } }, _count: { _all: true } }),
	]);
	const bagsAt = new Map(bags.map((row) => [row.locationId, row._count._all]));
	const partsAt = new Map(parts.map((row) => [row.locationId, row._count._all]));
	const inside = new Map<string | null, typeof rows>();
	for (const row of rows) inside.set(row.parentId, [...(inside.get(row.parentId) ?? []), row]);
	const walk = (parentId: string | null, depth: number): PlaceInTree[] =>
		depth > DEEPEST
			? []
			: (inside.get(parentId) ?? []).flatMap((row) => [
					{ ...row, depth, bags: bagsAt.get(row.id) ?? 0, parts: partsAt.get(row.id) ?? 0 },
					...walk(row.id, depth + 1),
				]);
	return walk(null, 0);
}

/** The places as choices, each with its whole way: "Back room · rack B · shelf 2". */
export function pathsOf(places: readonly PlaceInTree[]): { id: string; path: string }[] {
	const way: string[] = [];
	return places.map((place) => {
		way.length = place.depth;
		way.push(place.name);
		return { id: place.id, path: way.join(" · ") };
	});
}

/** What lies right at a place: bags, and parts without a bag. */
export async function whatLiesAt(read: Reader, locationId: string) {
	const [bags, parts] = await Promise.all([
		read.bag.findMany({ where: { locationId }, orderBy: { id: "asc" }, take: MOST_AT_A_PLACE, select: bagLine }),
		read.part.findMany({ where: { locationId }, orderBy: { id: "asc" }, take: MOST_AT_A_PLACE, select: partLine }),
	]);
	return { bags: bags.map(lineOfBag), parts: parts.map(lineOfPart) };
}

/** What is in hand and not yet put away: taken out or made, and laid on the bench. */
export async function notPutAway(read: Reader, machineId?: string) {
	const of = machineId === undefined ? {} : { machineId };
	const [bags, parts] = await Promise.all([
		read.bag.findMany({ where: { place: "bench", ...of }, orderBy: { sinceAt: "asc" }, take: MOST_AT_A_PLACE, select: bagLine }),
		read.part.findMany({ where: { place: "bench", ...of }, orderBy: { sinceAt: "asc" }, take: MOST_AT_A_PLACE, select: partLine }),
	]);
	return { bags: bags.map(lineOfBag), parts: parts.map(lineOfPart) };
}

/** Parts outside the shop, by themselves or with the bag that they lie in: who has them, since when, when they are due; those due first, first. */
export async function outside(read: Reader, machineId?: string) {
	const rows = await read.part.findMany({
		where: { ...(await partsAway(read)), ...(machineId === undefined ? {} : { machineId }) },
		orderBy: [{ dueDay: { sort: "asc", nulls: "last" } }, { sinceAt: "asc" }, { id: "asc" }],
		take: MOST_AT_A_PLACE,
		select: { ...partLine, dueDay: true, placeWhy: true, party: { select: { name: true } } },
	});
	return rows.map((row) => ({ ...lineOfPart(row), dueDay: row.dueDay, why: row.placeWhy, party: row.party?.name ?? null }));
}

/** Bags that are out of the shop or missing, the longest first: why, and how much is in them. */
export async function bagsOut(read: Reader) {
	const rows = await read.bag.findMany({
		where: { place: "out" },
		orderBy: [{ sinceAt: "asc" }, { id: "asc" }],
		take: MOST_AT_A_PLACE,
		select: { ...bagLine, placeWhy: true },
	});
	return rows.map(lineOfBag);
}

/** Parts that were given up as lost and may still turn up, the last first. */
export async function lostParts(read: Reader) {
	const rows = await read.part.findMany({
		where: { place: "lost" },
		orderBy: [{ sinceAt: "desc" }, { id: "asc" }],
		take: MOST_AT_A_PLACE,
		select: { ...partLine, placeWhy: true },
	});
	return rows.map((row) => ({ ...lineOfPart(row), why: row.placeWhy }));
}

/** The last count of a place: when, by whom, what was missing then, and the whole of it as a sentence. */
export type LastCount = { readonly at: string; readonly by: string; readonly say: string; readonly missing: readonly string[] };

const lastCountsSchema = z.array(z.object({ subject: z.string(), at: z.string(), by: z.string().nullable(), open: z.string() }));
const countFactsSchema = z.object({ facts: z.object({ say: z.string(), missing: z.array(z.string()) }) });

/** The last count of each place that was ever counted, by the place's id; of one place, where one is asked for. */
export async function lastCounts(read: Reader, locationId?: string): Promise<Map<string, LastCount>> {
	// All subjects that begin with "Location/": "0" is the character after "/".
	const [from, before] = locationId === undefined ? ["Location/", "Location0"] : [`Location/${locationId}`, `Location/${locationId}0`];
	const rows = lastCountsSchema.parse(
		await read.$queryRaw`SELECT e."subject", e."at", p."initials" AS "by", e."open" FROM "Entry" e
			JOIN (SELECT max("seq") AS "seq" FROM "Entry" WHERE "subject" >= ${from} AND "subject" < ${before} AND "action" = 'place.counted'
				GROUP BY "subject") l ON l."seq" = e."seq"
			LEFT JOIN "Person" p ON p."id" = e."actor"`,
	);
	return new Map(
		rows.map(({ subject, at, by, open }) => {
			const { say, missing } = countFactsSchema.parse(JSON.parse(open)).facts;
			return [subject.slice("Location/".length), { at, by: by ?? "", say, missing }];
		}),
	);
}

/** The tags of places, by their ids; a place without one is left out. */
export async function tagsOfPlaces(read: Reader): Promise<Map<string, string>> {
	const rows = await read.placeTag.findMany({ take: MOST_PLACES, select: { id: true, locationId: true } });
	return new Map(rows.map((row) => [row.locationId, row.id]));
}

const machineLine = { select: { number: true, name: true } } as const;
const tagLine = { select: { id: true } } as const;
const bagLine = {
	id: true,
	words: true,
	kind: true,
	role: true,
	caution: true,
	sinceAt: true,
	tag: tagLine,
	machine: machineLine,
	_count: { select: { parts: true, fixings: true, bags: true } },
} as const;
const partLine = { id: true, name: true, count: true, origin: true, sinceAt: true, tag: tagLine, machine: machineLine } as const;

type MachineLine = { number: number; name: string };

const lineOfBag = <T extends { tag: { id: string } | null; _count: { parts: number; fixings: number; bags: number } }>({
	tag,
	_count,
	...bag
}: T) => ({ ...bag, tag: tag?.id ?? null, things: _count.parts + _count.fixings + _count.bags });

const lineOfPart = (part: {
	id: string;
	name: string;
	count: number;
	origin: "original" | "period" | "reproduction" | "modern" | "unknown";
	sinceAt: string;
	tag: { id: string } | null;
	machine: MachineLine;
}) => ({
	id: part.id,
	name: part.name,
	count: part.count,
	origin: part.origin,
	sinceAt: part.sinceAt,
	machine: part.machine,
	tag: part.tag?.id ?? null,
});
