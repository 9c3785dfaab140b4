import type { Reader } from "@/lib/db/store";

/** Everybody who works or worked here, those here first, with their rates, latest first. */
export const people = (read: Reader) =>
	read.person.findMany({
		orderBy: [{ state: "asc" }, { name: "asc" }, { id: "asc" }],
		take: 200,
		select: {
			id: true,
			entry: true,
			name: true,
			initials: true,
			skills: true,
			state: true,
			rates: { orderBy: { fromDay: "desc" }, take: 50, select: { id: true, fromDay: true, costMinor: true, chargeMinor: true } },
		},
	});

/** Those who can be chosen for work. */
export const peopleHere = (read: Reader) =>
	read.person.findMany({
		where: { state: "here" },
		orderBy: [{ name: "asc" }, { id: "asc" }],
		take: 200,
		select: { id: true, name: true, initials: true, skills: true },
	});
