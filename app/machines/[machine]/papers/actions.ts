"use server";

import { revalidatePath } from "next/cache";
import type { z } from "zod";
import { hereAndNow } from "@/app/hereAndNow";
import { sayWords, withdrawCapture } from "@/lib/captures/changes";
import { sayWordsSchema, withdrawCaptureSchema } from "@/lib/captures/schema";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { addDigitalItem } from "@/lib/digital/changes";
import { addDigitalItemSchema } from "@/lib/digital/schema";
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
	if (done.ok) revalidatePath("/machines", "layout");
	return done;
}

export const sayWordsAction = async (raw: unknown) => act(raw, sayWordsSchema, sayWords);
export const withdrawCaptureAction = async (raw: unknown) => act(raw, withdrawCaptureSchema, withdrawCapture);
export const addDigitalItemAction = async (raw: unknown) => act(raw, addDigitalItemSchema, addDigitalItem);
