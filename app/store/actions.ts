"use server";

import { z } from "zod";
import { act } from "@/app/act";
import { bagLines } from "@/lib/bags/bagLines";
import type { Result } from "@/lib/core/result";
import { shopStore } from "@/lib/db/shopStore";
import { whatIsMissed } from "@/lib/parts/rules";
import { positionsLostWith } from "@/lib/reversal/beforehandQueries";
import { addLocation, countPlace, moveThings, renameLocation, tagPlaces } from "@/lib/store/changes";
import { type Scanned, scannedThing, thingsByTag } from "@/lib/store/scanned";
import { addLocationSchema, countPlaceSchema, moveThingsSchema, renameLocationSchema, tagPlacesSchema } from "@/lib/store/schema";

export const addLocationAction = async (raw: unknown) => act(raw, addLocationSchema, addLocation, "/store");

export const renameLocationAction = async (raw: unknown) => act(raw, renameLocationSchema, renameLocation);

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

export const moveThingsAction = async (raw: unknown) => act(raw, moveThingsSchema, moveThings);

export const countPlaceAction = async (raw: unknown) => act(raw, countPlaceSchema, countPlace);

export const tagPlacesAction = async (raw: unknown) => act(raw, tagPlacesSchema, tagPlaces, "/store");
