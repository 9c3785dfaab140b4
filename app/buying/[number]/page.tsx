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
import { day, dayOf, formatDay, formatDayShort } from "@/lib/core/days";
import { type Credited, sentBack } from "@/lib/credits/rules";
import { shopStore } from "@/lib/db/shopStore";
import { cameOf } from "@/lib/deliveries/rules";
import { isCurrency } from "@/lib/money/currency";
import { leftOfLine } from "@/lib/money/lineUse";
import { formatAmount, minor, sumMinor } from "@/lib/money/money";
import { counted } from "@/lib/purchases/counted";
import { landedAgain } from "@/lib/purchases/purchaseSheet";
import { machinesInWork, purchaseByNumber } from "@/lib/purchases/queries";
import { type WhereItWent, whereItWent } from "@/lib/purchases/whereItWent";
import { requireShop } from "@/lib/shop/queries";
import { pathsOf, placesInOrder } from "@/lib/store/queries";
import { CreditForm } from "./creditForms";
import { Credits } from "./credits";
import { Deliveries, InThePost } from "./deliveries";
import { DrawForm, VoidUseForm } from "./forms";

type Params = { params: Promise<{ number: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
	return { title: `Purchase ${(await params).number}` };
}

/** What became of what was sent back, short enough to stand under its figure. */
function sentBackWords({ credited, awaited, kept }: WhereItWent["back"], amount: (value: number) => string): string {
	const parts = [
		[credited, "credited"],
		[awaited, "awaited"],
		[kept, "not given back"],
	] as const;
	return `sent back: ${parts.flatMap(([value, words]) => (value === 0 ? [] : [`${amount(value)} ${words}`])).join(", ")}`;
}

export default async function PurchasePage({ params }: Params) {
	const { read } = await shopStore();
	const number = Number((await params).number);
	const purchase = Number.isInteger(number) ? await purchaseByNumber(read, number) : null;
	if (!purchase || !isCurrency(purchase.currency)) notFound();
	const [shop, machines, places] = await Promise.all([requireShop(read), machinesInWork(read), placesInOrder(read)]);
	const home = (value: number) => formatAmount(minor(value), shop.currency);
	const own = (value: number) => formatAmount(minor(value), purchase.currency as typeof shop.currency);
	const today = dayOf(systemClock(), shop.timeZone);
	const foreign = purchase.currency !== shop.currency;
	const again = landedAgain({ ...purchase, currency: purchase.currency }, shop.currency);
	const roundedLine = again.lines.findIndex(({ rounding }) => rounding !== 0);
	const lines = purchase.lines.map((line) => {
		const standing = line.uses.filter(({ kind }) => kind !== "void");
		const came = cameOf(line, purchase.arrivedDay, line.deliveries);
		return {
			...line,
			came,
			here: came - standing.reduce((sum, use) => sum + use.count, 0),
			left: leftOfLine(
				{ landed: minor(line.landedMinor), count: line.count },
				standing.map((use) => ({ count: use.count, charged: minor(use.amountMinor) })),
			),
		};
	});
	const uses = lines.flatMap((line) => line.uses.map((use) => ({ ...use, line })));
	const given = purchase.credits
		.filter(({ stands }) => stands === "yes")
		.map((credit): Credited => ({ useId: credit.useId, amount: minor(credit.amountMinor) }));
	const returns = uses
		.filter(({ kind }) => kind === "returned")
		.map((use) => ({ ...use, ...sentBack({ id: use.id, cost: minor(use.amountMinor) }, given) }));
	const went = whereItWent(purchase.lines, given);
	const machineOptions = machines.map((machine) => ({ value: machine.id, label: `${machine.number} ${machine.name}` }));
	return (
		<Stack>
			<PageHead
				above={<Link href="/buying">Buying</Link>}
				title={`Purchase ${purchase.number}`}
				lead={`${purchase.supplier.name}, ordered ${formatDay(day(purchase.orderedDay))}${purchase.arrivedDay ? `, arrived ${formatDay(day(purchase.arrivedDay))}` : ""}${purchase.note ? `. ${purchase.note}` : ""}`}
				figures={[
					{ value: home(purchase.paidMinor), label: `paid, ${shop.currency}` },
					{ value: home(went.used), label: "used on machines" },
					...(returns.length === 0 ? [] : [{ value: home(went.back.cost), label: sentBackWords(went.back, home) }]),
					{
						value: home(went.left),
						label: purchase.arrivedDay ? "in stock" : "in stock or in the post",
					},
				]}
				actions={<PrintButton>Print</PrintButton>}
			/>
			{purchase.arrivedDay ? null : (
				<InThePost
					purchase={purchase}
					lines={lines}
					today={today}
					places={pathsOf(places).map(({ id, path }) => ({ value: id, label: path }))}
				/>
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
							sub: (line) => (line.number - 1 === roundedLine ? `with ${home(again.total.rounding)} of rounding` : null),
							foot: home(sumMinor(lines.map((line) => minor(line.landedMinor)))),
						},
						{ key: "came", head: "Came", align: "right", cell: (line) => String(line.came) },
						{ key: "left", head: "Left here", align: "right", cell: (line) => String(line.here) },
						{
							key: "stock",
							head: `Not used, ${shop.currency}`,
							align: "decimal",
							cell: (line) => home(line.left.value),
							foot: home(sumMinor(lines.map(({ left }) => left.value))),
						},
					]}
				/>
			</Card>
			<Columns>
				<Stack>
					<Deliveries lines={lines} />
					<Card title="Where it went" aside={shop.currency} flush>
						<Table
							caption="What was used, sent back or taken back"
							rows={uses}
							rowKey={(use) => use.id}
							empty={<p className="af-hint mb-4">Nothing of it is used yet.</p>}
							columns={[
								{
									key: "what",
									head: "What",
									main: true,
									cell: (use) => counted({ ...use.line, count: use.count }),
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
										) : use.part ? null : (
											<>
												{use.kind === "returned" ? <Badge means="wait">sent back</Badge> : null}
												<VoidUseForm useId={use.id} what={use.line.what} kind={use.kind} />
											</>
										),
								},
							]}
						/>
					</Card>
					<Credits purchase={purchase} returns={returns} currency={shop.currency} />
				</Stack>
				<Stack>
					<Card title="Use some of it">
						{machines.length === 0 || lines.every(({ here }) => here === 0) ? (
							<p className="af-hint">
								{machines.length === 0
									? "Take in a machine first."
									: lines.every(({ left }) => left.count === 0)
										? "Nothing of it is left."
										: "Nothing of it is here: record that it came first."}
							</p>
						) : (
							<DrawForm
								today={today}
								machines={machineOptions}
								lines={lines
									.filter(({ here }) => here > 0)
									.map((line) => ({
										value: line.id,
										label: `${line.what}, ${line.here}${line.unit === "piece" ? "" : ` ${line.unit}`} left`,
										what: line.what,
									}))}
							/>
						)}
					</Card>
					<Card title="The seller gives something back">
						<CreditForm
							key={returns.map(({ id, credited }) => `${id} ${credited}`).join()}
							purchaseId={purchase.id}
							today={today}
							currency={shop.currency}
							machines={machineOptions}
							returns={returns
								.filter(({ cost, credited }) => credited < cost)
								.map((use) => ({
									value: use.id,
									label: `${counted({ ...use.line, count: use.count })}, sent back ${formatDayShort(day(use.day))}, cost ${home(use.cost)}`,
								}))}
						/>
					</Card>
					<Card title="How it adds up" aside={shop.currency}>
						<Facts
							facts={[
								{ label: `Discount, ${purchase.currency}`, value: purchase.discountMinor ? own(purchase.discountMinor) : null },
								{ label: `Freight, ${purchase.currency}`, value: purchase.freightMinor ? own(purchase.freightMinor) : null },
								{ label: `Duty, ${shop.currency}`, value: purchase.dutyMinor ? home(purchase.dutyMinor) : null },
								{ label: `Handling, ${shop.currency}`, value: purchase.handlingMinor ? home(purchase.handlingMinor) : null },
								{ label: `Tax, ${shop.currency}`, value: purchase.taxMinor ? home(purchase.taxMinor) : null },
								{
									label: `Rounding, ${shop.currency}`,
									value:
										roundedLine < 0
											? null
											: `${home(again.total.rounding)}, on line ${roundedLine + 1}: each amount is converted by itself, the bank converted their sum`,
								},
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
