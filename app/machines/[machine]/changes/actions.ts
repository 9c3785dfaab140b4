"use server";

import { z } from "zod";
import { markUndone, recordAlteration, voidAlteration } from "@/lib/alterations/changes";
import { markUndoneFormSchema, recordAlterationFormSchema, voidAlterationSchema } from "@/lib/alterations/schema";
import { joinConversion, nameConversion } from "@/lib/conversions/changes";
import { joinConversionSchema, nameConversionSchema } from "@/lib/conversions/schema";
import type { Result } from "@/lib/core/result";
import { shopStore } from "@/lib/db/shopStore";
import { recordDecision } from "@/lib/decisions/changes";
import { recordDecisionFormSchema } from "@/lib/decisions/schema";
import { foresee } from "@/lib/reversal/beforehandQueries";
import { type Foreseen, thoughtSchema } from "@/lib/reversal/thought";
import { requireShop } from "@/lib/shop/queries";
import { deedOfForm } from "../work/deedOfForm";

export async function recordAlterationAction(raw: unknown): Promise<Result<{ number: number }>> {
	return deedOfForm(raw, recordAlterationFormSchema, async ({ done, ...input }, env, momentOf) => {
		const at = momentOf(done, "done");
		return at.ok ? recordAlteration({ ...input, at: at.value }, env) : at;
	});
}

const askedSchema = z.object({ machineId: z.string().min(1).max(64), thought: thoughtSchema });

/** What reversal would lose by something that is only thought about; null when there is nothing to say of it. Writes nothing. */
export async function foreseeAction(raw: unknown): Promise<Foreseen | null> {
	const asked = askedSchema.safeParse(raw);
	if (!asked.success) return null;
	const [foreseen] = await foresee((await shopStore()).read, asked.data.machineId, [asked.data.thought]);
	return foreseen ?? null;
}

export async function markUndoneAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, markUndoneFormSchema, async ({ undone, ...input }, env, momentOf) => {
		const at = momentOf(undone, "undone");
		return at.ok ? markUndone({ ...input, at: at.value }, env) : at;
	});
}

export async function voidAlterationAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, voidAlterationSchema, voidAlteration);
}

export async function nameConversionAction(raw: unknown): Promise<Result<{ number: number }>> {
	return deedOfForm(raw, nameConversionSchema, nameConversion);
}

export async function joinConversionAction(raw: unknown): Promise<Result<{ joined: number; left: number }>> {
	return deedOfForm(raw, joinConversionSchema, joinConversion);
}

export async function recordDecisionAction(raw: unknown): Promise<Result<string>> {
	const { currency } = await requireShop((await shopStore()).read);
	return deedOfForm(raw, recordDecisionFormSchema(currency), async ({ decided, ...input }, env, momentOf) => {
		const at = momentOf(decided, "decided");
		return at.ok ? recordDecision({ ...input, at: at.value }, env) : at;
	});
}
