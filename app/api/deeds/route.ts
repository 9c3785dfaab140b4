// Takes what waited on a phone: the same deeds as the forms', under an address that stays the same from one version of the
// program to the next, so that what was kept before the shop was brought up to date still arrives.

import { revalidatePath } from "next/cache";
import { z } from "zod";
import { hereAndNow } from "@/app/hereAndNow";
import { addCapture } from "@/lib/captures/changes";
import { addCaptureSchema } from "@/lib/captures/schema";
import { type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { putBack, takeOut } from "@/lib/fittings/changes";
import { putBackSchema, takeOutSchema } from "@/lib/fittings/schema";
import { refusalOf } from "@/lib/http/guard";
import type { Env } from "@/lib/ledger/env";

const DEEDS = {
	"take-out": deedWith(takeOutSchema, takeOut),
	"put-back": deedWith(putBackSchema, putBack),
	tag: deedWith(addCaptureSchema, addCapture),
} as const;

const MOST_BYTES = 1_000_000;
const kindSchema = z.object({ kind: z.enum(["take-out", "put-back", "tag"]) });

/** Answers with 200 also when it refuses: the refusal is the answer, and no failure of the network that a browser should report. */
export const POST = async (request: Request): Promise<Response> => Response.json(await act(request));

async function act(request: Request): Promise<Result<unknown>> {
	const refusal = refusalOf(request);
	if (refusal) return refuse("not-from-here", refusal);
	const text = await request.text();
	if (text.length > MOST_BYTES) return refuse("too-long", "That is more than one deed can say. Leave it out, and do it again in parts.");
	const raw = readJson(text);
	const kind = kindSchema.safeParse(raw);
	if (!kind.success) return refuse("deed-unknown", "The shop's program does not know this deed. Leave it out, and do it on its own page.");
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const done = await DEEDS[kind.data.kind](notAhead(raw, env.value), env.value);
	if (done.ok) revalidatePath("/", "layout");
	return done;
}

/** A deed that reads what came with its schema before it is done. */
function deedWith<Output, Value>(schema: z.ZodType<Output>, change: (input: Output, env: Env) => Promise<Result<Value>>) {
	return async (raw: unknown, env: Env): Promise<Result<Value>> => {
		const input = schema.safeParse(raw);
		return input.success ? change(input.data, env) : unreadable(input.error);
	};
}

/** A phone's clock may run ahead of the shop's: nothing that waited on it was done later than now. */
function notAhead(raw: unknown, env: Env): unknown {
	if (typeof raw !== "object" || raw === null || !("at" in raw) || typeof raw.at !== "string") return raw;
	const now = env.clock();
	return raw.at > now ? { ...raw, at: now } : raw;
}

function readJson(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch (error) {
		if (error instanceof SyntaxError) return null;
		throw error;
	}
}
