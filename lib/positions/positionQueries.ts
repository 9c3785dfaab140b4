// Everything that the page of one position shows, by the machine and the position's mark.

import type { Reader } from "@/lib/db/store";

const TAG = { select: { id: true } } as const;
const SHORT_PART = { id: true, name: true, count: true, origin: true, place: true, tag: TAG } as const;

/** The part that a position holds or held, with where it is now. */
const WHOLE_PART = {
	...SHORT_PART,
	entry: true,
	machineId: true,
	maker: true,
	type: true,
	material: true,
	made: true,
	works: true,
	condition: true,
	placeWhy: true,
	sinceAt: true,
	dueDay: true,
	bag: { select: { id: true, tag: TAG } },
	location: { select: { name: true } },
	party: { select: { name: true } },
} as const;

const STEP = { select: { number: true, title: true } } as const;

/** Photos shown on the page of a position; the others stand under Papers. */
export const MOST_PHOTOS = 24;
const MOST_ROWS = 200;

/** A position with its build, its history and how it is known; null when the machine has no such mark. */
export async function positionByMark(read: Reader, machineId: string, mark: string) {
	const position = await read.position.findUnique({
		where: { machineId_mark: { machineId, mark } },
		include: {
			host: { select: { ...SHORT_PART, position: { select: { mark: true, name: true } } } },
			mirror: { select: { mark: true, name: true } },
			part: { select: WHOLE_PART },
			findings: {
				orderBy: [{ at: "asc" }, { entry: "asc" }],
				take: MOST_ROWS,
				select: { id: true, at: true, state: true, words: true, part: { select: SHORT_PART } },
			},
			fittings: {
				orderBy: [{ fromAt: "desc" }, { id: "desc" }],
				take: MOST_ROWS,
				select: {
					id: true,
					fromAt: true,
					untilAt: true,
					wayRound: true,
					part: { select: WHOLE_PART },
					fromStep: STEP,
					untilStep: STEP,
					conversion: { select: { number: true, name: true } },
					outConversion: { select: { number: true, name: true } },
					holds: { select: { fixing: { include: { bag: { select: { tag: TAG } } } } } },
					connections: true,
					settings: { include: { capture: { select: { fileSha: true } } } },
				},
			},
			behind: {
				where: { stands: "yes" },
				orderBy: { id: "asc" },
				take: MOST_ROWS,
				select: {
					id: true,
					side: true,
					note: true,
					part: { select: { ...SHORT_PART, position: { select: { mark: true, machineId: true } } } },
				},
			},
			alterations: {
				where: { state: { not: "void" } },
				orderBy: { number: "asc" },
				take: MOST_ROWS,
				select: { number: true, what: true, undo: true, state: true },
			},
			faults: { orderBy: { id: "asc" }, take: MOST_ROWS, select: { id: true, words: true, state: true } },
		},
	});
	if (!position) return null;
	const partIds = [
		...new Set([...position.fittings.map((fitting) => fitting.part.id), ...position.findings.flatMap((finding) => finding.part?.id ?? [])]),
	];
	const holdsId = position.part?.id ?? null;
	const [guests, inTheWayOf, evidence, captures, partAlterations] = await Promise.all([
		holdsId === null
			? []
			: read.position.findMany({
					where: { hostId: holdsId },
					orderBy: [{ rank: "asc" }, { mark: "asc" }],
					take: MOST_ROWS,
					select: { id: true, mark: true, name: true, part: { select: { id: true } } },
				}),
		holdsId === null
			? []
			: read.obstruction.findMany({
					where: { partId: holdsId, stands: "yes" },
					orderBy: { id: "asc" },
					take: MOST_ROWS,
					select: { id: true, side: true, position: { select: { mark: true, name: true } } },
				}),
		read.evidence.findMany({
			where: { OR: [{ positionId: position.id }, { partId: { in: partIds } }] },
			orderBy: { id: "asc" },
			take: MOST_ROWS,
			select: {
				id: true,
				partId: true,
				kind: true,
				claim: true,
				how: true,
				words: true,
				whoSaid: true,
				stands: true,
				capture: { select: { fileSha: true } },
			},
		}),
		read.capture.findMany({
			where: { OR: [{ positionId: position.id }, { partId: { in: partIds } }], stands: "yes", fileSha: { not: null } },
			orderBy: [{ takenAt: "desc" }, { id: "desc" }],
			take: MOST_PHOTOS,
			select: { id: true, words: true, file: { select: { id: true, name: true, mediaType: true } } },
		}),
		read.alteration.findMany({
			where: { partId: { in: partIds }, state: { not: "void" } },
			orderBy: { number: "asc" },
			take: MOST_ROWS,
			select: { number: true, what: true, undo: true, state: true, partId: true },
		}),
	]);
	return { ...position, guests, inTheWayOf, evidence, captures, partAlterations };
}

export type PositionPage = NonNullable<Awaited<ReturnType<typeof positionByMark>>>;

/** Positions of a machine to choose one of, with what each holds. */
export const positionChoices = (read: Reader, machineId: string) =>
	read.position.findMany({
		where: { machineId },
		orderBy: [{ rank: "asc" }, { mark: "asc" }],
		take: 2000,
		select: { id: true, mark: true, name: true, kind: true, part: { select: { id: true, name: true, tag: TAG } } },
	});

/** Words already used for evidence in the shop, to offer while typing. */
export async function evidenceWords(read: Reader): Promise<string[]> {
	const used = await read.evidence.findMany({
		where: { how: { not: "" } },
		distinct: ["how"],
		orderBy: { how: "asc" },
		take: 200,
		select: { how: true },
	});
	return used.map(({ how }) => how);
}
