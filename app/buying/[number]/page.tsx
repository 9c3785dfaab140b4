import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PageHead } from "@/app/ui/pageHead";
import { PrintButton } from "@/app/ui/printButton";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { systemClock } from "@/lib/core/clock";
import { day, dayOf, formatDay } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import { isCurrency } from "@/lib/money/currency";
import { leftOfLine } from "@/lib/money/lineUse";
import { formatAmount, minor, sumMinor } from "@/lib/money/money";
import { machinesInWork, purchaseByNumber } from "@/lib/purchases/queries";
import { requireShop } from "@/lib/shop/queries";
import { ArriveForm, DrawForm, VoidUseForm } from "./forms";

type Params = { params: Promise<{ number: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
	return { title: `Purchase ${(await params).number}` };
}

export default async function PurchasePage({ params }: Params) {
	const { read } = await shopStore();
	const number = Number((await params).number);
	const purchase = Number.isInteger(number) ? await purchaseByNumber(read, number) : null;
	if (!purchase || !isCurrency(purchase.currency)) notFound();
	const [shop, machines] = await Promise.all([requireShop(read), machinesInWork(read)]);
	const home = (value: number) => formatAmount(minor(value), shop.currency);
	const own = (value: number) => formatAmount(minor(value), purchase.currency as typeof shop.currency);
	const today = dayOf(systemClock(), shop.timeZone);
	const foreign = purchase.currency !== shop.currency;
	const lines = purchase.lines.map((line) => {
		const standing = line.uses.filter(({ kind }) => kind !== "void");
		return {
			...line,
			left: leftOfLine(
				{ landed: minor(line.landedMinor), count: line.count },
				standing.map((use) => ({ count: use.count, charged: minor(use.amountMinor) })),
			),
		};
	});
	const uses = lines.flatMap((line) => line.uses.map((use) => ({ ...use, line })));
	const of = (kind: "used" | "returned") => sumMinor(uses.filter((use) => use.kind === kind).map((use) => minor(use.amountMinor)));
	return (
		<Stack>
			<PageHead
				above={<Link href="/buying">Buying</Link>}
				title={`Purchase ${purchase.number}`}
				lead={`${purchase.supplier.name}, ordered ${formatDay(day(purchase.orderedDay))}${purchase.arrivedDay ? `, arrived ${formatDay(day(purchase.arrivedDay))}` : ""}${purchase.note ? `. ${purchase.note}` : ""}`}
				figures={[
					{ value: home(purchase.paidMinor), label: `paid, ${shop.currency}` },
					{ value: home(of("used")), label: "used on machines" },
					{ value: home(sumMinor(lines.map(({ left }) => left.value))), label: "in stock" },
				]}
				actions={<PrintButton>Print</PrintButton>}
			/>
			{purchase.arrivedDay ? null : (
				<Card title="In the post">
					<ArriveForm purchaseId={purchase.id} today={today} />
				</Card>
			)}
			<Card title="Lines" aside={foreign ? `${purchase.currency} at ${purchase.rate}` : shop.currency} flush>
				<Table
					caption={`Lines of purchase ${purchase.number}`}
					rows={lines}
					rowKey={(line) => line.id}
					columns={[
						{
							key: "what",
							head: "What",
							main: true,
							cell: (line) => <span id={`line-${line.number}`}>{line.what}</span>,
							sub: (line) => (line.location ? `lies in ${line.location.name}` : null),
						},
						{ key: "count", head: "Count", align: "right", cell: (line) => `${line.count}${line.unit === "piece" ? "" : ` ${line.unit}`}` },
						{
							key: "net",
							head: `Net, ${purchase.currency}`,
							align: "decimal",
							cell: (line) => own(line.netMinor),
							foot: own(sumMinor(lines.map((line) => minor(line.netMinor)))),
						},
						{
							key: "landed",
							head: `Landed, ${shop.currency}`,
							align: "decimal",
							cell: (line) => home(line.landedMinor),
							foot: home(sumMinor(lines.map((line) => minor(line.landedMinor)))),
						},
						{ key: "left", head: "Left", align: "right", cell: (line) => String(line.left.count) },
						{
							key: "stock",
							head: `In stock, ${shop.currency}`,
							align: "decimal",
							cell: (line) => home(line.left.value),
							foot: home(sumMinor(lines.map(({ left }) => left.value))),
						},
					]}
				/>
			</Card>
			<Columns>
				<Card title="Where it went" aside={shop.currency} flush>
					<Table
						caption="What was used, sent back or taken back"
						rows={uses}
						rowKey={(use) => use.id}
						empty={<p className="af-hint">Nothing of it is used yet: all of it is stock.</p>}
						columns={[
							{
								key: "what",
								head: "What",
								main: true,
								cell: (use) => `${use.count} × ${use.line.what}`,
								sub: (use) => use.words,
							},
							{
								key: "where",
								head: "Machine",
								cell: (use) => <Link href={`/machines/${use.machine.number}/money`}>{`${use.machine.number} ${use.machine.name}`}</Link>,
								sub: (use) => (use.part?.tag ? <TagChip tag={use.part.tag.id} href={`/t/${use.part.tag.id}`} /> : null),
							},
							{ key: "day", head: "Day", cell: (use) => formatDay(day(use.day)) },
							{
								key: "amount",
								head: `Cost, ${shop.currency}`,
								align: "decimal",
								cell: (use) => home(use.amountMinor),
							},
							{
								key: "state",
								head: "State",
								hideHead: true,
								cell: (use) =>
									use.kind === "void" ? (
										<Badge>taken back</Badge>
									) : use.kind === "returned" ? (
										<Badge means="wait">sent back</Badge>
									) : use.part ? null : (
										<VoidUseForm useId={use.id} what={use.line.what} />
									),
							},
						]}
					/>
				</Card>
				<Stack>
					<Card title="Use some of it">
						{machines.length === 0 || lines.every(({ left }) => left.count === 0) ? (
							<p className="af-hint">{machines.length === 0 ? "Take in a machine first." : "Nothing of it is left."}</p>
						) : (
							<DrawForm
								today={today}
								machines={machines.map((machine) => ({ value: machine.id, label: `${machine.number} ${machine.name}` }))}
								lines={lines
									.filter(({ left }) => left.count > 0)
									.map((line) => ({ value: line.id, label: `${line.what}, ${line.left.count} left`, what: line.what }))}
							/>
						)}
					</Card>
					<Card title="How it adds up" aside={shop.currency}>
						<Facts
							facts={[
								{ label: `Discount, ${purchase.currency}`, value: purchase.discountMinor ? own(purchase.discountMinor) : null },
								{ label: `Freight, ${purchase.currency}`, value: purchase.freightMinor ? own(purchase.freightMinor) : null },
								{ label: `Duty, ${shop.currency}`, value: purchase.dutyMinor ? home(purchase.dutyMinor) : null },
								{ label: `Handling, ${shop.currency}`, value: purchase.handlingMinor ? home(purchase.handlingMinor) : null },
								{ label: `Tax, ${shop.currency}`, value: purchase.taxMinor ? home(purchase.taxMinor) : null },
								{ label: "Rate", value: foreign ? `${purchase.rate} ${shop.currency} for 1 ${purchase.currency}` : null },
								{ label: "Spread by", value: `${purchase.spreadBy}, largest remainder, ties to the earlier line` },
								{ label: "Not in the plan", value: purchase.addedWhy },
							]}
						/>
					</Card>
				</Stack>
			</Columns>
		</Stack>
	);
}
