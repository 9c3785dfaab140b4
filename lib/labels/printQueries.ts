// Labels from the shop's book to paper: what they say, on which stock, how far moved, the how-manieth print.

import type { Instant } from "@/lib/core/instants";
import { ok, type Result } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import { type LabelAddress, labelAddress } from "@/lib/labels/address";
import { type LabelPdf, labelPdf } from "@/lib/labels/labelPdf";
import type { LabelContent } from "@/lib/labels/labelText";
import { labelContents, nextPrints } from "@/lib/labels/queries";
import { STOCKS, type Stock } from "@/lib/labels/stock";
import { nudgeOf, stocksToUse } from "@/lib/labels/stockQueries";
import { requireShop } from "@/lib/shop/queries";
import type { Tag } from "@/lib/tags/tag";

/** The shop's address as labels carry it; null while their codes hold the bare tag. */
export function addressOnLabels(address: string | null): LabelAddress | null {
	const read = address === null ? null : labelAddress(address);
	return read?.ok ? read.value : null;
}

/** The stock of this id among those to use, or the first of the list when there is none of that id any more. */
export async function stockOrFirst(read: Reader, stockId: string | undefined): Promise<Stock> {
	const [first] = STOCKS;
	const stock = (await stocksToUse(read)).find(({ id }) => id === stockId) ?? first;
	if (!stock) throw new Error("there is no label stock");
	return stock;
}

/** What the labels of these tags say when they go to paper as this deed, or as the next one. */
export async function labelsToPrint(read: Reader, tags: readonly Tag[], deed: string | null): Promise<LabelContent[]> {
	const shop = await requireShop(read);
	const [contents, prints] = await Promise.all([labelContents(read, tags, shop.timeZone), nextPrints(read, tags, deed)]);
	return contents.map((content) => ({ ...content, print: prints.get(content.tag) ?? 1 }));
}

export type PrintRun = {
	readonly tags: readonly Tag[];
	readonly stock: Stock;
	readonly startAt: number;
	readonly copies: number;
	readonly outlines: boolean;
	readonly deed: string | null;
	readonly madeAt: Instant;
};

/** The labels as a PDF, moved by the stock's nudge, and the how-manieth print each one says it is. */
export async function labelsOnPaper(
	read: Reader,
	{ tags, stock, startAt, copies, outlines, deed, madeAt }: PrintRun,
): Promise<Result<LabelPdf & { prints: ReadonlyMap<string, number> }>> {
	const shop = await requireShop(read);
	const [contents, nudge] = await Promise.all([labelsToPrint(read, tags, deed), nudgeOf(read, stock.id)]);
	const address = addressOnLabels(shop.address);
	const made = await labelPdf(contents, { stock, startAt, copies, outlines, address, madeAt, ...nudge });
	if (!made.ok) return made;
	return ok({ ...made.value, prints: new Map(contents.map(({ tag, print = 1 }) => [tag, print])) });
}
