"use server";

import { revalidatePath } from "next/cache";
import { act } from "@/app/act";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { giveCredit, voidCredit } from "@/lib/credits/changes";
import { creditSchema, voidCreditSchema } from "@/lib/credits/schema";
import { shopStore } from "@/lib/db/shopStore";
import { deliver, voidDelivery } from "@/lib/deliveries/changes";
import { deliverSchema, voidDeliverySchema } from "@/lib/deliveries/schema";
import { buy, changeLead, drawFromLine, partFromLine, returnLine, voidUse } from "@/lib/purchases/changes";
import {
	buySchema,
	changeLeadSchema,
	drawFromLineSchema,
	partFromLineSchema,
	returnLineSchema,
	voidUseSchema,
} from "@/lib/purchases/schema";
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

export const deliverAction = async (raw: unknown) => act(raw, deliverSchema, deliver);

export const voidDeliveryAction = async (raw: unknown) => act(raw, voidDeliverySchema, voidDelivery);

export const changeLeadAction = async (raw: unknown) => act(raw, changeLeadSchema, changeLead);

export async function giveCreditAction(raw: unknown): Promise<Result<string>> {
	const { currency } = await requireShop((await shopStore()).read);
	const input = creditSchema(currency).safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await giveCredit(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

export const voidCreditAction = async (raw: unknown) => act(raw, voidCreditSchema, voidCredit);

export const drawFromLineAction = async (raw: unknown) => act(raw, drawFromLineSchema, drawFromLine);

export const partFromLineAction = async (raw: unknown) => act(raw, partFromLineSchema, partFromLine);

export const returnLineAction = async (raw: unknown) => act(raw, returnLineSchema, returnLine);

export const voidUseAction = async (raw: unknown) => act(raw, voidUseSchema, voidUse);
