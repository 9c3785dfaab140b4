// A machine's book for the planner, as plain rows with defaults, so that a test shows only what it is about.

import type { ReversalFacts } from "@/lib/reversal/queries";

type Row<Key extends keyof ReversalFacts> = ReversalFacts[Key] extends readonly (infer One)[] ? One : never;

export const aPositionRow = (id: string, more: Partial<Row<"positions">> = {}): Row<"positions"> => ({
	id,
	mark: `m-${id}`,
	name: `place ${id}`,
	area: "",
	kind: "seat",
	hostId: null,
	rank: 0,
	sides: "[]",
	asFound: "yes",
	note: "",
	outLow: null,
	outLikely: null,
	outHigh: null,
	inLow: null,
	inLikely: null,
	inHigh: null,
	...more,
});

/** A part that lies on the bench, or is fitted in `positionId`. */
export const aPartRow = (id: string, positionId: string | null = null, more: Partial<Row<"parts">> = {}): Row<"parts"> => ({
	id,
	machineId: "m",
	name: `part ${id}`,
	count: 1,
	origin: "original",
	works: "unknown",
	condition: "",
	place: positionId === null ? "bench" : "fitted",
	placeWhy: "",
	positionId,
	dueDay: null,
	position: null,
	tag: { id: `t-${id}` },
	bag: null,
	location: null,
	...more,
});

export const aFitting = (partId: string, positionId: string, more: Partial<Row<"fittings">> = {}): Row<"fittings"> => ({
	id: `${partId} in ${positionId}`,
	partId,
	positionId,
	fromAt: "2026-01-01T00:00:00.000Z",
	untilAt: null,
	conversionId: null,
	outConversionId: null,
	wayRound: "",
	holds: [],
	connections: [],
	settings: [],
	...more,
});

export const aFinding = (positionId: string, partId: string | null, more: Partial<Row<"findings">> = {}): Row<"findings"> => ({
	positionId,
	partId,
	at: "2026-01-01T00:00:00.000Z",
	state: partId === null ? "missing" : "there",
	...more,
});

export const anAlteration = (number: number, more: Partial<Row<"alterations">> = {}): Row<"alterations"> => ({
	id: `alteration ${number}`,
	number,
	what: "hole widened",
	partId: null,
	positionId: null,
	place: null,
	undo: "clean",
	undoHow: "",
	undoLow: 1,
	undoLikely: 2,
	undoHigh: 3,
	undoWait: null,
	doneAt: "2026-02-01T00:00:00.000Z",
	conversionId: null,
	...more,
});

export const someFacts = (more: Partial<ReversalFacts>): ReversalFacts => ({
	machineId: "m",
	positions: [],
	parts: [],
	fittings: [],
	findings: [],
	obstructions: [],
	exclusions: [],
	alterations: [],
	conversions: [],
	bagsOutside: [],
	beyond: [],
	...more,
});
