// What has happened, happened today at the latest. Pure.

import type { Day } from "@/lib/core/days";
import { ok, type Result, refuse } from "@/lib/core/result";

const SAY = "That day is still to come. Write the day on which it happened, today at the latest.";

/** Refuses a day after today for something that is said to have happened; the words stand at the day's field. */
export const happenedBy = (today: Day, on: Day, field = "day"): Result<null> =>
	on <= today ? ok(null) : refuse("day-ahead", SAY, { fields: { [field]: SAY } });
