"use server";

import { revalidatePath } from "next/cache";
import { act } from "@/app/act";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { shopStore } from "@/lib/db/shopStore";
import { addCost, changeCost } from "@/lib/money/changes";
import { addCostSchema, changeCostSchema } from "@/lib/money/schema";
import { requireShop } from "@/lib/shop/queries";
import { bought, changeWanted, dropWanted, want, wantAgain } from "@/lib/wanted/changes";
import { boughtSchema, changeWantedSchema, dropWantedSchema, wantAgainSchema, wantSchema } from "@/lib/wanted/schema";

export async function addCostAction(raw: unknown): Promise<Result<string>> {
	const { currency } = await requireShop((await shopStore()).read);
	const input = addCostSchema(currency).safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await addCost(input.data, env.value);
	if (done.ok) revalidatePath("/machines", "layout");
	return done;
}

export async function changeCostAction(raw: unknown): Promise<Result<null>> {
	const { currency } = await requireShop((await shopStore()).read);
	const input = changeCostSchema(currency).safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await changeCost(input.data, env.value);
	if (done.ok) revalidatePath("/machines", "layout");
	return done;
}

export async function wantAction(raw: unknown): Promise<Result<string>> {
	const { currency } = await requireShop((await shopStore()).read);
	const input = wantSchema(currency).safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await want(input.data, env.value);
	if (done.ok) revalidatePath("/machines", "layout");
	return done;
}

export async function changeWantedAction(raw: unknown): Promise<Result<null>> {
	const { currency } = await requireShop((await shopStore()).read);
	const input = changeWantedSchema(currency).safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await changeWanted(input.data, env.value);
	if (done.ok) revalidatePath("/machines", "layout");
	return done;
}

export const boughtAction = async (raw: unknown) => act(raw, boughtSchema, bought, "/machines");

export const dropWantedAction = async (raw: unknown) => act(raw, dropWantedSchema, dropWanted, "/machines");

export const wantAgainAction = async (raw: unknown) => act(raw, wantAgainSchema, wantAgain, "/machines");
