// How long a purchase takes to come: three points in whole days, and what they say on a day. Pure.

import { z } from "zod";
import { addDays, type Day, daysBetween, formatDayShort } from "@/lib/core/days";

/** Days from the order to the door. */
export type Lead = { readonly low: number; readonly likely: number; readonly high: number };

/** Ten years: longer is a slip of the finger. */
const MOST_DAYS = 3650;
const WHOLE_DAYS = "Write whole days, like 7.";

const point = z
	.union([z.number(), z.string().max(20, WHOLE_DAYS)])
	.default("")
	.transform((typed, check): number | null => {
		if (typeof typed === "string" && typed.trim() === "") return null;
		const number = typeof typed === "number" ? typed : /^\s*\d{1,4}\s*$/.test(typed) ? Number(typed) : Number.NaN;
		if (Number.isInteger(number) && number >= 0 && number <= MOST_DAYS) return number;
		check.addIssue({ code: "custom", message: WHOLE_DAYS });
		return z.NEVER;
	});

/** Low, likely and high; nothing at all is null. With only a likely one, low is 0.7 of it and high twice, as for a step's time. */
export const leadField = z
	.object({ low: point, likely: point, high: point })
	.nullish()
	.transform((points, check): Lead | null => {
		if (!points || (points.low === null && points.likely === null && points.high === null)) return null;
		const wrong = (message: string) => {
			check.addIssue({ code: "custom", path: ["likely"], message });
			return z.NEVER;
		};
		if (points.likely === null) return wrong("Write the likely number of days, too.");
		const whole = { low: points.low ?? Math.round(points.likely * 0.7), likely: points.likely, high: points.high ?? points.likely * 2 };
		return whole.low <= whole.likely && whole.likely <= whole.high ? whole : wrong("Low is at most likely, and likely at most high.");
	});

/** The columns of a purchase that hold it. */
export const leadColumns = (lead: Lead | null) => ({
	leadLowDays: lead?.low ?? null,
	leadLikelyDays: lead?.likely ?? null,
	leadHighDays: lead?.high ?? null,
});

type LeadColumns = { readonly [Column in keyof ReturnType<typeof leadColumns>]: number | null };

/** What its columns say; null when nobody said how long it takes. */
export const leadOf = ({ leadLowDays: low, leadLikelyDays: likely, leadHighDays: high }: LeadColumns): Lead | null =>
	low === null || likely === null || high === null ? null : { low, likely, high };

/** The days on which a purchase may come. */
export const daysToExpect = (orderedDay: Day, lead: Lead) => ({
	earliest: addDays(orderedDay, lead.low),
	likely: addDays(orderedDay, lead.likely),
	latest: addDays(orderedDay, lead.high),
});

/** When what is in the post is to be expected, in words, and whether it is late: after the latest day that was thought of. */
export function postWords(orderedDay: Day, lead: Lead | null, today: Day): { readonly words: string; readonly late: boolean } {
	if (lead === null) return { words: `ordered ${formatDayShort(orderedDay)}`, late: false };
	const { likely, latest } = daysToExpect(orderedDay, lead);
	const over = daysBetween(latest, today);
	if (over > 0) return { words: `${over === 1 ? "1 day" : `${over} days`} late: due ${formatDayShort(latest)} at the latest`, late: true };
	if (today > likely) return { words: `was likely ${formatDayShort(likely)}, ${formatDayShort(latest)} at the latest`, late: false };
	return {
		words: `likely ${formatDayShort(likely)}${latest === likely ? "" : `, ${formatDayShort(latest)} at the latest`}`,
		late: false,
	};
}
