// What the actions of a machine's work, changes and tests have in common: read the form, do the deed, show it.

import { revalidatePath } from "next/cache";
import type { z } from "zod";
import { hereAndNow } from "@/app/hereAndNow";
import type { Instant } from "@/lib/core/instants";
import type { Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { shopStore } from "@/lib/db/shopStore";
import type { Env } from "@/lib/ledger/env";
import { requireShop } from "@/lib/shop/queries";
import { instantTyped } from "@/lib/steps/typedMoment";

/** Reads a clock field of the form in the shop's time zone; empty is now. */
export type MomentOf = (typed: string, field: string) => Result<Instant | undefined>;

/** Reads the form, does the deed for whoever uses this browser, and has the machine's pages shown anew. */
export async function deedOfForm<Output, Value>(
	raw: unknown,
	schema: z.ZodType<Output>,
	change: (input: Output, env: Env, momentOf: MomentOf) => Promise<Result<Value>>,
): Promise<Result<Value>> {
	const input = schema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const { timeZone } = await requireShop((await shopStore()).read);
	const now = env.value.clock();
	const done = await change(input.data, env.value, (typed, field) => instantTyped(typed, timeZone, now, field));
	if (done.ok) revalidatePath("/machines/[machine]", "layout");
	return done;
}
