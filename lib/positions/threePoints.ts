// A time in three points, as a form sends it (text like "2 h 35") or as a program does (whole minutes).

import { z } from "zod";
import { parseMinutes } from "@/lib/core/minutes";

export type ThreePoints = { readonly low: number; readonly likely: number; readonly high: number };

const point = z
	.union([z.number(), z.string().max(40, "Write a duration like 35 or 2 h 35.")])
	.default("")
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

/** Low, likely and high; nothing at all is null. With only a likely time, low is 0.7 of it and high twice, as the trade reckons. */
export const threePointsField = z
	.object({ low: point, likely: point, high: point })
	.nullish()
	.transform((points, check): ThreePoints | null => {
		if (!points || (points.low === null && points.likely === null && points.high === null)) return null;
		if (points.likely === null) {
			check.addIssue({ code: "custom", path: ["likely"], message: "Write the likely time, too." });
			return z.NEVER;
		}
		const whole = { low: points.low ?? Math.round(points.likely * 0.7), likely: points.likely, high: points.high ?? points.likely * 2 };
		if (whole.low <= whole.likely && whole.likely <= whole.high) return whole;
		check.addIssue({ code: "custom", path: ["likely"], message: "Low is at most likely, and likely at most high." });
		return z.NEVER;
	});

/** The columns of a position that hold its two times. */
export const timeColumns = (out: ThreePoints | null, into: ThreePoints | null) => ({
	outLow: out?.low ?? null,
	outLikely: out?.likely ?? null,
	outHigh: out?.high ?? null,
	inLow: into?.low ?? null,
	inLikely: into?.likely ?? null,
	inHigh: into?.high ?? null,
});
