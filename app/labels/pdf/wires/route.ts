import { systemClock } from "@/lib/core/clock";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { wiresAddressSchema } from "@/lib/labels/schema";
import { flagsOnPaper } from "@/lib/labels/wireQueries";
import { pdfAnswer, words } from "../../pdfAnswer";

/** The flags of a machine's wires, both ends. Flags bear no tag of a thing, so nothing goes into the book. */
export async function GET(request: Request): Promise<Response> {
	const said = wiresAddressSchema.safeParse(Object.fromEntries(new URL(request.url).searchParams));
	if (!said.success) return words(400, said.error.issues[0]?.message ?? "These flags cannot be printed.");
	const { read } = await shopStore();
	const made = await flagsOnPaper(read, said.data, instant(systemClock()));
	if (!made.ok) return words(400, made.error.say);
	return pdfAnswer(made.value.pdf, `wires-${said.data.machine}`);
}
