import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Link } from "@/app/ui/link";
import type { Option } from "@/app/ui/option";
import { Table } from "@/app/ui/table";
import type { CurrencyCode } from "@/lib/money/currency";
import { decimalAmount, formatAmount, minor } from "@/lib/money/money";
import { type WantedRow, wantedPart } from "@/lib/wanted/queries";
import { estimatedForParts, partsToCome, toComeOf } from "@/lib/wanted/rules";
import { OpenWanted, WantAgainForm } from "./wantedForms";

/** What has to be bought for the machine, what it was thought to cost, and what became of it. */
export function WantedCard({
	wanted,
	currency,
	steps,
	lines,
}: {
	readonly wanted: readonly WantedRow[];
	readonly currency: CurrencyCode;
	readonly steps: readonly Option[];
	readonly lines: readonly Option[];
}) {
	const amount = (value: number) => formatAmount(minor(value), currency);
	const parts = wanted.map(wantedPart);
	return (
		<Card title="To be bought" id="wanted" aside={currency} flush>
			<Table
				caption="What has to be bought"
				rows={wanted}
				rowKey={(row) => row.id}
				empty={
					<Empty title="Nothing is wanted yet">
						What will have to be bought, with what it will cost landed: written here, it is part of the estimate.
					</Empty>
				}
				columns={[
					{
						key: "what",
						head: "What",
						main: true,
						cell: (row) => row.words,
						sub: (row) =>
							[row.step ? `for step ${row.step.number}` : "", row.addedWhy ? `not in the plan: ${row.addedWhy}` : ""]
								.filter(Boolean)
								.join("; "),
					},
					{
						key: "estimated",
						head: "Estimated",
						align: "decimal",
						cell: (row) => amount(row.estimatedMinor),
						foot: `${amount(estimatedForParts(parts))} in the plan`,
					},
					{
						key: "toCome",
						head: "Still to come",
						align: "decimal",
						cell: (row) => {
							const left = toComeOf(wantedPart(row));
							return left === 0 ? "" : amount(left);
						},
						foot: amount(partsToCome(parts)),
					},
					{
						key: "state",
						head: "State",
						hideHead: true,
						cell: (row) => {
							if (row.state === "open")
								return (
									<OpenWanted
										currency={currency}
										steps={steps}
										lines={lines}
										wanted={{
											id: row.id,
											entry: row.entry,
											words: row.words,
											estimated: decimalAmount(minor(row.estimatedMinor), currency),
											stepId: row.stepId ?? "",
											addedWhy: row.addedWhy,
										}}
									/>
								);
							return (
								<span className="flex flex-wrap items-center gap-x-3">
									{row.line ? (
										<Link
											className="inline-block py-1.5"
											href={`/buying/${row.line.purchase.number}#line-${row.line.number}`}
										>{`purchase ${row.line.purchase.number}`}</Link>
									) : (
										<Badge>{row.state === "dropped" ? "not needed" : "bought"}</Badge>
									)}
									<WantAgainForm wantedId={row.id} words={row.words} label={row.state === "dropped" ? "Needed after all" : "Not bought"} />
								</span>
							);
						},
					},
				]}
			/>
			{wanted.some(({ state }) => state === "open") ? (
				<p className="no-print mb-4">
					<ButtonLink href="/buying/new">Enter a purchase</ButtonLink>
				</p>
			) : null}
		</Card>
	);
}
