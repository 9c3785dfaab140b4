// Labels straight to the shop's printer, for pages that go on without opening a PDF.

import { cookies } from "next/headers";
import { hereAndNow } from "@/app/hereAndNow";
import { STOCK_COOKIE, stockCookie } from "@/app/labels/stockInUse";
import { type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { refusalOf } from "@/lib/http/guard";
import { printLabels } from "@/lib/labels/changes";
import { printLabelsSchema } from "@/lib/labels/schema";

const MOST_BYTES = 20_000;

/** `{ tags, stock?, copies?, startAt?, deed }` gives `{ ok, value: { printed: [{ tag, times }] } }` or a refusal with its sentence. */
export async function POST(request: Request): Promise<Response> {
	const done = await print(request);
	const kept = done.ok && done.stock !== undefined ? { headers: { "set-cookie": stockCookie(done.stock) } } : {};
	// 200 also for a refusal: it is an answer, and no failure that a browser should report.
	return Response.json(done.ok ? { ok: true, value: done.value } : done, kept);
}

async function print(request: Request): Promise<Result<unknown> & { stock?: string | undefined }> {
	const refusal = refusalOf(request);
	if (refusal) return refuse("not-from-here", refusal);
	const raw = readJson((await request.text()).slice(0, MOST_BYTES));
	const input = printLabelsSchema.safeParse(raw);
	if (!input.success) return unreadable(input.error);
	const env = await hereAndNow(raw);
	if (!env.ok) return env;
	const stock = input.data.stock ?? (await cookies()).get(STOCK_COOKIE)?.value;
	const done = await printLabels({ ...input.data, stock }, env.value);
	return done.ok ? { ...done, stock: input.data.stock } : done;
}

function readJson(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch (error) {
		if (error instanceof SyntaxError) return null;
		throw error;
	}
}
