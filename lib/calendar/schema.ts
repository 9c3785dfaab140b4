import { z } from "zod";
import { parseDayHours, WEEKDAYS, type Week } from "@/lib/calendar/week";
import { dayField } from "@/lib/core/dayFields";
import { parseDay } from "@/lib/core/days";
import { chosen, line, optionalChosen, optionalLine } from "@/lib/core/words";

const dayHours = z
	.string()
	.max(80, "Make it shorter, like 8:00-12:00 12:30-16:30.")
	.transform((text, check) => {
		const hours = parseDayHours(text);
		if (hours.ok) return hours.value;
		check.addIssue({ code: "custom", message: hours.error.say });
		return z.NEVER;
	});

export const hoursSchema = z.object({
	personId: chosen("a person"),
	fromDay: dayField("from which they hold"),
	/** Seven days as typed, Monday first. */
	week: z
		.array(dayHours)
		.length(WEEKDAYS.length, "Write all seven days.")
		.transform((week): Week => week),
});

export const dayOffSchema = z
	.object({
		/** Nobody chosen: the shop is closed. */
		personId: optionalChosen,
		fromDay: dayField("on which it begins"),
		/** Empty: that one day. */
		untilDay: z.string().default(""),
		words: optionalLine("what for", 120),
	})
	.transform((typed, check) => {
		const until = typed.untilDay === "" ? typed.fromDay : parseDay(typed.untilDay);
		const untilDay = typeof until === "string" ? until : until.ok ? until.value : null;
		if (untilDay === null) {
			check.addIssue({ code: "custom", path: ["untilDay"], message: "Write the last day, like 2026-03-02, or leave it empty." });
			return z.NEVER;
		}
		if (untilDay < typed.fromDay) {
			check.addIssue({ code: "custom", path: ["untilDay"], message: "The last day is before the first." });
			return z.NEVER;
		}
		return { ...typed, untilDay };
	});

export const takeBackDayOffSchema = z.object({ dayOffId: chosen("the day off") });

const HOW_MANY = "Write how many there are, a whole number from 1 to 99.";
const count = z.union([z.number(), z.string().max(10, HOW_MANY)]).transform((typed, check): number => {
	const number = typeof typed === "number" ? typed : /^\s*\d{1,2}\s*$/.test(typed) ? Number(typed) : Number.NaN;
	if (Number.isInteger(number) && number >= 1 && number <= 99) return number;
	check.addIssue({ code: "custom", message: HOW_MANY });
	return z.NEVER;
});

export const equipmentSchema = z.object({ name: line("the name", 60), count });
export const changeEquipmentSchema = equipmentSchema.extend({ equipmentId: chosen("the equipment"), state: z.enum(["here", "gone"]) });

export type SetHours = z.output<typeof hoursSchema>;
export type AddDayOff = z.output<typeof dayOffSchema>;
export type TakeBackDayOff = z.output<typeof takeBackDayOffSchema>;
export type AddEquipment = z.output<typeof equipmentSchema>;
export type ChangeEquipment = z.output<typeof changeEquipmentSchema>;
