// How bags lie in one another: the way out from a bag, all that is within it, and which are out of the shop. Read in one
// query each, so that there is no depth at which an answer would end too soon.

import { z } from "zod";
import { type BagFact, NOT_FOUND_BEGINS } from "@/lib/bags/rules";
import type { Reader } from "@/lib/db/store";
import { BagPlace, BagRole } from "@/lib/generated/prisma/enums";

const waySchema = z.array(
	z.object({
		id: z.string(),
		parentId: z.string().nullable(),
		machineId: z.string().nullable(),
		place: z.enum(BagPlace),
		role: z.enum(BagRole),
		tag: z.string().nullable(),
		machineNumber: z.number().nullable(),
	}),
);

/** The bag and those around it, innermost first; empty when there is no such bag. */
async function wayOut(read: Reader, bagId: string): Promise<BagFact[]> {
	// UNION and not UNION ALL: should a hand ever have made a ring, it is walked once.
	const rows = waySchema.parse(
		await read.$queryRaw`WITH RECURSIVE "way"("id", "parentId") AS (
				SELECT "id", "parentId" FROM "Bag" WHERE "id" = ${bagId}
				UNION SELECT b."id", b."parentId" FROM "way" JOIN "Bag" b ON b."id" = "way"."parentId"
			)
			SELECT b."id", b."parentId", b."machineId", b."place", b."role", t."id" AS "tag", m."number" AS "machineNumber"
			FROM "way" JOIN "Bag" b ON b."id" = "way"."id"
			LEFT JOIN "Tag" t ON t."bagId" = b."id" LEFT JOIN "Machine" m ON m."id" = b."machineId"`,
	);
	const left = new Map(rows.map((row) => [row.id, row]));
	const way: (typeof rows)[number][] = [];
	for (let next = left.get(bagId); next; next = next.parentId === null ? undefined : left.get(next.parentId)) {
		left.delete(next.id);
		way.push(next);
	}
	const outermost = way.at(-1);
	const outIn = outermost?.place === "out" ? tagOf(outermost) : null;
	return way.map(({ parentId: _, ...row }) => ({ ...row, tag: tagOf(row), outIn }));
}

const tagOf = (row: { readonly tag: string | null }): string => row.tag ?? "the bag";

/** The bag as the rules see it, or null. */
export async function bagFact(read: Reader, bagId: string): Promise<BagFact | null> {
	return (await wayOut(read, bagId))[0] ?? null;
}

/** The bags around a bag, innermost first, without itself. */
export async function bagsAround(read: Reader, bagId: string): Promise<BagFact[]> {
	return (await wayOut(read, bagId)).slice(1);
}

/** The tag of the bag that is out of the shop with something that lies in `bagId`; null when it is here, or in no bag. */
export async function outInBag(read: Reader, bagId: string | null): Promise<string | null> {
	return bagId === null ? null : ((await bagFact(read, bagId))?.outIn ?? null);
}

const idsSchema = z.array(z.object({ id: z.string() })).transform((rows) => rows.map((row) => row.id));

/** Every bag that is not here, out of the shop or missing: itself, or one around it. */
export async function bagsOutside(read: Reader): Promise<string[]> {
	return idsSchema.parse(
		await read.$queryRaw`WITH RECURSIVE "away"("id") AS (
				SELECT "id" FROM "Bag" WHERE "place" = 'out'
				UNION SELECT b."id" FROM "away" JOIN "Bag" b ON b."parentId" = "away"."id"
			)
			SELECT "id" FROM "away" ORDER BY "id"`,
	);
}

/** Every bag that was sent out of the shop, with those in it; a bag that is missing was not. */
async function bagsSentOut(read: Reader): Promise<string[]> {
	return idsSchema.parse(
		await read.$queryRaw`WITH RECURSIVE "away"("id") AS (
				SELECT "id" FROM "Bag" WHERE "place" = 'out' AND "placeWhy" NOT LIKE ${`${NOT_FOUND_BEGINS}%`}
				UNION SELECT b."id" FROM "away" JOIN "Bag" b ON b."parentId" = "away"."id"
			)
			SELECT "id" FROM "away" ORDER BY "id"`,
	);
}

/** The condition for parts that are out of the shop: by themselves, or with the bag that they lie in. */
export async function partsAway(read: Reader) {
	return { OR: [{ place: "out" as const }, { bagId: { in: await bagsSentOut(read) } }] };
}

/** The condition for parts that are not here: out of the shop, or in a bag that is missing. */
export async function partsNotHere(read: Reader) {
	return { OR: [{ place: "out" as const }, { bagId: { in: await bagsOutside(read) } }] };
}

/** The bag and every bag within it, however deep. */
export async function bagsWithin(read: Reader, bagId: string): Promise<string[]> {
	return idsSchema.parse(
		await read.$queryRaw`WITH RECURSIVE "within"("id") AS (
				SELECT "id" FROM "Bag" WHERE "id" = ${bagId}
				UNION SELECT b."id" FROM "within" JOIN "Bag" b ON b."parentId" = "within"."id"
			)
			SELECT "id" FROM "within" ORDER BY "id"`,
	);
}
