import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Badge } from "@/app/ui/badge";
import { Button } from "@/app/ui/button";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { DayField } from "@/app/ui/dayField";
import { Empty } from "@/app/ui/empty";
import { FormRow, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PageHead } from "@/app/ui/pageHead";
import { Pager } from "@/app/ui/pager";
import { Table } from "@/app/ui/table";
import { systemClock } from "@/lib/core/clock";
import { day, dayOf, formatDay } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import { formatAmount, minor } from "@/lib/money/money";
import { listed } from "@/lib/purchases/counted";
import { leadOf, postWords } from "@/lib/purchases/lead";
import { inStock, purchases } from "@/lib/purchases/queries";
import { theShop } from "@/lib/shop/queries";

export const metadata: Metadata = { title: "Buying" };

export default async function BuyingPage({ searchParams }: { searchParams: Promise<{ page?: string }> }) {
	const { read } = await shopStore();
	const shop = await theShop(read);
	if (!shop) redirect("/welcome");
	const page = Math.max(1, Number.parseInt((await searchParams).page ?? "1", 10) || 1);
	const [bought, stock] = await Promise.all([purchases(read, page), inStock(read)]);
	const today = dayOf(systemClock(), shop.timeZone);
	const amount = (value: number) => formatAmount(minor(value), shop.currency);
	return (
		<Stack>
			<PageHead
				title="Buying"
				lead="What was bought, for how much, and what of it is left."
				actions={
					<ButtonLink href="/buying/new" kind="main">
						Enter a purchase
					</ButtonLink>
				}
			/>
			<Card title="Purchases" aside={shop.currency} flush>
				<Table
					caption="Purchases, newest first"
					rows={bought.rows}
					rowKey={(row) => String(row.number)}
					empty={
						<Empty title="No purchases yet" action={<ButtonLink href="/buying/new">Enter the first one</ButtonLink>}>
							Motors, screws, lamps, filler: what is bought for a machine is entered here with its freight and tax, and then used.
						</Empty>
					}
					columns={[
						{
							key: "number",
							head: "Purchase",
							main: true,
							cell: (row) => <Link href={`/buying/${row.number}`}>{`${row.number} · ${row.supplier.name}`}</Link>,
							sub: (row) => `${row.lines.map(listed).join(", ")}${row._count.lines > 4 ? ` and ${row._count.lines - 4} more` : ""}`,
						},
						{ key: "ordered", head: "Ordered", cell: (row) => formatDay(day(row.orderedDay)) },
						{
							key: "arrived",
							head: "Arrived",
							cell: (row) => {
								if (row.arrivedDay) return formatDay(day(row.arrivedDay));
								const { late } = postWords(day(row.orderedDay), leadOf(row), today);
								const some = row.lines.some(({ deliveries }) => deliveries.length > 0);
								return (
									<Badge means={late ? "stop" : "wait"}>{`${some ? "in part in the post" : "in the post"}${late ? ", late" : ""}`}</Badge>
								);
							},
							sub: (row) => (row.arrivedDay || leadOf(row) === null ? null : postWords(day(row.orderedDay), leadOf(row), today).words),
						},
						{ key: "paid", head: `Paid, ${shop.currency}`, align: "decimal", cell: (row) => amount(row.paidMinor) },
					]}
				/>
				{bought.count > bought.rows.length ? (
					<Pager
						shown={`${bought.from} to ${bought.to} of ${bought.count}`}
						before={page > 1 ? `/buying?page=${page - 1}` : undefined}
						after={bought.to < bought.count ? `/buying?page=${page + 1}` : undefined}
					/>
				) : null}
			</Card>
			<Card title="In stock" aside={shop.currency} flush>
				<Table
					caption="What is left of purchases"
					rows={stock}
					rowKey={(row) => row.id}
					empty={<Empty title="Nothing in stock">What is left of a line after its use shows here, at what it cost.</Empty>}
					columns={[
						{
							key: "what",
							head: "What",
							main: true,
							cell: (row) => <Link href={`/buying/${row.purchase.number}#line-${row.number}`}>{row.what}</Link>,
							sub: (row) => `purchase ${row.purchase.number}${row.location ? `, ${row.location.name}` : ""}`,
						},
						{
							key: "left",
							head: "Left",
							align: "right",
							cell: (row) => `${row.left} of ${row.count} ${row.unit === "piece" ? "" : row.unit}`,
						},
						{
							key: "value",
							head: `Stands for, ${shop.currency}`,
							align: "decimal",
							cell: (row) => amount(row.leftMinor),
							foot: amount(stock.reduce((sum, row) => sum + row.leftMinor, 0)),
						},
					]}
				/>
			</Card>
			<Card title="For the bookkeeper">
				<p className="af-hint mb-3">
					Every line with its share of discount, freight, duty, handling and tax, what sellers gave back, and the sums (CSV).
				</p>
				<form method="get" action="/buying/purchases.csv" className="af-form">
					<FormRow>
						<DayField label="Ordered from" name="from" defaultValue={`${today.slice(0, 4)}-01-01`} required />
						<DayField label="Until" name="until" defaultValue={today} required />
					</FormRow>
					<Button type="submit" className="sm:self-start">
						Save the purchases as a table
					</Button>
				</form>
			</Card>
		</Stack>
	);
}
