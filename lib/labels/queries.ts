import { z } from "zod";
import { freeBagNumber } from "@/lib/bags/number";
import { numbersTaken } from "@/lib/bags/placing";
import { titleOf } from "@/lib/bags/title";
import { dayOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import { formatFixings } from "@/lib/fixings/fixingWords";
import type { LabelContent, Side } from "@/lib/labels/labelText";
import { placesUp } from "@/lib/store/queries";
import { readTag } from "@/lib/tags/readTag";
import { formatTag, type Tag } from "@/lib/tags/tag";

/** The machine id of each tag: of its part or bag, or by its number when it is a ready-made tag. Null for the shop's own. */
export async function machinesOfTags(read: Reader, tags: readonly string[]): Promise<Map<string, string | null>> {
	const rows = await read.tag.findMany({
		where: { id: { in: [...tags] } },
		select: { id: true, part: { select: { machineId: true } }, bag: { select: { machineId: true } } },
	});
	const known = new Map(rows.map((row) => [row.id, row.part?.machineId ?? row.bag?.machineId ?? null]));
	const numbers = new Map<string, number>();
	for (const tag of tags) {
		const said = readTag(tag);
		if (!known.has(tag) && said.ok) numbers.set(tag, said.value.machine);
	}
	if (numbers.size === 0) return known;
	const machines = await read.machine.findMany({
		where: { number: { in: [...new Set(numbers.values())] } },
		select: { id: true, number: true },
	});
	for (const [tag, number] of numbers) known.set(tag, machines.find((machine) => machine.number === number)?.id ?? null);
	return known;
}

/** How often each tag was sent to paper; a tag that never was is left out. */
export async function timesPrinted(read: Reader, tags: readonly string[]): Promise<Map<string, number>> {
	const rows = await read.labelPrint.groupBy({ by: ["tag"], where: { tag: { in: [...tags] } }, _count: { _all: true } });
	return new Map(rows.map((row) => [row.tag, row._count._all]));
}

const printedResult = z.object({ result: z.object({ printed: z.array(z.object({ tag: z.string(), times: z.number() })) }) });

/**
 * Which print of each tag the next one is; of tags that this deed has put in the book already, the one that it was, so that
 * the same deed asked for again gives the same paper.
 */
export async function nextPrints(read: Reader, tags: readonly string[], deed: string | null): Promise<Map<string, number>> {
	const receipt = deed === null ? null : await read.receipt.findUnique({ where: { deed }, select: { result: true } });
	const kept = receipt ? printedResult.safeParse(JSON.parse(receipt.result)) : null;
	const done = new Map(kept?.success ? kept.data.result.printed.map(({ tag, times }) => [tag, times]) : []);
	const before = await timesPrinted(read, tags);
	return new Map(tags.map((tag) => [tag, done.get(tag) ?? (before.get(tag) ?? 0) + 1]));
}

const SIDE = /\b(left|right|front|rear|top|bottom)\b/gi;

/** The side that a position's name ends on ("corner trim, left"); undefined where it names none or two. */
export function sideIn(name: string): Side | undefined {
	const [side, ...others] = new Set((name.split(",").slice(1).join(",").match(SIDE) ?? []).map((word) => word.toLowerCase()));
	return others.length === 0 ? (side as Side | undefined) : undefined;
}

/** Splits "this side up" off a caution: it has a sign of its own on the label. */
function cautionIn(caution: string): { hazard?: string; thisWayUp?: true } {
	const rest = caution
		.split(/[,;]\s*/)
		.filter((word) => !/^this (side|way) up$/i.test(word.trim()))
		.join(", ");
	return {
		...(rest === "" ? {} : { hazard: rest }),
		...(/\bthis (side|way) up\b/i.test(caution) ? { thisWayUp: true as const } : {}),
	};
}

/**
 * What the labels of these tags say, in the order given. A tag that hangs on nothing yet has a line to write on.
 * Days are those of the shop's time zone.
 */
export async function labelContents(read: Reader, tags: readonly Tag[], timeZone: string): Promise<LabelContent[]> {
	const rows = await read.tag.findMany({
		where: { id: { in: [...tags] } },
		select: {
			id: true,
			part: {
				select: {
					name: true,
					count: true,
					origin: true,
					place: true,
					machine: { select: { name: true, number: true } },
					fittings: {
						orderBy: [{ fromAt: "desc" }, { id: "desc" }],
						take: 1,
						select: {
							entry: true,
							untilAt: true,
							wayRound: true,
							position: { select: { name: true } },
							holds: {
								orderBy: { id: "asc" },
								take: 20,
								select: { fixing: { select: { count: true, thread: true, length: true, head: true, drive: true } } },
							},
						},
					},
				},
			},
			bag: {
				select: {
					entry: true,
					words: true,
					role: true,
					caution: true,
					sinceAt: true,
					machine: { select: { name: true } },
					parts: {
						take: 200,
						select: { name: true, count: true, origin: true, fittings: { orderBy: { fromAt: "desc" }, take: 1, select: seatName } },
					},
					fixings: {
						orderBy: { id: "asc" },
						take: 200,
						select: {
							count: true,
							thread: true,
							length: true,
							head: true,
							drive: true,
							holds: { take: 1, orderBy: { id: "asc" }, select: { fitting: { select: seatName } } },
						},
					},
				},
			},
		},
	});
	const initials = await initialsOf(
		read,
		rows.flatMap((row) => row.part?.fittings[0]?.entry ?? row.bag?.entry ?? []),
	);
	const known = new Map(rows.map((row) => [row.id, row]));
	const places = await placesOfTags(
		read,
		tags.filter((tag) => !known.has(tag)),
	);
	return tags.map((tag): LabelContent => {
		const { part, bag } = known.get(tag) ?? {};
		if (part) {
			const last = part.fittings[0];
			const day = last?.untilAt ? dayOf(instant(last.untilAt), timeZone) : undefined;
			const side = sideIn(last?.position.name ?? part.name);
			const also = last ? formatFixings(last.holds.map((hold) => hold.fixing)) : "";
			const by = last ? initials.get(last.entry) : undefined;
			return {
				tag,
				words: part.name,
				machine: part.machine.name,
				...(last && last.position.name !== part.name ? { position: last.position.name } : {}),
				...(side ? { side } : {}),
				...(last?.wayRound ? { wayRound: last.wayRound } : {}),
				...(part.count > 1 ? { count: part.count } : {}),
				...(also ? { also } : {}),
				...(part.origin === "original" ? { fate: "original" as const } : {}),
				...(day ? { deed: "out", day } : {}),
				...(day && by ? { initials: by } : {}),
			};
		}
		if (bag) {
			const pieces = [...bag.parts, ...bag.fixings].reduce((sum, thing) => sum + thing.count, 0);
			const seats = new Set([
				...bag.parts.flatMap((inIt) => inIt.fittings[0]?.position.name ?? []),
				...bag.fixings.flatMap((inIt) => inIt.holds[0]?.fitting.position.name ?? []),
			]);
			const [seat] = seats;
			const side = seats.size === 1 && seat ? sideIn(seat) : undefined;
			const original = bag.role === "keeping" && bag.parts.length > 0 && bag.parts.every((inIt) => inIt.origin === "original");
			const by = initials.get(bag.entry);
			const also = formatFixings(bag.fixings);
			return {
				tag,
				words: titleOf(bag.words, bag.parts),
				...(bag.machine ? { machine: bag.machine.name } : {}),
				...(seats.size === 1 && seat && seat !== bag.words ? { position: seat } : {}),
				...(side ? { side } : {}),
				...(pieces > 0 ? { count: pieces } : {}),
				...(also && also !== bag.words ? { also } : {}),
				...cautionIn(bag.caution),
				fate: original ? "original" : bag.role,
				deed: "bagged",
				day: dayOf(instant(bag.sinceAt), timeZone),
				...(by ? { initials: by } : {}),
			};
		}
		const place = places.get(tag);
		if (place) return { tag, words: place.name, ...(place.way.length > 0 ? { position: place.way.join(" · ") } : {}) };
		return { tag, words: "................................" };
	});
}

/** The places that these tags hang on: name, and the way there from the room inwards. */
export async function placesOfTags(read: Reader, tags: readonly string[]): Promise<Map<string, { name: string; way: string[] }>> {
	const rows =
		tags.length === 0 ? [] : await read.placeTag.findMany({ where: { id: { in: [...tags] } }, select: { id: true, locationId: true } });
	const found = await Promise.all(
		rows.map(async ({ id, locationId }) => {
			const [place, ...around] = await placesUp(read, locationId);
			return [id, { name: place?.name ?? "", way: around.map(({ name }) => name).reverse() }] as const;
		}),
	);
	return new Map(found);
}

const seatName = { position: { select: { name: true } } } as const;

/** Initials of whoever wrote each entry. */
async function initialsOf(read: Reader, entries: readonly number[]): Promise<Map<number, string>> {
	const rows = await read.entry.findMany({ where: { seq: { in: [...new Set(entries)] } }, select: { seq: true, actor: true } });
	const people = await read.person.findMany({
		where: { id: { in: [...new Set(rows.map((row) => row.actor))] } },
		select: { id: true, initials: true },
	});
	const byId = new Map(people.map((person) => [person.id, person.initials]));
	return new Map(rows.flatMap((row) => (byId.has(row.actor) ? [[row.seq, byId.get(row.actor) ?? ""] as const] : [])));
}

/** The tags of a machine's bags that are in use, in order; null for the shop's own. */
export async function bagTagsOf(
	read: Reader,
	machineId: string | null,
): Promise<{ tag: string; words: string; role: "holding" | "keeping" }[]> {
	const bags = await read.bag.findMany({
		where: { machineId, place: { not: "void" } },
		orderBy: { tag: { number: "asc" } },
		take: 300,
		select: { words: true, role: true, tag: { select: { id: true } } },
	});
	return bags.flatMap(({ tag, ...bag }) => (tag ? [{ ...bag, tag: tag.id }] : []));
}

/** The next free bag numbers of a machine as ready-made tags, to be printed beforehand. Fewer when its numbers run out. */
export async function readyTags(read: Reader, machineNumber: number, count: number): Promise<Tag[]> {
	const taken = await numbersTaken(read, machineNumber);
	const tags: Tag[] = [];
	while (tags.length < count) {
		const next = freeBagNumber(machineNumber, taken);
		if (!next.ok) break;
		taken.add(next.value);
		tags.push(formatTag(machineNumber, next.value));
	}
	return tags;
}
