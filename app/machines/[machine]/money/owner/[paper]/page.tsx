import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { Buttons, Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PrintButton } from "@/app/ui/printButton";
import { Table } from "@/app/ui/table";
import { day, formatDay, formatInstant } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import type { MachineHead } from "@/lib/machines/queries";
import type { CurrencyCode } from "@/lib/money/currency";
import { formatAmount, minor, sumMinor } from "@/lib/money/money";
import { type OwnerPaperPage, ownerPaper } from "@/lib/owner/queries";
import { PAYMENT_KIND_WORDS } from "@/lib/owner/schema";
import { totalsOf } from "@/lib/owner/totals";
import { requireShop } from "@/lib/shop/queries";
import { momentToType } from "@/lib/steps/typedMoment";
import { thisMachine } from "../../../thisMachine";
import { paperName, paperStands, UNTIL_WORDS } from "../paperWords";
import { SumList, sumLines } from "../totalsList";
import { AnswerForm, WithdrawForm } from "./answerForms";

type Params = { readonly params: Promise<{ machine: string; paper: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
	const { machine, paper: id } = await params;
	const { id: machineId } = await thisMachine(machine);
	const paper = await ownerPaper((await shopStore()).read, machineId, id);
	return { title: paper ? paperName(paper) : "A paper for the owner" };
}

export default async function PaperPage({ params }: Params) {
	const { machine: number, paper: id } = await params;
	const machine = await thisMachine(number);
	const { read } = await shopStore();
	const [shop, paper] = await Promise.all([requireShop(read), ownerPaper(read, machine.id, id)]);
	if (!paper) notFound();
	const { state, kind } = paper;
	const stands = paperStands(paper);
	return (
		<Columns>
			<Stack>
				<Paper paper={paper} machine={machine} shop={shop} />
			</Stack>
			<div className="no-print">
				<Stack>
					<Card title="The answer" aside={<Badge means={stands.means}>{stands.words}</Badge>}>
						{paper.answeredAt === null ? null : (
							<Facts
								facts={[
									{ label: "Who", value: paper.agreedBy ?? "" },
									{ label: "When", value: formatInstant(instant(paper.answeredAt), shop.timeZone) },
									{ label: "How", value: paper.answerHow },
								]}
							/>
						)}
						{state === "withdrawn" ? (
							<p>{paper.answerHow}</p>
						) : (
							<AnswerForm
								key={state}
								paperId={paper.id}
								kind={kind}
								given={
									state === "given"
										? null
										: {
												answer: state,
												by: paper.agreedBy ?? "",
												how: paper.answerHow,
												answered: paper.answeredAt === null ? "" : momentToType(instant(paper.answeredAt), shop.timeZone),
											}
								}
							/>
						)}
					</Card>
					{state === "given" ? (
						<Card title="Take it back">
							<WithdrawForm paperId={paper.id} />
						</Card>
					) : null}
					<Buttons>
						<PrintButton>Print it</PrintButton>
					</Buttons>
					<p>
						<Link href={`/machines/${machine.number}/money/owner`}>All papers and payments</Link>
					</p>
				</Stack>
			</div>
		</Columns>
	);
}

type PaperProps = {
	readonly paper: OwnerPaperPage;
	readonly machine: MachineHead;
	readonly shop: { readonly name: string; readonly currency: CurrencyCode };
};

/** The paper itself, as it is printed and as it was handed over. */
function Paper({ paper, machine, shop }: PaperProps) {
	const { currency } = shop;
	const totals = totalsOf(paper.lines.map(({ netMinor, taxPercent }) => ({ net: minor(netMinor), taxPercent })));
	const taxed = totals.taxes.length > 0;
	return (
		<article className="af-stack" data-own-head>
			<Card title={paperName(paper)} aside={shop.name}>
				{paper.state === "withdrawn" ? (
					<Notice means="stop" live="off">
						Taken back: {paper.answerHow}.
					</Notice>
				) : null}
				<Facts
					facts={[
						{ label: "For", value: paper.owner },
						{ label: "Machine", value: [`${machine.number} ${machine.name}`, machine.kind].filter(Boolean).join(", ") },
						{
							label: "Maker",
							value: [machine.maker, machine.model, machine.serial && `serial ${machine.serial}`].filter(Boolean).join(", "),
						},
						{ label: "Day", value: formatDay(day(paper.day)) },
						{ label: UNTIL_WORDS[paper.kind], value: paper.untilDay === null ? "" : formatDay(day(paper.untilDay)) },
					]}
				/>
			</Card>
			<Card title="Lines" aside={currency} flush>
				<Table
					caption={`Lines of ${paperName(paper).toLowerCase()}`}
					rows={paper.lines}
					rowKey={(line) => line.id}
					stack="never"
					columns={[
						{ key: "what", head: "What for", main: true, cell: (line) => line.words },
						...(taxed
							? [
									{
										key: "tax",
										head: "Tax",
										align: "right" as const,
										cell: (line: OwnerPaperPage["lines"][number]) => (line.taxPercent === "" ? "none" : `${line.taxPercent} %`),
									},
								]
							: []),
						{
							key: "net",
							head: taxed ? "Before tax" : "Amount",
							align: "decimal",
							cell: (line) => formatAmount(minor(line.netMinor), currency),
						},
					]}
				/>
			</Card>
			<Card title="What it comes to" aside={currency}>
				<SumList caption="Sums" lines={sumLines(totals, currency)} total={{ what: "In all", amount: totals.total }} currency={currency} />
				{paper.limitMinor === null ? null : (
					<p className="mt-3">
						Limit: <strong>{formatAmount(minor(paper.limitMinor), currency)}</strong> {currency} before tax. We ask before it is passed.
					</p>
				)}
			</Card>
			{paper.kind === "statement" ? <Settlement paper={paper} total={totals.total} net={totals.net} currency={currency} /> : null}
			{paper.words === "" ? null : (
				<Card title={paper.kind === "more" ? "Why, and what holds" : "What holds"}>
					{paper.words.split(/\n+/).map((words, index) => (
						// biome-ignore lint/suspicious/noArrayIndexKey: the words never change
						<p key={index} className="max-w-prose mt-1">
							{words}
						</p>
					))}
				</Card>
			)}
			{paper.kind === "statement" ? null : (
				<div className="print-only">
					<p className="af-signed">Agreed, name:</p>
					<p className="af-signed">Day and signature:</p>
				</div>
			)}
		</article>
	);
}

type SettlementProps = { readonly paper: OwnerPaperPage; readonly total: number; readonly net: number; readonly currency: CurrencyCode };

/** On a statement: against what was agreed, less what was paid by then. */
function Settlement({ paper, total, net, currency }: SettlementProps) {
	const amount = (value: number) => formatAmount(minor(value), currency);
	const agreed = paper.agreed.map((one) => ({
		what: `${paperName(one)} of ${formatDay(day(one.day))}`,
		amount: totalsOf(one.lines.map(({ netMinor, taxPercent }) => ({ net: minor(netMinor), taxPercent }))).net,
	}));
	const agreedNet = sumMinor(agreed.map((one) => one.amount));
	const paid = paper.payments.map((payment) => ({
		what: `${PAYMENT_KIND_WORDS[payment.kind]}, ${formatDay(day(payment.day))}`,
		amount: minor(payment.kind === "refund" ? payment.amountMinor : -payment.amountMinor),
	}));
	const due = sumMinor([minor(total), ...paid.map((one) => one.amount)]);
	const gone = paper.payments.filter(({ stands }) => stands === "no");
	return (
		<>
			<Card title="Less what was paid" aside={currency}>
				<SumList
					caption="What is due"
					lines={[{ what: "This statement", amount: minor(total) }, ...paid]}
					total={{ what: due < 0 ? "Paid too much" : "Due", amount: minor(Math.abs(due)) }}
					currency={currency}
				/>
				{gone.length > 0 ? (
					<p className="af-hint">
						Since it was given, {gone.length === 1 ? "one of these payments was" : "some of these payments were"} taken back.
					</p>
				) : null}
			</Card>
			<Card title="Against what was agreed" aside={`${currency}, before tax`}>
				{agreed.length === 0 ? (
					<p>Nothing had been agreed.</p>
				) : (
					<>
						<SumList caption="What was agreed" lines={agreed} total={{ what: "Agreed in all", amount: agreedNet }} currency={currency} />
						<p className="mt-3">
							This statement: <strong>{amount(net)}</strong> before tax,{" "}
							{net > agreedNet
								? `${amount(net - agreedNet)} more than was agreed.`
								: net < agreedNet
									? `${amount(agreedNet - net)} less than was agreed.`
									: "just what was agreed."}
						</p>
					</>
				)}
			</Card>
		</>
	);
}
