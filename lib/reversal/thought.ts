// What somebody thinks of doing to a machine, as forms send it, and what came of asking beforehand. For the browser, too.

import { z } from "zod";

const thing = z.string().min(1).max(64);

/** Something that is thought about: nothing that lasts, one thing altered, or a part parted with for good. */
export const thoughtSchema = z.union([
	z.object({ does: z.literal("nothing") }),
	z.object({ does: z.literal("alter"), positionId: thing, partId: z.null(), undo: z.enum(["clean", "trace", "never"]) }),
	z.object({ does: z.literal("alter"), positionId: z.null(), partId: thing, undo: z.enum(["clean", "trace", "never"]) }),
	z.object({ does: z.literal("parting"), partId: thing }),
]);
export type Thought = z.output<typeof thoughtSchema>;

/** What a form has chosen so far, as something thought about; null while it says too little, or something else. */
export function thoughtOf({
	does,
	positionId,
	partId,
	undo,
}: {
	readonly does: "nothing" | "alter" | "parting" | "other";
	readonly positionId: string | null;
	readonly partId: string | null;
	readonly undo: "clean" | "trace" | "never" | null;
}): Thought | null {
	switch (does) {
		case "nothing":
			return { does };
		case "parting":
			return partId === null ? null : { does, partId };
		case "alter":
			if (undo === null) return null;
			if (partId !== null) return { does, partId, positionId: null, undo };
			return positionId === null ? null : { does, positionId, partId: null, undo };
		case "other":
			return null;
	}
}

/** What reversal would lose by it. */
export type Foreseen = {
	/** In sentences. */
	readonly say: string;
	/** Whether anything is lost, or a trace of it stays. */
	readonly loses: boolean;
	/** Positions that could never be as they were, and those that come back altered for good; null where it was not worked out. */
	readonly counts: { readonly positions: number; readonly states: number } | null;
};
