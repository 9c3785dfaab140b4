// What the list at the bench and the machine's sheet both read.

import type { Reader } from "@/lib/db/store";
import { PICTURES } from "@/lib/files/mediaTypes";

/** More positions than any machine has. */
export const MOST_SEATS = 2000;
const MOST_LAST_OUT = 8;

/** The parts that came out of the machine last and are still out, the last one first. */
export const lastOutOf = (read: Reader, machineId: string) =>
	read.fitting.findMany({
		where: { position: { machineId }, untilAt: { not: null }, part: { positionId: null } },
		orderBy: [{ untilAt: "desc" }, { id: "desc" }],
		take: MOST_LAST_OUT,
		select: { partId: true, part: { select: { name: true } } },
	});

/** The last photo of each position, by position id. */
export async function photosBySeat(read: Reader, machineId: string): Promise<Map<string, string>> {
	const rows = await read.capture.findMany({
		where: {
			machineId,
			stands: "yes",
			kind: { in: ["photo", "drawing"] },
			positionId: { not: null },
			file: { mediaType: { in: [...PICTURES] } },
		},
		orderBy: [{ takenAt: "desc" }, { id: "desc" }],
		take: MOST_SEATS,
		select: { positionId: true, fileSha: true },
	});
	// The newest were read; the last that is written of each position stays.
	return new Map(rows.reverse().flatMap(({ positionId, fileSha }) => (positionId && fileSha ? [[positionId, fileSha] as const] : [])));
}
