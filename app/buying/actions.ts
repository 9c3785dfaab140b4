"use server";

import { revalidatePath } from "next/cache";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { shopStore } from "@/lib/db/shopStore";
import { arrive, buy, drawFromLine, partFromLine, returnLine, voidUse } from "@/lib/purchases/changes";
import { arriveSchema, buySchema, drawFromLineSchema, partFromLineSchema, returnLineSchema, voidUseSchema } from "@/lib/purchases/schema";
import { requireShop } from "@/lib/shop/queries";

export async function buyAction(raw: unknown): Promise<Result<{ number: number }>> {
	const { currency } = await requireShop((await shopStore()).read);
	const input = buySchema(currency).safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await buy(input.data, env.value);
	if (done.ok) revalidatePath("/buying", "layout");
	return done;
}

export async function arriveAction(raw: unknown): Promise<Result<null>> {
	const input = arriveSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await arrive(input.data, env.value);
	if (done.ok) revalidatePath("/buying", "layout");
	return done;
}

export async function drawFromLineAction(raw: unknown): Promise<Result<{ useId: string }>> {
	const input = drawFromLineSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await drawFromLine(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

export async function partFromLineAction(raw: unknown): Promise<Result<{ tag: string }>> {
	const input = partFromLineSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await partFromLine(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

export async function returnLineAction(raw: unknown): Promise<Result<{ useId: string }>> {
	const input = returnLineSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await returnLine(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

export async function voidUseAction(raw: unknown): Promise<Result<null>> {
	const input = voidUseSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await voidUse(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}
