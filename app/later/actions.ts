"use server";

import { revalidatePath } from "next/cache";
import type { z } from "zod";
import { hereAndNow } from "@/app/hereAndNow";
import { fileUnder, sayLater, withdrawSeveral } from "@/lib/captures/changes";
import { fileUnderSchema, sayLaterSchema, withdrawSeveralSchema } from "@/lib/captures/schema";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Env } from "@/lib/ledger/env";

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

export const sayLaterAction = async (raw: unknown) => act(raw, sayLaterSchema, sayLater);
export const fileUnderAction = async (raw: unknown) => act(raw, fileUnderSchema, fileUnder);
export const withdrawSeveralAction = async (raw: unknown) => act(raw, withdrawSeveralSchema, withdrawSeveral);
