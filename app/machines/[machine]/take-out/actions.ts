"use server";

import { revalidatePath } from "next/cache";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { type PutInDone, putBack } from "@/lib/fittings/changes";
import { putBackSchema } from "@/lib/fittings/schema";
import { sayFault } from "@/lib/machines/changes";
import { sayFaultSchema } from "@/lib/machines/schema";
import { sayObstruction } from "@/lib/positions/changes";
import { sayObstructionSchema } from "@/lib/positions/schema";

export async function putBackAction(raw: unknown): Promise<Result<PutInDone>> {
	const input = putBackSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await putBack(input.data, env.value);
	if (done.ok) revalidatePath("/machines/[machine]", "layout");
	return done;
}

/** It did not come out: something is in the way that the record does not know of. */
export async function inTheWayAction(raw: unknown): Promise<Result<string[]>> {
	const input = sayObstructionSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await sayObstruction(input.data, env.value);
	if (done.ok) revalidatePath("/machines/[machine]", "layout");
	return done;
}

/** It did not come out: it is stuck, sheared, glued. */
export async function stuckAction(raw: unknown): Promise<Result<string>> {
	const input = sayFaultSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await sayFault(input.data, env.value);
	if (done.ok) revalidatePath("/machines/[machine]", "layout");
	return done;
}
