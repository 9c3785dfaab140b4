"use server";

import { revalidatePath } from "next/cache";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { type PutInDone, putIn } from "@/lib/fittings/changes";
import { putInSchema } from "@/lib/fittings/schema";

export async function putInAction(raw: unknown): Promise<Result<PutInDone>> {
	const input = putInSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await putIn(input.data, env.value);
	if (done.ok) revalidatePath("/machines/[machine]", "layout");
	return done;
}
