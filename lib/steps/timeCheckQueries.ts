// Reads what time of a machine, or of one step, cannot be right.

import { type Instant, instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import { overlapsOf, type PieceOfTime, ranOverNight, withoutShared } from "@/lib/steps/timeCheck";

/** No page reads more pieces of time than this to find what is wrong: the newest, for those can still be put right. */
const MOST_PIECES = 5000;

export type TimeAt = {
	readonly workId: string;
	readonly person: string;
	readonly startedAt: Instant;
	readonly endedAt: Instant | null;
	readonly minutes: number | null;
	readonly how: "timed" | "added";
	readonly machine: number;
	readonly step: number;
};

/** What is wrong with a piece of time of the step or machine that was asked for. */
export type TimeDoubt =
	| {
			readonly kind: "overlap";
			readonly piece: TimeAt;
			readonly other: TimeAt;
			readonly minutes: number;
			readonly left: ReturnType<typeof withoutShared>;
	  }
	| { readonly kind: "overnight"; readonly piece: TimeAt };

export type TimeDoubts = {
	readonly doubts: readonly TimeDoubt[];
	/** Where there is more time than is read: what began before this was not looked at. Null when all was. */
	readonly since: Instant | null;
};

const NEWEST_FIRST = [{ startedAt: "desc" as const }, { id: "desc" as const }];

const SELECT = {
	id: true,
	personId: true,
	startedAt: true,
	endedAt: true,
	minutes: true,
	how: true,
	person: { select: { name: true } },
	step: { select: { number: true } },
	machine: { select: { number: true } },
} as const;

/** What of the time on a machine, or on one step of it, cannot be right: held against all that its persons did meanwhile, wherever. */
export async function timeDoubts(
	read: Reader,
	of: { readonly machineId: string } | { readonly stepId: string },
	now: Instant,
	timeZone: string,
	most = MOST_PIECES,
): Promise<TimeDoubts> {
	const own = await read.work.findMany({
		where: { ...of, how: { not: "void" } },
		orderBy: NEWEST_FIRST,
		take: most + 1,
		select: SELECT,
	});
	const ownCut = own.length > most ? own.splice(most) : [];
	const first = own.at(-1);
	if (first === undefined) return { doubts: [], since: null };
	const last =
		own
			.map(({ endedAt }) => endedAt ?? now)
			.sort()
			.at(-1) ?? now;
	const around = await read.work.findMany({
		where: {
			personId: { in: [...new Set(own.map(({ personId }) => personId))] },
			how: { not: "void" },
			startedAt: { lt: last },
			OR: [{ endedAt: null }, { endedAt: { gt: first.startedAt } }],
		},
		orderBy: NEWEST_FIRST,
		take: most + 1,
		select: SELECT,
	});
	const aroundCut = around.length > most ? around.splice(most) : [];
	const cutAt = [...(ownCut.length > 0 ? [first] : []), ...(aroundCut.length > 0 ? around.slice(-1) : [])].map(
		({ startedAt }) => startedAt,
	);
	const asked = new Set(own.map(({ id }) => id));
	const rows = new Map([...around, ...own].map((row) => [row.id, row]));
	const pieces = [...rows.values()].map(
		(row): PieceOfTime => ({
			id: row.id,
			personId: row.personId,
			how: row.how === "added" ? "added" : "timed",
			startedAt: instant(row.startedAt),
			endedAt: row.endedAt === null ? null : instant(row.endedAt),
		}),
	);
	const at = (id: string): TimeAt => {
		const row = rows.get(id);
		if (!row) throw new Error(`no piece of time ${id}`);
		return {
			workId: row.id,
			person: row.person.name,
			startedAt: instant(row.startedAt),
			endedAt: row.endedAt === null ? null : instant(row.endedAt),
			minutes: row.minutes,
			how: row.how === "added" ? "added" : "timed",
			machine: row.machine.number,
			step: row.step.number,
		};
	};
	const doubts = [
		...pieces
			.filter((piece) => asked.has(piece.id) && ranOverNight(piece, now, timeZone))
			.map((piece): TimeDoubt => ({ kind: "overnight", piece: at(piece.id) })),
		...overlapsOf(pieces, now)
			.filter(({ first: one, second: two }) => asked.has(one) || asked.has(two))
			.map(({ first: one, second: two, minutes }): TimeDoubt => {
				// Of two pieces of what was asked for, the later one is the one to look at.
				const [piece, other] = asked.has(two) ? [at(two), at(one)] : [at(one), at(two)];
				return { kind: "overlap", piece, other, minutes, left: withoutShared(piece, other) };
			}),
	];
	const latest = cutAt.sort().at(-1);
	return { doubts, since: latest === undefined ? null : instant(latest) };
}
