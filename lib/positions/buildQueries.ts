// Reads a whole build at once: a fixed number of queries, whatever the machine's size.

import type { Reader } from "@/lib/db/store";
import { originFacts } from "@/lib/originality/queries";
import type { BuildFacts, BuildPart } from "@/lib/positions/build";

const PART = {
	id: true,
	name: true,
	count: true,
	machineId: true,
	origin: true,
	works: true,
	place: true,
	placeWhy: true,
	sinceAt: true,
	dueDay: true,
	tag: { select: { id: true } },
	bag: { select: { id: true, tag: { select: { id: true } } } },
	location: { select: { name: true } },
	party: { select: { name: true } },
} as const;

/** Everything that the tree, the table and any past build of a machine are made from. */
export async function buildFacts(read: Reader, machineId: string): Promise<BuildFacts> {
	const where = { machineId };
	const [machine, origin, positions, own, fittings, findings, obstructions, alterations] = await Promise.all([
		read.machine.findUniqueOrThrow({ where: { id: machineId }, select: { asFoundAt: true } }),
		originFacts(read, [machineId]),
		read.position.findMany({
			where,
			orderBy: [{ rank: "asc" }, { mark: "asc" }],
			select: { id: true, mark: true, name: true, area: true, kind: true, hostId: true, asFound: true, part: { select: { id: true } } },
		}),
		read.part.findMany({ where, select: PART }),
		read.fitting.findMany({
			where,
			orderBy: [{ fromAt: "asc" }, { id: "asc" }],
			select: {
				id: true,
				partId: true,
				positionId: true,
				fromAt: true,
				untilAt: true,
				holds: { select: { fixing: { select: { count: true, thread: true, length: true, head: true, drive: true } } } },
				connections: { select: { state: true } },
			},
		}),
		read.finding.findMany({
			where,
			orderBy: [{ at: "asc" }, { entry: "asc" }],
			select: { positionId: true, state: true, partId: true, at: true },
		}),
		read.obstruction.findMany({ where: { ...where, stands: "yes" }, select: { partId: true, positionId: true, side: true } }),
		read.alteration.findMany({ where: { ...where, state: "done" }, select: { positionId: true, partId: true, undo: true, doneAt: true } }),
	]);
	const known = new Set(own.map((part) => part.id));
	const foreign = [...new Set(fittings.map((fitting) => fitting.partId))].filter((id) => !known.has(id));
	const lent = foreign.length === 0 ? [] : await read.part.findMany({ where: { id: { in: foreign } }, select: PART });
	return {
		origin: origin.get(machineId) ?? { positions: [], parts: [] },
		positions: positions.map(({ part, asFound, ...position }) => ({ ...position, asFound: asFound === "yes", holds: part?.id ?? null })),
		parts: [...own, ...lent].map(
			({ tag, bag, location, party, ...part }): BuildPart => ({
				...part,
				tag: tag?.id ?? null,
				bag: bag ? { id: bag.id, tag: bag.tag?.id ?? null } : null,
				location: location?.name ?? null,
				party: party?.name ?? null,
			}),
		),
		fittings: fittings.map(({ holds, connections, ...fitting }) => ({
			...fitting,
			fixings: holds.map((hold) => hold.fixing),
			parked: connections.filter((connection) => connection.state === "parked").length,
			connected: connections.filter((connection) => connection.state === "connected").length,
		})),
		findings,
		obstructions,
		alterations,
		asFoundAt: machine.asFoundAt,
	};
}
