"use server";

import { sayFast } from "@/lib/alterations/changes";
import { sayFastSchema } from "@/lib/alterations/schema";
import type { Result } from "@/lib/core/result";
import { finishReversal, leaveOut, sayMadeSafe, startReversal, stopReversal, takeUp } from "@/lib/reversal/carryingOut/changes";
import {
	finishReversalSchema,
	leaveOutSchema,
	madeSafeSchema,
	startReversalSchema,
	stopReversalSchema,
	takeUpSchema,
} from "@/lib/reversal/carryingOut/schema";
import { deedOfForm } from "../work/deedOfForm";

export async function startReversalAction(raw: unknown): Promise<Result<{ number: number }>> {
	return deedOfForm(raw, startReversalSchema, startReversal);
}

export async function madeSafeAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, madeSafeSchema, sayMadeSafe);
}

export async function leaveOutAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, leaveOutSchema, leaveOut);
}

export async function takeUpAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, takeUpSchema, takeUp);
}

export async function finishReversalAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, finishReversalSchema, finishReversal);
}

export async function stopReversalAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, stopReversalSchema, stopReversal);
}

export async function sayFastAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, sayFastSchema, sayFast);
}
