// Reads about the reversals that were begun on a machine.

import { z } from "zod";
import { type Instant, instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";

const SHOWN = {
	id: true,
	entry: true,
	number: true,
	target: true,
	targetAt: true,
	conversionIds: true,
	positionIds: true,
	frozen: true,
	startBuild: true,
	leftOut: true,
	reason: true,
	state: true,
	startedAt: true,
	safeAt: true,
	endedAt: true,
	words: true,
	step: { select: { id: true, number: true, title: true, state: true } },
} as const;

/** The machine's reversals, the last one first; at most 100. */
export const reversalsOf = (read: Reader, machineId: string) =>
	read.reversal.findMany({ where: { machineId }, orderBy: { number: "desc" }, take: 100, select: SHOWN });

export const reversalNumbered = (read: Reader, machineId: string, number: number) =>
	read.reversal.findUnique({ where: { machineId_number: { machineId, number } }, select: SHOWN });

export type ReversalRow = NonNullable<Awaited<ReturnType<typeof reversalNumbered>>>;

/** The one that is being carried out; null when none is. */
export const openReversal = (read: Reader, machineId: string) =>
	read.reversal.findFirst({ where: { machineId, state: "open" }, select: { id: true, number: true } });

/** The clocks that run on a step. */
export async function clocksOn(read: Reader, stepId: string): Promise<{ workId: string; personId: string; startedAt: Instant }[]> {
	const rows = await read.work.findMany({
		where: { stepId, endedAt: null, minutes: null, how: { not: "void" } },
		orderBy: { id: "asc" },
		take: 50,
		select: { id: true, personId: true, startedAt: true },
	});
	return rows.map(({ id, personId, startedAt }) => ({ workId: id, personId, startedAt: instant(startedAt) }));
}

/** Alterations of the machine that were undone since a moment, and how long each has to rest. */
export const undoneSince = (read: Reader, machineId: string, since: string) =>
	read.alteration.findMany({
		where: { machineId, state: "undone", undoneAt: { gte: since } },
		orderBy: { number: "asc" },
		take: 500,
		select: { what: true, undoneAt: true, undoWait: true, positionId: true, partId: true },
	});

/** One thing that was done for a reversal. */
export type Done = { readonly seq: number; readonly at: string; readonly action: string; readonly by: string; readonly say: string };

const saidSchema = z.object({ facts: z.object({ say: z.string() }) });

/** How many of what was done are shown. */
export const MOST_DONE = 1000;

/**
 * What was taken out, put in, undone and left on the machine while the reversal was open, the earliest first: the ledger itself
 * says it. Labels, photos and words are not in it.
 */
export async function doneFor(read: Reader, machineId: string, reversalId: string, isOpen: boolean): Promise<Done[]> {
	const own = await read.entry.findMany({
		where: { subject: `Reversal/${reversalId}` },
		orderBy: { seq: "asc" },
		take: MOST_DONE,
		select: { seq: true },
	});
	const [first, last] = [own[0]?.seq, own.at(-1)?.seq];
	if (first === undefined) return [];
	const entries = await read.entry.findMany({
		where: {
			machine: machineId,
			seq: { gte: first, ...(isOpen ? {} : { lte: last ?? first }) },
			OR: [
				{
					action: {
						in: [
							"part.taken-out",
							"part.put-in",
							"part.put-back",
							"part.lost",
							"part.scrapped",
							"part.sold",
							"part.sent-out",
							"part.come-back",
							"alteration.undone",
							"alteration.fast",
						],
					},
				},
				{ subject: `Reversal/${reversalId}` },
			],
		},
		orderBy: { seq: "asc" },
		take: MOST_DONE,
		select: { seq: true, at: true, action: true, actor: true, open: true },
	});
	const people = new Map(
		(
			await read.person.findMany({
				where: { id: { in: [...new Set(entries.map(({ actor }) => actor))] } },
				select: { id: true, name: true },
			})
		).map(({ id, name }) => [id, name]),
	);
	return entries.map(({ seq, at, action, actor, open }) => ({
		seq,
		at,
		action,
		by: people.get(actor) ?? "someone",
		say: saidSchema.parse(JSON.parse(open)).facts.say,
	}));
}
