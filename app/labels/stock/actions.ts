"use server";

import { revalidatePath } from "next/cache";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { addStock, correctStock, putAwayStock, sayNudge } from "@/lib/labels/changes";
import { correctStockSchema, nudgeSchema, ownStockSchema, putAwayStockSchema } from "@/lib/labels/ownStock";

export async function addStockAction(raw: unknown): Promise<Result<{ stockId: string }>> {
	const input = ownStockSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await addStock(input.data, env.value);
	if (done.ok) revalidatePath("/labels", "layout");
	return done;
}

export async function correctStockAction(raw: unknown): Promise<Result<{ stockId: string }>> {
	const input = correctStockSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await correctStock(input.data, env.value);
	if (done.ok) revalidatePath("/labels", "layout");
	return done;
}

export async function putAwayStockAction(raw: unknown): Promise<Result<{ stockId: string }>> {
	const input = putAwayStockSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await putAwayStock(input.data, env.value);
	if (done.ok) revalidatePath("/labels", "layout");
	return done;
}

export async function sayNudgeAction(raw: unknown): Promise<Result<{ words: string }>> {
	const input = nudgeSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await sayNudge(input.data, env.value);
	if (done.ok) revalidatePath("/labels", "layout");
	return done;
}
