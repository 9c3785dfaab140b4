import { z } from "zod";
import { type Instant, isInstant } from "@/lib/core/instants";
import { chosen, line, optionalChosen, optionalLine } from "@/lib/core/words";
import { typedMoment } from "@/lib/steps/typedMoment";
import { checkedLimit, limitSchema } from "@/lib/tests/limits";

const plan = {
	name: line("what is tested", 200),
	unit: optionalLine("the unit", 20),
	/** Null: only recorded, never judged. */
	limit: limitSchema.nullable().superRefine((limit, check) => {
		const kept = limit === null ? null : checkedLimit(limit);
		if (kept && !kept.ok) check.addIssue({ code: "custom", message: kept.error.say });
	}),
	limitSource: optionalLine("where the limit comes from", 300),
	positionId: optionalChosen,
	partId: optionalChosen,
	stepId: optionalChosen,
	conversionId: optionalChosen,
};

export const planTestSchema = z.object({ machineId: chosen("the machine"), ...plan }).superRefine(({ limit, limitSource }, check) => {
	if (limit !== null && limitSource === "")
		check.addIssue({
			code: "custom",
			path: ["limitSource"],
			message: "Say where the limit comes from: a standard and its date, the maker, or that it is your own.",
		});
});

export const runTestSchema = z.object({
	testId: chosen("the test"),
	phase: z.enum(["before", "after"], "Say whether it was before or after the work."),
	value: line("what was measured", 200),
	words: optionalLine("the remark", 600),
	instrument: optionalLine("the instrument", 200),
	personId: chosen("by whom"),
	captureId: optionalChosen,
	at: z
		.string()
		.refine(isInstant, "Write the moment like 2026-03-02T08:00:00.000Z.")
		.transform((text) => text as Instant)
		.optional(),
});

/** What the form sends: the moment as a clock field holds it, in the shop's own time. */
export const runTestFormSchema = runTestSchema.omit({ at: true }).extend({ measured: typedMoment });

export type PlanTest = z.output<typeof planTestSchema>;
export type RunTest = z.output<typeof runTestSchema>;
