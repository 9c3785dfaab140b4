// What the planner needs to know of a machine, and what a checklist says beside its operations. One read each, bounded.

import { bagsOutside } from "@/lib/bags/nesting";
import type { Reader } from "@/lib/db/store";

/** A machine with more positions than this is beyond what one list should hold. */
export const MOST_POSITIONS = 5000;

/** The machine as the reversal sees it: its build now and before, what is in the way, what was altered, what was converted. */
export async function reversalFacts(read: Reader, machineId: string) {
	const [positions, parts, fittings, findings, obstructions, exclusions, alterations, conversions, outside] = await Promise.all([
		read.position.findMany({
			where: { machineId },
			orderBy: [{ rank: "asc" }, { mark: "asc" }],
			take: MOST_POSITIONS,
			select: {
				id: true,
				mark: true,
				name: true,
				area: true,
				kind: true,
				hostId: true,
				rank: true,
				sides: true,
				asFound: true,
				note: true,
				outLow: true,
				outLikely: true,
				outHigh: true,
				inLow: true,
				inLikely: true,
				inHigh: true,
			},
		}),
		read.part.findMany({
			where: { OR: [{ machineId }, { position: { machineId } }], place: { not: "void" } },
			take: MOST_POSITIONS * 2,
			select: {
				id: true,
				name: true,
				count: true,
				origin: true,
				works: true,
				condition: true,
				place: true,
				placeWhy: true,
				positionId: true,
				dueDay: true,
				position: { select: { machineId: true, mark: true } },
				tag: { select: { id: true } },
				bag: { select: bagSelect },
				location: { select: locationSelect },
			},
		}),
		read.fitting.findMany({
			where: { machineId },
			orderBy: [{ fromAt: "asc" }, { id: "asc" }],
			take: MOST_POSITIONS * 4,
			select: {
				id: true,
				partId: true,
				positionId: true,
				fromAt: true,
				untilAt: true,
				conversionId: true,
				outConversionId: true,
				wayRound: true,
				holds: {
					select: {
						fixing: {
							select: {
								id: true,
								count: true,
								thread: true,
								length: true,
								head: true,
								drive: true,
								tightness: true,
								differs: true,
								note: true,
								place: true,
								bag: { select: bagSelect },
							},
						},
					},
				},
				connections: {
					select: { id: true, from: true, to: true, colour: true, gauge: true, tagFrom: true, tagTo: true, state: true, note: true },
				},
				settings: { select: { id: true, kind: true, value: true } },
			},
		}),
		read.finding.findMany({
			where: { machineId },
			orderBy: [{ at: "asc" }, { entry: "asc" }],
			take: MOST_POSITIONS * 4,
			select: { positionId: true, at: true, state: true, partId: true },
		}),
		read.obstruction.findMany({
			where: { machineId, stands: "yes" },
			take: MOST_POSITIONS * 8,
			select: { partId: true, positionId: true, side: true },
		}),
		read.exclusion.findMany({ where: { machineId }, take: MOST_POSITIONS, select: { partId: true, otherId: true } }),
		read.alteration.findMany({
			where: { machineId, state: "done" },
			orderBy: { number: "asc" },
			take: MOST_POSITIONS,
			select: {
				id: true,
				number: true,
				what: true,
				partId: true,
				positionId: true,
				place: true,
				undo: true,
				undoHow: true,
				undoLow: true,
				undoLikely: true,
				undoHigh: true,
				undoWait: true,
				doneAt: true,
				conversionId: true,
			},
		}),
		read.conversion.findMany({
			where: { machineId },
			orderBy: { number: "asc" },
			take: 200,
			select: { id: true, number: true, name: true, purpose: true },
		}),
		bagsOutside(read),
	]);
	return { positions, parts, fittings, findings, obstructions, exclusions, alterations, conversions, bagsOutside: outside };
}

const locationSelect = {
	id: true,
	name: true,
	rank: true,
	parent: {
		select: { name: true, rank: true, parent: { select: { name: true, rank: true, parent: { select: { name: true, rank: true } } } } },
	},
} as const;

const bagSelect = {
	id: true,
	kind: true,
	words: true,
	caution: true,
	place: true,
	placeWhy: true,
	tag: { select: { id: true } },
	location: { select: locationSelect },
	parent: { select: { tag: { select: { id: true } }, words: true, place: true, location: { select: locationSelect } } },
} as const;

export type ReversalFacts = Awaited<ReturnType<typeof reversalFacts>>;
