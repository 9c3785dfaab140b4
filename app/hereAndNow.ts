// What every server action starts with: the shop's store, the clock, and who is asking.

import { z } from "zod";
import { ok, type Result, refuse } from "@/lib/core/result";
import { shopStore } from "@/lib/db/shopStore";
import { envNow } from "@/lib/ledger/edge";
import type { Env } from "@/lib/ledger/env";
import { sha256 } from "@/lib/ledger/hash";
import { currentPerson } from "@/lib/people/current";

const entry = z.int().positive();
/** What a form sends besides its answers: a client-made id of the deed, and the page that it stands on (lib/ledger/meanwhile.ts). */
const sentSchema = z.looseObject({
	deed: z.uuid(),
	/** Who did it, where it waited on a phone: by now the phone may be in another hand. */
	doneBy: z.string().max(64).nullish().catch(null),
	seen: entry.nullish().catch(null),
	told: z
		.object({ entry, fields: z.array(z.string().max(80)).max(80) })
		.nullish()
		.catch(null),
});

/** The environment of one deed, or a refusal when nobody has said who they are or the form is not one of ours. */
export async function hereAndNow(raw: unknown): Promise<Result<Env>> {
	const sent = sentSchema.safeParse(raw);
	if (!sent.success) return refuse("deed-unreadable", "This form is not complete. Load the page again; what you typed is still in it.");
	const person = await currentPerson();
	if (!person)
		return refuse(
			"nobody",
			"Say who you are first: the round button at the top right leads there, best in another tab. What you typed is still here.",
		);
	const { deed, doneBy, seen = null, told = null, ...answers } = sent.data;
	if (doneBy && doneBy !== person.id) {
		return refuse("somebody-else", "Somebody else did this on this phone. Choose that person at the top right, and it goes.");
	}
	const env = envNow(await shopStore(), person.id, deed);
	return ok({ ...env, seen: { seen, told }, asked: sha256(JSON.stringify(answers)) });
}

/** The deed's id as a form sent it. */
export const deedOf = (raw: unknown): unknown => (typeof raw === "object" && raw !== null && "deed" in raw ? raw.deed : undefined);
