import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { day, formatDay } from "@/lib/core/days";
import { takenOff } from "@/lib/credits/rules";
import type { CurrencyCode } from "@/lib/money/currency";
import { formatAmount, minor, sumMinor } from "@/lib/money/money";
import type { creditsOf } from "@/lib/money/queries";

type Props = Pick<Awaited<ReturnType<typeof creditsOf>>, "returns" | "offPrice"> & { readonly currency: CurrencyCode };

/** What was sent back for the machine and what the seller gave for it; what sellers took off the price. Nothing where there is none. */
export function SentBackCard({ returns, offPrice, currency }: Props) {
	if (returns.length === 0 && offPrice.length === 0) return null;
	const amount = (value: number) => formatAmount(minor(value), currency);
	const off = takenOff(offPrice.map((credit) => ({ useId: null, amount: minor(credit.amountMinor) })));
	return (
		<Card title="Sent back and credited" aside={currency} flush>
			{returns.length === 0 ? null : (
				<Table
					caption="Sent back"
					rows={returns}
					rowKey={(use) => use.id}
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
							cell: (use) => amount(use.cost),
							foot: amount(sumMinor(returns.map(({ cost }) => cost))),
						},
						{
							key: "credited",
							head: "Credited",
							align: "decimal",
							cell: (use) => (use.awaited > 0 ? null : amount(use.credited)),
							foot: amount(sumMinor(returns.map(({ credited }) => credited))),
						},
						{
							key: "kept",
							head: "Stays a cost",
							cell: (use) => (use.awaited > 0 ? <Badge means="wait">{`${amount(use.awaited)} awaited`}</Badge> : amount(use.kept)),
							foot: amount(sumMinor(returns.map(({ kept }) => kept))),
						},
					]}
				/>
			)}
			{offPrice.length === 0 ? null : <h3 className="mt-4 mb-1">Taken off the price by sellers</h3>}
			{offPrice.length === 0 ? null : (
				<Table
					caption="Taken off the price by sellers"
					rows={offPrice}
					rowKey={(credit) => credit.id}
					columns={[
						{ key: "what", head: "What", main: true, cell: (credit) => credit.words },
						{
							key: "purchase",
							head: "Purchase",
							cell: (credit) => <Link href={`/buying/${credit.purchase.number}`}>{credit.purchase.number}</Link>,
						},
						{ key: "day", head: "Day", cell: (credit) => formatDay(day(credit.day)) },
						{ key: "amount", head: "Taken off", align: "decimal", cell: (credit) => amount(credit.amountMinor), foot: amount(off) },
					]}
				/>
			)}
		</Card>
	);
}
