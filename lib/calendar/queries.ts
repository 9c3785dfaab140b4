// Reads of who is in when, and of what there is one of.

import type { Reader } from "@/lib/db/store";

/** Everybody here with their hours, latest first. */
export const hoursOfPeople = (read: Reader) =>
	read.person.findMany({
		where: { state: "here" },
		orderBy: [{ name: "asc" }, { id: "asc" }],
		take: 200,
		select: {
			id: true,
			name: true,
			initials: true,
			skills: true,
			hours: { orderBy: { fromDay: "desc" }, take: 50, select: { id: true, fromDay: true, week: true } },
		},
	});

/** Days off that stand and are not over, soonest first. */
export const daysOffFrom = (read: Reader, today: string) =>
	read.dayOff.findMany({
		where: { stands: "yes", untilDay: { gte: today } },
		orderBy: [{ fromDay: "asc" }, { id: "asc" }],
		take: 500,
		select: { id: true, personId: true, fromDay: true, untilDay: true, words: true, person: { select: { name: true } } },
	});

/** Equipment, with what is gone at the end. */
export const allEquipment = (read: Reader) =>
	read.equipment.findMany({
		orderBy: [{ state: "desc" }, { name: "asc" }],
		take: 200,
		select: { id: true, entry: true, name: true, count: true, state: true },
	});
