// A day as a form sends it.

import { z } from "zod";
import { parseDay } from "@/lib/core/days";

/** A day that must be there. `what` ends the sentence: "it was ordered". */
export const dayField = (what: string) =>
	z.string(`Write the day ${what}, like 2026-03-02.`).transform((text, check) => {
		const day = parseDay(text);
		if (day.ok) return day.value;
		check.addIssue({ code: "custom", message: day.error.say });
		return z.NEVER;
	});

/** A day that may be empty. */
export const optionalDay = z
	.string()
	.trim()
	.nullish()
	.transform((text, check) => {
		if (!text) return null;
		const day = parseDay(text);
		if (day.ok) return day.value;
		check.addIssue({ code: "custom", message: day.error.say });
		return z.NEVER;
	});
