// What nearly every server action is: read the form, do the deed for whoever uses this browser, have the pages shown anew.

import { revalidatePath } from "next/cache";
import type { z } from "zod";
import { hereAndNow } from "@/app/hereAndNow";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Env } from "@/lib/ledger/env";

/** `shows` is the part of the shop whose pages show what was done: "/" for all of them. */
export async function act<Input, Value>(
	raw: unknown,
	schema: z.ZodType<Input>,
	change: (input: Input, env: Env) => Promise<Result<Value>>,
	shows = "/",
): Promise<Result<Value>> {
	const input = schema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await change(input.data, env.value);
	if (done.ok) revalidatePath(shows, "layout");
	return done;
}
