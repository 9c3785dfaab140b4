"use server";

import type { Result } from "@/lib/core/result";
import { planTest, runTest } from "@/lib/tests/changes";
import type { Verdict } from "@/lib/tests/limits";
import { runTestFormSchema } from "@/lib/tests/schema";
import { setTestSchema } from "@/lib/tests/setTest";
import { deedOfForm } from "../work/deedOfForm";

export async function setTestAction(raw: unknown): Promise<Result<{ number: number }>> {
	return deedOfForm(raw, setTestSchema, planTest);
}

export async function runTestAction(raw: unknown): Promise<Result<{ verdict: Verdict; say: string }>> {
	return deedOfForm(raw, runTestFormSchema, async ({ measured, ...input }, env, momentOf) => {
		const at = momentOf(measured, "measured");
		return at.ok ? runTest({ ...input, at: at.value }, env) : at;
	});
}
