"use server";

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { hereAndNow } from "@/app/hereAndNow";
import { bagLines } from "@/lib/bags/bagLines";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { shopStore } from "@/lib/db/shopStore";
import { whatIsMissed } from "@/lib/parts/rules";
import { positionsLostWith } from "@/lib/reversal/beforehandQueries";
import { addLocation, type Counted, countPlace, moveThings, renameLocation, tagPlaces } from "@/lib/store/changes";
import { type Scanned, scannedThing, thingsByTag } from "@/lib/store/scanned";
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

/** Several tags that a phone has kept, as they stand now. */
export async function scannedTagsAction(tags: unknown): Promise<Scanned[]> {
	const { read } = await shopStore();
	return thingsByTag(read, z.array(z.string().max(64)).max(500).catch([]).parse(tags));
}

/** What is in a bag, a line a thing; reads only. */
export async function bagLinesAction(bagId: unknown): Promise<string[]> {
	const { read } = await shopStore();
	return typeof bagId === "string" ? bagLines(read, bagId) : [];
}

/** What the machine misses for as long as a part is away, as a sentence; reads only. */
export async function missedWithoutAction(partId: unknown): Promise<string> {
	const { read } = await shopStore();
	return typeof partId === "string" ? whatIsMissed(await positionsLostWith(read, partId)) : "";
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

export async function countPlaceAction(raw: unknown): Promise<Result<Counted>> {
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
