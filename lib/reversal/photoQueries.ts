// The photo that goes with each line of a checklist.

import type { Reader } from "@/lib/db/store";
import { PICTURES } from "@/lib/files/mediaTypes";
import type { ReversalFacts } from "@/lib/reversal/queries";

/** How many of the machine's photos are looked through, the newest first. */
const MOST_PHOTOS = 5000;

export type LinePhoto = { readonly sha: string; readonly words: string };

/** Gives, for the mark of a position and the tag of a part, the last photo of the part in the book, or else of the position. */
export async function photosOfPlan(
	read: Reader,
	machineId: string,
	facts: Pick<ReversalFacts, "positions" | "parts">,
): Promise<(line: { readonly mark: string | null; readonly tag: string | null }) => LinePhoto | null> {
	const photos = await read.capture.findMany({
		where: {
			machineId,
			kind: { in: ["photo", "drawing"] },
			stands: "yes",
			file: { mediaType: { in: [...PICTURES] } },
			OR: [{ partId: { not: null } }, { positionId: { not: null } }],
		},
		orderBy: [{ takenAt: "desc" }, { id: "desc" }],
		take: MOST_PHOTOS,
		select: { fileSha: true, words: true, partId: true, positionId: true },
	});
	const [ofPart, ofPosition] = [new Map<string, LinePhoto>(), new Map<string, LinePhoto>()];
	for (const { fileSha, words, partId, positionId } of photos) {
		if (fileSha === null) continue;
		const photo = { sha: fileSha, words };
		if (partId !== null && !ofPart.has(partId)) ofPart.set(partId, photo);
		if (positionId !== null && !ofPosition.has(positionId)) ofPosition.set(positionId, photo);
	}
	const partIds = new Map(facts.parts.flatMap(({ id, tag }) => (tag === null ? [] : [[tag.id, id] as const])));
	const positionIds = new Map(facts.positions.map(({ mark, id }) => [mark, id]));
	return ({ mark, tag }) => ofPart.get(partIds.get(tag ?? "") ?? "") ?? ofPosition.get(positionIds.get(mark ?? "") ?? "") ?? null;
}
