"use server";

import { revalidatePath } from "next/cache";
import { hereAndNow } from "@/app/hereAndNow";
import { movedWords } from "@/app/plan/said";
import { addDayOff, addEquipment, changeEquipment, setHours, takeBackDayOff } from "@/lib/calendar/changes";
import { changeEquipmentSchema, dayOffSchema, equipmentSchema, hoursSchema, takeBackDayOffSchema } from "@/lib/calendar/schema";
import { systemClock } from "@/lib/core/clock";
import { ok, type Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { shopStore } from "@/lib/db/shopStore";
import { shopAhead } from "@/lib/schedule/shopQueries";

const PAGE = "/people/hours";

export async function setHoursAction(raw: unknown): Promise<Result<string>> {
	const input = hoursSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await setHours(input.data, env.value);
	if (done.ok) revalidatePath(PAGE);
	return done;
}

/** Gives what it moves: the machines that are done at another time than by the plan before. */
export async function addDayOffAction(raw: unknown): Promise<Result<readonly string[]>> {
	const input = dayOffSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const { read } = await shopStore();
	const before = await shopAhead(read, systemClock(), false);
	const done = await addDayOff(input.data, env.value);
	if (!done.ok) return done;
	revalidatePath(PAGE);
	return ok(movedWords(before, await shopAhead(read, systemClock(), false)));
}

export async function takeBackDayOffAction(raw: unknown): Promise<Result<null>> {
	const input = takeBackDayOffSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await takeBackDayOff(input.data, env.value);
	if (done.ok) revalidatePath(PAGE);
	return done;
}

export async function addEquipmentAction(raw: unknown): Promise<Result<string>> {
	const input = equipmentSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await addEquipment(input.data, env.value);
	if (done.ok) revalidatePath(PAGE);
	return done;
}

export async function changeEquipmentAction(raw: unknown): Promise<Result<null>> {
	const input = changeEquipmentSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await changeEquipment(input.data, env.value);
	if (done.ok) revalidatePath(PAGE);
	return done;
}
