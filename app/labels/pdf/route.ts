import { cookies } from "next/headers";
import { hereAndNow } from "@/app/hereAndNow";
import { systemClock } from "@/lib/core/clock";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { recordPrint } from "@/lib/labels/changes";
import { labelsOnPaper, stockOrFirst } from "@/lib/labels/printQueries";
import { printAddressSchema } from "@/lib/labels/schema";
import { pdfAnswer, words } from "../pdfAnswer";
import { STOCK_COOKIE, stockCookie } from "../stockInUse";

/**
 * The labels as a PDF. With `deed`, which the page's own link carries, the print is put in the book, once however often
 * the address is fetched; without it the answer is a look only.
 */
export async function GET(request: Request): Promise<Response> {
	const query = new URL(request.url).searchParams;
	const said = printAddressSchema.safeParse(Object.fromEntries(query));
	if (!said.success) return words(400, said.error.issues[0]?.message ?? "These labels cannot be printed.");
	const { tags, start, copies, outlines } = said.data;
	const { read } = await shopStore();
	const stock = await stockOrFirst(read, said.data.stock ?? (await cookies()).get(STOCK_COOKIE)?.value);
	const deed = query.get("deed");
	const draw = () =>
		labelsOnPaper(read, { tags, stock, startAt: start, copies, outlines: outlines === "yes", deed, madeAt: instant(systemClock()) });
	let made = await draw();
	if (!made.ok) return words(400, made.error.say);
	if (deed !== null) {
		const env = await hereAndNow({ deed, tags, copies });
		if (!env.ok) return words(403, env.error.say);
		const recorded = await recordPrint({ tags, stock: stock.id, copies }, env.value);
		if (!recorded.ok) return words(409, recorded.error.say);
		// Somebody else printed one of them in between: the paper says what the book says.
		const { prints } = made.value;
		if (recorded.value.printed.some(({ tag, times }) => prints.get(tag) !== times)) made = await draw();
		if (!made.ok) return words(400, made.error.say);
	}
	return pdfAnswer(made.value.pdf, tags.length === 1 ? `label-${tags[0]}` : `labels-${tags.length}`, {
		"set-cookie": stockCookie(stock.id),
	});
}
