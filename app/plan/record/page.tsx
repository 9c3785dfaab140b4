import type { Metadata } from "next";
import { Badge } from "@/app/ui/badge";
import { Bars } from "@/app/ui/bars";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PageHead } from "@/app/ui/pageHead";
import { PrintButton } from "@/app/ui/printButton";
import { Table } from "@/app/ui/table";
import { formatMinutes } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { sixthsToMinutes } from "@/lib/money/pert";
import { overrunsOfShop } from "@/lib/schedule/shopQueries";
import { factorInWords, NO_CORRECTION_WEIGHS, TOO_FEW } from "@/lib/steps/overrun";
import { STEP_KIND_WORDS } from "@/lib/steps/schema";

export const metadata: Metadata = { title: "What our record says" };

export default async function RecordPage() {
	const { read } = await shopStore();
	const record = [...(await overrunsOfShop(read))].sort((a, b) => b.actual - a.actual);
	return (
		<Stack>
			<PageHead
				title="What our record says"
				above={<Link href="/plan">Plan</Link>}
				lead="How long steps took against what was expected of them, by kind, in the whole shop."
			/>
			{record.length === 0 ? (
				<Empty title="No step with an estimate is done yet">
					When steps are finished with their time, this says how far your estimates are off.
				</Empty>
			) : (
				<>
					<Card title="Actual against estimated">
						<Bars
							caption="Actual against estimated, by kind of step"
							unit="all persons"
							bars={record.flatMap(({ kind, expectedSixths, actual }) => [
								{
									label: `${STEP_KIND_WORDS[kind]}, estimated`,
									kind: "estimate" as const,
									amount: sixthsToMinutes(expectedSixths),
									text: formatMinutes(sixthsToMinutes(expectedSixths)),
								},
								{ label: `${STEP_KIND_WORDS[kind]}, actual`, kind: "spent" as const, amount: actual, text: formatMinutes(actual) },
							])}
						/>
					</Card>
					<Card title="What the next estimate is multiplied by" flush>
						<Table
							caption="What the next estimate is multiplied by"
							rows={record}
							rowKey={({ kind }) => kind}
							columns={[
								{ key: "kind", head: "Kind of step", main: true, cell: ({ kind }) => STEP_KIND_WORDS[kind] },
								{
									key: "steps",
									head: "Steps done",
									align: "right",
									cell: ({ steps }) => steps,
									sub: ({ steps }) => (steps < TOO_FEW ? <Badge means="wait">too few to tell</Badge> : null),
								},
								{
									key: "expected",
									head: "Expected",
									align: "right",
									cell: ({ expectedSixths }) => formatMinutes(sixthsToMinutes(expectedSixths)),
								},
								{ key: "actual", head: "Actual", align: "right", cell: ({ actual }) => formatMinutes(actual) },
								{ key: "ratio", head: "Actual / expected", align: "decimal", cell: ({ ratio }) => factorInWords(ratio) },
								{ key: "factor", head: "Next estimate times", align: "decimal", cell: ({ factor }) => factorInWords(factor) },
							]}
						/>
					</Card>
					<p className="max-w-prose text-ink-2">
						Of n steps the record counts for n parts in n + {NO_CORRECTION_WEIGHS}, and no correction at all for the rest: so a kind with
						few steps is hardly corrected. Expected is (low + 4 likely + high) / 6. Dropped steps, and steps without an estimate or without
						time, are left out.
					</p>
					<div className="no-print">
						<PrintButton>Print</PrintButton>
					</div>
				</>
			)}
		</Stack>
	);
}
