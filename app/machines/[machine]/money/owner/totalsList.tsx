import { Table } from "@/app/ui/table";
import type { CurrencyCode } from "@/lib/money/currency";
import { formatAmount, type MinorUnits } from "@/lib/money/money";
import type { Totals } from "@/lib/owner/totals";

export type SumLine = { readonly what: string; readonly amount: MinorUnits };

/** The figures between the lines and the total: net, and tax by rate on what is taxed at it. Nothing where no tax is charged. */
export function sumLines({ net, taxes }: Totals, currency: CurrencyCode): SumLine[] {
	if (taxes.length === 0) return [];
	return [
		{ what: "Before tax", amount: net },
		...taxes.map((rate) => ({ what: `Tax, ${rate.percent} % on ${formatAmount(rate.net, currency)}`, amount: rate.tax })),
	];
}

/** Sums under each other, aligned on the decimal sign, the last one as the foot. */
export function SumList({
	caption,
	lines,
	total,
	currency,
}: {
	caption: string;
	lines: readonly SumLine[];
	total: SumLine;
	currency: CurrencyCode;
}) {
	if (lines.length === 0)
		return (
			<p className="flex justify-between gap-4 border-ink border-t-2 pt-2 font-bold">
				<span>{total.what}</span>
				<span>
					{formatAmount(total.amount, currency)} {currency}
				</span>
			</p>
		);
	return (
		<Table
			caption={caption}
			stack="never"
			rows={lines}
			rowKey={(line) => line.what}
			columns={[
				{ key: "what", head: "What", cell: (line) => line.what, foot: total.what },
				{
					key: "amount",
					head: currency,
					align: "decimal",
					cell: (line) => formatAmount(line.amount, currency),
					foot: formatAmount(total.amount, currency),
				},
			]}
		/>
	);
}
