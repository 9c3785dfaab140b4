import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Badge } from "@/app/ui/badge";
import { Bars } from "@/app/ui/bars";
import { Bridge } from "@/app/ui/bridge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Facts } from "@/app/ui/facts";
import { Buttons, Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PrintButton } from "@/app/ui/printButton";
import { Table } from "@/app/ui/table";
import { systemClock } from "@/lib/core/clock";
import { day, dayOf, formatDay } from "@/lib/core/days";
import { formatMinutes } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { bridgeOf, liftOf } from "@/lib/money/bridge";
import { isCurrency } from "@/lib/money/currency";
import { formatAmount, type MinorUnits, minor, sumMinor } from "@/lib/money/money";
import { formatSixths } from "@/lib/money/pert";
import { costLinesOf, creditsOf, type MachineMoney, MOST_LINES, machineMoney, usesOf } from "@/lib/money/queries";
import { COST_KIND_WORDS } from "@/lib/money/schema";
import { requireShop } from "@/lib/shop/queries";
import { timeDoubts } from "@/lib/steps/timeCheckQueries";
import { linesBought, MOST_WANTED, openSteps, wantedOf } from "@/lib/wanted/queries";
import { TimeDoubts } from "../work/timeDoubts";
import { AddCostForm, ChangeCostForm } from "./forms";
import { OwnerCard } from "./ownerCard";
import { SentBackCard } from "./sentBackCard";
import { WantedCard } from "./wanted";
import { WantForm } from "./wantedForms";

type Params = { params: Promise<{ machine: string }> };

export const metadata: Metadata = { title: "Money" };

export default async function MoneyPage({ params }: Params) {
	const { read } = await shopStore();
	const number = Number((await params).machine);
	const machine = Number.isInteger(number)
		? await read.machine.findUnique({ where: { number }, select: { id: true, name: true, state: true } })
		: null;
	if (!machine) notFound();
	const shop = await requireShop(read);
	const now = systemClock();
	const today = dayOf(now, shop.timeZone);
	const [money, uses, costs, credits, wanted, bought, steps, doubts] = await Promise.all([
		machineMoney(read, machine.id, today),
		usesOf(read, machine.id),
		costLinesOf(read, machine.id),
		creditsOf(read, machine.id),
		wantedOf(read, machine.id),
		linesBought(read),
		openSteps(read, machine.id),
		timeDoubts(read, { machineId: machine.id }, now, shop.timeZone),
	]);
	if (!money || !isCurrency(money.currency)) notFound();
	const amount = (value: number): string => formatAmount(minor(value), shop.currency);
	const stepOptions = steps.map((step) => ({ value: step.id, label: `${step.number} ${step.title}` }));
	const lineOptions = bought.map((line) => ({
		value: line.id,
		label: `${line.purchase.number}: ${line.count === 1 ? "" : `${line.count} × `}${line.what}`,
	}));
	return (
		<Stack>
			{money.labour.missingRates.length > 0 ? (
				<Notice means="stop" live="off" title="A rate is missing">
					{money.labour.missingRates.map(({ name, day: on }) => `${name} on ${formatDay(on)}`).join(", ")}: their time is not in these sums.{" "}
					<Link href="/people">Set a rate</Link> from that day or before.
				</Notice>
			) : null}
			{money.clocksRunning > 0 ? (
				<Notice means="wait" live="off">
					{money.clocksRunning === 1 ? "One clock is running" : `${money.clocksRunning} clocks are running`}: that time is not in the sums
					yet.
				</Notice>
			) : null}
			{money.leftOut.length > 0 ? (
				<Notice means="stop" live="off" title="Not all is in these sums">
					This machine has more {money.leftOut.join(", ")} than a page adds up ({MOST_LINES} of a kind, {MOST_WANTED} to be bought). The
					rest is in the book and in no sum here, nor in the table that is saved.
				</Notice>
			) : null}
			<TimeDoubts doubts={doubts} here={null} machine={number} timeZone={shop.timeZone} now={now} />
			<Columns>
				<Stack>
					<SummaryCard money={money} amount={amount} currency={shop.currency} />
					<Card title="Labour by person" aside={shop.currency} flush>
						<Table
							caption="Labour by person"
							rows={money.labour.persons}
							rowKey={(person) => person.personId}
							empty={<Empty title="No time yet">Plan steps and start the clock under Work.</Empty>}
							columns={[
								{ key: "name", head: "Who", main: true, cell: (person) => person.name },
								{
									key: "plan",
									head: "Planned, min",
									align: "right",
									cell: (person) => formatSixths(person.plannedSixths),
									foot: formatSixths(sum(money.labour.persons.map((person) => person.plannedSixths))),
								},
								{
									key: "spent",
									head: "Worked",
									align: "right",
									cell: (person) => formatMinutes(person.spentMinutes),
									foot: formatMinutes(money.minutes),
								},
								{
									key: "cost",
									head: "Cost",
									align: "decimal",
									cell: (person) => amount(person.spent),
									foot: amount(sumMinor(money.labour.persons.map((person) => person.spent))),
								},
								{
									key: "charged",
									head: "At charge rates",
									align: "decimal",
									cell: (person) => amount(person.charged),
									foot: amount(sumMinor(money.labour.persons.map((person) => person.charged))),
								},
							]}
						/>
					</Card>
					<WantedCard wanted={wanted} currency={shop.currency} steps={stepOptions} lines={lineOptions} />
					<Card title="Parts and materials used" aside={shop.currency} flush>
						<Table
							caption="Parts and materials used"
							rows={uses}
							rowKey={(use) => use.id}
							empty={
								<Empty title="Nothing bought is used here yet" action={<ButtonLink href="/buying">Go to buying</ButtonLink>}>
									Enter a purchase, then use its lines on this machine.
								</Empty>
							}
							columns={[
								{
									key: "what",
									head: "What",
									main: true,
									cell: (use) => `${use.count} × ${use.line.what}`,
									sub: (use) => use.words,
								},
								{
									key: "purchase",
									head: "Purchase",
									cell: (use) => <Link href={`/buying/${use.line.purchase.number}`}>{use.line.purchase.number}</Link>,
								},
								{ key: "day", head: "Day", cell: (use) => formatDay(day(use.day)) },
								{
									key: "cost",
									head: "Cost",
									align: "decimal",
									cell: (use) => amount(use.amountMinor),
									foot: amount(sum(uses.map((use) => use.amountMinor))),
								},
							]}
						/>
					</Card>
					<SentBackCard {...credits} currency={shop.currency} />
					<Card title="Other costs" aside={shop.currency} flush>
						<Table
							caption="Other costs"
							rows={costs}
							rowKey={(cost) => cost.id}
							empty={<Empty title="No other costs yet">Filler, paint, plating, carriage, an inspection: enter them beside.</Empty>}
							columns={[
								{ key: "what", head: "What", main: true, cell: (cost) => cost.words, sub: (cost) => COST_KIND_WORDS[cost.kind] },
								{ key: "day", head: "Day", cell: (cost) => formatDay(day(cost.day)) },
								{
									key: "estimated",
									head: "Estimated",
									align: "decimal",
									cell: (cost) => (cost.estimatedMinor ? amount(cost.estimatedMinor) : ""),
									foot: amount(sum(costs.filter(counts).map((cost) => cost.estimatedMinor))),
								},
								{
									key: "spent",
									head: "Spent",
									align: "decimal",
									cell: (cost) => (cost.state === "planned" && cost.spentMinor === 0 ? "" : amount(cost.spentMinor)),
									foot: amount(sum(costs.filter(counts).map((cost) => cost.spentMinor))),
								},
								{
									key: "state",
									head: "State",
									hideHead: true,
									cell: (cost) => (
										<>
											{cost.state === "planned" ? <Badge means="wait">to come</Badge> : null}
											{cost.state === "forgone" ? <Badge>forgone: shown, not summed</Badge> : null}
											{cost.state === "void" ? <Badge>taken back</Badge> : null}
											{cost.state === "void" ? null : (
												<ChangeCostForm
													currency={shop.currency}
													cost={{ ...cost, estimated: plain(amount(cost.estimatedMinor)), spent: plain(amount(cost.spentMinor)) }}
												/>
											)}
										</>
									),
								},
							]}
						/>
					</Card>
				</Stack>
				<Stack>
					<OwnerCard machine={number} />
					<BooksCard money={money} amount={amount} currency={shop.currency} />
					<Card title="Add a cost">
						<AddCostForm machineId={machine.id} today={today} currency={shop.currency} />
					</Card>
					<Card title="Put on the list to be bought">
						<WantForm machineId={machine.id} currency={shop.currency} steps={stepOptions} begun={money.minutes > 0} />
					</Card>
					<Buttons>
						<PrintButton>Print</PrintButton>
						<a className="af-button" data-kind="plain" href={`/machines/${number}/money/costs.csv`} download>
							Save the costs as a table
						</a>
					</Buttons>
				</Stack>
			</Columns>
		</Stack>
	);
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);
const counts = (cost: { readonly state: string }): boolean => cost.state === "planned" || cost.state === "spent";
/** An amount as a form's field takes it: without the commas between thousands. */
const plain = (text: string): string => text.replaceAll(",", "");

type Show = { readonly money: MachineMoney; readonly amount: (value: number) => string; readonly currency: string };

function SummaryCard({ money, amount, currency }: Show) {
	const { lines, total } = money.summary;
	const over = total.atCompletion - total.estimated;
	return (
		<Card title="Cost of the restoration" aside={currency}>
			<Bars
				caption="Cost of the restoration"
				unit={currency}
				bars={[
					{ label: "Estimated", kind: "estimate", amount: total.estimated, text: amount(total.estimated) },
					{ label: "Spent", kind: "spent", amount: total.spent, text: amount(total.spent) },
					{ label: "Still to come", kind: "to-come", amount: total.toCome, from: total.spent, text: amount(total.toCome) },
					{ label: "At completion", kind: "total", amount: total.atCompletion, text: amount(total.atCompletion) },
				]}
				note={over === 0 ? undefined : `${amount(Math.abs(over))} ${over > 0 ? "over" : "under"} the estimate at completion.`}
			/>
			<Table
				caption="Cost by line"
				rows={lines}
				rowKey={(line) => line.what}
				columns={[
					{ key: "what", head: "What", main: true, cell: (line) => line.what, foot: "In all" },
					...(["estimated", "spent", "toCome", "atCompletion"] as const).map((key) => ({
						key,
						head: { estimated: "Estimated", spent: "Spent", toCome: "Still to come", atCompletion: "At completion" }[key],
						align: "decimal" as const,
						cell: (line: { readonly [Key in typeof key]: MinorUnits }) => amount(line[key]),
						foot: amount(total[key]),
					})),
				]}
			/>
			<BridgeOf money={money} amount={amount} currency={currency} />
			<p className="af-hint">
				Estimated labour is the expected time of the first plan, (low + 4 likely + high) / 6, at the rates of the day the machine came in.
			</p>
		</Card>
	);
}

/** What is over and what is under, cost row by cost row. Nothing while nothing was estimated, or all comes out as estimated. */
function BridgeOf({ money, amount, currency }: Show) {
	const { lines, total } = money.summary;
	const steps = bridgeOf(lines);
	if (total.estimated === 0 || steps.length === 2) return null;
	const signed = (value: number) => (value === 0 ? amount(0) : `${value > 0 ? "+" : "\u2212"}${amount(Math.abs(value))}`);
	return (
		<>
			<h3 className="mt-6 mb-2">From the estimate to completion</h3>
			<Bridge
				caption="From the estimate to completion"
				unit={currency}
				bars={steps.map((step) => ({
					label: step.what,
					kind: step.kind === "estimate" ? "start" : step.kind === "completion" ? "end" : step.kind,
					from: step.from,
					to: step.to,
					text: step.kind === "over" || step.kind === "under" ? signed(liftOf(step)) : amount(step.to),
				}))}
				note="Hatched: over the estimate. Outlined: under it."
				table={
					<Table
						caption="From the estimate to completion"
						rows={lines}
						rowKey={(line) => line.what}
						columns={[
							{ key: "what", head: "What", main: true, cell: (line) => line.what, foot: "In all" },
							{
								key: "estimated",
								head: "Estimated",
								align: "decimal",
								cell: (line) => amount(line.estimated),
								foot: amount(total.estimated),
							},
							{
								key: "differs",
								head: "Over or under",
								align: "decimal",
								cell: (line) => signed(line.atCompletion - line.estimated),
								foot: signed(total.atCompletion - total.estimated),
							},
							{
								key: "end",
								head: "At completion",
								align: "decimal",
								cell: (line) => amount(line.atCompletion),
								foot: amount(total.atCompletion),
							},
						]}
					/>
				}
			/>
		</>
	);
}

function BooksCard({ money, amount, currency }: Show) {
	return (
		<Card title="In the books" aside={currency}>
			<Facts
				facts={[
					{ label: "Bought for", value: amount(money.bought) },
					{ label: "Carriage", value: amount(money.carriage) },
					{ label: "Spent on it", value: amount(money.summary.total.spent) },
					{ label: "In the books for", value: <strong>{amount(money.books)}</strong> },
					{
						label: "At completion",
						value: money.booksAtCompletion === money.books ? null : amount(money.booksAtCompletion),
					},
				]}
			/>
			{money.sale ? (
				<Facts
					facts={[
						{ label: "Sold for", value: amount(money.sale.price) },
						{ label: "Margin", value: <strong>{amount(money.sale.margin)}</strong> },
						{ label: "An hour", value: money.sale.anHour === null ? null : amount(money.sale.anHour) },
						{
							label: "An hour, own labour not counted",
							value: money.sale.anHourBeforeLabour === null ? null : amount(money.sale.anHourBeforeLabour),
						},
						{ label: "Worked", value: formatMinutes(money.minutes) },
					]}
				/>
			) : null}
			{money.forgone.map((line) => (
				<p key={line.id} className="af-hint">
					Forgone, not summed: {line.words}, {amount(line.amount)}.
				</p>
			))}
		</Card>
	);
}
