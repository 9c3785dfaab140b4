import { z } from "zod";
import { readShows } from "@/lib/captures/shows";
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

const several = z.array(chosen("a photo or a paper")).min(1, "Choose at least one.").max(100, "Choose a hundred at most.");

/** The same words, and the same thing shown, for one or several captures that have none yet. */
export const sayLaterSchema = z.object({
	captureIds: several,
	words: words("the words").refine((text) => text !== "", "Write what it shows."),
	/** What it shows besides what it is known to show: "positionId=ID&partId=ID", or nothing. */
	shows: z
		.string()
		.max(300, "Choose from the list.")
		.default("")
		.refine((text) => readShows(text) !== null, "Choose from the list."),
});
export type SayLater = z.input<typeof sayLaterSchema>;

export const fileUnderSchema = z.object({ captureIds: several, machineId: chosen("the machine") });
export type FileUnder = z.input<typeof fileUnderSchema>;

export const withdrawSeveralSchema = z.object({ captureIds: several, why: line("why it is withdrawn", 300) });
export type WithdrawSeveral = z.input<typeof withdrawSeveralSchema>;
