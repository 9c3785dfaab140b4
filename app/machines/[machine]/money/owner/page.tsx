import type { Metadata } from "next";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Buttons, Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { systemClock } from "@/lib/core/clock";
import { day, dayOf, formatDay } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import type { CurrencyCode } from "@/lib/money/currency";
import { formatAmount, type MinorUnits, minor } from "@/lib/money/money";
import type { AccountPaper } from "@/lib/owner/account";
import { ownerBook, type PaymentRow } from "@/lib/owner/queries";
import { PAYMENT_KIND_WORDS } from "@/lib/owner/schema";
import { totalsOf } from "@/lib/owner/totals";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../../thisMachine";
import { noOwner } from "./noOwner";
import { paperName, paperStands } from "./paperWords";
import { AddPaymentForm, TakeBackPaymentForm } from "./paymentForms";
import { OwnerFigures, OwnerNotices } from "./standing";

export const metadata: Metadata = { title: "The owner" };

export default async function OwnerPage({ params }: { readonly params: Promise<{ machine: string }> }) {
	const machine = await thisMachine((await params).machine);
	const nobody = noOwner(machine);
	if (nobody) return nobody;
	const { read } = await shopStore();
	const { currency, timeZone } = await requireShop(read);
	const today = dayOf(systemClock(), timeZone);
	const { account, papers, payments } = await ownerBook(read, machine.id, today);
	const base = `/machines/${machine.number}`;
	return (
		<Stack>
			<OwnerNotices account={account} currency={currency} base={base} />
			<Columns>
				<Stack>
					<Card title={machine.owner?.name ?? "The owner"} aside={currency}>
						<OwnerFigures account={account} currency={currency} />
					</Card>
					<PapersCard papers={papers} currency={currency} here={`${base}/money/owner`} />
					<PaymentsCard payments={payments} currency={currency} paid={account.paid} />
				</Stack>
				<Stack>
					<Card title="A new paper">
						<Buttons>
							<ButtonLink href={`${base}/money/owner/new?kind=quote`} kind={papers.length === 0 ? "main" : "plain"}>
								Quote
							</ButtonLink>
							<ButtonLink href={`${base}/money/owner/new?kind=more`}>More work found</ButtonLink>
							<ButtonLink href={`${base}/money/owner/new?kind=statement`}>Statement</ButtonLink>
						</Buttons>
						<p className="af-hint mt-3">
							What was agreed is the last quote that the owner agreed to, and more work agreed to that it does not take in. A new quote is
							of the whole job.
						</p>
					</Card>
					<Card title="Money that came or went">
						<AddPaymentForm machineId={machine.id} today={today} currency={currency} />
					</Card>
				</Stack>
			</Columns>
		</Stack>
	);
}

type PapersProps = { readonly papers: readonly AccountPaper[]; readonly currency: CurrencyCode; readonly here: string };

function PapersCard({ papers, currency, here }: PapersProps) {
	const amount = (value: MinorUnits) => formatAmount(value, currency);
	return (
		<Card title="Papers" aside={currency} flush>
			<Table
				caption="Papers for the owner"
				rows={[...papers].reverse()}
				rowKey={(paper) => paper.id}
				empty={
					<Empty title="No papers yet" action={<ButtonLink href={`${here}/new?kind=quote`}>Write a quote</ButtonLink>}>
						A quote is proposed from the plan. Once it is given it stays as it was, and the owner's answer is kept with it.
					</Empty>
				}
				columns={[
					{
						key: "paper",
						head: "Paper",
						main: true,
						cell: (paper) => <Link href={`${here}/${paper.id}`}>{paperName(paper)}</Link>,
						sub: (paper) => formatDay(paper.day),
					},
					{
						key: "stands",
						head: "Stands",
						cell: (paper) => <Badge means={paperStands(paper).means}>{paperStands(paper).words}</Badge>,
					},
					{ key: "net", head: "Before tax", align: "decimal", cell: (paper) => amount(totalsOf(paper.lines).net) },
					{ key: "total", head: "With tax", align: "decimal", cell: (paper) => amount(totalsOf(paper.lines).total) },
					{ key: "limit", head: "Limit", align: "decimal", cell: (paper) => (paper.limit === null ? "" : amount(paper.limit)) },
				]}
			/>
		</Card>
	);
}

type PaymentsProps = { readonly payments: readonly PaymentRow[]; readonly currency: CurrencyCode; readonly paid: MinorUnits };

function PaymentsCard({ payments, currency, paid }: PaymentsProps) {
	const signed = ({ kind, amountMinor }: PaymentRow) => formatAmount(minor(kind === "refund" ? -amountMinor : amountMinor), currency);
	return (
		<Card title="Paid" aside={currency} flush>
			<Table
				caption="Payments"
				rows={payments}
				rowKey={(payment) => payment.id}
				empty={<Empty title="Nothing paid yet">A deposit, a payment, money given back: enter it under "Money that came or went".</Empty>}
				columns={[
					{
						key: "kind",
						head: "What",
						main: true,
						cell: (payment) => PAYMENT_KIND_WORDS[payment.kind],
						sub: (payment) => payment.words,
						foot: "Paid in all",
					},
					{ key: "day", head: "Day", cell: (payment) => formatDay(day(payment.day)) },
					{
						key: "amount",
						head: "Amount",
						align: "decimal",
						cell: signed,
						foot: formatAmount(paid, currency),
					},
					{
						key: "state",
						head: "State",
						hideHead: true,
						cell: (payment) =>
							payment.stands === "no" ? (
								<Badge>taken back: not counted</Badge>
							) : (
								<TakeBackPaymentForm
									paymentId={payment.id}
									what={`${PAYMENT_KIND_WORDS[payment.kind]} of ${formatDay(day(payment.day))}`}
								/>
							),
					},
				]}
			/>
		</Card>
	);
}
