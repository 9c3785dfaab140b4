import type { Reader } from "@/lib/db/store";
import type { PlaceFact } from "@/lib/store/rules";

/** Room, rack, shelf, bin, and room to spare; deeper is a slip. */
const DEEPEST = 16;

/** A place and the places around it, innermost first; empty when there is no such place. */
export async function placesUp(read: Reader, locationId: string): Promise<PlaceFact[]> {
	const up: PlaceFact[] = [];
	for (let id: string | null = locationId; id !== null && up.length < DEEPEST; ) {
		const place: { id: string; name: string; parentId: string | null } | null = await read.location.findUnique({
			where: { id },
			select: { id: true, name: true, parentId: true },
		});
		if (!place) break;
		up.push({ id: place.id, name: place.name });
		id = place.parentId;
	}
	return up;
}

/** The way to a place in the shop, "Back room · rack B · shelf 2", or null when there is no such place. */
export async function locationPath(read: Reader, locationId: string): Promise<string | null> {
	const up = await placesUp(read, locationId);
	return up.length === 0
		? null
		: up
				.reverse()
				.map((place) => place.name)
				.join(" · ");
}
