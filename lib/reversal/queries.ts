// What the planner needs to know of a machine, and what a checklist says beside its operations. One read each, bounded;
// what is beyond a bound is said and never left out in silence, since a plan of part of a record would be wrong.

import { bagsOutside } from "@/lib/bags/nesting";
import type { Reader } from "@/lib/db/store";

/** How many rows of each kind are read: beyond what one machine should have. */
export const MOST = {
	positions: 5000,
	parts: 10_000,
	fittings: 20_000,
	findings: 20_000,
	obstructions: 40_000,
	exclusions: 5000,
	alterations: 5000,
	conversions: 200,
} as const;

export type Most = { readonly [Kind in keyof typeof MOST]: number };

/** A kind of which there are more rows than are read. */
export type Beyond = { readonly kind: keyof Most; readonly most: number };

/**
 * The machine as the reversal sees it: its build now and before, what is in the way, what was altered, what was converted.
 * `beyond` names what there is too much of; then the facts are not the whole machine, and `problemOf` lets nothing be planned.
 */
export async function reversalFacts(read: Reader, machineId: string, most: Most = MOST) {
	const [positions, parts, fittings, findings, obstructions, exclusions, alterations, conversions, outside] = await Promise.all([
		read.position.findMany({
			where: { machineId },
			orderBy: [{ rank: "asc" }, { mark: "asc" }],
			take: most.positions + 1,
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
			orderBy: { id: "asc" },
			take: most.parts + 1,
			select: {
				id: true,
				machineId: true,
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
			take: most.fittings + 1,
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
			take: most.findings + 1,
			select: { positionId: true, at: true, state: true, partId: true },
		}),
		read.obstruction.findMany({
			where: { machineId, stands: "yes" },
			orderBy: { id: "asc" },
			take: most.obstructions + 1,
			select: { partId: true, positionId: true, side: true },
		}),
		read.exclusion.findMany({
			where: { machineId },
			orderBy: { id: "asc" },
			take: most.exclusions + 1,
			select: { partId: true, otherId: true },
		}),
		read.alteration.findMany({
			where: { machineId, state: "done" },
			orderBy: { number: "asc" },
			take: most.alterations + 1,
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
			take: most.conversions + 1,
			select: { id: true, number: true, name: true, purpose: true },
		}),
		bagsOutside(read),
	]);
	const lists = { positions, parts, fittings, findings, obstructions, exclusions, alterations, conversions };
	return { machineId, ...lists, bagsOutside: outside, beyond: beyondIn(lists, most) };
}

function beyondIn(lists: { readonly [Kind in keyof Most]: readonly unknown[] }, most: Most): Beyond[] {
	const kinds: readonly (keyof Most)[] = [
		"positions",
		"parts",
		"fittings",
		"findings",
		"obstructions",
		"exclusions",
		"alterations",
		"conversions",
	];
	return kinds.filter((kind) => lists[kind].length > most[kind]).map((kind) => ({ kind, most: most[kind] }));
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
