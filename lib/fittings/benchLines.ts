// The list that a run of take-outs starts with, as the page comes: what can come out now, the first of it.

import type { Reader } from "@/lib/db/store";
import { type Choice, choiceOf, SHOWN } from "@/lib/fittings/benchList";
import { lastOutOf, MOST_SEATS, photosBySeat } from "@/lib/fittings/benchRows";
import { reachFacts } from "@/lib/fittings/reachFacts";

/** The first lines of each list, and how many there are; the rest comes with the machine's sheet. */
export async function benchLines(read: Reader, machineId: string): Promise<Choice> {
	const [facts, fittings, last, photos] = await Promise.all([
		reachFacts(read, machineId),
		read.fitting.findMany({
			where: { untilAt: null, position: { machineId } },
			orderBy: [{ position: { rank: "asc" } }, { position: { mark: "asc" } }],
			take: MOST_SEATS,
			select: {
				position: { select: { id: true, mark: true, name: true } },
				part: { select: { id: true, name: true, tag: { select: { id: true } } } },
			},
		}),
		lastOutOf(read, machineId),
		photosBySeat(read, machineId),
	]);
	const seats = fittings.map(({ position, part }) => ({
		position,
		part: { ...part, tag: part.tag?.id ?? null },
		photo: photos.get(position.id) ?? null,
	}));
	const { lines, counts } = choiceOf(
		facts,
		seats,
		last.map(({ partId }) => partId),
		new Map(seats.map(({ part }) => [part.id, part.name])),
	);
	return {
		lines: { opened: lines.opened.slice(0, SHOWN), free: lines.free.slice(0, SHOWN), behind: lines.behind.slice(0, SHOWN) },
		counts,
	};
}
