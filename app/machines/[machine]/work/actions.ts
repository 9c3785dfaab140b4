"use server";

import type { Result } from "@/lib/core/result";
import type { Beside } from "@/lib/steps/besideQueries";
import {
	addTime,
	changeStep,
	correctTime,
	dropStep,
	finishStep,
	planStep,
	reopenStep,
	startClock,
	stopClock,
	voidTime,
} from "@/lib/steps/changes";
import {
	addTimeFormSchema,
	changeStepFormSchema,
	correctTimeFormSchema,
	dropStepSchema,
	finishStepFormSchema,
	planStepFormSchema,
	reopenStepSchema,
	startClockFormSchema,
	stopClockFormSchema,
	voidTimeSchema,
} from "@/lib/steps/schema";
import { deedOfForm } from "./deedOfForm";

export async function planStepAction(raw: unknown): Promise<Result<{ number: number }>> {
	return deedOfForm(raw, planStepFormSchema, planStep);
}

export async function changeStepAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, changeStepFormSchema, changeStep);
}

export async function startClockAction(raw: unknown): Promise<Result<{ workId: string }>> {
	return deedOfForm(raw, startClockFormSchema, startClock);
}

export async function stopClockAction(raw: unknown): Promise<Result<{ minutes: number }>> {
	return deedOfForm(raw, stopClockFormSchema, async ({ stopped, ...input }, env, momentOf) => {
		const at = momentOf(stopped, "stopped");
		return at.ok ? stopClock({ ...input, at: at.value }, env) : at;
	});
}

export async function addTimeAction(raw: unknown): Promise<Result<{ workId: string; beside: Beside[] }>> {
	return deedOfForm(raw, addTimeFormSchema, async ({ began, ...input }, env, momentOf) => {
		const startedAt = momentOf(began, "began");
		return startedAt.ok ? addTime({ ...input, startedAt: startedAt.value }, env) : startedAt;
	});
}

export async function voidTimeAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, voidTimeSchema, voidTime);
}

export async function correctTimeAction(raw: unknown): Promise<Result<{ workId: string }>> {
	return deedOfForm(raw, correctTimeFormSchema, async ({ began, ...input }, env, momentOf) => {
		const startedAt = momentOf(began, "began");
		return startedAt.ok ? correctTime({ ...input, startedAt: startedAt.value }, env) : startedAt;
	});
}

export async function finishStepAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, finishStepFormSchema, async ({ finished, ...input }, env, momentOf) => {
		const at = momentOf(finished, "finished");
		return at.ok ? finishStep({ ...input, at: at.value }, env) : at;
	});
}

export async function dropStepAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, dropStepSchema, dropStep);
}

export async function reopenStepAction(raw: unknown): Promise<Result<null>> {
	return deedOfForm(raw, reopenStepSchema, reopenStep);
}
