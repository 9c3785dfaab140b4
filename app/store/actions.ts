"use server";

import { revalidatePath } from "next/cache";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { addLocation, renameLocation } from "@/lib/store/changes";
import { addLocationSchema, renameLocationSchema } from "@/lib/store/schema";

type Done = { locationId: string; path: string };

export async function addLocationAction(raw: unknown): Promise<Result<Done>> {
	const input = addLocationSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await addLocation(input.data, env.value);
	if (done.ok) revalidatePath("/store", "layout");
	return done;
}

export async function renameLocationAction(raw: unknown): Promise<Result<Done>> {
	const input = renameLocationSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await renameLocation(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}
