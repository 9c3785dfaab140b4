import type { Metadata } from "next";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { type AlterationRow, alterationsOf } from "@/lib/alterations/queries";
import { type ConversionRow, conversionsOf } from "@/lib/conversions/queries";
import { dayOf, formatDayShort } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { decisionsOf } from "@/lib/decisions/queries";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../thisMachine";
import { Decision } from "./decision";
import { UndoBadge } from "./undoBadge";
import { undoTime } from "./undoWords";
import { Where } from "./where";

export const metadata: Metadata = { title: "Changes" };

export default async function ChangesPage({ params }: { params: Promise<{ machine: string }> }) {
	const machine = await thisMachine((await params).machine);
	const { read } = await shopStore();
	const [shop, alterations, conversions, decisions] = await Promise.all([
		requireShop(read),
		alterationsOf(read, machine.id),
		conversionsOf(read, machine.id),
		decisionsOf(read, machine.id),
	]);
	const base = `/machines/${machine.number}`;
	return (
		<Stack>
			<Alterations rows={alterations} base={base} timeZone={shop.timeZone} />
			<Conversions rows={conversions} base={base} />
			<section className="af-stack" aria-labelledby="decisions">
				<div className="flex flex-wrap items-center justify-between gap-3">
					<h2 id="decisions">Decisions</h2>
					<ButtonLink href={`${base}/changes/decide`}>Record a decision</ButtonLink>
				</div>
				{decisions.length === 0 ? (
					<Empty title="Nothing decided yet">
						Before something is drilled, cut or thrown away: the options side by side, what each costs, and what reversal would lose by it.
					</Empty>
				) : (
					decisions.map((decision) => (
						<Decision key={decision.id} decision={decision} base={base} currency={shop.currency} timeZone={shop.timeZone} />
					))
				)}
			</section>
		</Stack>
	);
}

function Alterations({ rows, base, timeZone }: { rows: readonly AlterationRow[]; base: string; timeZone: string }) {
	const standing = rows.filter(({ state }) => state === "done");
	const never = standing.filter(({ undo }) => undo === "never").length;
	return (
		<Card
			title="Alterations"
			aside={
				rows.length === 0
					? undefined
					: `${standing.length} ${standing.length === 1 ? "stands" : "stand"}, ${never === 0 ? "all can be undone" : `${never} cannot be undone`}`
			}
		>
			<div className="no-print mb-3">
				<ButtonLink href={`${base}/changes/alter`} kind="main">
					Record an alteration
				</ButtonLink>
			</div>
			<Table
				caption="Alterations"
				rows={rows}
				rowKey={(row) => row.id}
				empty={
					<Empty title="Nothing was altered">
						A hole drilled, a lead cut, a corner rebuilt: whatever is changed for longer than a day stands here, with how it is undone.
					</Empty>
				}
				columns={[
					{
						key: "what",
						head: "What",
						main: true,
						cell: (row) => <Link href={`${base}/changes/${row.number}`}>{`a${row.number} ${row.what}`}</Link>,
						sub: (row) => row.reason,
					},
					{ key: "where", head: "Where", cell: (row) => <Where of={row} base={base} /> },
					{
						key: "undo",
						head: "Undoing it",
						cell: (row) => <UndoBadge undo={row.undo} state={row.state} />,
						sub: (row) => row.undoHow,
					},
					{ key: "time", head: "Takes", align: "right", cell: (row) => undoTime(row)?.likely, sub: (row) => undoTime(row)?.more },
					{ key: "agreed", head: "Agreed", cell: (row) => row.agreedBy },
					{
						key: "of",
						head: "Of",
						cell: (row) =>
							row.conversion ? (
								<Link href={`${base}/changes/conversions/${row.conversion.number}`}>{`C${row.conversion.number}`}</Link>
							) : null,
						sub: (row) => (row.step ? <Link href={`${base}/work/${row.step.number}`}>{`step ${row.step.number}`}</Link> : null),
					},
					{ key: "when", head: "When", align: "right", cell: (row) => formatDayShort(dayOf(instant(row.doneAt), timeZone)) },
				]}
			/>
		</Card>
	);
}

function Conversions({ rows, base }: { rows: readonly ConversionRow[]; base: string }) {
	return (
		<Card title="Conversions">
			<div className="no-print mb-3">
				<ButtonLink href={`${base}/changes/conversions/new`}>Name a conversion</ButtonLink>
			</div>
			<Table
				caption="Conversions"
				rows={rows}
				rowKey={(row) => row.id}
				empty={
					<Empty title="No conversion yet">
						Changes made for one purpose belong together under a name, so that they can be undone together: the new drive, the LED light.
					</Empty>
				}
				columns={[
					{
						key: "name",
						head: "Conversion",
						main: true,
						cell: (row) => <Link href={`${base}/changes/conversions/${row.number}`}>{`C${row.number} ${row.name}`}</Link>,
						sub: (row) => row.words,
					},
					{
						key: "purpose",
						head: "Purpose",
						cell: (row) => (row.purpose === "safety" ? <Badge means="wait">safety: stays unless it is named</Badge> : "ordinary"),
					},
					{ key: "out", head: "Parts out", align: "right", cell: (row) => row.partsOut.length || null },
					{ key: "in", head: "Parts in", align: "right", cell: (row) => row.partsIn.length || null },
					{ key: "alterations", head: "Alterations", align: "right", cell: (row) => row.alterations.length || null },
					{ key: "connections", head: "Connections", align: "right", cell: (row) => row.connections.length || null },
					{ key: "steps", head: "Steps", align: "right", cell: (row) => row.steps.length || null },
					{ key: "tests", head: "Tests", align: "right", cell: (row) => row.tests.length || null },
				]}
			/>
		</Card>
	);
}
