// What a scanned or typed tag stands for, as far as the store asks.

import { whereBagIs, whereIs } from "@/lib/bags/queries";
import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { Kept } from "@/lib/keeping/advice";
import { locationPath } from "@/lib/store/queries";
import { readTag } from "@/lib/tags/readTag";
import { suggestTags, tagCandidates } from "@/lib/tags/suggestTags";

/** A part, a bag or a place, found by its tag. */
export type Scanned = {
	readonly kind: "part" | "bag" | "place";
	readonly id: string;
	readonly tag: string;
	readonly name: string;
	/** Where it is by the record, in words; for a place the way to it. */
	readonly where: string;
	/** The place that it lies right on; null for what lies in a bag, on the bench, is fitted, and for a place. */
	readonly locationId: string | null;
	/** Tags of the bags around it, innermost first. */
	readonly bags: readonly string[];
	readonly machine: number | null;
	/** Whether it can be laid somewhere as it is: what is fitted, out, sold or scrapped cannot. */
	readonly isLoose: boolean;
	/** For the advice on what lies together: a part as it is kept, and of a bag what is in it. */
	readonly kept: readonly Kept[];
};

const LOOSE: readonly string[] = ["bag", "location", "bench", "lost"];
/** Advice on what lies together looks at so many parts of a bag. */
const MOST_ADVISED = 12;
/** So many tags are looked up at once. */
const MOST_AT_ONCE = 500;

/**
 * Reads what was scanned or typed and finds what it hangs on. Refused with what to do: no tag (`facts.meant` then holds
 * the tags of the book that lie one slip away, likeliest first), or a tag that hangs on nothing.
 */
export async function scannedThing(read: Reader, text: string): Promise<Result<Scanned, Refusal>> {
	const said = readTag(text);
	if (!said.ok) return refuse(said.error.code, said.error.say, { facts: { ...said.error.facts, meant: await tagsMeant(read, text) } });
	const { tag } = said.value;
	const [known, place] = await Promise.all([
		read.tag.findUnique({ where: { id: tag }, select: { partId: true, bagId: true } }),
		read.placeTag.findUnique({ where: { id: tag }, select: { locationId: true } }),
	]);
	if (place) return ok(await placeScanned(read, tag, place.locationId));
	if (known?.partId) return ok(await partScanned(read, tag, known.partId));
	if (known?.bagId) return ok(await bagScanned(read, tag, known.bagId));
	return refuse("tag-free", `${tag} hangs on nothing yet: open it to make a bag with it.`, { facts: { free: tag, meant: [] } });
}

/** The same for a part or bag that is known by its id. */
export async function thingById(read: Reader, kind: "part" | "bag", id: string): Promise<Scanned | null> {
	const tag = await read.tag.findUnique({ where: kind === "part" ? { partId: id } : { bagId: id }, select: { id: true } });
	if (!tag) return null;
	return kind === "part" ? partScanned(read, tag.id, id) : bagScanned(read, tag.id, id);
}

/** Several by their tags, in the same order; what hangs on nothing is left out. */
export async function thingsByTag(read: Reader, tags: readonly string[]): Promise<Scanned[]> {
	const found: Scanned[] = [];
	for (const tag of tags.slice(0, MOST_AT_ONCE)) {
		const thing = await scannedThing(read, tag);
		if (thing.ok) found.push(thing.value);
	}
	return found;
}

/** The tags of the book, of places too, that lie one slip of the hand away from what was typed, likeliest first. */
export async function tagsMeant(read: Reader, text: string): Promise<string[]> {
	const candidates = tagCandidates(text.slice(0, 200));
	if (candidates.length === 0) return [];
	const where = { where: { id: { in: candidates } }, select: { id: true } };
	const [tags, places] = await Promise.all([read.tag.findMany(where), read.placeTag.findMany(where)]);
	const known = new Set([...tags, ...places].map((row) => row.id));
	return suggestTags(text, (tag) => known.has(tag));
}

async function partScanned(read: Reader, tag: string, id: string): Promise<Scanned> {
	const part = await read.part.findUniqueOrThrow({
		where: { id },
		select: {
			name: true,
			material: true,
			place: true,
			bagId: true,
			locationId: true,
			position: { select: { name: true } },
			machine: { select: { number: true } },
		},
	});
	const lies = part.place === "bag" || part.place === "location" || part.place === "bench";
	const whereabouts = lies ? await whereIs(read, part) : null;
	const where =
		whereabouts?.words ?? (part.place === "fitted" ? `fitted in ${part.position?.name}` : (ELSEWHERE[part.place] ?? part.place));
	return {
		kind: "part",
		id,
		tag,
		name: part.name,
		where,
		locationId: part.locationId,
		bags: whereabouts?.bags ?? [],
		machine: part.machine.number,
		isLoose: LOOSE.includes(part.place),
		kept: [{ name: part.name, material: part.material }],
	};
}

async function bagScanned(read: Reader, tag: string, id: string): Promise<Scanned> {
	const [bag, where] = await Promise.all([
		read.bag.findUniqueOrThrow({
			where: { id },
			select: {
				words: true,
				place: true,
				locationId: true,
				machine: { select: { number: true } },
				parts: { take: MOST_ADVISED, orderBy: { id: "asc" }, select: { name: true, material: true } },
			},
		}),
		whereBagIs(read, id),
	]);
	return {
		kind: "bag",
		id,
		tag,
		name: bag.words,
		where: where.words,
		locationId: bag.locationId,
		bags: where.bags,
		machine: bag.machine?.number ?? null,
		isLoose: bag.place !== "void",
		kept: bag.parts,
	};
}

async function placeScanned(read: Reader, tag: string, id: string): Promise<Scanned> {
	const path = (await locationPath(read, id)) ?? "a place";
	const name = path.split(" · ").at(-1) ?? path;
	return { kind: "place", id, tag, name, where: path, locationId: null, bags: [], machine: null, isLoose: true, kept: [] };
}

const ELSEWHERE: Readonly<Record<string, string>> = {
	out: "out of the shop",
	sold: "sold",
	lost: "lost",
	scrapped: "scrapped",
	void: "struck out as entered in error",
};
