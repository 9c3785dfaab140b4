// What the page of a part shows: what it is, where it is, where it goes, and what became of it so far.

import { whereIs } from "@/lib/bags/queries";
import { saidOf } from "@/lib/bags/said";
import type { Reader } from "@/lib/db/store";
import { wireInWords } from "@/lib/fittings/wireWords";
import { formatFixing } from "@/lib/fixings/fixingWords";
import { positionsLostWith } from "@/lib/reversal/beforehandQueries";

const seat = {
	select: { id: true, mark: true, name: true, part: { select: { id: true, name: true } }, machine: { select: { number: true } } },
} as const;

/** Everything about one part, or null when there is no such part. Lists are bounded. */
export async function partSheet(read: Reader, partId: string) {
	const found = await read.part.findUnique({
		where: { id: partId },
		select: {
			id: true,
			entry: true,
			name: true,
			count: true,
			maker: true,
			type: true,
			material: true,
			made: true,
			origin: true,
			works: true,
			condition: true,
			place: true,
			placeWhy: true,
			sinceAt: true,
			dueDay: true,
			bagId: true,
			locationId: true,
			tag: { select: { id: true } },
			machine: { select: { id: true, number: true, name: true } },
			party: { select: { name: true } },
			position: seat,
			line: { select: { number: true, what: true, purchase: { select: { number: true } } } },
			hosts: {
				orderBy: [{ rank: "asc" }, { mark: "asc" }],
				take: 100,
				select: {
					mark: true,
					name: true,
					machine: { select: { number: true } },
					part: { select: { name: true, tag: { select: { id: true } } } },
				},
			},
			fittings: {
				orderBy: [{ fromAt: "desc" }, { id: "desc" }],
				take: 60,
				select: {
					id: true,
					fromAt: true,
					untilAt: true,
					wayRound: true,
					position: seat,
					fromStep: { select: { number: true, title: true } },
					untilStep: { select: { number: true, title: true } },
					conversion: { select: { name: true } },
					outConversion: { select: { name: true } },
					holds: {
						orderBy: { id: "asc" },
						take: 40,
						select: {
							fixing: {
								select: {
									id: true,
									count: true,
									thread: true,
									length: true,
									head: true,
									drive: true,
									differs: true,
									place: true,
									bag: { select: { tag: { select: { id: true } } } },
								},
							},
						},
					},
					connections: {
						orderBy: { id: "asc" },
						take: 60,
						select: { id: true, from: true, to: true, colour: true, base: true, tracer: true, state: true, tagFrom: true, tagTo: true },
					},
					settings: { orderBy: { id: "asc" }, take: 40, select: { id: true, kind: true, value: true } },
				},
			},
			evidence: {
				orderBy: { id: "asc" },
				take: 60,
				select: {
					id: true,
					kind: true,
					claim: true,
					how: true,
					words: true,
					whoSaid: true,
					stands: true,
					capture: { select: { fileSha: true } },
				},
			},
			alterations: {
				where: { state: { not: "void" } },
				orderBy: { number: "asc" },
				take: 60,
				select: { id: true, number: true, what: true, undo: true, undoHow: true, reason: true, state: true, doneAt: true },
			},
			digital: { orderBy: { id: "asc" }, take: 20, select: { id: true, name: true, version: true, fileSha: true } },
			faults: { where: { state: "open" }, orderBy: { id: "asc" }, take: 20, select: { id: true, words: true } },
		},
	});
	if (!found) return null;
	const { tag, fittings, position, hosts, ...part } = found;
	const last = fittings[0] ?? null;
	const [where, loses, said] = await Promise.all([
		part.place === "bag" || part.place === "location" || part.place === "bench"
			? whereIs(read, { bagId: part.bagId, locationId: part.locationId })
			: null,
		positionsLostWith(read, partId),
		saidOf(read, `Part/${partId}`),
	]);
	return {
		...part,
		tag: tag?.id ?? null,
		where,
		/** The position it is in. */
		fittedIn: position && { mark: position.mark, name: position.name, machineNumber: position.machine.number },
		/** While it is loose: the position that it was in last, and what is there now. */
		goesTo:
			position === null && last
				? {
						mark: last.position.mark,
						name: last.position.name,
						machineNumber: last.position.machine.number,
						holds: last.position.part?.name ?? null,
					}
				: null,
		guests: hosts.map((host) => ({
			mark: host.mark,
			name: host.name,
			machineNumber: host.machine.number,
			part: host.part && { name: host.part.name, tag: host.part.tag?.id ?? null },
		})),
		wayRound: last?.wayRound ?? "",
		settings: last?.settings ?? [],
		fixings: (last?.holds ?? []).map(({ fixing }) => ({
			id: fixing.id,
			words: formatFixing(fixing),
			differs: fixing.differs,
			place: fixing.place,
			bagTag: fixing.bag?.tag?.id ?? null,
		})),
		wires: (last?.connections ?? []).map((wire) => ({
			id: wire.id,
			words: wireInWords(wire),
			state: wire.state,
			tags: [wire.tagFrom, wire.tagTo].filter(Boolean),
		})),
		fittings: fittings.map((fitting) => ({
			id: fitting.id,
			fromAt: fitting.fromAt,
			untilAt: fitting.untilAt,
			position: { mark: fitting.position.mark, name: fitting.position.name, machineNumber: fitting.position.machine.number },
			fromStep: fitting.fromStep,
			untilStep: fitting.untilStep,
			conversion: fitting.conversion?.name ?? null,
			outConversion: fitting.outConversion?.name ?? null,
		})),
		/** Positions that could never be original again without it. */
		loses,
		said,
	};
}

export type PartSheet = NonNullable<Awaited<ReturnType<typeof partSheet>>>;
