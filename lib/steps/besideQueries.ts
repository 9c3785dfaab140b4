// What else a person did in the time of a piece that is being entered: it is taken as it was typed, and said on the spot.

import { type Instant, instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import { overlapsOf, type PieceOfTime } from "@/lib/steps/timeCheck";

/** Other time of the same person, and for how long it is the same time. */
export type Beside = {
	readonly machine: number;
	readonly step: number;
	readonly title: string;
	readonly startedAt: Instant;
	readonly minutes: number;
};

/** Nobody does more things at once than this while one piece lasts. */
const MOST = 200;

/** Time of the person that stands beside a piece of theirs, earliest first; taken back time is none. */
export async function besideOf(
	read: Reader,
	piece: Omit<PieceOfTime, "how"> & { readonly endedAt: Instant },
	now: Instant,
): Promise<Beside[]> {
	const others = await read.work.findMany({
		where: {
			id: { not: piece.id },
			personId: piece.personId,
			how: { not: "void" },
			startedAt: { lt: piece.endedAt },
			OR: [{ endedAt: null }, { endedAt: { gt: piece.startedAt } }],
		},
		orderBy: [{ startedAt: "asc" }, { id: "asc" }],
		take: MOST,
		select: {
			id: true,
			personId: true,
			startedAt: true,
			endedAt: true,
			step: { select: { number: true, title: true } },
			machine: { select: { number: true } },
		},
	});
	const pieces = others.map(
		({ id, personId, startedAt, endedAt }): PieceOfTime => ({
			id,
			personId,
			how: "added",
			startedAt: instant(startedAt),
			endedAt: endedAt === null ? null : instant(endedAt),
		}),
	);
	const overlaps = overlapsOf([...pieces, { ...piece, how: "added" }], now);
	return others.flatMap(({ id, startedAt, step, machine }) =>
		overlaps
			.filter(({ first, second }) => (first === id && second === piece.id) || (first === piece.id && second === id))
			.map(({ minutes }) => ({ machine: machine.number, step: step.number, title: step.title, startedAt: instant(startedAt), minutes })),
	);
}
