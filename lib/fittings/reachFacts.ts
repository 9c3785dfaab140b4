// Reads what reach needs to know of one machine.

import type { Reader } from "@/lib/db/store";
import type { ReachFacts, ReachPosition } from "@/lib/fittings/reach";
import type { PartNames } from "@/lib/fittings/rules";
import { sidesOf } from "@/lib/positions/sides";

const positionColumns = { id: true, machineId: true, hostId: true, sides: true } as const;

type PositionRow = { id: string; machineId: string; hostId: string | null; sides: string };

const positionOf = (row: PositionRow): ReachPosition => ({ ...row, sides: sidesOf(row.sides) });

/**
 * The positions of a machine, what is fitted in them, and the obstructions that stand. An assembly that is fitted in
 * another machine is followed there, so that a position knows which whole it is in.
 */
export async function reachFacts(read: Reader, machineId: string): Promise<ReachFacts> {
	const [rows, obstructions] = await Promise.all([
		read.position.findMany({ where: { machineId }, select: positionColumns }),
		read.obstruction.findMany({
			where: { machineId, stands: "yes" },
			orderBy: { id: "asc" },
			select: { id: true, partId: true, positionId: true, side: true },
		}),
	]);
	const positions = new Map(rows.map((row) => [row.id, positionOf(row)]));
	const seatOf = new Map<string, string>();
	const fitted = await read.part.findMany({
		where: { position: { machineId } },
		select: { id: true, positionId: true },
	});
	for (const part of fitted) if (part.positionId) seatOf.set(part.id, part.positionId);
	await followHosts(read, positions, seatOf);
	return {
		positions,
		seatOf,
		covers: obstructions.map(({ id, partId, positionId, side }) => ({ obstructionId: id, partId, positionId, side })),
	};
}

/** Hosts that are fitted outside the machine: nearly always none. */
async function followHosts(read: Reader, positions: Map<string, ReachPosition>, seatOf: Map<string, string>): Promise<void> {
	let asked = [...positions.values()].flatMap((position) => position.hostId ?? []).filter((host) => !seatOf.has(host));
	while (asked.length > 0) {
		const hosts = await read.part.findMany({
			where: { id: { in: [...new Set(asked)] }, positionId: { not: null } },
			select: { id: true, position: { select: positionColumns } },
		});
		asked = [];
		for (const { id, position } of hosts) {
			if (!position) continue;
			seatOf.set(id, position.id);
			if (positions.has(position.id)) continue;
			positions.set(position.id, positionOf(position));
			if (position.hostId && !seatOf.has(position.hostId)) asked.push(position.hostId);
		}
	}
}

/** Names and tags of parts, for sentences. */
export async function partNames(read: Reader, partIds: readonly string[]): Promise<PartNames> {
	const parts = await read.part.findMany({
		where: { id: { in: [...new Set(partIds)] } },
		select: { id: true, name: true, tag: { select: { id: true } } },
	});
	return new Map(parts.map((part) => [part.id, { name: part.name, tag: part.tag?.id ?? null }]));
}
