// What every server action starts with: the shop's store, the clock, and who is asking.

import { z } from "zod";
import { ok, type Result, refuse } from "@/lib/core/result";
import { shopStore } from "@/lib/db/shopStore";
import { envNow } from "@/lib/ledger/edge";
import type { Env } from "@/lib/ledger/env";
import { currentPerson } from "@/lib/people/current";

/** A client-made id: any UUID. */
const deedSchema = z.uuid();
/** The number of the entry that a page was made from. */
const seenSchema = z.int().positive();

/** The environment of one deed, or a refusal when nobody has said who they are or the form is not one of ours. */
export async function hereAndNow(deed: unknown, seen?: unknown): Promise<Result<Env>> {
	const id = deedSchema.safeParse(deed);
	if (!id.success) return refuse("deed-unreadable", "This form is not complete. Load the page again; what you typed is still in it.");
	const person = await currentPerson();
	if (!person) return refuse("nobody", "Say who you are first: choose your name under People.");
	return ok({ ...envNow(await shopStore(), person.id, id.data), seen: seenSchema.safeParse(seen).data ?? null });
}

/** The deed's id as a form sent it. */
export const deedOf = (raw: unknown): unknown => (typeof raw === "object" && raw !== null && "deed" in raw ? raw.deed : undefined);

/** The entry that the form's page was made from, as it sent it. */
export const seenOf = (raw: unknown): unknown => (typeof raw === "object" && raw !== null && "seen" in raw ? raw.seen : undefined);
