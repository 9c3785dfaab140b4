import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { day, formatDay } from "@/lib/core/days";
import type { SentBack } from "@/lib/credits/rules";
import type { CurrencyCode } from "@/lib/money/currency";
import { formatAmount, minor } from "@/lib/money/money";
import { counted } from "@/lib/purchases/counted";
import type { PurchasePage } from "@/lib/purchases/queries";
import { VoidCreditForm } from "./creditForms";

type Returned = SentBack & { readonly count: number; readonly line: { readonly what: string; readonly unit: string } };

/** What the seller gave, for what; and what of a return is still awaited, or stays a cost. */
export function Credits({
	purchase,
	returns,
	currency,
}: {
	readonly purchase: PurchasePage;
	readonly returns: readonly Returned[];
	readonly currency: CurrencyCode;
}) {
	const amount = (value: number) => formatAmount(minor(value), currency);
	if (purchase.credits.length === 0 && returns.length === 0) return null;
	return (
		<Card title="Sent back and credited" aside={currency} flush>
			{returns.map((use) => (
				<p key={use.id} className="af-hint mb-2">
					{`${counted({ ...use.line, count: use.count })} cost ${amount(use.cost)}: `}
					{use.awaited > 0 ? (
						<Badge means="wait">{`${amount(use.awaited)} awaited`}</Badge>
					) : (
						`${amount(use.credited)} credited, ${amount(use.kept)} stays a cost.`
					)}
				</p>
			))}
			<Table
				caption="What the seller gave back"
				rows={purchase.credits}
				rowKey={(credit) => credit.id}
				empty={<p className="af-hint mb-4">The seller has given nothing back yet.</p>}
				columns={[
					{
						key: "what",
						head: "For",
						main: true,
						cell: (credit) => credit.words,
						sub: (credit) => (credit.useId === null ? "off the price" : "for what was sent back"),
					},
					{
						key: "machine",
						head: "Machine",
						cell: ({ machine }) =>
							machine ? <Link href={`/machines/${machine.number}/money`}>{`${machine.number} ${machine.name}`}</Link> : "the shop",
					},
					{ key: "day", head: "Day", cell: (credit) => formatDay(day(credit.day)) },
					{
						key: "amount",
						head: "Credited",
						align: "decimal",
						cell: (credit) => amount(credit.amountMinor),
						foot: amount(purchase.credits.reduce((sum, credit) => (credit.stands === "yes" ? sum + credit.amountMinor : sum), 0)),
					},
					{
						key: "back",
						head: "Take back",
						hideHead: true,
						cell: (credit) =>
							credit.stands === "no" ? <Badge>taken back</Badge> : <VoidCreditForm creditId={credit.id} what={credit.words} />,
					},
				]}
			/>
		</Card>
	);
}
