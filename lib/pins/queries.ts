// Pins on photos: what each marks, where that is now, and which photos have one of a thing.

import { whereIs } from "@/lib/bags/queries";
import { type Day, dayOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import { PICTURES } from "@/lib/files/mediaTypes";
import { wireInWords } from "@/lib/fittings/wireWords";
import { formatFixing } from "@/lib/fixings/fixingWords";
import { whereItIs } from "@/lib/parts/whereItIs";
import { fixingNow, heldNow, wireNow } from "@/lib/pins/now";
import { MOST_PINS, type PinThing } from "@/lib/pins/rules";

/** A pin with what it marks, and where that is now. */
export type Pin = {
	readonly id: string;
	readonly entry: number;
	readonly number: number;
	readonly x: number;
	readonly y: number;
	readonly words: string;
	readonly thing: PinThing;
	/** "Coin door lamp", "BK from motor 1", or the pin's words. */
	readonly name: string;
	/** The position that it is, or that the wire or fixing is at; null for words alone. */
	readonly mark: string | null;
	/** The tag of the part that is meant: what was there when the photo was taken. */
	readonly tag: string | null;
	/** "Lens carriage": the part of that tag. */
	readonly part: string | null;
	/** Where it is now; empty for words alone. */
	readonly now: string;
	/** It is no longer there, or no longer at all. */
	readonly gone: boolean;
	/** The tag of the part that is in the position now. */
	readonly opens: string | null;
};

export type PinnedPhoto = {
	readonly id: string;
	/** The number of the machine that it is filed under. */
	readonly machine: number;
	readonly sha: string;
	readonly takenAt: string;
	readonly words: string;
	readonly pins: readonly { readonly id: string; readonly number: number; readonly x: number; readonly y: number }[];
};

const TAG = { select: { id: true } } as const;
const PART = {
	id: true,
	name: true,
	place: true,
	placeWhy: true,
	sinceAt: true,
	dueDay: true,
	bagId: true,
	locationId: true,
	tag: TAG,
	position: { select: { id: true, mark: true, name: true } },
	party: { select: { name: true } },
} as const;
const SEAT = { id: true, mark: true, name: true, hostId: true, host: { select: PART }, part: { select: PART } } as const;
/** A fitting with the seat of its wire or fixing. */
const AT = { untilAt: true, position: { select: SEAT } } as const;
const PHOTO = { stands: "yes" as const, file: { mediaType: { in: [...PICTURES] } } };
const STANDING = { stands: "yes" } as const;
const SPOT = { id: true, number: true, x: true, y: true } as const;

type PartRow = NonNullable<Awaited<ReturnType<typeof partRow>>>;
const partRow = (read: Reader, id: string) => read.part.findUnique({ where: { id }, select: PART });

/** The pins that stand on a photo, by number. */
export async function pinsOf(read: Reader, photo: { id: string; takenAt: string }, timeZone: string): Promise<Pin[]> {
	const rows = await read.pin.findMany({
		where: { captureId: photo.id, ...STANDING },
		orderBy: { number: "asc" },
		take: MOST_PINS,
		select: {
			...SPOT,
			entry: true,
			words: true,
			positionId: true,
			connectionId: true,
			fixingId: true,
			position: { select: SEAT },
			connection: { select: { from: true, to: true, colour: true, base: true, tracer: true, state: true, fitting: { select: AT } } },
			fixing: {
				select: {
					count: true,
					thread: true,
					length: true,
					head: true,
					drive: true,
					place: true,
					bagId: true,
					holds: { orderBy: { id: "desc" }, take: 20, select: { fitting: { select: AT } } },
				},
			},
		},
	});
	const where = whereabouts(read, timeZone);
	const then = await heldThen(
		read,
		rows.flatMap(({ positionId }) => positionId ?? []),
		photo.takenAt,
	);
	return Promise.all(
		rows.map(async ({ position, connection, fixing, positionId, connectionId, fixingId, ...pin }): Promise<Pin> => {
			const base = { ...pin, thing: { positionId, connectionId, fixingId } };
			const away = async (seat: { host: PartRow | null } | null) =>
				seat?.host && seat.host.place !== "fitted" ? { name: seat.host.name, where: await where(seat.host) } : null;
			if (position) {
				const part = then.get(position.id) ?? null;
				const now = heldNow(
					part && { id: part.id, where: await where(part) },
					position.part && { id: position.part.id, name: position.part.name },
					await away(position),
				);
				return {
					...base,
					name: position.name,
					mark: position.mark,
					tag: part?.tag?.id ?? null,
					part: part?.name ?? null,
					opens: position.part?.tag?.id ?? null,
					...now,
				};
			}
			if (connection) {
				const seat = connection.fitting.position;
				return {
					...base,
					name: wireInWords(connection),
					mark: seat.mark,
					tag: null,
					part: null,
					opens: null,
					...wireNow(connection.state, seat.name, connection.fitting.untilAt !== null, await away(seat)),
				};
			}
			if (fixing) {
				const at = fixing.holds.find(({ fitting }) => fitting.untilAt === null) ?? fixing.holds[0];
				const lies = fixing.place === "bag" ? (await whereIs(read, { bagId: fixing.bagId, locationId: null })).words : null;
				return {
					...base,
					name: formatFixing(fixing),
					mark: at?.fitting.position.mark ?? null,
					tag: null,
					part: null,
					opens: null,
					...fixingNow(fixing.place, at?.fitting.position.name ?? null, lies, await away(at?.fitting.position ?? null)),
				};
			}
			return { ...base, name: pin.words, mark: null, tag: null, part: null, opens: null, now: "", gone: false };
		}),
	);
}

/** A photo has so many pins, and a position had so many parts. */
const MOST_FITTINGS = MOST_PINS * 40;

/**
 * The parts that were in these positions at that moment; none for a position that was empty then. What came out at that
 * very moment came out with the photo, and goes before what was put in then. Of before anything was on record: the first.
 */
async function heldThen(read: Reader, positionIds: readonly string[], at: string): Promise<Map<string, PartRow>> {
	const fittings = await read.fitting.findMany({
		where: { positionId: { in: [...positionIds] } },
		orderBy: [{ fromAt: "asc" }, { id: "asc" }],
		take: MOST_FITTINGS,
		select: { positionId: true, fromAt: true, untilAt: true, part: { select: PART } },
	});
	const first = new Set<string>();
	const then = new Map<string, PartRow>();
	for (const { positionId, fromAt, untilAt, part } of fittings) {
		const wasThere = fromAt <= at ? untilAt === null || untilAt >= at : !first.has(positionId);
		if (wasThere && !then.has(positionId)) then.set(positionId, part);
		first.add(positionId);
	}
	return then;
}

/** Where a part is, in words; each bag and shelf is looked up once. */
function whereabouts(read: Reader, timeZone: string): (part: PartRow) => Promise<string> {
	const known = new Map<string, Promise<string>>();
	return (part) => {
		if (part.place === "bag" || part.place === "location") {
			const key = part.bagId ?? part.locationId ?? "";
			const words = known.get(key) ?? whereIs(read, part).then((found) => found.words);
			known.set(key, words);
			return words;
		}
		const sinceDay: Day = dayOf(instant(part.sinceAt), timeZone);
		const position = part.position && `${part.position.mark} ${part.position.name}`;
		return Promise.resolve(whereItIs({ ...part, sinceDay, bagTag: null, location: null, party: part.party?.name ?? null, position }));
	};
}

/** What a pin is to mark, with its machine and its name; null when nothing is named, "unknown" when there is no such thing. */
export async function thingOf(
	read: Reader,
	{ positionId, connectionId, fixingId }: PinThing,
): Promise<{ machineId: string; name: string } | null | "unknown"> {
	if (positionId !== null) {
		const position = await read.position.findUnique({ where: { id: positionId }, select: { machineId: true, name: true, mark: true } });
		return position ? { machineId: position.machineId, name: `${position.name} (${position.mark})` } : "unknown";
	}
	if (connectionId !== null) {
		const wire = await read.connection.findUnique({ where: { id: connectionId } });
		return wire ? { machineId: wire.machineId, name: wireInWords(wire) } : "unknown";
	}
	if (fixingId === null) return null;
	const fixing = await read.fixing.findUnique({ where: { id: fixingId } });
	return fixing ? { machineId: fixing.machineId, name: formatFixing(fixing) } : "unknown";
}

const asPhotos = (
	rows: readonly {
		readonly id: string;
		readonly machine: { readonly number: number } | null;
		readonly fileSha: string | null;
		readonly takenAt: string;
		readonly words: string;
		readonly pins: PinnedPhoto["pins"];
	}[],
): PinnedPhoto[] =>
	rows.flatMap(({ fileSha, machine, ...photo }) =>
		fileSha === null || machine === null ? [] : [{ ...photo, sha: fileSha, machine: machine.number }],
	);

const ASKED = { id: true, machine: { select: { number: true } }, fileSha: true, takenAt: true, words: true } as const;
const NEWEST = [{ takenAt: "desc" as const }, { id: "desc" as const }];

/** Photos of a machine that have pins, the newest first. */
export async function photosWithPins(read: Reader, machineId: string, page: { take: number; skip?: number; only?: readonly string[] }) {
	const rows = await read.capture.findMany({
		where: { machineId, ...PHOTO, pins: { some: STANDING }, ...(page.only ? { id: { in: [...page.only] } } : {}) },
		orderBy: NEWEST,
		take: page.take,
		skip: page.skip ?? 0,
		select: { ...ASKED, pins: { where: STANDING, orderBy: { number: "asc" }, take: MOST_PINS, select: SPOT } },
	});
	return asPhotos(rows);
}

/** How many photos of a machine have pins. */
export const photosWithPinsCounted = (read: Reader, machineId: string): Promise<number> =>
	read.capture.count({ where: { machineId, ...PHOTO, pins: { some: STANDING } } });

/** Photos that have a pin of a position, or of a wire or fixing at it, the newest first; with those pins alone. */
export const photosPinnedAt = (read: Reader, positionId: string, take: number): Promise<PinnedPhoto[]> =>
	photosPinned(
		read,
		{
			OR: [
				{ positionId },
				{ connection: { fitting: { positionId, untilAt: null } } },
				{ fixing: { holds: { some: { fitting: { positionId, untilAt: null } } } } },
			],
		},
		take,
	);

/** Photos that have a pin of a part where it is or was when the photo was taken, or of its wires and fixings, the newest first. */
export async function photosPinnedOf(read: Reader, partId: string, take: number): Promise<PinnedPhoto[]> {
	const fittings = await read.fitting.findMany({
		where: { partId },
		orderBy: [{ fromAt: "desc" }, { id: "desc" }],
		take: 40,
		select: { id: true, positionId: true, fromAt: true, untilAt: true },
	});
	if (fittings.length === 0) return [];
	const ids = fittings.map(({ id }) => id);
	// A photo of the moment at which it took another's place shows the other.
	const others = await read.fitting.findMany({
		where: { OR: fittings.map(({ positionId, fromAt }) => ({ positionId, untilAt: fromAt })), partId: { not: partId } },
		take: fittings.length,
		select: { positionId: true, untilAt: true },
	});
	const from = (positionId: string, fromAt: string) =>
		others.some((other) => other.positionId === positionId && other.untilAt === fromAt) ? { gt: fromAt } : { gte: fromAt };
	return photosPinned(
		read,
		{
			OR: [
				...fittings.map(({ positionId, fromAt, untilAt }) => ({
					positionId,
					// A photo of before it was in there shows what was there then; one of after it came out shows an empty place.
					capture: { takenAt: { ...from(positionId, fromAt), ...(untilAt === null ? {} : { lte: untilAt }) } },
				})),
				{ connection: { fittingId: { in: ids } } },
				{ fixing: { holds: { some: { fittingId: { in: ids } } } } },
			],
		},
		take,
	);
}

type PinWhere = NonNullable<NonNullable<Parameters<Reader["pin"]["findMany"]>[0]>["where"]>;

async function photosPinned(read: Reader, of: PinWhere, take: number): Promise<PinnedPhoto[]> {
	const rows = await read.capture.findMany({
		where: { ...PHOTO, pins: { some: { ...of, ...STANDING } } },
		orderBy: NEWEST,
		take,
		select: { ...ASKED, pins: { where: { ...of, ...STANDING }, orderBy: { number: "asc" }, take: MOST_PINS, select: SPOT } },
	});
	return asPhotos(rows);
}
