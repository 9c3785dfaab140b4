// Moving many things at once, and counting what lies at a place: each in one deed, with an entry for each machine.

import { bagFact, bagsAround } from "@/lib/bags/nesting";
import { laidBag, laidIn } from "@/lib/bags/placing";
import { lower, mayMove } from "@/lib/bags/rules";
import type { Place } from "@/lib/bags/schema";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import { change, type RowChange } from "@/lib/ledger/rows";
import { thingById } from "@/lib/store/scanned";

export type ThingId = { readonly kind: "part" | "bag"; readonly id: string };
/** One thing as it will lie: whose it is, its row, and how it is called. */
export type Moved = ThingId & {
	readonly machine: string | null;
	readonly called: string /** Where it lies then: "on Back room · shelf 2". */;
	readonly words: string;
	readonly row: RowChange;
};

/** The things that are meant: a place stands for everything that lies right on it. Each once. Refused where that is too much. */
export async function thingsMeant(
	read: Reader,
	things: readonly { kind: "part" | "bag" | "place"; id: string }[],
): Promise<Result<ThingId[]>> {
	const places = things.filter(({ kind }) => kind === "place").map(({ id }) => id);
	const on = { where: { locationId: { in: places } }, orderBy: { id: "asc" }, take: MOST_ON_PLACES + 1, select: { id: true } } as const;
	const [bags, parts] = places.length === 0 ? [[], []] : await Promise.all([read.bag.findMany(on), read.part.findMany(on)]);
	if (bags.length + parts.length > MOST_ON_PLACES)
		return refuse(
			"too-much-to-move",
			"More lies there than is moved at once. Nothing was moved: scan what is to go, and move it in parts.",
		);
	const all: ThingId[] = [
		...things.flatMap(({ kind, id }) => (kind === "place" ? [] : [{ kind, id }])),
		...bags.map(({ id }) => ({ kind: "bag" as const, id })),
		...parts.map(({ id }) => ({ kind: "part" as const, id })),
	];
	return ok([...new Map(all.map((thing) => [thing.id, thing])).values()]);
}
const MOST_ON_PLACES = 1000;

/** Of these things, those that go by themselves; what lies in a bag among them, however deep, stays in it and goes with it. */
export async function withoutWhatIsInBags(
	read: Reader,
	things: readonly ThingId[],
): Promise<{ readonly go: ThingId[]; readonly inside: readonly { readonly thing: ThingId; readonly bag: string }[] }> {
	const bags = new Set(things.flatMap(({ kind, id }) => (kind === "bag" ? [id] : [])));
	const go: ThingId[] = [];
	const inside: { thing: ThingId; bag: string }[] = [];
	for (const thing of things) {
		const bag = bags.size === 0 ? undefined : (await bagsOf(read, thing)).find((around) => bags.has(around.id));
		if (bag) inside.push({ thing, bag: bag.tag });
		else go.push(thing);
	}
	return { go, inside };
}

/** The bags around a thing, innermost first. */
async function bagsOf(read: Reader, { kind, id }: ThingId) {
	if (kind === "bag") return bagsAround(read, id);
	const part = await read.part.findUnique({ where: { id }, select: { bagId: true } });
	const bag = part?.bagId ? await bagFact(read, part.bagId) : null;
	return bag ? [bag, ...(await bagsAround(read, bag.id))] : [];
}

/** One thing laid where it goes, or why it cannot be. Null where it lies there already. */
export async function movedTo(read: Reader, { kind, id }: ThingId, to: Place, at: string): Promise<Result<Moved | null>> {
	return kind === "bag" ? bagMoved(read, id, to, at) : partMoved(read, id, to, at);
}

async function bagMoved(read: Reader, id: string, to: Place, at: string): Promise<Result<Moved | null>> {
	const [fact, before] = await Promise.all([bagFact(read, id), read.bag.findUnique({ where: { id } })]);
	if (!fact || !before) return refuse("no-bag", "That bag is not known. Scan its tag once more.");
	if (fact.place === "void") return refuse("bag-void", `${fact.tag} was taken out of use.`);
	const laid = await laidBag(read, fact, to);
	if (!laid.ok) return laid;
	const { words } = laid.value;
	const { place, bagId, locationId } = laid.value.columns;
	if (before.place === place && before.parentId === bagId && before.locationId === locationId) return ok(null);
	const row = change("Bag", before, { place, parentId: bagId, locationId, sinceAt: at, placeWhy: "" });
	return ok({ kind: "bag", id, machine: before.machineId, called: fact.tag, words, row });
}

async function partMoved(read: Reader, id: string, to: Place, at: string): Promise<Result<Moved | null>> {
	const before = await read.part.findUnique({ where: { id } });
	if (!before) return refuse("no-part", "That part is not known. Scan its tag once more.");
	const [machine, seat, tag] = await Promise.all([
		read.machine.findUnique({ where: { id: before.machineId }, select: { id: true, number: true } }),
		before.positionId === null ? null : read.position.findUnique({ where: { id: before.positionId }, select: { name: true } }),
		read.tag.findUnique({ where: { partId: id }, select: { id: true } }),
	]);
	const may = mayMove({ name: before.name, place: before.place, fittedIn: seat?.name ?? null });
	if (!may.ok) return may;
	const laid = await laidIn(read, to, machine);
	if (!laid.ok) return laid;
	const { columns, words } = laid.value;
	if (before.place === columns.place && before.bagId === columns.bagId && before.locationId === columns.locationId) return ok(null);
	const row = change("Part", before, { ...columns, partyId: null, dueDay: null, sinceAt: at, placeWhy: "" });
	return ok({
		kind: "part",
		id,
		machine: before.machineId,
		called: tag ? `${lower(before.name)} ${tag.id}` : lower(before.name),
		words,
		row,
	});
}

/** What cannot go, said by name: each with its own sentence. */
export async function nameOf(read: Reader, { kind, id }: ThingId): Promise<string> {
	const known = await thingById(read, kind, id);
	return known ? `${known.tag} ${known.name}` : kind === "bag" ? "a bag" : "a part";
}

/** The rows of several machines as one entry each, the machines in the order in which they first come. */
export function byMachine(moved: readonly Moved[]): { readonly machine: string | null; readonly things: readonly Moved[] }[] {
	const found = new Map<string | null, Moved[]>();
	for (const thing of moved) found.set(thing.machine, [...(found.get(thing.machine) ?? []), thing]);
	return [...found].map(([machine, things]) => ({ machine, things }));
}

/** "12-0201-B, 12-0202-9 and 3 more". */
export function namedShortly(names: readonly string[]): string {
	const shown = names.length <= MOST_NAMED + 1 ? names : names.slice(0, MOST_NAMED);
	const more = names.length - shown.length;
	if (more > 0) return `${shown.join(", ")} and ${more} more`;
	return shown.length < 2 ? (shown[0] ?? "") : `${shown.slice(0, -1).join(", ")} and ${shown.at(-1)}`;
}
const MOST_NAMED = 5;
