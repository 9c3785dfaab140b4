// What the take-out and put-in screens show.

import { bagsToUse, whereIs } from "@/lib/bags/queries";
import type { Reader } from "@/lib/db/store";
import { PICTURES } from "@/lib/files/mediaTypes";
import { commonFixings, mirroredFixings } from "@/lib/fittings/fixingOffers";
import { whatCovers } from "@/lib/fittings/reach";
import { partNames, reachFacts } from "@/lib/fittings/reachFacts";
import { coversInWords, mayBeFitted } from "@/lib/fittings/rules";
import { formatFixing } from "@/lib/fixings/fixingWords";
import { sidesOf } from "@/lib/positions/sides";
import { pathsOf, placesInOrder } from "@/lib/store/queries";
import { readTag } from "@/lib/tags/readTag";

/** The machine of a number, as these screens name it. */
export const machineNumbered = (read: Reader, number: number) =>
	read.machine.findUnique({ where: { number }, select: { id: true, number: true, name: true, state: true, hazards: true } });

export type Occupied = {
	readonly positionId: string;
	readonly mark: string;
	readonly name: string;
	readonly area: string;
	readonly part: { readonly id: string; readonly name: string; readonly tag: string | null; readonly origin: string };
	/** Likely minutes to take it out; null without an estimate. */
	readonly minutes: number | null;
	/** "the sign box and the front glass"; empty when it can be reached now. */
	readonly behind: string;
};

/** Every position of a machine that holds a part: what can be reached now first, each kind in building order. */
export async function occupiedPositions(read: Reader, machineId: string): Promise<Occupied[]> {
	const [facts, positions] = await Promise.all([
		reachFacts(read, machineId),
		read.position.findMany({
			where: { machineId, part: { isNot: null } },
			orderBy: [{ rank: "asc" }, { mark: "asc" }],
			select: {
				id: true,
				mark: true,
				name: true,
				area: true,
				outLikely: true,
				part: { select: { id: true, name: true, origin: true, tag: { select: { id: true } } } },
			},
		}),
	]);
	const names = await partNames(
		read,
		facts.covers.map((cover) => cover.partId),
	);
	const rows = positions.flatMap((position): Occupied[] => {
		if (!position.part) return [];
		const { tag, ...part } = position.part;
		return [
			{
				positionId: position.id,
				mark: position.mark,
				name: position.name,
				area: position.area,
				part: { ...part, tag: tag?.id ?? null },
				minutes: position.outLikely,
				behind: coversInWords(whatCovers(facts, position.id), names),
			},
		];
	});
	return [...rows.filter((row) => row.behind === ""), ...rows.filter((row) => row.behind !== "")];
}

/** Positions that can hold a part and are empty now, in building order, with the name of the part that was there last. */
export async function emptyPositions(read: Reader, machineId: string) {
	const rows = await read.position.findMany({
		where: { machineId, kind: "seat", part: { is: null } },
		orderBy: [{ rank: "asc" }, { mark: "asc" }],
		take: 500,
		select: {
			id: true,
			mark: true,
			name: true,
			fittings: { orderBy: [{ untilAt: "desc" }, { id: "desc" }], take: 1, select: { part: { select: { name: true } } } },
		},
	});
	return rows.map(({ fittings, ...position }) => ({ ...position, last: fittings[0]?.part.name ?? null }));
}

export const fixingShown = {
	id: true,
	count: true,
	thread: true,
	length: true,
	head: true,
	drive: true,
	tightness: true,
	differs: true,
	note: true,
	place: true,
	bagId: true,
	holds: { select: { fittingId: true, fitting: { select: { untilAt: true, position: { select: { name: true, mark: true } } } } } },
} as const;

export const wireShown = {
	id: true,
	from: true,
	to: true,
	colour: true,
	base: true,
	tracer: true,
	gauge: true,
	tagFrom: true,
	tagTo: true,
	state: true,
	note: true,
} as const;

const positionShown = {
	id: true,
	machineId: true,
	mark: true,
	name: true,
	area: true,
	kind: true,
	sides: true,
	note: true,
	outLikely: true,
	inLikely: true,
	host: { select: { name: true, tag: { select: { id: true } }, position: { select: { name: true } } } },
	mirror: { select: { name: true, mark: true } },
} as const;

/** Photos that show a position or its part, the latest first. */
const photosOf = (read: Reader, positionId: string, partId: string | null, most: number) =>
	read.capture.findMany({
		where: {
			kind: { in: ["photo", "drawing"] },
			stands: "yes",
			file: { mediaType: { in: [...PICTURES] } },
			OR: [{ positionId }, ...(partId === null ? [] : [{ partId }])],
		},
		orderBy: [{ takenAt: "desc" }, { id: "desc" }],
		take: most,
		select: { id: true, fileSha: true, words: true, takenAt: true },
	});

/** Steps of the machine that a deed at the position may belong to: those of the position first, running ones before planned. */
async function stepsFor(read: Reader, machineId: string, positionId: string) {
	const steps = await read.step.findMany({
		where: { machineId, state: { in: ["doing", "planned"] } },
		orderBy: [{ state: "desc" }, { number: "asc" }],
		take: 100,
		select: { id: true, number: true, title: true, state: true, positionId: true },
	});
	return [...steps].sort((a, b) => Number(b.positionId === positionId) - Number(a.positionId === positionId));
}

export const conversionsOf = (read: Reader, machineId: string) =>
	read.conversion.findMany({
		where: { machineId },
		orderBy: { number: "desc" },
		take: 100,
		select: { id: true, number: true, name: true, purpose: true },
	});

/** All that the bench needs to take out what is in a position; null when the machine has no such position. */
export async function takeOutSheet(read: Reader, machineId: string, mark: string) {
	const position = await read.position.findUnique({ where: { machineId_mark: { machineId, mark } }, select: positionShown });
	if (!position) return null;
	const fitting = await read.fitting.findFirst({
		where: { positionId: position.id, untilAt: null },
		select: {
			id: true,
			wayRound: true,
			fromAt: true,
			part: {
				select: {
					id: true,
					name: true,
					count: true,
					origin: true,
					works: true,
					condition: true,
					material: true,
					machineId: true,
					tag: { select: { id: true } },
					hosts: { where: { part: { isNot: null } }, orderBy: { rank: "asc" }, take: 60, select: { name: true, mark: true } },
				},
			},
			holds: { orderBy: { id: "asc" }, take: 60, select: { fixing: { select: fixingShown } } },
			connections: { orderBy: { id: "asc" }, take: 300, select: wireShown },
			settings: { orderBy: { id: "asc" }, take: 40, select: { id: true, kind: true, value: true } },
		},
	});
	const partId = fitting?.part.id ?? null;
	const [photos, steps, conversions, bags, places, facts, came] = await Promise.all([
		photosOf(read, position.id, partId, 12),
		stepsFor(read, machineId, position.id),
		conversionsOf(read, machineId),
		bagsToUse(read, fitting?.part.machineId ?? machineId),
		placesInOrder(read),
		reachFacts(read, machineId),
		lastTakenOut(read, machineId, position.id),
	]);
	const covers = whatCovers(facts, position.id);
	const [names, mirrored, common] = await Promise.all([
		partNames(
			read,
			covers.map((cover) => cover.partId),
		),
		mirroredFixings(read, [position.id]),
		commonFixings(read, machineId),
	]);
	const markOf = await seatMarks(
		read,
		covers.flatMap((cover) => facts.seatOf.get(cover.partId) ?? []),
	);
	return {
		position: { ...position, sides: sidesOf(position.sides) },
		fitting: fitting && {
			...fitting,
			holds: undefined,
			part: { ...fitting.part, tag: fitting.part.tag?.id ?? null },
			fixings: fitting.holds.map(({ fixing: { holds, ...fixing } }) => ({
				...fixing,
				/** Other parts that it still holds. */
				alsoHolds: holds
					.filter((hold) => hold.fittingId !== fitting.id && hold.fitting.untilAt === null)
					.map((hold) => hold.fitting.position),
			})),
		},
		behind: coversInWords(covers, names),
		coveredBy: covers.map((cover) => ({
			name: names.get(cover.partId)?.name ?? "a part",
			tag: names.get(cover.partId)?.tag ?? null,
			mark: markOf.get(facts.seatOf.get(cover.partId) ?? "") ?? null,
			side: cover.side,
		})),
		photos: photos.flatMap((photo) => (photo.fileSha === null ? [] : [{ ...photo, fileSha: photo.fileSha }])),
		steps,
		conversions,
		bags,
		places: pathsOf(places),
		came,
		/** Fixings to be had with one tap where none are on record. */
		offers: [...(mirrored.get(position.id) ?? []), ...common],
	};
}

async function seatMarks(read: Reader, positionIds: readonly string[]): Promise<Map<string, string>> {
	const rows = await read.position.findMany({ where: { id: { in: [...positionIds] } }, select: { id: true, mark: true } });
	return new Map(rows.map((row) => [row.id, row.mark]));
}

/** Parts of the machine that came out last and are still out: one of them may have had to come off first. */
async function lastTakenOut(read: Reader, machineId: string, positionId: string) {
	const fittings = await read.fitting.findMany({
		where: { machineId, untilAt: { not: null }, positionId: { not: positionId }, part: { positionId: null } },
		orderBy: [{ untilAt: "desc" }, { id: "desc" }],
		take: 8,
		select: { partId: true, part: { select: { name: true, obstructs: { where: { positionId, stands: "yes" }, select: { id: true } } } } },
	});
	const seen = new Map<string, { partId: string; name: string; known: boolean }>();
	for (const { partId, part } of fittings) {
		if (!seen.has(partId)) seen.set(partId, { partId, name: part.name, known: part.obstructs.length > 0 });
	}
	return [...seen.values()];
}

export type Candidate = {
	readonly id: string;
	readonly name: string;
	readonly tag: string | null;
	readonly count: number;
	readonly origin: "original" | "period" | "reproduction" | "modern" | "unknown";
	readonly works: "works" | "faulty" | "unknown";
	readonly where: string;
	/** Why it cannot go in; null when it can. */
	readonly cannot: string | null;
	/** Was here before; another machine's, asked for by its tag; loose; bought for this machine. */
	readonly from: "here" | "foreign" | "loose" | "bought";
	readonly machineNumber: number;
};

const MOST_LOOSE = 300;

/**
 * All that the bench needs to put a part into a position; null when the machine has no such position. `wanted` is the id
 * or tag of a part that is asked for: it is offered even when it is another machine's.
 */
export async function putInSheet(read: Reader, machineId: string, mark: string, wanted: string | null = null) {
	const position = await read.position.findUnique({
		where: { machineId_mark: { machineId, mark } },
		select: { ...positionShown, part: { select: { id: true, name: true, tag: { select: { id: true } } } } },
	});
	if (!position) return null;
	const before = await read.fitting.findMany({
		where: { positionId: position.id },
		orderBy: [{ untilAt: "desc" }, { id: "desc" }],
		take: 40,
		select: {
			id: true,
			partId: true,
			wayRound: true,
			outConversion: { select: { name: true, purpose: true } },
			holds: { orderBy: { id: "asc" }, take: 60, select: { fixing: { select: fixingShown } } },
			connections: { orderBy: { id: "asc" }, take: 300, select: wireShown },
			settings: { orderBy: { id: "asc" }, take: 40, select: { kind: true, value: true } },
		},
	});
	const beforeIds = [...new Set(before.map((fitting) => fitting.partId))];
	const [candidates, photos, steps, conversions, facts] = await Promise.all([
		candidatesFor(read, machineId, beforeIds, wanted),
		photosOf(read, position.id, null, 6),
		stepsFor(read, machineId, position.id),
		conversionsOf(read, machineId),
		reachFacts(read, machineId),
	]);
	const covers = whatCovers(facts, position.id);
	const names = await partNames(
		read,
		covers.map((cover) => cover.partId),
	);
	/** By part, the last time that it was here and was held by something. */
	const lastOf = new Map(
		before.toReversed().flatMap((fitting) => (fitting.holds.length > 0 ? [[fitting.partId, fitting.id] as const] : [])),
	);
	const fixings = new Map(
		before
			.toReversed()
			.flatMap((fitting) =>
				fitting.holds.map(
					({ fixing: { holds, ...fixing } }) =>
						[
							fixing.id,
							{ ...fixing, heldPart: fitting.partId, heldLast: lastOf.get(fitting.partId) === fitting.id, count: fixing.count },
						] as const,
				),
			),
	);
	const isGone = ({ place }: { readonly place: string }) => place === "scrapped" || place === "lost";
	const shown = [...fixings.values()].filter((fixing) => !isGone(fixing));
	const whereOf = await placesOfFixings(read, shown);
	const { part, ...place } = position;
	return {
		position: { ...place, sides: sidesOf(place.sides) },
		occupant: part && { name: part.name, tag: part.tag?.id ?? null },
		behind: coversInWords(covers, names),
		candidates,
		fixings: shown.map((fixing) => ({ ...fixing, where: whereOf.get(fixing.id) ?? "" })),
		gone: [...fixings.values()].flatMap((fixing) =>
			isGone(fixing) && fixing.heldLast ? [{ partId: fixing.heldPart, words: `${formatFixing(fixing)}: ${fixing.place}` }] : [],
		),
		wires: before
			.flatMap((fitting) => fitting.connections.map((wire) => ({ ...wire, partId: fitting.partId })))
			.filter((wire) => wire.state !== "connected"),
		settings: before.flatMap((fitting) => fitting.settings.map((setting) => ({ ...setting, partId: fitting.partId }))),
		wayRound: before.map((fitting) => ({ partId: fitting.partId, words: fitting.wayRound })).filter((way) => way.words !== ""),
		/** Parts that a conversion done for safety took out of here. */
		safety: before.flatMap((fitting) =>
			fitting.outConversion?.purpose === "safety" ? [{ partId: fitting.partId, conversion: fitting.outConversion.name }] : [],
		),
		photos: photos.flatMap((photo) => (photo.fileSha === null ? [] : [{ ...photo, fileSha: photo.fileSha }])),
		steps,
		conversions,
	};
}

async function placesOfFixings(read: Reader, fixings: readonly { id: string; place: string; bagId: string | null }[]) {
	const bags = await read.bag.findMany({
		where: { id: { in: fixings.flatMap((fixing) => fixing.bagId ?? []) } },
		select: { id: true, tag: { select: { id: true } } },
	});
	const tags = new Map(bags.map((bag) => [bag.id, bag.tag?.id ?? "a bag"]));
	const words: Readonly<Record<string, string>> = { bench: "on the bench", left: "left in place", home: "holds another part" };
	return new Map(
		fixings.map((fixing) => [fixing.id, fixing.bagId === null ? (words[fixing.place] ?? "") : `in ${tags.get(fixing.bagId) ?? "a bag"}`]),
	);
}

/** Parts that may go in: those that were here before, wherever they are now; then the machine's loose ones, bought ones last. */
async function candidatesFor(read: Reader, machineId: string, beforeIds: readonly string[], wanted: string | null): Promise<Candidate[]> {
	const shown = {
		id: true,
		name: true,
		count: true,
		origin: true,
		works: true,
		place: true,
		bagId: true,
		locationId: true,
		lineId: true,
		machine: { select: { number: true } },
		machineId: true,
		tag: { select: { id: true } },
		position: { select: { name: true } },
	} as const;
	const asked = wanted === null ? null : readTag(wanted);
	const [here, loose, foreign] = await Promise.all([
		read.part.findMany({ where: { id: { in: [...beforeIds] }, place: { not: "void" } }, select: shown }),
		read.part.findMany({
			where: { machineId, place: { in: ["bag", "location", "bench"] }, id: { notIn: [...beforeIds] } },
			orderBy: [{ sinceAt: "desc" }, { id: "desc" }],
			take: MOST_LOOSE,
			select: shown,
		}),
		wanted === null
			? []
			: read.part.findMany({
					where: {
						machineId: { not: machineId },
						id: { notIn: [...beforeIds] },
						place: { not: "void" },
						OR: [{ id: wanted }, ...(asked?.ok ? [{ tag: { id: asked.value.tag } }] : [])],
					},
					take: 1,
					select: shown,
				}),
	]);
	const ordered = [
		...[...here].sort(
			(a, b) => Number(b.origin === "original") - Number(a.origin === "original") || beforeIds.indexOf(a.id) - beforeIds.indexOf(b.id),
		),
		...foreign,
		...loose.filter((part) => part.lineId === null),
		...loose.filter((part) => part.lineId !== null),
	];
	const isHere = new Set(beforeIds);
	// Many parts lie in one bag: each place is looked up once.
	const places = new Map<string, ReturnType<typeof whereIs>>();
	const whereLies = (lies: { bagId: string | null; locationId: string | null }) => {
		const key = lies.bagId ?? lies.locationId ?? "";
		const known = places.get(key) ?? whereIs(read, lies);
		places.set(key, known);
		return known;
	};
	return Promise.all(
		ordered.map(async ({ tag, position, place, bagId, locationId, lineId, machine, machineId: of, ...part }): Promise<Candidate> => {
			const lies = place === "bag" || place === "location" || place === "bench" ? await whereLies({ bagId, locationId }) : null;
			const may = mayBeFitted({ name: part.name, place, fittedIn: position?.name ?? null, outIn: lies?.outIn ?? null });
			return {
				...part,
				tag: tag?.id ?? null,
				where: lies?.words ?? (place === "fitted" ? `in ${position?.name}` : place),
				cannot: may.ok ? null : may.error.say,
				from: isHere.has(part.id) ? "here" : of !== machineId ? "foreign" : lineId === null ? "loose" : "bought",
				machineNumber: machine.number,
			};
		}),
	);
}
