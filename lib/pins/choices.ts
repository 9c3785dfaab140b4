// What a pin on a photo of a machine may mark, to choose from.

import type { Reader } from "@/lib/db/store";
import { wireInWords } from "@/lib/fittings/wireWords";
import { formatFixing } from "@/lib/fixings/fixingWords";
import { writeThing } from "@/lib/pins/rules";

export type ThingChoice = { readonly value: string; readonly label: string };
export type ThingGroup = { readonly label: string; readonly options: readonly ThingChoice[] };

/** More than any machine has; a list that is longer is cut. */
const MOST = 2000;
const NONE = { positionId: null, connectionId: null, fixingId: null } as const;

/** Positions with what is in them, wires and fixings of a machine; first what the photo is known to show, and what is on it and at it. */
export async function thingChoices(
	read: Reader,
	machineId: string,
	shown: { positionId: string | null; partId: string | null },
): Promise<ThingGroup[]> {
	const [positions, wires, fixings] = await Promise.all([
		read.position.findMany({
			where: { machineId },
			orderBy: [{ rank: "asc" }, { mark: "asc" }],
			take: MOST,
			select: { id: true, mark: true, name: true, hostId: true, part: { select: { id: true, name: true, tag: { select: { id: true } } } } },
		}),
		read.connection.findMany({
			where: { machineId, state: { not: "removed" }, fitting: { untilAt: null } },
			orderBy: { id: "asc" },
			take: MOST,
			select: {
				id: true,
				from: true,
				to: true,
				colour: true,
				base: true,
				tracer: true,
				fitting: { select: { positionId: true, position: { select: { mark: true } } } },
			},
		}),
		read.fixing.findMany({
			where: { machineId, place: { notIn: ["lost", "scrapped"] }, holds: { some: { fitting: { untilAt: null } } } },
			orderBy: { id: "asc" },
			take: MOST,
			select: {
				id: true,
				count: true,
				thread: true,
				length: true,
				head: true,
				drive: true,
				holds: {
					where: { fitting: { untilAt: null } },
					take: 4,
					select: { fitting: { select: { positionId: true, position: { select: { mark: true } } } } },
				},
			},
		}),
	]);
	const near = nearTo(positions, shown);
	const seats = positions.map(({ id, mark, name, part }) => ({
		seats: [id],
		value: writeThing({ ...NONE, positionId: id }),
		label: `${mark} ${name}${part && part.name !== name ? `: ${part.name}` : ""}${part?.tag ? ` ${part.tag.id}` : part ? "" : " (empty)"}`,
	}));
	const leads = wires.map(({ id, fitting, ...wire }) => ({
		seats: [fitting.positionId],
		value: writeThing({ ...NONE, connectionId: id }),
		label: `${fitting.position.mark} wire ${wireInWords(wire)}`,
	}));
	const holds = fixings.map(({ id, holds: held, ...fixing }) => ({
		seats: held.map(({ fitting }) => fitting.positionId),
		value: writeThing({ ...NONE, fixingId: id }),
		label: `${held.map(({ fitting }) => fitting.position.mark).join(" and ")} ${formatFixing(fixing)}`,
	}));
	const isNear = (choice: { seats: readonly string[] }) => choice.seats.some((id) => near.has(id));
	const group = (label: string, choices: readonly (ThingChoice & { seats: readonly string[] })[]): ThingGroup[] =>
		choices.length === 0 ? [] : [{ label, options: choices.map(({ value, label: words }) => ({ value, label: words })) }];
	const rest = <C extends { seats: readonly string[] }>(choices: readonly C[]) => choices.filter((choice) => !isNear(choice));
	return [
		...group("What the photo is of", [...seats, ...leads, ...holds].filter(isNear)),
		...group("Positions", rest(seats)),
		...group("Wires", rest(leads)),
		...group("Fixings", rest(holds)),
	];
}

/** The position that is shown, where the part shown is, and what sits on that part. */
function nearTo(
	positions: readonly { readonly id: string; readonly hostId: string | null; readonly part: { readonly id: string } | null }[],
	{ positionId, partId }: { positionId: string | null; partId: string | null },
): Set<string> {
	const seats = positions.filter(({ id, part }) => id === positionId || (partId !== null && part?.id === partId));
	const hosts = new Set([...seats.flatMap(({ part }) => part?.id ?? []), ...(partId === null ? [] : [partId])]);
	return new Set([
		...seats.map(({ id }) => id),
		...positions.filter(({ hostId }) => hostId !== null && hosts.has(hostId)).map(({ id }) => id),
	]);
}
