"use server";

import { revalidatePath } from "next/cache";
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

export async function deliverAction(raw: unknown): Promise<Result<null>> {
	const input = deliverSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await deliver(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

export async function voidDeliveryAction(raw: unknown): Promise<Result<null>> {
	const input = voidDeliverySchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await voidDelivery(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

export async function changeLeadAction(raw: unknown): Promise<Result<null>> {
	const input = changeLeadSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await changeLead(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

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

export async function voidCreditAction(raw: unknown): Promise<Result<null>> {
	const input = voidCreditSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await voidCredit(input.data, env.value);
	if (done.ok) revalidatePath("/", "layout");
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
