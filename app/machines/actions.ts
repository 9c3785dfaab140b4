"use server";

import { revalidatePath } from "next/cache";
import type { z } from "zod";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { shopStore } from "@/lib/db/shopStore";
import type { Env } from "@/lib/ledger/env";
import {
	closeFault,
	describeMachine,
	handOver,
	promiseReady,
	sayFault,
	sayNote,
	setMachineState,
	setPortrait,
	stampAsFound,
	takeInMachine,
} from "@/lib/machines/changes";
import {
	closeFaultSchema,
	describeMachineSchema,
	handOverSchema,
	promiseSchema,
	sayFaultSchema,
	sayNoteSchema,
	setMachineStateSchema,
	setPortraitSchema,
	stampAsFoundSchema,
	takeInMachineSchema,
} from "@/lib/machines/schema";
import { requireShop } from "@/lib/shop/queries";

async function act<Input, Value>(
	raw: unknown,
	schema: z.ZodType<Input>,
	change: (input: Input, env: Env) => Promise<Result<Value>>,
): Promise<Result<Value>> {
	const input = schema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await change(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

const currency = async () => (await requireShop((await shopStore()).read)).currency;

export const takeInMachineAction = async (raw: unknown) => act(raw, takeInMachineSchema(await currency()), takeInMachine);
export const describeMachineAction = async (raw: unknown) => act(raw, describeMachineSchema(await currency()), describeMachine);
export const handOverAction = async (raw: unknown) => act(raw, handOverSchema(await currency()), handOver);
export const stampAsFoundAction = async (raw: unknown) => act(raw, stampAsFoundSchema, stampAsFound);
export const setPortraitAction = async (raw: unknown) => act(raw, setPortraitSchema, setPortrait);
export const setMachineStateAction = async (raw: unknown) => act(raw, setMachineStateSchema, setMachineState);
export const sayNoteAction = async (raw: unknown) => act(raw, sayNoteSchema, sayNote);
export const sayFaultAction = async (raw: unknown) => act(raw, sayFaultSchema, sayFault);
export const closeFaultAction = async (raw: unknown) => act(raw, closeFaultSchema, closeFault);
export const promiseReadyAction = async (raw: unknown) => act(raw, promiseSchema, promiseReady);
