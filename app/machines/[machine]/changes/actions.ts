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
import { lossByAltering } from "@/lib/reversal/beforehandQueries";
import { lossWords } from "@/lib/reversal/lossWords";
import { requireShop } from "@/lib/shop/queries";
import { deedOfForm } from "../work/deedOfForm";

export async function recordAlterationAction(raw: unknown): Promise<Result<{ number: number }>> {
	return deedOfForm(raw, recordAlterationFormSchema, async ({ done, ...input }, env, momentOf) => {
		const at = momentOf(done, "done");
		return at.ok ? recordAlteration({ ...input, at: at.value }, env) : at;
	});
}

const thoughtSchema = z.object({
	machineId: z.uuid(),
	positionId: z.uuid().nullable(),
	partId: z.uuid().nullable(),
	what: z.string().max(300),
	undo: z.enum(["clean", "trace", "never"]),
});
/** The form asks how long undoing takes; what is lost does not depend on it, and no time is said here. */
const NO_TIME = { low: 0, likely: 0, high: 0 };

/** What reversal would lose by an alteration that is only thought about; null when there is no way back to plan yet. Writes nothing. */
export async function lossOfAlteringAction(raw: unknown): Promise<{ readonly say: string; readonly loses: boolean } | null> {
	const thought = thoughtSchema.safeParse(raw);
	if (!thought.success) return null;
	const losses = await lossByAltering((await shopStore()).read, { ...thought.data, minutes: NO_TIME });
	if (losses === null) return null;
	const trace = thought.data.undo === "trace" ? " What comes back shows a trace of it." : "";
	return { say: lossWords({ ...losses, minutesMore: 0 }) + trace, loses: losses.lost.length > 0 || trace !== "" };
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
