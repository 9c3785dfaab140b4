import type { AddDayOff, AddEquipment, ChangeEquipment, SetHours, TakeBackDayOff } from "@/lib/calendar/schema";
import { weekInWords, weekToStore } from "@/lib/calendar/week";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Env } from "@/lib/ledger/env";
import { overMeanwhile, UNSEEN } from "@/lib/ledger/meanwhile";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";

const NO_PERSON = refuse("no-such-person", "That person is not in the book. Load the page again.");

/** A person's week from a day on. The same day again corrects that day's. */
export const setHours = (input: SetHours, env: Env): Promise<Result<string>> => {
	const fresh = env.newId();
	return record(env, async (read) => {
		const person = await read.person.findUnique({ where: { id: input.personId }, select: { name: true } });
		if (!person) return NO_PERSON;
		const before = await read.hours.findUnique({ where: { personId_fromDay: { personId: input.personId, fromDay: input.fromDay } } });
		const week = weekToStore(input.week);
		const id = before?.id ?? fresh;
		return ok(
			deed(
				null,
				"hours.set",
				{ table: "Hours", id },
				{ say: `${before ? "Corrected" : "Set"} ${person.name}'s hours from ${input.fromDay}: ${weekInWords(input.week)}.` },
				[before ? change("Hours", before, { week }) : add("Hours", { id, personId: input.personId, fromDay: input.fromDay, week })],
				id,
			),
		);
	});
};

/** Days on which somebody is not in, or, without a person, on which the shop is closed. Gives its id. */
export const addDayOff = (input: AddDayOff, env: Env): Promise<Result<string>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const { personId } = input;
		const person = personId === null ? null : await read.person.findUnique({ where: { id: personId }, select: { name: true } });
		if (personId !== null && person === null) return NO_PERSON;
		const days = input.fromDay === input.untilDay ? `on ${input.fromDay}` : `from ${input.fromDay} to ${input.untilDay}`;
		return ok(
			deed(
				null,
				"days.off",
				{ table: "DayOff", id },
				{ say: `${person === null ? "The shop is closed" : `${person.name} is off`} ${days}.` },
				[add("DayOff", { id, ...input, stands: "yes" })],
				id,
			),
		);
	});
};

/** Takes days off back: whoever it was is in after all. */
export const takeBackDayOff = (input: TakeBackDayOff, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const found = await read.dayOff.findUnique({ where: { id: input.dayOffId }, include: { person: { select: { name: true } } } });
		if (!found) return refuse("no-such-day-off", "That day off is not in the book. Load the page again.");
		const { person, ...before } = found;
		if (before.stands === "no") return refuse("day-off-taken-back", "That day off was taken back already.");
		return ok(
			deed(
				null,
				"days.in-after-all",
				{ table: "DayOff", id: before.id },
				{ say: `${person === null ? "The shop is open" : `${person.name} is in`} after all, ${before.fromDay} to ${before.untilDay}.` },
				[change("DayOff", before, { stands: "no" })],
				null,
			),
		);
	});

/** Names something that work has to wait for, and how many there are. Gives its id. */
export const addEquipment = (input: AddEquipment, env: Env): Promise<Result<string>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const taken = await read.equipment.count({ where: { name: input.name } });
		if (taken > 0) return TAKEN;
		return ok(
			deed(
				null,
				"equipment.added",
				{ table: "Equipment", id },
				{ say: `The shop has ${input.count} ${input.name}.` },
				[add("Equipment", { id, ...input, state: "here" })],
				id,
			),
		);
	});
};

const TAKEN = refuse("equipment-named", "There is one of that name already.", { fields: { name: "Choose another name." } });

/** Corrects the name or the count, or says that it is gone or back. */
export const changeEquipment = (input: ChangeEquipment, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.equipment.findUnique({ where: { id: input.equipmentId } });
		if (!before) return refuse("no-such-equipment", "That is not in the book. Load the page again.");
		const { equipmentId: _, ...said } = input;
		const taken = await read.equipment.count({ where: { name: input.name, id: { not: before.id } } });
		if (taken > 0) return TAKEN;
		const laid = await overMeanwhile(read, "Equipment", before, env.seen ?? UNSEEN, said);
		if (!laid.ok) return laid;
		const { name, count, state } = laid.value;
		return ok(
			deed(
				null,
				"equipment.changed",
				{ table: "Equipment", id: before.id },
				{ say: state === "gone" ? `The shop has no ${name} any more.` : `The shop has ${count} ${name}.` },
				[change("Equipment", before, laid.value)],
				null,
			),
		);
	});
