// Reads what the counts and strips of machines are made from: a fixed number of queries, however many machines.

import type { Reader } from "@/lib/db/store";
import type { OriginFacts, OriginPart, OriginPosition } from "@/lib/originality/facts";

const PART = { id: true, machineId: true, origin: true, place: true } as const;

/** The facts of each of the machines, in building order. */
export async function originFacts(read: Reader, machineIds: readonly string[]): Promise<Map<string, OriginFacts>> {
	const ids = [...machineIds];
	const where = { machineId: { in: ids } };
	const [positions, parts, findings, fittings, evidence] = await Promise.all([
		read.position.findMany({
			where,
			orderBy: [{ rank: "asc" }, { mark: "asc" }],
			select: {
				id: true,
				machineId: true,
				mark: true,
				name: true,
				area: true,
				kind: true,
				asFound: true,
				hostId: true,
				part: { select: { id: true } },
			},
		}),
		read.part.findMany({ where, select: PART }),
		read.finding.findMany({ where, orderBy: [{ at: "asc" }, { entry: "asc" }], select: { positionId: true, state: true, partId: true } }),
		read.fitting.findMany({
			where,
			orderBy: [{ fromAt: "asc" }, { id: "asc" }],
			select: { machineId: true, positionId: true, partId: true },
		}),
		read.evidence.findMany({
			where: { ...where, stands: "yes", claim: "made", partId: { not: null } },
			select: { partId: true, kind: true },
		}),
	]);
	const found = new Map(findings.map(({ positionId, state, partId }) => [positionId, { state, partId }]));
	const held = gathered(fittings, (fitting) => fitting.positionId);
	const known = gathered(evidence, (piece) => piece.partId ?? "");
	const partById = new Map(parts.map((part) => [part.id, part]));
	const foreign = [...new Set(fittings.map((fitting) => fitting.partId))].filter((id) => !partById.has(id));
	const lent = foreign.length === 0 ? [] : await read.part.findMany({ where: { id: { in: foreign } }, select: PART });
	for (const part of lent) partById.set(part.id, part);
	const facts = new Map<string, { positions: OriginPosition[]; parts: Map<string, OriginPart> }>(
		ids.map((id) => [id, { positions: [], parts: new Map() }]),
	);
	const take = (machineId: string, partId: string | null) => {
		const part = partId === null ? undefined : partById.get(partId);
		if (!part) return;
		const kinds = known.get(part.id)?.map((piece) => piece.kind) ?? [];
		facts.get(machineId)?.parts.set(part.id, {
			id: part.id,
			origin: part.origin,
			place: part.place,
			own: part.machineId === machineId,
			evidence: kinds,
		});
	};
	for (const part of parts) take(part.machineId, part.id);
	for (const fitting of fittings) take(fitting.machineId, fitting.partId);
	for (const { machineId, part, asFound, ...position } of positions) {
		const last = found.get(position.id) ?? null;
		take(machineId, last?.partId ?? null);
		facts.get(machineId)?.positions.push({
			...position,
			asFound: asFound === "yes",
			found: last,
			holds: part?.id ?? null,
			held: held.get(position.id)?.map((fitting) => fitting.partId) ?? [],
		});
	}
	return new Map([...facts].map(([id, { positions: places, parts: things }]) => [id, { positions: places, parts: [...things.values()] }]));
}

function gathered<Row>(rows: readonly Row[], keyOf: (row: Row) => string): Map<string, Row[]> {
	const groups = new Map<string, Row[]>();
	for (const row of rows) {
		const key = keyOf(row);
		const group = groups.get(key);
		if (group) group.push(row);
		else groups.set(key, [row]);
	}
	return groups;
}
