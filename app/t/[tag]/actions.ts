"use server";

import { revalidatePath } from "next/cache";
import type { z } from "zod";
import { hereAndNow } from "@/app/hereAndNow";
import { describeBag, makeBag, moveBag, movePart, voidBag } from "@/lib/bags/changes";
import { describeBagSchema, makeBagSchema, moveBagSchema, movePartSchema, voidBagSchema } from "@/lib/bags/schema";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { moveFixing } from "@/lib/fittings/changes";
import { moveFixingSchema } from "@/lib/fittings/schema";
import type { Env } from "@/lib/ledger/env";

async function act<Output, Value>(
	raw: unknown,
	schema: z.ZodType<Output>,
	change: (input: Output, env: Env) => Promise<Result<Value>>,
): Promise<Result<Value>> {
	const input = schema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await change(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

export const makeBagAction = async (raw: unknown) => act(raw, makeBagSchema, makeBag);
export const moveBagAction = async (raw: unknown) => act(raw, moveBagSchema, moveBag);
export const movePartAction = async (raw: unknown) => act(raw, movePartSchema, movePart);
export const moveFixingAction = async (raw: unknown) => act(raw, moveFixingSchema, moveFixing);
export const describeBagAction = async (raw: unknown) => act(raw, describeBagSchema, describeBag);
export const voidBagAction = async (raw: unknown) => act(raw, voidBagSchema, voidBag);
