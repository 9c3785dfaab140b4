import type { Metadata } from "next";
import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PageHead } from "@/app/ui/pageHead";
import { type Column, Table } from "@/app/ui/table";
import { shopStore } from "@/lib/db/shopStore";
import { nudgeInWords, sizeInWords } from "@/lib/labels/ownStock";
import { FLAG_ROLL, STOCKS } from "@/lib/labels/stock";
import { nudges, ownStocks } from "@/lib/labels/stockQueries";
import { requireShop } from "@/lib/shop/queries";
import "../labels.css";
import { AddStockForm } from "./stockForms";

export const metadata: Metadata = { title: "Label stock" };

/** What labels can be printed on: the shop's own stock and what most shops have, and how prints on each are moved. */
export default async function StockPage() {
	const { read } = await shopStore();
	await requireShop(read);
	const [own, moved] = await Promise.all([ownStocks(read), nudges(read)]);
	const rows = [
		...own.map(({ stock, stands }) => ({ stock, whose: stands === "yes" ? ("own" as const) : ("away" as const) })),
		...[...STOCKS, FLAG_ROLL].map((stock) => ({ stock, whose: "common" as const })),
	];
	type Row = (typeof rows)[number];
	const columns: Column<Row>[] = [
		{
			key: "name",
			head: "Stock",
			main: true,
			cell: ({ stock }) => <Link href={`/labels/stock/${stock.id}`}>{stock.name}</Link>,
			sub: ({ stock }) => sizeInWords(stock),
		},
		{
			key: "whose",
			head: "Whose",
			cell: ({ whose }) => (whose === "away" ? <Badge means="wait">put away</Badge> : whose === "own" ? "our own" : "common"),
		},
		{ key: "nudge", head: "Prints go", cell: ({ stock }) => nudgeInWords(moved.get(stock.id) ?? { right: 0, down: 0 }) },
	];
	return (
		<Stack>
			<PageHead
				title="Label stock"
				lead="What lies in the printer. Open one to move its prints by tenths of a millimetre, or to print its test grid."
			/>
			<Columns>
				<Card flush>
					<Table caption="Label stock" columns={columns} rows={rows} rowKey={({ stock }) => stock.id} />
				</Card>
				<Card title="Stock of your own">
					<p className="af-sub pb-3">
						Measure with a rule, from the sheet&apos;s edges and from one label&apos;s edge to the same edge of the next.
					</p>
					<AddStockForm />
				</Card>
			</Columns>
		</Stack>
	);
}
