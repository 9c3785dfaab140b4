// A new part with its tag, as rows. Pure. Every part gets a tag when it is created.

import { add, type Draft, type RowChange } from "@/lib/ledger/rows";
import type { PartDetails } from "@/lib/parts/schema";
import { formatTag } from "@/lib/tags/tag";

export type Place = Pick<Draft<"Part">, "place" | "positionId" | "bagId" | "locationId">;

export const onTheBench: Place = { place: "bench", positionId: null, bagId: null, locationId: null };
export const fittedAt = (positionId: string): Place => ({ place: "fitted", positionId, bagId: null, locationId: null });
export const inBag = (bagId: string): Place => ({ place: "bag", positionId: null, bagId, locationId: null });
export const atLocation = (locationId: string): Place => ({ place: "location", positionId: null, bagId: null, locationId });

/** The rows of one new part, and its tag as it is printed. `number` is a free running number (`nextPartNumbers`). */
export function newPart(part: {
	readonly id: string;
	readonly machine: { readonly id: string; readonly number: number };
	readonly number: number;
	readonly details: PartDetails;
	readonly place: Place;
	readonly at: string;
	readonly lineId?: string | null;
}): { readonly tag: string; readonly rows: RowChange[] } {
	const tag = formatTag(part.machine.number, part.number);
	const { details } = part;
	return {
		tag,
		rows: [
			add("Part", {
				id: part.id,
				machineId: part.machine.id,
				name: details.name,
				count: details.count,
				maker: details.maker,
				type: details.type,
				material: details.material,
				made: details.made,
				origin: details.origin,
				works: details.works,
				condition: details.condition,
				...part.place,
				partyId: null,
				sinceAt: part.at,
				dueDay: null,
				placeWhy: "",
				lineId: part.lineId ?? null,
			}),
			add("Tag", { id: tag, machineNumber: part.machine.number, number: part.number, partId: part.id, bagId: null }),
		],
	};
}
