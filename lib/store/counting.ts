// What a count is held against: what lies at a place by the record, and, if that is asked, in the places in it.

import type { Reader } from "@/lib/db/store";
import { DEEPEST, locationPath, MOST_PLACES } from "@/lib/store/queries";

/** A bag counts as one thing; what is in it is on its own page. */
export type Lying = {
	readonly kind: "part" | "bag";
	readonly id: string;
	readonly tag: string | null;
	readonly name: string;
	/** The way from the counted place to where it lies: "shelf 2"; "" right at the place. */
	readonly at: string;
};

/** More than this is counted in parts. */
const MOST_COUNTED = 600;

/** What should be there, place by place in the order of walking; null when it is more than one count holds. */
export async function lyingFor(read: Reader, locationId: string, inside: boolean): Promise<Lying[] | null> {
	const places = inside ? await placesWithin(read, locationId) : new Map([[locationId, ""]]);
	const rank = new Map([...places.keys()].map((id, at) => [id, at]));
	const where = { locationId: { in: [...places.keys()] } };
	const asked = { orderBy: { id: "asc" }, take: MOST_COUNTED + 1 } as const;
	const tag = { select: { id: true } } as const;
	const [bags, parts] = await Promise.all([
		read.bag.findMany({ ...asked, where, select: { id: true, words: true, locationId: true, tag } }),
		read.part.findMany({ ...asked, where, select: { id: true, name: true, count: true, locationId: true, tag } }),
	]);
	if (bags.length + parts.length > MOST_COUNTED) return null;
	const things = [
		...bags.map((bag) => ({ ...bag, kind: "bag" as const, name: bag.words })),
		...parts.map((part) => ({ ...part, kind: "part" as const, name: part.count > 1 ? `${part.count} x ${part.name}` : part.name })),
	];
	const turn = (thing: { locationId: string | null }) => rank.get(thing.locationId ?? "") ?? 0;
	return things
		.sort((a, b) => turn(a) - turn(b))
		.map(({ kind, id, name, tag: its, locationId: lies }) => ({ kind, id, name, tag: its?.id ?? null, at: places.get(lies ?? "") ?? "" }));
}

/** The place and those in it, in the order of walking, each with the way to it from there. */
export async function placesWithin(read: Reader, locationId: string): Promise<Map<string, string>> {
	const rows = await read.location.findMany({
		orderBy: [{ rank: "asc" }, { name: "asc" }, { id: "asc" }],
		take: MOST_PLACES,
		select: { id: true, name: true, parentId: true },
	});
	const inside = new Map<string | null, typeof rows>();
	for (const row of rows) inside.set(row.parentId, [...(inside.get(row.parentId) ?? []), row]);
	const found = new Map<string, string>([[locationId, ""]]);
	const walk = (id: string, way: string, depth: number): void => {
		if (depth > DEEPEST) return;
		for (const row of inside.get(id) ?? []) {
			const its = way === "" ? row.name : `${way} · ${row.name}`;
			found.set(row.id, its);
			walk(row.id, its, depth + 1);
		}
	};
	walk(locationId, "", 1);
	return found;
}

/** A thing by its id, as a count names it: by its tag where it has one. Null when there is no such thing. */
export async function thingNamed(read: Reader, id: string): Promise<{ kind: "part" | "bag"; tag: string; called: string } | null> {
	const tag = { select: { id: true } } as const;
	const part = await read.part.findUnique({ where: { id }, select: { name: true, tag } });
	const bag = part ? null : await read.bag.findUnique({ where: { id }, select: { words: true, tag } });
	const name = part?.name ?? bag?.words;
	if (name === undefined) return null;
	const its = part?.tag?.id ?? bag?.tag?.id ?? null;
	return { kind: part ? "part" : "bag", tag: its ?? name, called: its === null ? name : `${its} ${name}` };
}

/** What is counted, in words: "Back room · rack B with the places in it"; null when there is no such place. */
export async function countedPlace(read: Reader, locationId: string, inside: boolean): Promise<string | null> {
	const path = await locationPath(read, locationId);
	return path === null ? null : inside ? `${path} with the places in it` : path;
}
