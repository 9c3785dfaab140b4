import { cookies } from "next/headers";
import { hereAndNow } from "@/app/hereAndNow";
import { systemClock } from "@/lib/core/clock";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { labelAddress } from "@/lib/labels/address";
import { recordPrint } from "@/lib/labels/changes";
import { labelPdf } from "@/lib/labels/labelPdf";
import { labelContents } from "@/lib/labels/queries";
import { printAddressSchema } from "@/lib/labels/schema";
import { requireShop } from "@/lib/shop/queries";
import { STOCK_COOKIE, stockOrFirst } from "../stockInUse";

const YEAR_SECONDS = 365 * 24 * 60 * 60;

/**
 * The labels as a PDF. With `deed`, which the page's own link carries, the print is put in the book, once however often
 * the address is fetched; without it the answer is a look only.
 */
export async function GET(request: Request): Promise<Response> {
	const query = new URL(request.url).searchParams;
	const said = printAddressSchema.safeParse(Object.fromEntries(query));
	if (!said.success) return words(400, said.error.issues[0]?.message ?? "These labels cannot be printed.");
	const { tags, start, copies, outlines } = said.data;
	const stock = stockOrFirst(said.data.stock ?? (await cookies()).get(STOCK_COOKIE)?.value);
	const { read } = await shopStore();
	const shop = await requireShop(read);
	const address = shop.address === null ? null : labelAddress(shop.address);
	const made = await labelPdf(await labelContents(read, tags, shop.timeZone), {
		stock,
		startAt: start,
		copies,
		nudgeX: 0,
		nudgeY: 0,
		outlines: outlines === "yes",
		address: address?.ok ? address.value : null,
		madeAt: instant(systemClock()),
	});
	if (!made.ok) return words(400, made.error.say);
	const deed = query.get("deed");
	if (deed !== null) {
		const env = await hereAndNow({ deed });
		if (!env.ok) return words(403, env.error.say);
		const recorded = await recordPrint({ tags, stock: stock.id, copies }, env.value);
		if (!recorded.ok) return words(409, recorded.error.say);
	}
	const name = tags.length === 1 ? `label-${tags[0]}` : `labels-${tags.length}`;
	return new Response(new Uint8Array(made.value.pdf), {
		headers: {
			"content-type": "application/pdf",
			"content-disposition": `inline; filename="${name}.pdf"`,
			"cache-control": "no-store",
			"set-cookie": `${STOCK_COOKIE}=${stock.id}; Path=/; Max-Age=${YEAR_SECONDS}; SameSite=Lax; HttpOnly`,
		},
	});
}

const words = (status: number, say: string): Response =>
	new Response(`${say}\n`, { status, headers: { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" } });
