// Everything that a run of take-outs on one machine needs, in one answer: the phone then goes on without the shop.

import { bagsToUse } from "@/lib/bags/queries";
import type { Reader } from "@/lib/db/store";
import type { ReachSent } from "@/lib/fittings/benchList";
import { lastOutOf, MOST_SEATS, photosBySeat } from "@/lib/fittings/benchRows";
import { commonFixings, mirroredFixings } from "@/lib/fittings/fixingOffers";
import { conversionsOf, fixingShown, wireShown } from "@/lib/fittings/queries";
import { reachFacts } from "@/lib/fittings/reachFacts";
import { pathsOf, placesInOrder } from "@/lib/store/queries";

export type BenchSheet = Awaited<ReturnType<typeof benchSheet>>;
export type BenchSeat = BenchSheet["seats"][number];

/** The occupied positions of a machine in building order, each with what a take-out asks, and what is common to all of them. */
export async function benchSheet(read: Reader, machineId: string) {
	const [facts, fittings, last, bags, places, steps, conversions, common, photos] = await Promise.all([
		reachFacts(read, machineId),
		read.fitting.findMany({
			where: { untilAt: null, position: { machineId } },
			orderBy: [{ position: { rank: "asc" } }, { position: { mark: "asc" } }],
			take: MOST_SEATS,
			select: fittingShown,
		}),
		lastOutOf(read, machineId),
		bagsToUse(read, machineId),
		placesInOrder(read),
		read.step.findMany({
			where: { machineId, state: { in: ["doing", "planned"] } },
			orderBy: [{ state: "desc" }, { number: "asc" }],
			take: 100,
			select: { id: true, number: true, title: true, state: true },
		}),
		conversionsOf(read, machineId),
		commonFixings(read, machineId),
		photosBySeat(read, machineId),
	]);
	const mirrors = await mirroredFixings(
		read,
		fittings.filter((fitting) => fitting.holds.length === 0).map((fitting) => fitting.position.id),
	);
	const names = new Map([
		...last.map(({ partId, part }) => [partId, part.name] as const),
		...fittings.map(({ part }) => [part.id, part.name] as const),
	]);
	return {
		seats: fittings.map(({ id, position: { mirror, ...position }, part, holds, ...fitting }) => ({
			...fitting,
			position: { ...position, mirror: mirror?.name ?? null },
			part: { ...part, hosts: part.hosts.map((guest) => guest.name), tag: part.tag?.id ?? null },
			fixings: holds.map(({ fixing: { holds: all, ...fixing } }) => ({
				...fixing,
				alsoHolds: all.filter((hold) => hold.fittingId !== id && hold.fitting.untilAt === null).map((hold) => hold.fitting.position),
			})),
			offers: holds.length > 0 ? [] : (mirrors.get(position.id) ?? []),
			photo: photos.get(position.id) ?? null,
		})),
		reach: { positions: [...facts.positions.values()], seatOf: [...facts.seatOf], covers: facts.covers } satisfies ReachSent,
		lastOut: last.map(({ partId }) => partId),
		names: [...names],
		bags,
		places: pathsOf(places),
		steps,
		conversions,
		common,
	};
}

const fittingShown = {
	id: true,
	wayRound: true,
	position: {
		select: { id: true, mark: true, name: true, area: true, note: true, outLikely: true, mirror: { select: { name: true } } },
	},
	part: {
		select: {
			id: true,
			name: true,
			count: true,
			origin: true,
			works: true,
			condition: true,
			material: true,
			tag: { select: { id: true } },
			hosts: { where: { part: { isNot: null } }, orderBy: { rank: "asc" }, take: 60, select: { name: true } },
		},
	},
	holds: { orderBy: { id: "asc" }, take: 60, select: { fixing: { select: fixingShown } } },
	connections: { orderBy: { id: "asc" }, take: 300, select: wireShown },
	settings: { orderBy: { id: "asc" }, take: 40, select: { id: true, kind: true, value: true } },
} as const;
