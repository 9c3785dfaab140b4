// Reads about a machine's positions.

import type { Reader } from "@/lib/db/store";
import type { NewPosition } from "@/lib/positions/schema";
import { sidesOf } from "@/lib/positions/sides";

export type BuildToCopy = {
	readonly number: number;
	readonly items: readonly NewPosition[];
	/** Position marks: the part that is (or first was) at `partAt` stands in the way of `position`. */
	readonly obstructions: readonly { readonly partAt: string; readonly position: string; readonly side: string; readonly note: string }[];
};

/** A machine's positions as another machine may begin with: all not seen yet. Null when there is no such machine. */
export async function buildToCopy(read: Reader, machineId: string): Promise<BuildToCopy | null> {
	const machine = await read.machine.findUnique({ where: { id: machineId }, select: { number: true } });
	if (!machine) return null;
	const positions = await read.position.findMany({ where: { machineId, asFound: "yes" }, orderBy: [{ rank: "asc" }, { mark: "asc" }] });
	const fittings = await read.fitting.findMany({
		where: { machineId },
		orderBy: [{ fromAt: "desc" }, { id: "desc" }],
		select: { partId: true, positionId: true, part: { select: { name: true, count: true, maker: true, type: true, material: true } } },
	});
	const obstructions = await read.obstruction.findMany({
		where: { machineId, stands: "yes" },
		select: { partId: true, positionId: true, side: true, note: true },
	});
	const markOf = new Map(positions.map((position) => [position.id, position.mark]));
	// The earliest fitting comes last and wins: a part is copied to where it was first.
	const home = new Map(fittings.map((fitting) => [fitting.partId, fitting.positionId]));
	const first = new Map(fittings.map((fitting) => [fitting.positionId, fitting.part]));
	const markWith = (partId: string | null): string | null => (partId === null ? null : (markOf.get(home.get(partId) ?? "") ?? null));
	const standing = obstructions.flatMap(({ partId, positionId, side, note }) => {
		const [partAt, position] = [markWith(partId), markOf.get(positionId)];
		return partAt && position ? [{ partAt, position, side, note }] : [];
	});
	const needed = new Set([...positions.flatMap((position) => markWith(position.hostId) ?? []), ...standing.map(({ partAt }) => partAt)]);
	return {
		number: machine.number,
		obstructions: standing,
		items: hostsFirst(
			positions.map((position): NewPosition => {
				const part = first.get(position.id);
				return {
					mark: position.mark,
					name: position.name,
					area: position.area || null,
					hostMark: markWith(position.hostId),
					hostPartId: null,
					kind: position.kind,
					sides: sidesOf(position.sides),
					out: points(position.outLow, position.outLikely, position.outHigh),
					in: points(position.inLow, position.inLikely, position.inHigh),
					note: position.note,
					finding: "unseen",
					foundWords: "",
					part: part && needed.has(position.mark) ? { ...part, made: null, origin: "unknown", works: "unknown", condition: "" } : null,
					wayRound: "",
					evidence: [],
				};
			}),
		),
	};
}

/**
 * The same items, each after the one it sits on. Parts that changed places over the years can make hosts go round in a
 * circle; there the first one met sits on the machine itself.
 */
export function hostsFirst(items: readonly NewPosition[]): NewPosition[] {
	const byMark = new Map(items.map((item) => [item.mark, item]));
	const placed = new Map<NewPosition, NewPosition>();
	const onTheWay = new Set<NewPosition>();
	const place = (item: NewPosition): void => {
		if (placed.has(item) || onTheWay.has(item)) return;
		onTheWay.add(item);
		const host = item.hostMark === null ? undefined : byMark.get(item.hostMark);
		if (host) place(host);
		placed.set(item, host && !placed.has(host) ? { ...item, hostMark: null } : item);
	};
	for (const item of items) place(item);
	return [...placed.values()];
}

const points = (low: number | null, likely: number | null, high: number | null) =>
	low === null || likely === null || high === null ? null : { low, likely, high };
