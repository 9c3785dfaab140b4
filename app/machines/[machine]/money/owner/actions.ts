"use server";

import { revalidatePath } from "next/cache";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { shopStore } from "@/lib/db/shopStore";
import type { Env } from "@/lib/ledger/env";
import { addPayment, answerPaper, givePaper, takeBackPayment, withdrawPaper } from "@/lib/owner/changes";
import { addPaymentSchema, answerPaperFormSchema, givePaperSchema, takeBackPaymentSchema, withdrawPaperSchema } from "@/lib/owner/schema";
import { requireShop } from "@/lib/shop/queries";
import { deedOfForm } from "../../work/deedOfForm";

export async function givePaperAction(raw: unknown): Promise<Result<{ paperId: string; number: number }>> {
	const { currency } = await requireShop((await shopStore()).read);
	const input = givePaperSchema(currency).safeParse(raw);
	if (!input.success) return unreadable(input.error);
	return shown(raw, (env) => givePaper(input.data, env));
}

export async function answerPaperAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, answerPaperFormSchema, async ({ answered, ...input }, env, momentOf) => {
		const at = momentOf(answered, "answered");
		return at.ok ? answerPaper({ ...input, at: at.value }, env) : at;
	});
}

export async function withdrawPaperAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, withdrawPaperSchema, withdrawPaper);
}

export async function addPaymentAction(raw: unknown): Promise<Result<string>> {
	const { currency } = await requireShop((await shopStore()).read);
	const input = addPaymentSchema(currency).safeParse(raw);
	if (!input.success) return unreadable(input.error);
	return shown(raw, (env) => addPayment(input.data, env));
}

export async function takeBackPaymentAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, takeBackPaymentSchema, takeBackPayment);
}

/** Does the deed for whoever uses this browser, and has the machine's pages shown anew. */
async function shown<Value>(raw: unknown, change: (env: Env) => Promise<Result<Value>>): Promise<Result<Value>> {
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await change(env.value);
	if (done.ok) revalidatePath("/machines/[machine]", "layout");
	return done;
}
