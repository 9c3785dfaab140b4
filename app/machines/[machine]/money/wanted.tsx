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
import { ChangeWantedForm, WantAgainForm, WantedForms } from "./wantedForms";

/** What has to be bought for the machine, what it was thought to cost, and what became of it. */
export function WantedCard({
	wanted,
	machineId,
	currency,
	steps,
	lines,
}: {
	readonly wanted: readonly WantedRow[];
	readonly machineId: string;
	readonly currency: CurrencyCode;
	readonly steps: readonly Option[];
	readonly lines: readonly Option[];
}) {
	const amount = (value: number) => formatAmount(minor(value), currency);
	const parts = wanted.map((row) => wantedPart(row, machineId));
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
							const left = toComeOf(wantedPart(row, machineId));
							return left === 0 ? "" : amount(left);
						},
						foot: amount(partsToCome(parts)),
					},
					{
						key: "state",
						head: "State",
						hideHead: true,
						cell: (row) => (
							<>
								{row.state === "dropped" ? <Badge>not bought</Badge> : null}
								{row.state === "bought" && row.line ? (
									<Link href={`/buying/${row.line.purchase.number}#line-${row.line.number}`}>{`purchase ${row.line.purchase.number}`}</Link>
								) : null}
								{row.state === "open" ? (
									<WantedForms wantedId={row.id} words={row.words} lines={lines} />
								) : (
									<WantAgainForm wantedId={row.id} words={row.words} />
								)}
								{row.state === "dropped" ? null : (
									<ChangeWantedForm
										currency={currency}
										steps={steps}
										wanted={{
											id: row.id,
											entry: row.entry,
											words: row.words,
											estimated: decimalAmount(minor(row.estimatedMinor), currency),
											stepId: row.stepId ?? "",
											addedWhy: row.addedWhy,
										}}
									/>
								)}
							</>
						),
					},
				]}
			/>
			{wanted.some(({ state }) => state === "open") ? (
				<p className="no-print p-4">
					<ButtonLink href="/buying/new">Enter a purchase</ButtonLink>
				</p>
			) : null}
		</Card>
	);
}
