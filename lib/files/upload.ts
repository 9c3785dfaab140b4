// Reads what an upload says of itself: its address and headers. Pure.

import { z } from "zod";
import { isInstant, parseInstant } from "@/lib/core/instants";
import { ok, type Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { words } from "@/lib/core/words";

const id = z
	.string()
	.max(64, "Load the page again; this form is not one of ours.")
	.nullable()
	.transform((text) => text || null);

const schema = z.object({
	/** Number or id of the machine; null for the shop alone. */
	machine: id,
	kind: z.enum(["photo", "drawing", "paper", "digital"], "Say whether it is a photo, a drawing, a paper or a digital item."),
	deed: z.string("This form is not complete. Load the page again.").max(64, "This form is not one of ours. Load the page again."),
	name: z.string().max(1000, "The file's name is too long. Give it a shorter one."),
	takenAt: z.string().refine(isInstant, "Write the moment like 2026-03-02T08:00:00.000Z.").nullable(),
	words: words("the words"),
	positionId: id,
	partId: id,
	bagId: id,
	stepId: id,
	announced: z.number().int().min(0).nullable(),
});
export type Upload = z.output<typeof schema>;

/** `?machine=12&kind=photo&deed=UUID`, and where known `name`, `takenAt`, `words`, `position`, `part`, `bag`, `step`. */
export function readUpload(query: URLSearchParams, headers: Headers): Result<Upload> {
	// A phone may name the moment with an offset; what cannot be read at all is refused by the schema.
	const taken = query.get("takenAt") ?? query.get("taken");
	const moment = taken ? parseInstant(taken) : null;
	const length = headers.get("content-length");
	const read = schema.safeParse({
		machine: query.get("machine"),
		kind: query.get("kind") ?? "photo",
		deed: query.get("deed") ?? undefined,
		name: query.get("name") ?? "",
		takenAt: moment?.ok ? moment.value : (taken ?? null) || null,
		words: query.get("words") ?? "",
		positionId: query.get("position"),
		partId: query.get("part"),
		bagId: query.get("bag"),
		stepId: query.get("step"),
		announced: length !== null && /^\d{1,15}$/.test(length) ? Number(length) : null,
	});
	return read.success ? ok(read.data) : unreadable(read.error);
}
