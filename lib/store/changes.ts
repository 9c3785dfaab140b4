import type { z } from "zod";
import { freeBagNumber } from "@/lib/bags/number";
import { laidIn, numbersTaken } from "@/lib/bags/placing";
import { ok, type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, deed, type EntryDraft } from "@/lib/ledger/rows";
import { losing } from "@/lib/parts/changes";
import { countedPlace, lyingFor, thingNamed } from "@/lib/store/counting";
import { byMachine, type Moved, movedTo, namedShortly, nameOf, thingsMeant, withoutWhatIsInBags } from "@/lib/store/moving";
import { locationPath, placesUp } from "@/lib/store/queries";
import { mayBeCalled, mayStandIn } from "@/lib/store/rules";
import {
	type AddLocation,
	addLocationSchema,
	type CountPlace,
	countPlaceSchema,
	type MoveThings,
	moveThingsSchema,
	type RenameLocation,
	renameLocationSchema,
	type TagPlaces,
	tagPlacesSchema,
} from "@/lib/store/schema";
import { formatTag, SHOP_WIDE } from "@/lib/tags/tag";

/** Adds a room, rack, shelf or bin, last in its place unless a rank is given. */
export async function addLocation(input: AddLocation, env: Env): Promise<Result<{ locationId: string; path: string }>> {
	const form = addLocationSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { parentId, kind, name, rank } = form.data;
	return record(env, async (read) => {
		const around = parentId === null ? null : await locationPath(read, parentId);
		if (parentId !== null && around === null)
			return refuse("no-location", "The place it should stand in is not known. Choose one from the list.");
		const siblings = await placesIn(read, parentId);
		const may = mayBeCalled(name, siblings, around ?? "The shop");
		if (!may.ok) return may;
		const id = env.newId();
		const last = Math.max(-1, ...siblings.map((place) => place.rank));
		const path = around === null ? name : `${around} · ${name}`;
		return ok(
			deed(
				null,
				"location.added",
				{ table: "Location", id },
				{ say: `Added the ${kind} ${path}.` },
				[add("Location", { id, parentId, kind, name, rank: rank ?? last + 1 })],
				{ locationId: id, path },
			),
		);
	});
}

/** Names a place anew; also what it is, where it stands and its turn in the walk, where they are given. */
export async function renameLocation(input: RenameLocation, env: Env): Promise<Result<{ locationId: string; path: string }>> {
	const form = renameLocationSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { locationId, name, kind, rank, parentId } = form.data;
	return record(env, async (read) => {
		const before = await read.location.findUnique({ where: { id: locationId } });
		if (!before) return refuse("no-location", "That place is not known. Choose one from the list.");
		const inside = parentId === undefined ? before.parentId : parentId;
		const around = inside === null ? [] : await placesUp(read, inside);
		const [target, ...outer] = around;
		if (inside !== null && !target) return refuse("no-location", "The place it should stand in is not known. Choose one from the list.");
		if (target) {
			const may = mayStandIn({ id: before.id, name: before.name }, target, outer);
			if (!may.ok) return may;
		}
		const others = (await placesIn(read, inside)).filter((place) => place.id !== locationId);
		const may = mayBeCalled(name, others, target?.name ?? "The shop");
		if (!may.ok) return may;
		const was = await locationPath(read, locationId);
		const path = [...around.map((place) => place.name).reverse(), name].join(" · ");
		return ok(
			deed(
				null,
				"location.renamed",
				{ table: "Location", id: locationId },
				{ say: was === path ? `Put ${path} in its turn.` : `${was} is now ${path}.` },
				[change("Location", before, { name, kind: kind ?? before.kind, rank: rank ?? before.rank, parentId: inside })],
				{ locationId, path },
			),
		);
	});
}

/** Gives places their tags, from the shop's own numbers. A place that has one keeps it, so that asking twice changes nothing. */
export async function tagPlaces(input: TagPlaces, env: Env): Promise<Result<{ tags: PlaceTagged[] }>> {
	const form = tagPlacesSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const wanted = [...new Set(form.data.locationIds)];
	const tagged = await tagsThatAll(env.store.read, wanted);
	if (tagged) return ok({ tags: tagged });
	const done = await record<{ tags: PlaceTagged[] }>(env, async (read) => {
		// Somebody else was tagging them at the same moment: there is nothing left to write.
		if (await tagsThatAll(read, wanted)) return refuse("tagged-meanwhile", "These places have their tags already.");
		const places = await read.location.findMany({ where: { id: { in: wanted } }, select: { id: true, tag: { select: { id: true } } } });
		const known = new Map(places.map((place) => [place.id, place.tag?.id ?? null]));
		if (known.size < wanted.length) return refuse("no-location", "One of these places is not known. Load the page again.");
		const taken = await numbersTaken(read, SHOP_WIDE);
		const tags: PlaceTagged[] = [];
		const entries: EntryDraft[] = [];
		for (const locationId of wanted) {
			const has = known.get(locationId);
			if (has) {
				tags.push({ locationId, tag: has });
				continue;
			}
			const number = freeBagNumber(SHOP_WIDE, taken);
			if (!number.ok) return number;
			taken.add(number.value);
			const tag = formatTag(SHOP_WIDE, number.value);
			tags.push({ locationId, tag });
			entries.push({
				machine: null,
				action: "location.tagged",
				subject: { table: "Location", id: locationId },
				facts: { say: `${await locationPath(read, locationId)} has the tag ${tag}.`, tag },
				rows: [add("PlaceTag", { id: tag, number: number.value, locationId })],
			});
		}
		return ok({ entries, result: { tags } });
	});
	const meanwhile = !done.ok && done.error.code === "tagged-meanwhile" ? await tagsThatAll(env.store.read, wanted) : null;
	return meanwhile ? ok({ tags: meanwhile }) : done;
}

type PlaceTagged = { locationId: string; tag: string };

/** The tags of these places in their order, where every one of them has one; else null. */
async function tagsThatAll(read: Reader, locationIds: readonly string[]): Promise<PlaceTagged[] | null> {
	const rows = await read.placeTag.findMany({ where: { locationId: { in: [...locationIds] } }, select: { id: true, locationId: true } });
	const known = new Map(rows.map((row) => [row.locationId, row.id]));
	const tags = locationIds.flatMap((locationId) => {
		const tag = known.get(locationId);
		return tag === undefined ? [] : [{ locationId, tag }];
	});
	return tags.length === locationIds.length ? tags : null;
}

/**
 * Moves parts, bags, and what lies on whole places into a bag, to a place or to the bench, all in one deed. What cannot
 * go is named, and then nothing goes, unless the rest is to go without it. What lies in a bag that is meant, too, stays in
 * it: it is named as `inside`.
 */
export async function moveThings(
	input: MoveThings,
	env: Env,
): Promise<Result<{ moved: number; stayed: string[]; inside: string[]; words: string }>> {
	const form = moveThingsSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { to, restGoes, at = env.clock() } = form.data;
	return record(env, async (read) => {
		const where = await laidIn(read, to, null);
		// A bag of one machine takes that machine's things: asked of each below.
		if (!where.ok && where.error.code !== "bag-of-another-machine") return where;
		const moved: Moved[] = [];
		const cannot: string[] = [];
		const meant = await thingsMeant(read, form.data.things);
		if (!meant.ok) return meant;
		const { go, inside } = await withoutWhatIsInBags(read, meant.value);
		for (const thing of go) {
			const done = await movedTo(read, thing, to, at);
			if (!done.ok) cannot.push(`${await nameOf(read, thing)}: ${done.error.say}`);
			else if (done.value) moved.push(done.value);
		}
		if (cannot.length > 0 && !restGoes) {
			return refuse("cannot-move", `${cannot.join(" ")} Nothing was moved.`, { facts: { cannot, others: moved.length } });
		}
		if (moved.length === 0)
			return refuse("nothing-moves", `${cannot.join(" ")} ${cannot.length === 0 ? "All of it lies there already." : ""}`.trim());
		const words = where.ok ? where.value.words : "in the bag";
		const stays = await Promise.all(inside.map(async ({ thing, bag }) => `${await nameOf(read, thing)} in ${bag}`));
		const entries = byMachine(moved).map(({ machine, things }): EntryDraft => {
			return {
				machine,
				action: "things.moved",
				subject: subjectOf(things),
				facts: { say: `Laid ${namedShortly(things.map((thing) => thing.called))} ${words}.`, things: things.map((thing) => thing.called) },
				rows: things.map((thing) => thing.row),
			};
		});
		return ok({ entries, result: { moved: moved.length, stayed: cannot, inside: stays, words } });
	});
}

/** What came of a count: how many are there, and by their names what is missing and what was not expected. */
export type Counted = { here: number; missing: string[]; unexpected: string[] };

/**
 * Records a count: what is at a place, what is missing, what was not expected. In the same deed it lays here what is to be
 * laid here, and of what is missing it lays elsewhere or gives up as lost what is said to be. An entry in any case, also
 * when nothing was wrong. Refused when something came or went while it was counted.
 */
export async function countPlace(input: CountPlace, env: Env): Promise<Result<Counted>> {
	const form = countPlaceSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { locationId, inside, expected, seen } = form.data;
	return record(env, async (read) => {
		const place = await countedPlace(read, locationId, inside);
		if (place === null) return refuse("no-location", "That place is not known. Choose one from the list.");
		const lying = await lyingFor(read, locationId, inside);
		if (lying === null)
			return refuse("too-much-to-count", `More lies on ${place} than one count holds. Count the places in it one by one.`);
		const now = lying.map(({ id }) => id);
		const meanwhile = await cameOrWent(read, expected, now);
		if (!meanwhile.ok) return meanwhile;
		const missing = now.filter((id) => !seen.includes(id));
		const unexpected = [...new Set(seen)].filter((id) => !now.includes(id));
		const mended = await mend(read, env, form.data, { missing, unexpected });
		if (!mended.ok) return mended;
		const [missingThings, unexpectedThings] = await Promise.all([namedAll(read, missing), namedAll(read, unexpected)]);
		const here = now.length - missing.length;
		const found = [
			`${here} there`,
			missing.length > 0 ? `missing ${namedShortly(missingThings.map(({ called }) => called))}` : "",
			unexpected.length > 0 ? `not expected ${namedShortly(unexpectedThings.map(({ called }) => called))}` : "",
		].filter(Boolean);
		const counted: EntryDraft = {
			machine: null,
			action: "place.counted",
			subject: { table: "Location", id: locationId },
			facts: {
				say: `Counted ${place}: ${found.join(", ")}.`,
				here: lying.filter(({ id }) => seen.includes(id)).map(({ tag, name }) => tag ?? name),
				missing: missingThings.map(({ tag }) => tag),
				unexpected: unexpectedThings.map(({ tag }) => tag),
			},
			rows: [],
		};
		const result = { here, missing: missingThings.map(({ called }) => called), unexpected: unexpectedThings.map(({ called }) => called) };
		return ok({ entries: [counted, ...mended.value], result });
	});
}

/** Refused with what came to the place, and what went, since its list was made. */
async function cameOrWent(read: Reader, expected: readonly string[], now: readonly string[]): Promise<Result<null>> {
	const came = now.filter((id) => !expected.includes(id));
	const went = expected.filter((id) => !now.includes(id));
	if (came.length + went.length === 0) return ok(null);
	const called = async (ids: readonly string[]) => namedShortly((await namedAll(read, ids)).map((thing) => thing.called));
	const words = [came.length > 0 ? `${await called(came)} came here` : "", went.length > 0 ? `${await called(went)} went` : ""];
	return refuse(
		"moved-meanwhile",
		`While it was counted, ${words.filter(Boolean).join(", and ")}. Nothing is recorded yet: the list below is as it stands now, look at those again.`,
		{ facts: { came, went } },
	);
}

/** The entries that put right what a count found, those of one machine together: first what is moved, then what is lost. */
async function mend(
	read: Reader,
	env: Env,
	{ locationId, layHere, elsewhere, lost }: z.output<typeof countPlaceSchema>,
	{ missing, unexpected }: { readonly missing: readonly string[]; readonly unexpected: readonly string[] },
): Promise<Result<EntryDraft[]>> {
	const moved: Moved[] = [];
	const strange = await namedAll(
		read,
		[...new Set(layHere)].filter((one) => unexpected.includes(one)),
	);
	// What lies in a bag that is laid here stays in it.
	for (const { kind, id } of (await withoutWhatIsInBags(read, strange)).go) {
		const done = await movedTo(read, { kind, id }, { kind: "location", locationId }, env.clock());
		if (!done.ok) return refuse(done.error.code, `${await nameOf(read, { kind, id })}: ${done.error.say}`, { facts: { id } });
		if (done.value) moved.push(done.value);
	}
	for (const [at, { kind, id, to }] of elsewhere.entries()) {
		if (!missing.includes(id) || moved.some((thing) => thing.id === id)) continue;
		const done = await movedTo(read, { kind, id }, to, env.clock());
		if (!done.ok) return refuse(done.error.code, done.error.say, { fields: { [`elsewhere.${at}.to`]: done.error.say }, facts: { id } });
		if (done.value) moved.push(done.value);
	}
	const entries = byMachine(moved).map(
		({ machine, things }): EntryDraft => ({
			machine,
			action: "things.moved",
			subject: subjectOf(things),
			facts: {
				say: `At a count, ${namedShortly(things.map(({ called, words }) => `${called} ${words}`))}.`,
				things: things.map((thing) => thing.called),
			},
			rows: things.map((thing) => thing.row),
		}),
	);
	const given = new Set<string>();
	for (const [at, { partId, why }] of lost.entries()) {
		if (!missing.includes(partId) || moved.some((thing) => thing.id === partId) || given.has(partId)) continue;
		given.add(partId);
		const done = await losing(read, { partId, why }, env);
		if (!done.ok) return refuse(done.error.code, done.error.say, { fields: { [`lost.${at}.why`]: done.error.say }, facts: { id: partId } });
		entries.push(...done.value.entries);
	}
	return ok(entries);
}

async function namedAll(read: Reader, ids: readonly string[]) {
	const all = await Promise.all(ids.map(async (id) => ({ id, ...((await thingNamed(read, id)) ?? UNKNOWN) })));
	return all;
}
/** An id that no page of ours sends: it is named as what it is, and cannot be moved. */
const UNKNOWN = { kind: "part" as const, tag: "something unknown", called: "something unknown" };

const subjectOf = ([first]: readonly Moved[]) => ({
	table: first?.kind === "bag" ? ("Bag" as const) : ("Part" as const),
	id: first?.id ?? "",
});

const placesIn = (read: Reader, parentId: string | null) =>
	read.location.findMany({ where: { parentId }, orderBy: { rank: "asc" }, take: 1000, select: { id: true, name: true, rank: true } });
