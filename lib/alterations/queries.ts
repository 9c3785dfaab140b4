// Reads about a machine's lasting changes.

import type { Reader } from "@/lib/db/store";

/** No machine's list shows more alterations than this. */
export const MOST_ALTERATIONS = 500;

const SHOWN = {
	id: true,
	number: true,
	what: true,
	place: true,
	undo: true,
	undoHow: true,
	undoLow: true,
	undoLikely: true,
	undoHigh: true,
	undoWait: true,
	agreedBy: true,
	reason: true,
	state: true,
	doneAt: true,
	undoneAt: true,
	conversionId: true,
	part: { select: { name: true, origin: true, tag: { select: { id: true } } } },
	position: { select: { mark: true, name: true } },
	step: { select: { number: true, title: true } },
	conversion: { select: { number: true, name: true } },
} as const;

/** A machine's alterations by number; those entered in error come along, marked. */
export const alterationsOf = (read: Reader, machineId: string) =>
	read.alteration.findMany({ where: { machineId }, orderBy: { number: "asc" }, take: MOST_ALTERATIONS, select: SHOWN });
export type AlterationRow = Awaited<ReturnType<typeof alterationsOf>>[number];

/** One alteration by its number in the machine. */
export const alterationOf = (read: Reader, machineId: string, number: number) =>
	read.alteration.findUnique({ where: { machineId_number: { machineId, number } }, select: SHOWN });
