import type { Metadata } from "next";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { OriginalityMark } from "@/app/ui/originalityMark";
import { PrintButton } from "@/app/ui/printButton";
import { Table } from "@/app/ui/table";
import { shopStore } from "@/lib/db/shopStore";
import { byPosition, originalsOf, type PositionRow, type Shown } from "@/lib/originality/byPosition";
import { countOriginality, evidenceWords, originalityStatement } from "@/lib/originality/counts";
import { originFacts } from "@/lib/originality/queries";
import { afterReversal, mostEverOf } from "../afterReversal";
import { thisMachine } from "../thisMachine";

export const metadata: Metadata = { title: "Originality, position by position" };

/** Every count of originality, position by position, so that anyone can add it up. */
export default async function OriginalityPage({ params }: { readonly params: Promise<{ machine: string }> }) {
	const machine = await thisMachine((await params).machine);
	const { read } = await shopStore();
	const [origins, after, atBest] = await Promise.all([
		originFacts(read, [machine.id]),
		afterReversal(read, machine.id, machine.asFoundAt),
		mostEverOf(read, machine.id, machine.asFoundAt),
	]);
	const facts = origins.get(machine.id) ?? { positions: [], parts: [] };
	const rows = byPosition(facts, after, atBest);
	const base = `/machines/${machine.number}`;
	const column = (key: "asFound" | "now" | "after" | "atBest", head: string) => ({
		key,
		head,
		cell: (row: PositionRow) => <State shown={row[key]} />,
		foot: `${originalsOf(rows, key)} original`,
	});
	return (
		<Stack>
			<div className="af-pagehead">
				<div className="af-pagehead-words">
					<h2>Originality, position by position</h2>
					<p className="af-lead">{originalityStatement(countOriginality(facts))}</p>
					<p className="af-hint">
						Counted are the positions that were there when the machine came and can hold a part; small fixings are no positions. Beside an
						original stands how it is known that it was in the machine when it was made. &ldquo;At best&rdquo; is the most that it can ever
						be again: with every conversion undone, and with everything back that is only lost or out of the shop.
					</p>
				</div>
				<div className="af-pagehead-actions">{rows.length === 0 ? null : <PrintButton>Print the table</PrintButton>}</div>
			</div>
			<Table
				caption="What each position held when it came, holds now, would hold after a reversal, and could hold at best"
				rows={rows}
				rowKey={(row) => row.id}
				empty={
					<Empty title="No positions yet" action={<ButtonLink href={`${base}/build`}>Record what was found</ButtonLink>}>
						Each position will stand here with what it held, holds and can hold again.
					</Empty>
				}
				columns={[
					{
						key: "position",
						head: "Position",
						main: true,
						cell: (row) => <Link href={`${base}/build/${encodeURIComponent(row.mark)}`}>{`${row.mark} ${row.name}`}</Link>,
						sub: (row) => row.area,
						foot: `${rows.length} positions`,
					},
					column("asFound", "As found"),
					column("now", "Now"),
					...(after === null ? [] : [column("after", "After reversal")]),
					...(atBest === null ? [] : [column("atBest", "At best")]),
				]}
			/>
		</Stack>
	);
}

function State({ shown }: { readonly shown: Shown | null }) {
	if (shown === null) return null;
	return (
		<>
			<span className="inline-flex items-center gap-2">
				<OriginalityMark state={shown.mark} /> {shown.says}
			</span>
			{shown.held === "original" ? <span className="af-sub">{evidenceWords(shown.evidence)}</span> : null}
		</>
	);
}
