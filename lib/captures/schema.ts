import { z } from "zod";
import { isInstant } from "@/lib/core/instants";
import { chosen, line, optionalChosen, words } from "@/lib/core/words";
import { keptFileSchema } from "@/lib/files/schema";
import { tagSchema } from "@/lib/tags/schema";

const instantField = z.string().refine(isInstant, "Write the moment like 2026-03-02T08:00:00.000Z.");

export const CAPTURE_KINDS = ["photo", "drawing", "paper", "tag"] as const;

/** What it shows; nothing named means the machine as a whole. */
export const shownThings = {
	positionId: optionalChosen,
	partId: optionalChosen,
	bagId: optionalChosen,
	stepId: optionalChosen,
};

export const addCaptureSchema = z.object({
	machineId: optionalChosen,
	kind: z.enum(CAPTURE_KINDS, "Say whether it is a photo, a drawing, a paper or a tag."),
	/** Null only for a scanned tag. */
	file: keptFileSchema.nullish().transform((file) => file ?? null),
	tag: tagSchema.nullish().transform((tag) => tag ?? null),
	/** When it was taken; now when left out. */
	takenAt: instantField.nullish().transform((at) => at ?? null),
	words: words("the words"),
	...shownThings,
});
export type AddCapture = z.input<typeof addCaptureSchema>;

export const sayWordsSchema = z.object({
	captureId: chosen("a photo or a paper"),
	words: words("the words").refine((text) => text !== "", "Write what it shows."),
	...shownThings,
});
export type SayWords = z.input<typeof sayWordsSchema>;

export const withdrawCaptureSchema = z.object({
	captureId: chosen("a photo or a paper"),
	why: line("why it is withdrawn", 300),
});
export type WithdrawCapture = z.input<typeof withdrawCaptureSchema>;
