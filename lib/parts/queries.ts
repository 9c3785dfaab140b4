// Reads about single parts.

import type { Reader } from "@/lib/db/store";
import type { GivenTag } from "@/lib/parts/numbering";
import type { LostPosition } from "@/lib/parts/rules";

/** All running numbers that a machine has given out. */
export const tagsGiven = (read: Reader, machineNumber: number): Promise<GivenTag[]> =>
	read.tag.findMany({ where: { machineNumber }, select: { number: true, partId: true } });

/** How deep assemblies sit on assemblies at most; deeper is a loop that the database would have refused. */
const DEEPEST = 40;

/** The part itself and every part that is fitted on it, however deep: what moves when it moves. */
export async function wholeOf(read: Reader, partId: string): Promise<string[]> {
	const whole = [partId];
	let layer = [partId];
	for (let depth = 0; layer.length > 0 && depth < DEEPEST; depth++) {
		const guests = await read.part.findMany({ where: { position: { hostId: { in: layer } } }, select: { id: true } });
		layer = guests.map((guest) => guest.id).filter((id) => !whole.includes(id));
		whole.push(...layer);
	}
	return whole;
}

/**
 * The positions that could never be original again if the part went for good: those that its original parts held
 * when the machine came (or last, where that is not recorded).
 */
export async function positionsThatLose(read: Reader, partId: string): Promise<LostPosition[]> {
	const whole = await wholeOf(read, partId);
	const originals = await read.part.findMany({
		where: { id: { in: whole }, origin: "original" },
		select: {
			id: true,
			findings: { orderBy: { at: "desc" }, take: 1, select: { position: { select: { id: true, mark: true, name: true } } } },
			fittings: { orderBy: { fromAt: "asc" }, take: 1, select: { position: { select: { id: true, mark: true, name: true } } } },
		},
	});
	const positions = new Map<string, LostPosition>();
	for (const part of originals) {
		const position = part.findings[0]?.position ?? part.fittings[0]?.position;
		if (position) positions.set(position.id, { mark: position.mark, name: position.name });
	}
	return [...positions.values()].sort((a, b) => (a.mark < b.mark ? -1 : 1));
}
