// A machine's build as it stands now, as it was found, or on a day: which part is at which position, in building order.
// Pure: made from facts that are read once (lib/positions/buildQueries.ts).

import type { FindingState, Origin, PlaceKind, Works } from "@/lib/generated/prisma/enums";
import { type OriginFacts, originalOf, partsOf } from "@/lib/originality/facts";
import { type Mark, markAsFound, markIn } from "@/lib/originality/strip";

export type BuildPart = {
	readonly id: string;
	readonly name: string;
	readonly count: number;
	readonly tag: string | null;
	readonly machineId: string;
	readonly origin: Origin;
	readonly works: Works;
	readonly place: PlaceKind;
	readonly placeWhy: string;
	readonly sinceAt: string;
	readonly dueDay: string | null;
	readonly bag: { readonly id: string; readonly tag: string | null } | null;
	readonly location: string | null;
	readonly party: string | null;
};

export type BuildFixing = {
	readonly count: number;
	readonly thread: string;
	readonly length: string;
	readonly head: string;
	readonly drive: string;
};

export type BuildFitting = {
	readonly id: string;
	readonly partId: string;
	readonly positionId: string;
	readonly fromAt: string;
	readonly untilAt: string | null;
	readonly fixings: readonly BuildFixing[];
	/** Wires and hoses that are undone. */
	readonly parked: number;
	readonly connected: number;
};

export type BuildPosition = {
	readonly id: string;
	readonly mark: string;
	readonly name: string;
	readonly area: string;
	readonly kind: "seat" | "place";
	readonly hostId: string | null;
	readonly asFound: boolean;
	readonly holds: string | null;
};

export type BuildObstruction = { readonly partId: string; readonly positionId: string; readonly side: string };
export type BuildFinding = {
	readonly positionId: string;
	readonly state: FindingState;
	readonly partId: string | null;
	readonly at: string;
};
export type BuildAlteration = {
	readonly positionId: string | null;
	readonly partId: string | null;
	readonly undo: "clean" | "trace" | "never";
	readonly doneAt: string;
};

export type BuildFacts = {
	readonly origin: OriginFacts;
	/** In building order. */
	readonly positions: readonly BuildPosition[];
	readonly parts: readonly BuildPart[];
	/** Earliest first. */
	readonly fittings: readonly BuildFitting[];
	/** Earliest first. */
	readonly findings: readonly BuildFinding[];
	readonly obstructions: readonly BuildObstruction[];
	readonly alterations: readonly BuildAlteration[];
	/** When as found was stamped; null while it is open. */
	readonly asFoundAt: string | null;
};

/** Which state of the machine: now, as found, or as it was just before an instant. */
export type Which = { readonly state: "now" } | { readonly state: "as-found" } | { readonly state: "at"; readonly before: string };

/** As found shows what had been done before the stamp, a past day what had been done by then. */
const wasDone = ({ doneAt }: BuildAlteration, which: Which, asFoundAt: string | null): boolean =>
	which.state === "now" || (which.state === "at" ? doneAt < which.before : asFoundAt === null || doneAt <= asFoundAt);

/** Position id to part id. As found goes by the last finding, so that later knowledge counts. */
export function holdingOf(facts: BuildFacts, which: Which): Map<string, string> {
	switch (which.state) {
		case "now":
			return new Map(facts.positions.flatMap((position) => (position.holds === null ? [] : [[position.id, position.holds] as const])));
		case "as-found": {
			const holding = new Map<string, string>();
			for (const finding of facts.findings) {
				if (finding.partId !== null && finding.state !== "missing") holding.set(finding.positionId, finding.partId);
				else holding.delete(finding.positionId);
			}
			return holding;
		}
		case "at":
			return new Map(
				facts.fittings.filter((fitting) => wasFitted(fitting, which.before)).map((fitting) => [fitting.positionId, fitting.partId]),
			);
	}
}

const wasFitted = (fitting: BuildFitting, before: string): boolean =>
	fitting.fromAt < before && (fitting.untilAt === null || fitting.untilAt >= before);

export type BuildRow = {
	readonly id: string;
	readonly mark: string;
	readonly name: string;
	readonly area: string;
	readonly depth: number;
	readonly hosts: boolean;
	readonly kind: "seat" | "place";
	readonly asFound: boolean;
	/** Null for a place, which holds no part. */
	readonly state: Mark | null;
	/** The state in words. */
	readonly says: string;
	readonly part: BuildPart | null;
	/** The original of the position, where it is not what the position holds. */
	readonly original: BuildPart | null;
	readonly fixings: readonly BuildFixing[];
	/** What comes off first, by side; "" is every side. */
	readonly behind: readonly { readonly side: string; readonly parts: readonly { readonly name: string; readonly mark: string | null }[] }[];
	readonly notConnected: boolean;
	/** Altered for good, or with a trace. */
	readonly altered: "clean" | "trace" | "never" | null;
	/** Where the assembly is that carries it, when that is not in the machine: its row stands under a loose assembly. */
	readonly looseOn: BuildPart | null;
};

/** Every position of the build, each under what carries it; positions on loose assemblies come last, under those. */
export function buildRows(facts: BuildFacts, which: Which): BuildRow[] {
	const holding = holdingOf(facts, which);
	const at = new Map([...holding].map(([positionId, partId]) => [partId, positionId]));
	const parts = new Map(facts.parts.map((part) => [part.id, part]));
	const origin = partsOf(facts.origin);
	const originPositions = new Map(facts.origin.positions.map((position) => [position.id, position]));
	const positions = facts.positions.filter((position) => exists(facts, position, which, holding));
	const markOf = new Map(facts.positions.map((position) => [position.id, position.mark]));

	const children = new Map<string | null, BuildPosition[]>();
	const loose = new Map<string, BuildPosition[]>();
	const into = <Key>(map: Map<Key, BuildPosition[]>, key: Key, position: BuildPosition) => {
		const list = map.get(key) ?? [];
		list.push(position);
		map.set(key, list);
	};
	for (const position of positions) {
		const carrier = position.hostId === null ? null : at.get(position.hostId);
		if (carrier === undefined && position.hostId !== null) into(loose, position.hostId, position);
		else into(children, carrier ?? null, position);
	}

	const fittingsAt = new Map<string, BuildFitting[]>();
	for (const fitting of facts.fittings) {
		const list = fittingsAt.get(fitting.positionId) ?? [];
		list.push(fitting);
		fittingsAt.set(fitting.positionId, list);
	}
	const inTheWay = new Map<string, BuildObstruction[]>();
	const fitted = new Set(holding.values());
	for (const obstruction of facts.obstructions) {
		const list = inTheWay.get(obstruction.positionId) ?? [];
		list.push(obstruction);
		inTheWay.set(obstruction.positionId, list);
	}
	const alterations = new Map<string, BuildAlteration["undo"]>();
	for (const alteration of facts.alterations) {
		if (!wasDone(alteration, which, facts.asFoundAt)) continue;
		for (const key of [alteration.positionId, alteration.partId])
			if (key !== null) alterations.set(key, worse(alterations.get(key), alteration.undo));
	}

	const rows: BuildRow[] = [];
	const seen = new Set<string>();
	const walk = (position: BuildPosition, depth: number, looseOn: BuildPart | null): void => {
		if (seen.has(position.id)) return;
		seen.add(position.id);
		const partId = holding.get(position.id) ?? null;
		const facet = originPositions.get(position.id);
		const read =
			facet === undefined || position.kind === "place"
				? null
				: which.state === "as-found"
					? markAsFound(facet, origin)
					: markIn(facet, origin, which.state === "now" ? "now" : holding);
		const here = fittingsAt.get(position.id) ?? [];
		const shown = here.findLast((fitting) => fitting.partId === partId) ?? here.at(-1);
		const guests = children.get(position.id) ?? [];
		const originalId = facet ? (originalOf(facet, origin)?.id ?? null) : null;
		rows.push({
			id: position.id,
			mark: position.mark,
			name: position.name,
			area: position.area,
			depth,
			hosts: guests.length > 0,
			kind: position.kind,
			asFound: position.asFound,
			state: read?.state ?? null,
			says: read?.says ?? (position.kind === "place" ? "a place with no part of its own" : "no such place as found"),
			part: partId === null ? null : (parts.get(partId) ?? null),
			original: originalId === null || originalId === partId ? null : (parts.get(originalId) ?? null),
			fixings: shown?.fixings ?? [],
			behind: bySide(inTheWay.get(position.id) ?? [], fitted, parts, at, markOf),
			notConnected: shown !== undefined && shown.partId === partId && shown.parked > 0 && shown.connected === 0 && which.state === "now",
			altered: alterations.get(partId ?? "") ?? alterations.get(position.id) ?? null,
			looseOn,
		});
		for (const guest of guests) walk(guest, depth + 1, looseOn);
	};
	for (const position of children.get(null) ?? []) walk(position, 0, null);
	for (const [hostId, guests] of loose) for (const position of guests) walk(position, 1, parts.get(hostId) ?? null);
	return rows;
}

/** As found shows what was there when the machine came; a day shows a place of the shop's own once something was fitted there. */
function exists(facts: BuildFacts, position: BuildPosition, which: Which, holding: ReadonlyMap<string, string>): boolean {
	if (position.asFound || which.state === "now") return true;
	if (which.state === "as-found") return false;
	return holding.has(position.id) || facts.fittings.some((fitting) => fitting.positionId === position.id && fitting.fromAt < which.before);
}

function bySide(
	obstructions: readonly BuildObstruction[],
	fitted: ReadonlySet<string>,
	parts: ReadonlyMap<string, BuildPart>,
	at: ReadonlyMap<string, string>,
	markOf: ReadonlyMap<string, string>,
): BuildRow["behind"] {
	const sides = new Map<string, { name: string; mark: string | null }[]>();
	for (const { partId, side } of obstructions) {
		const part = parts.get(partId);
		if (!part || !fitted.has(partId)) continue;
		const list = sides.get(side) ?? [];
		list.push({ name: part.name, mark: markOf.get(at.get(partId) ?? "") ?? null });
		sides.set(side, list);
	}
	return [...sides].map(([side, list]) => ({ side, parts: list })).sort((a, b) => (a.side < b.side ? -1 : 1));
}

const GRADES = ["clean", "trace", "never"] as const;
const worse = (a: BuildAlteration["undo"] | undefined, b: BuildAlteration["undo"]): BuildAlteration["undo"] =>
	a === undefined || GRADES.indexOf(b) > GRADES.indexOf(a) ? b : a;
