"use server";

import { revalidatePath } from "next/cache";
import type { z } from "zod";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Env } from "@/lib/ledger/env";
import { addPin, changePin, type Pinned, takeOffPin } from "@/lib/pins/changes";
import { addPinSchema, changePinSchema, takeOffPinSchema } from "@/lib/pins/schema";

/** The change reads what was typed by its own schema; here it is only looked at, so that both say the same. */
async function act<Input>(
	raw: unknown,
	schema: z.ZodType<unknown, Input>,
	change: (input: Input, env: Env) => Promise<Result<Pinned>>,
): Promise<Result<Pinned>> {
	const read = schema.safeParse(raw);
	if (!read.success) return unreadable(read.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await change(raw as Input, env.value);
	if (done.ok) revalidatePath("/machines", "layout");
	return done;
}

export const addPinAction = async (raw: unknown) => act(raw, addPinSchema, addPin);
export const changePinAction = async (raw: unknown) => act(raw, changePinSchema, changePin);
export const takeOffPinAction = async (raw: unknown) => act(raw, takeOffPinSchema, takeOffPin);
