"use server";

import { revalidatePath } from "next/cache";
import { cookies } from "next/headers";
import { z } from "zod";
import { deedOf } from "@/app/hereAndNow";
import { type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { shopStore } from "@/lib/db/shopStore";
import { envNow } from "@/lib/ledger/edge";
import { PERSON_COOKIE } from "@/lib/people/current";
import { openShop } from "@/lib/shop/changes";
import { openShopSchema } from "@/lib/shop/schema";

export async function openShopAction(raw: unknown): Promise<Result<string>> {
	const input = openShopSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const deed = z.uuid().safeParse(deedOf(raw));
	if (!deed.success) return refuse("deed-unreadable", "This form is not complete. Load the page again.");
	// The actor is the person whom this very deed adds.
	const done = await openShop(input.data, envNow(await shopStore(), "", deed.data));
	if (!done.ok) return done;
	(await cookies()).set(PERSON_COOKIE, done.value, { httpOnly: true, sameSite: "lax", path: "/", maxAge: 365 * 24 * 60 * 60 });
	revalidatePath("/", "layout");
	return done;
}
