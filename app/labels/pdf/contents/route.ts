import { cookies } from "next/headers";
import { systemClock } from "@/lib/core/clock";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { listsOnPaper } from "@/lib/labels/contentsQueries";
import { stockOrFirst } from "@/lib/labels/printQueries";
import { listAddressSchema } from "@/lib/labels/schema";
import { currentPerson } from "@/lib/people/current";
import { pdfAnswer, words } from "../../pdfAnswer";
import { STOCK_COOKIE } from "../../stockInUse";

/** Lists of what is in bags. They are no labels, so nothing goes into the book. */
export async function GET(request: Request): Promise<Response> {
	const said = listAddressSchema.safeParse(Object.fromEntries(new URL(request.url).searchParams));
	if (!said.success) return words(400, said.error.issues[0]?.message ?? "These lists cannot be printed.");
	const { read } = await shopStore();
	const [stock, person] = await Promise.all([stockOrFirst(read, (await cookies()).get(STOCK_COOKIE)?.value), currentPerson()]);
	const made = await listsOnPaper(read, said.data, stock, { at: instant(systemClock()), initials: person?.initials ?? "" });
	if (!made.ok) return words(400, made.error.say);
	return pdfAnswer(made.value.pdf, said.data.tags.length === 1 ? `contents-${said.data.tags[0]}` : "contents");
}
