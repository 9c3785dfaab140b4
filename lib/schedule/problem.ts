// What the scheduler is asked: activities, what each needs before it and holds while it lasts. Format
// `asfound.schedule-problem/1`. Pure.

import { z } from "zod";

export const SCHEDULE_PROBLEM_FORMAT = "asfound.schedule-problem/1";

/** Ten years of minutes: longer is a slip of the keyboard. */
const MOST_MINUTES = 5_259_600;
/** All work and waits together stay within 32 bits, since no schedule is longer than all of it in a row. */
const MOST_ALTOGETHER = 2 ** 31 - 1;
const MOST_AMOUNT = 1_000_000;

const id = z.string().min(1, "give it an id");
const minutes = z
	.number("give whole minutes")
	.int("give whole minutes, without a fraction")
	.min(0, "minutes cannot be below 0")
	.max(MOST_MINUTES, `minutes cannot be above ${MOST_MINUTES}`);
const amount = z
	.number("give a whole number")
	.int("give a whole number, without a fraction")
	.min(0, "it cannot be below 0")
	.max(MOST_AMOUNT, `it cannot be above ${MOST_AMOUNT}`);

/** From resource to amount. Read key by key because zod's own record drops a key such as `__proto__`. */
const amounts = z.unknown().transform((raw, ctx): ReadonlyMap<string, number> => {
	if (typeof raw !== "object" || raw === null || Array.isArray(raw)) {
		ctx.addIssue({ code: "custom", message: "give an object from resource to amount" });
		return z.NEVER;
	}
	const read = new Map<string, number>();
	for (const [key, value] of Object.entries(raw)) {
		const one = amount.safeParse(value);
		if (one.success) read.set(key, one.data);
		else for (const issue of one.error.issues) ctx.addIssue({ code: "custom", path: [key], message: issue.message });
	}
	return read;
});

export const resourceSchema = z.object({ id, capacity: amount });

export const activitySchema = z.object({
	id,
	minutes,
	/** Time that passes after it before anything that needs it starts. Holds nothing. */
	wait: minutes.optional(),
	/** Ids of the activities that must be over, with their waits. */
	after: z.array(id).default([]),
	/** Resource to the amount that it holds while it lasts. */
	uses: amounts.default(new Map()),
});

export const scheduleProblemSchema = z
	.object({
		format: z.literal(SCHEDULE_PROBLEM_FORMAT, `this reads "${SCHEDULE_PROBLEM_FORMAT}"`),
		resources: z.array(resourceSchema).default([]),
		activities: z.array(activitySchema),
	})
	.superRefine(({ activities }, check) => {
		const total = activities.reduce((sum, { minutes, wait = 0 }) => sum + minutes + wait, 0);
		if (total > MOST_ALTOGETHER)
			check.addIssue({
				code: "custom",
				path: ["activities"],
				message: `all minutes and waits together cannot be above ${MOST_ALTOGETHER}`,
			});
	});

export type ScheduleProblem = Readonly<z.output<typeof scheduleProblemSchema>>;
export type ScheduleActivity = ScheduleProblem["activities"][number];
