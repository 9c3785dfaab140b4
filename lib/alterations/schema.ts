import { z } from "zod";
import { type Instant, isInstant } from "@/lib/core/instants";
import { parseMinutes } from "@/lib/core/minutes";
import { chosen, line, optionalChosen, optionalLine } from "@/lib/core/words";
import { threePointsField } from "@/lib/positions/threePoints";
import { typedMoment } from "@/lib/steps/typedMoment";

/** How far an alteration can be undone: three grades suffice at the bench (common practice, no source). */
export const UNDO_WORDS = { clean: "clean", trace: "leaves a trace", never: "cannot be undone" } as const;

const wait = z.union([z.number(), z.string().max(40, "Write the wait shorter, like 24 h.")]).transform((typed, check): number => {
	const minutes = typeof typed === "number" ? typed : typed.trim() === "" ? 0 : null;
	if (minutes !== null && Number.isInteger(minutes) && minutes >= 0) return minutes;
	const read = parseMinutes(String(typed));
	if (read.ok) return read.value;
	check.addIssue({ code: "custom", message: read.error.say });
	return z.NEVER;
});

const instantField = z
	.string()
	.refine(isInstant, "Write the moment like 2026-03-02T08:00:00.000Z.")
	.transform((text) => text as Instant);

export const recordAlterationSchema = z
	.object({
		machineId: chosen("the machine"),
		what: line("what was changed", 300),
		/** One of the three: a part, wherever it is; a position; or a place that is neither ("rear wall"). */
		partId: optionalChosen,
		positionId: optionalChosen,
		place: optionalLine("the place", 120),
		undo: z.enum(["clean", "trace", "never"], "Say whether it can be undone."),
		undoHow: optionalLine("how it is undone", 300),
		undoMinutes: threePointsField,
		undoWait: wait.default(0),
		reason: optionalLine("the reason", 400),
		agreedBy: optionalLine("who agreed", 120),
		stepId: optionalChosen,
		conversionId: optionalChosen,
		at: instantField.optional(),
	})
	.superRefine((alteration, check) => {
		const targets = [alteration.partId, alteration.positionId, alteration.place].filter(Boolean).length;
		if (targets !== 1)
			check.addIssue({
				code: "custom",
				path: ["place"],
				message: "Say what was changed: a part, a position, or a place such as the rear wall. One of them.",
			});
		if (alteration.undo === "never" && !alteration.reason)
			check.addIssue({ code: "custom", path: ["reason"], message: "It can never be undone: say why it had to be." });
		if (alteration.undo !== "never" && !alteration.undoMinutes)
			check.addIssue({
				code: "custom",
				path: ["undoMinutes", "likely"],
				message: "Say how long undoing it takes, as far as you can judge.",
			});
	});

/** What the form sends: the moment as a clock field holds it, in the shop's own time. */
export const recordAlterationFormSchema = recordAlterationSchema.safeExtend({ done: typedMoment });

export const markUndoneSchema = z.object({
	alterationId: chosen("the alteration"),
	words: optionalLine("how it went", 300),
	at: instantField.optional(),
});
export const markUndoneFormSchema = markUndoneSchema.omit({ at: true }).extend({ undone: typedMoment });
export const sayFastSchema = z.object({ alterationId: chosen("the alteration"), why: line("why it could not be undone", 300) });
export const voidAlterationSchema = z.object({ alterationId: chosen("the alteration"), why: line("why it was entered in error", 300) });

export type RecordAlteration = z.output<typeof recordAlterationSchema>;
export type MarkUndone = z.output<typeof markUndoneSchema>;
export type SayFast = z.output<typeof sayFastSchema>;
export type VoidAlteration = z.output<typeof voidAlterationSchema>;
