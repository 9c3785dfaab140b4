// A machine's entries as its history, newest first: who said what was done, and when.

import { z } from "zod";
import type { Reader } from "@/lib/db/store";
import { Prisma } from "@/lib/generated/prisma/client";

export type HistoryEntry = {
	readonly seq: number;
	readonly machineSeq: number | null;
	readonly at: string;
	/** Name of whoever did it. */
	readonly by: string;
	readonly action: string;
	/** The deed as a plain sentence. */
	readonly say: string;
	readonly hash: string;
};

export type HistoryFilter = {
	/** Only sentences that hold this word. */
	readonly word?: string;
	/** Only what this person did. */
	readonly person?: string;
	/** Only entries before this number in the machine's chain: the next page. */
	readonly before?: number;
	readonly take: number;
};

/** A raw query gives whole numbers as either. */
const whole = z.union([z.number(), z.bigint()]).transform(Number);

const rowsSchema = z.array(
	z.object({
		seq: whole,
		machineSeq: whole.nullable(),
		at: z.string(),
		by: z.string(),
		action: z.string(),
		say: z.string(),
		hash: z.string(),
	}),
);

/** A page of the machine's history, and the number to go on from when there is more. */
export async function historyOf(
	read: Reader,
	machineId: string,
	{ word, person, before, take }: HistoryFilter,
): Promise<{ entries: HistoryEntry[]; next: number | null }> {
	const conditions = [Prisma.sql`e."machine" = ${machineId}`];
	if (before !== undefined) conditions.push(Prisma.sql`e."machineSeq" < ${before}`);
	if (person) conditions.push(Prisma.sql`e."actor" = ${person}`);
	if (word) conditions.push(Prisma.sql`instr(lower(json_extract(e."open", '$.facts.say')), lower(${word})) > 0`);
	const rows = rowsSchema.parse(
		await read.$queryRaw`SELECT e."seq", e."machineSeq", e."at", coalesce(p."name", 'someone') AS "by",
			e."action", coalesce(json_extract(e."open", '$.facts.say'), e."action") AS "say", e."hash"
			FROM "Entry" e LEFT JOIN "Person" p ON p."id" = e."actor"
			WHERE ${Prisma.join(conditions, " AND ")} ORDER BY e."machineSeq" DESC LIMIT ${take + 1}`,
	);
	const entries = rows.slice(0, take);
	return { entries, next: rows.length > take ? (entries.at(-1)?.machineSeq ?? null) : null };
}

/** Who has written in this machine's history, for the filter. */
export async function writersOf(read: Reader, machineId: string): Promise<{ id: string; name: string }[]> {
	const actors = await read.entry.groupBy({ by: ["actor"], where: { machine: machineId }, orderBy: { actor: "asc" }, take: 100 });
	return read.person.findMany({
		where: { id: { in: actors.map(({ actor }) => actor) } },
		orderBy: { name: "asc" },
		select: { id: true, name: true },
	});
}

/** How many entries a machine has: its chain has no gap, so the last one's number tells. */
export async function entriesCounted(read: Reader, machineId: string): Promise<number> {
	return (await machineHead(read, machineId))?.machineSeq ?? 0;
}

/** The last entry of a machine's chain. Written down elsewhere, its hash shows later that nothing before it was rewritten. */
export async function machineHead(read: Reader, machineId: string): Promise<{ machineSeq: number; hash: string; at: string } | null> {
	const head = await read.entry.findFirst({
		where: { machine: machineId },
		orderBy: { machineSeq: "desc" },
		select: { machineSeq: true, hash: true, at: true },
	});
	return head && { ...head, machineSeq: head.machineSeq ?? 0 };
}
