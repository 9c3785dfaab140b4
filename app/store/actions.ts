"use server";

import { revalidatePath } from "next/cache";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { shopStore } from "@/lib/db/shopStore";
import { addLocation, countPlace, moveThings, renameLocation, tagPlaces } from "@/lib/store/changes";
import { type Scanned, scannedThing } from "@/lib/store/scanned";
import { addLocationSchema, countPlaceSchema, moveThingsSchema, renameLocationSchema, tagPlacesSchema } from "@/lib/store/schema";

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

/** What a scanned or typed tag stands for; reads only. */
export async function scannedAction(text: unknown): Promise<Result<Scanned>> {
	const { read } = await shopStore();
	return scannedThing(read, typeof text === "string" ? text.slice(0, 400) : "");
}

export async function moveThingsAction(raw: unknown): Promise<Result<{ moved: number; stayed: string[]; words: string }>> {
	const input = moveThingsSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await moveThings(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

export async function countPlaceAction(raw: unknown): Promise<Result<{ here: number; missing: string[]; unexpected: string[] }>> {
	const input = countPlaceSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await countPlace(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

export async function tagPlacesAction(raw: unknown): Promise<Result<{ tags: { locationId: string; tag: string }[] }>> {
	const input = tagPlacesSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await tagPlaces(input.data, env.value);
	if (done.ok) revalidatePath("/store", "layout");
	return done;
}
