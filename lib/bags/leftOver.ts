// Holding bags that should be empty and are not. What is in a bag is judged by the machine that it is of, and not by the
// machine that the bag is of: the shop's own bags belong to none.

import { z } from "zod";
import { homeOf, homesOf, lyingFixing, lyingPart } from "@/lib/bags/lying";
import type { Reader } from "@/lib/db/store";
import { formatFixing } from "@/lib/fixings/fixingWords";
import { Prisma } from "@/lib/generated/prisma/client";

/** A holding bag with something in it whose place in the machine is filled again, or whose machine is finished: something was left out. */
export type LeftOver = {
	readonly bagId: string;
	readonly tag: string;
	readonly words: string;
	/** The machine that all of it is of; else the bag's own. */
	readonly machine: { readonly number: number; readonly name: string } | null;
	/** "6 x No.8 wood x 1, round, of lower rear panel (k01)" */
	readonly things: readonly string[];
};

/** A list shows so many bags. */
const MOST_LEFT_OVER = 200;

/**
 * Holding bags that should be empty by now and are not: of one machine, or of the whole shop. A fixing counts once every
 * position that it held has a part again; a part once its last position has; everything once the machine is finished, a
 * bag within with something in it too.
 */
export async function shouldBeEmpty(read: Reader, machineId?: string): Promise<LeftOver[]> {
	const bags = await leftIn(read, { machineId, when: BY_NOW });
	return inWords(read, [...bags.values()].slice(0, MOST_LEFT_OVER));
}

/** What should not be in this bag any more; null when all of it may be. */
export async function leftInBag(read: Reader, bagId: string): Promise<LeftOver | null> {
	const bags = await leftIn(read, { bagId, when: BY_NOW });
	return (await inWords(read, [...bags.values()]))[0] ?? null;
}

/** How many holding bags would not be empty if the machine were finished now. */
export async function notEmptyAtTheEnd(read: Reader, machineId: string): Promise<number> {
	return (await leftIn(read, { machineId, when: AT_THE_END })).size;
}

/** When something counts: `filled` says in SQL whether its place is filled again, `m` is its machine. */
type When = (filled: Prisma.Sql) => Prisma.Sql;
const BY_NOW: When = (filled) => Prisma.sql`(m."state" IN ('ready', 'left') OR ${filled})`;
const AT_THE_END: When = () => Prisma.sql`1`;

const NEVER_FILLED = Prisma.sql`0`;
const PART_FILLED = Prisma.sql`EXISTS (SELECT 1 FROM "Part" now WHERE now."positionId" = (
	SELECT f."positionId" FROM "Fitting" f WHERE f."partId" = t."id" ORDER BY f."fromAt" DESC, f."id" DESC LIMIT 1))`;
const FIXING_FILLED = Prisma.sql`(EXISTS (SELECT 1 FROM "Hold" o WHERE o."fixingId" = t."id") AND NOT EXISTS (
	SELECT 1 FROM "Hold" o JOIN "Fitting" f ON f."id" = o."fittingId"
	WHERE o."fixingId" = t."id" AND NOT EXISTS (SELECT 1 FROM "Part" now WHERE now."positionId" = f."positionId")))`;

const leftSchema = z.array(z.object({ bagId: z.string(), kind: z.enum(["part", "fixing", "bag"]), id: z.string(), machineId: z.string() }));
type Left = z.output<typeof leftSchema>[number];

/**
 * What should not be where it is, by holding bag, in the order of the bags. Decided in the database and whole: whoever
 * takes the first so many of a wider choice and narrows it afterwards misses those behind.
 */
async function leftIn(
	read: Reader,
	of: { readonly machineId?: string | undefined; readonly bagId?: string; readonly when: When },
): Promise<Map<string, Left[]>> {
	const asked = [
		Prisma.sql`h."role" = 'holding' AND h."place" <> 'void'`,
		...(of.bagId === undefined ? [] : [Prisma.sql`h."id" = ${of.bagId}`]),
		...(of.machineId === undefined ? [] : [Prisma.sql`m."id" = ${of.machineId}`]),
	];
	const where = (filled: Prisma.Sql) => Prisma.join([...asked, of.when(filled)], " AND ");
	const rows = leftSchema.parse(
		await read.$queryRaw`WITH RECURSIVE "holds"("bagId", "machineId") AS (
				SELECT "bagId", "machineId" FROM "Part" WHERE "bagId" IS NOT NULL
				UNION SELECT "bagId", "machineId" FROM "Fixing" WHERE "bagId" IS NOT NULL
				UNION SELECT b."parentId", "holds"."machineId" FROM "holds" JOIN "Bag" b ON b."id" = "holds"."bagId" WHERE b."parentId" IS NOT NULL
			)
			SELECT h."id" AS "bagId", 1 AS "rank", 'part' AS "kind", t."id" AS "id", m."id" AS "machineId"
				FROM "Bag" h JOIN "Part" t ON t."bagId" = h."id" JOIN "Machine" m ON m."id" = t."machineId" WHERE ${where(PART_FILLED)}
			UNION ALL SELECT h."id", 2, 'fixing', t."id", m."id"
				FROM "Bag" h JOIN "Fixing" t ON t."bagId" = h."id" JOIN "Machine" m ON m."id" = t."machineId" WHERE ${where(FIXING_FILLED)}
			UNION ALL SELECT h."id", 3, 'bag', t."id", m."id"
				FROM "Bag" h JOIN "Bag" t ON t."parentId" = h."id" JOIN "holds" ON "holds"."bagId" = t."id"
				JOIN "Machine" m ON m."id" = "holds"."machineId" WHERE ${where(NEVER_FILLED)}
			ORDER BY 1, 2, 4, 5`,
	);
	const bags = new Map<string, Left[]>();
	for (const row of rows) bags.set(row.bagId, [...(bags.get(row.bagId) ?? []), row]);
	return bags;
}

/** The bags with what is left in them as words. */
async function inWords(read: Reader, bags: readonly (readonly Left[])[]): Promise<LeftOver[]> {
	const left = bags.flat();
	const idsOf = (kind: Left["kind"]) => left.filter((thing) => thing.kind === kind).map((thing) => thing.id);
	const bagShown = { id: true, words: true, tag: { select: { id: true } } } as const;
	const machineShown = { select: { number: true, name: true } } as const;
	const [parts, fixings, inner, outer, machines] = await Promise.all([
		read.part.findMany({ where: { id: { in: idsOf("part") } }, select: lyingPart }),
		read.fixing.findMany({ where: { id: { in: idsOf("fixing") } }, select: lyingFixing }),
		read.bag.findMany({ where: { id: { in: idsOf("bag") } }, select: bagShown }),
		read.bag.findMany({ where: { id: { in: left.map((thing) => thing.bagId) } }, select: { ...bagShown, machine: machineShown } }),
		read.machine.findMany({ where: { id: { in: left.map((thing) => thing.machineId) } }, select: { id: true, ...machineShown.select } }),
	]);
	const words = new Map([
		...parts.map((part) => [part.id, partWords(part)] as const),
		...fixings.map((fixing) => [fixing.id, fixingWords(fixing)] as const),
		...inner.map((bag) => [bag.id, [bag.tag?.id, bag.words].filter(Boolean).join(" ")] as const),
	]);
	return bags.flatMap((things): LeftOver[] => {
		const bag = outer.find(({ id }) => id === things[0]?.bagId);
		if (!bag) return [];
		const of = machines.filter(({ id }) => things.some((thing) => thing.machineId === id));
		const machine = of.length === 1 ? of[0] : bag.machine;
		return [
			{
				bagId: bag.id,
				tag: bag.tag?.id ?? "",
				words: bag.words,
				machine: machine ? { number: machine.number, name: machine.name } : null,
				// A bag within may hold things of two machines, and is named once.
				things: [...new Set(things.map((thing) => thing.id))].map((id) => words.get(id) ?? ""),
			},
		];
	});
}

type Part = Prisma.PartGetPayload<{ select: typeof lyingPart }>;
function partWords(part: Part): string {
	const home = part.fittings[0] ? homeOf(part.fittings[0].position) : null;
	return `${part.count > 1 ? `${part.count} x ` : ""}${part.name}${home ? `, of ${home.name} (${home.mark})` : ""}`;
}

type Fixing = Prisma.FixingGetPayload<{ select: typeof lyingFixing }>;
function fixingWords(fixing: Fixing): string {
	const homes = homesOf(fixing.holds).map((home) => `${home.name} (${home.mark})`);
	return homes.length === 0 ? formatFixing(fixing) : `${formatFixing(fixing)}, of ${homes.join(" and ")}`;
}
