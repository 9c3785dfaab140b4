// Fixings that a hand can take over with one tap where none are on record: those of the other side, then those that this
// machine and this shop have met most.

import type { Reader } from "@/lib/db/store";
import { MOST_SEATS } from "@/lib/fittings/benchRows";

/** A fixing as it is offered. `from` says where it comes from; nothing for what is common here. */
export type FixingOffer = {
	readonly count: number;
	readonly thread: string;
	readonly length: string;
	readonly head: string;
	readonly drive: string;
	readonly from: string;
};

const shape = { count: true, thread: true, length: true, head: true, drive: true } as const;
type Shape = Omit<FixingOffer, "from">;

/** So many of the last fixings are looked through: what is common on a machine is common among them. */
const LOOKED_AT = 300;
const MOST_OFFERED = 6;

/** What is common on a machine, then in the shop; most often first, each size once with its commonest count. */
export async function commonFixings(read: Reader, machineId: string): Promise<FixingOffer[]> {
	const latest = { orderBy: { entry: "desc" }, take: LOOKED_AT, select: shape } as const;
	const [here, shop] = await Promise.all([read.fixing.findMany({ where: { machineId }, ...latest }), read.fixing.findMany(latest)]);
	return mostOften(here, shop).slice(0, MOST_OFFERED);
}

/** What the other side is called, by the name alone: "trim, left" is the other side of "trim, right". Null where it says no side, or both. */
export function otherSide(name: string): string | null {
	const sides = name.match(/\b(?:left|right)\b/gi) ?? [];
	const [side] = sides;
	if (side === undefined || sides.length > 1) return null;
	const other = side.toLowerCase() === "left" ? "right" : "left";
	return name.replace(side, /^[A-Z]/.test(side) ? other[0]?.toUpperCase() + other.slice(1) : other);
}

/** By position, what holds its mirror image now, or held it last: the one that was said, else the one of the other side's name. Left out where it has none. */
export async function mirroredFixings(read: Reader, positionIds: readonly string[]): Promise<Map<string, FixingOffer[]>> {
	const asked = await read.position.findMany({
		where: { id: { in: [...positionIds] } },
		select: { id: true, machineId: true, name: true, mirrorId: true, mirrorOf: { take: 1, select: { id: true } } },
	});
	const unsaid = asked.filter(({ mirrorId, mirrorOf, name }) => !mirrorId && mirrorOf.length === 0 && otherSide(name) !== null);
	const called = await read.position.findMany({
		where: {
			machineId: { in: [...new Set(unsaid.map(({ machineId }) => machineId))] },
			name: { in: unsaid.flatMap(({ name }) => otherSide(name) ?? []) },
		},
		take: MOST_SEATS,
		select: { id: true, machineId: true, name: true },
	});
	const byName = new Map(called.map(({ id, machineId, name }) => [`${machineId}/${name}`, id]));
	const others = new Map(
		asked.flatMap(({ id, machineId, name, mirrorId, mirrorOf }) => {
			const other = mirrorId ?? mirrorOf[0]?.id ?? byName.get(`${machineId}/${otherSide(name)}`);
			return other ? [[id, other] as const] : [];
		}),
	);
	const held = await read.fitting.findMany({
		where: { positionId: { in: [...others.values()] }, holds: { some: {} } },
		orderBy: [{ fromAt: "desc" }, { id: "desc" }],
		take: MOST_SEATS,
		select: {
			positionId: true,
			position: { select: { name: true } },
			holds: { take: 20, orderBy: { id: "asc" }, select: { fixing: { select: shape } } },
		},
	});
	// The newest were read; the last that is written of each position stays.
	const last = new Map(held.reverse().map((fitting) => [fitting.positionId, fitting]));
	return new Map(
		[...others].flatMap(([id, other]) => {
			const fitting = last.get(other);
			return fitting ? [[id, fitting.holds.map(({ fixing }) => ({ ...fixing, from: `as at ${fitting.position.name}` }))] as const] : [];
		}),
	);
}

const wordsOf = ({ thread, length, head, drive }: Shape): string => [thread, length, head, drive].join("|");

/** Pure: the sizes of several lists, those of the first list first, each list by how often a size occurs in it. */
export function mostOften(...lists: readonly (readonly Shape[])[]): FixingOffer[] {
	const seen = new Set<string>();
	return lists.flatMap((list) => {
		const bySize = new Map<string, Shape[]>();
		for (const fixing of list) if (wordsOf(fixing) !== "|||") bySize.set(wordsOf(fixing), [...(bySize.get(wordsOf(fixing)) ?? []), fixing]);
		return [...bySize]
			.sort(([a, those], [b, these]) => these.length - those.length || (a < b ? -1 : 1))
			.flatMap(([size, same]) => {
				if (seen.has(size) || !same[0]) return [];
				seen.add(size);
				return [{ ...same[0], count: commonest(same.map(({ count }) => count)), from: "" }];
			});
	});
}

function commonest(counts: readonly number[]): number {
	const times = new Map<number, number>();
	for (const count of counts) times.set(count, (times.get(count) ?? 0) + 1);
	return [...times].sort(([a, most], [b, least]) => least - most || a - b)[0]?.[0] ?? 1;
}
