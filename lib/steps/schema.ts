import { z } from "zod";
import { type Instant, isInstant } from "@/lib/core/instants";
import { parseMinutes } from "@/lib/core/minutes";
import { chosen, line, optionalChosen, optionalLine, words } from "@/lib/core/words";
import { threePointsField } from "@/lib/positions/threePoints";
import { typedMoment } from "@/lib/steps/typedMoment";

export const STEP_KINDS = ["takeout", "putin", "alter", "clean", "repair", "make", "test", "document", "move", "other"] as const;

/** The kinds of step in plain words, as buttons and tables show them. */
export const STEP_KIND_WORDS: Readonly<Record<(typeof STEP_KINDS)[number], string>> = {
	takeout: "take out",
	putin: "put in",
	alter: "alter",
	clean: "clean",
	repair: "repair",
	make: "make",
	test: "test",
	document: "document",
	move: "move",
	other: "other",
};

/** A duration typed in words, or whole minutes from a program. Empty is `null`. */
const duration = z
	.union([z.number(), z.string().max(40, "Write a duration like 35 or 2 h 35.")])
	.transform((typed, check): number | null => {
		if (typeof typed === "number") {
			if (Number.isInteger(typed) && typed >= 0) return typed;
			check.addIssue({ code: "custom", message: "Whole minutes, not below zero." });
			return z.NEVER;
		}
		if (typed.trim() === "") return null;
		const minutes = parseMinutes(typed);
		if (minutes.ok) return minutes.value;
		check.addIssue({ code: "custom", message: minutes.error.say });
		return z.NEVER;
	});

const needed = duration.transform((minutes, check): number => {
	if (minutes !== null) return minutes;
	check.addIssue({ code: "custom", message: "Write how long, like 35 or 2 h 35." });
	return z.NEVER;
});

/** The three points as a form takes them: an estimate is wanted. */
const wantedMinutes = threePointsField.refine((points) => points !== null, {
	message: "Write at least the likely time, like 35 or 2 h 35.",
	path: ["likely"],
});

/** An instant from a program or, made by the action from what a clock field holds. */
const instantField = z
	.string()
	.refine(isInstant, "Write the moment like 2026-03-02T08:00:00.000Z.")
	.transform((text) => text as Instant);

const plan = {
	kind: z.enum(STEP_KINDS, "Say what kind of step it is."),
	title: line("what is to be done", 200),
	minutes: threePointsField,
	wait: duration.default(null),
	/** The least and the most that the wait may take; both empty where it takes what it takes. */
	waitLow: duration.default(null),
	waitHigh: duration.default(null),
	waitWhy: optionalLine("what the wait is for", 120),
	caution: words("the caution", 600),
	addedWhy: optionalLine("why it was added", 200),
	conversionId: optionalChosen,
	positionId: optionalChosen,
	partId: optionalChosen,
	/** Steps that must be over first. */
	needs: z.array(z.string().max(64)).max(200, "At most 200 needs a step.").default([]),
	/** Persons planned to do it together. */
	crew: z.array(z.string().max(64)).max(20, "At most 20 persons a step.").default([]),
	/** What somebody of its crew must be able to do. */
	skill: optionalLine("what somebody must be able to do", 60),
	/** Equipment that it holds, one of each. */
	equipment: z.array(z.string().max(64)).max(20, "At most 20 pieces of equipment a step.").default([]),
	/** Whether it keeps that until its wait is over: paint dries in the booth. */
	keepsThroughWait: z.enum(["", "no", "yes"]).default("no"),
	/** Purchases that must have come first. */
	parcels: z.array(z.string().max(64)).max(50, "At most 50 purchases a step.").default([]),
};

/** Low and high of a wait go together, and around it. */
function waitInOrder(
	{ wait, waitLow, waitHigh }: { readonly wait: number | null; readonly waitLow: number | null; readonly waitHigh: number | null },
	check: z.RefinementCtx,
): void {
	const wrong = (path: string, message: string): void => check.addIssue({ code: "custom", path: [path], message });
	if (waitLow === null && waitHigh === null) return;
	if (wait === null) wrong("wait", "Write how long the wait likely is.");
	else if (waitLow === null) wrong("waitLow", "Write the least that the wait takes, too.");
	else if (waitHigh === null) wrong("waitHigh", "Write the most that the wait takes, too.");
	else if (waitLow > wait) wrong("waitLow", "The least is above the likely wait.");
	else if (waitHigh < wait) wrong("waitHigh", "The most is below the likely wait.");
}

export const planStepSchema = z.object({ machineId: chosen("the machine"), ...plan }).superRefine(waitInOrder);

/** Many steps at once: `needs` then names the keys of steps of the same list, or the ids of steps that stand already. */
export const planStepsSchema = z.object({
	machineId: chosen("the machine"),
	steps: z
		.array(z.object({ key: z.string().min(1).max(64), ...plan }).superRefine(waitInOrder))
		.min(1, "Write at least one step.")
		.max(500, "At most 500 steps at once."),
});

export const changeStepSchema = z.object({ stepId: chosen("the step"), ...plan }).superRefine(waitInOrder);

export const startClockSchema = z.object({ stepId: chosen("the step"), personId: chosen("who"), at: instantField.optional() });
export const stopClockSchema = z.object({ workId: chosen("the clock"), at: instantField.optional(), note: optionalLine("the note", 400) });

export const addTimeSchema = z.object({
	stepId: chosen("the step"),
	personId: chosen("who"),
	minutes: needed,
	/** When the work began; left out, it ended now. */
	startedAt: instantField.optional(),
	note: optionalLine("the note", 400),
});
export const voidTimeSchema = z.object({ workId: chosen("the time"), why: line("why it was wrong", 200) });

/** A piece of time that was wrong, and how long it really was. */
export const correctTimeSchema = z.object({
	workId: chosen("the time"),
	minutes: needed,
	/** When it really began; left out, as before. */
	startedAt: instantField.optional(),
	why: line("why it was wrong", 200),
});

export const finishStepSchema = z.object({ stepId: chosen("the step"), words: words("what happened"), at: instantField.optional() });
export const dropStepSchema = z.object({ stepId: chosen("the step"), why: line("why it is dropped", 300) });
export const reopenStepSchema = z.object({ stepId: chosen("the step"), why: line("why it is not done after all", 300) });

// What the forms send: moments as a clock field holds them, in the shop's own time.
export const planStepFormSchema = z.object({ machineId: chosen("the machine"), ...plan, minutes: wantedMinutes }).superRefine(waitInOrder);
export const changeStepFormSchema = z.object({ stepId: chosen("the step"), ...plan, minutes: wantedMinutes }).superRefine(waitInOrder);
export const startClockFormSchema = startClockSchema.omit({ at: true });
export const stopClockFormSchema = stopClockSchema.omit({ at: true }).extend({ stopped: typedMoment });
export const addTimeFormSchema = addTimeSchema.omit({ startedAt: true }).extend({ began: typedMoment });
export const correctTimeFormSchema = correctTimeSchema.omit({ startedAt: true }).extend({ began: typedMoment });
export const finishStepFormSchema = finishStepSchema.omit({ at: true }).extend({ finished: typedMoment });

export type PlanStep = z.output<typeof planStepSchema>;
export type PlanSteps = z.output<typeof planStepsSchema>;
export type ChangeStep = z.output<typeof changeStepSchema>;
export type StartClock = z.output<typeof startClockSchema>;
export type StopClock = z.output<typeof stopClockSchema>;
export type AddTime = z.output<typeof addTimeSchema>;
export type VoidTime = z.output<typeof voidTimeSchema>;
export type CorrectTime = z.output<typeof correctTimeSchema>;
export type FinishStep = z.output<typeof finishStepSchema>;
export type DropStep = z.output<typeof dropStepSchema>;
export type StepPlan = Omit<PlanStep, "machineId">;
