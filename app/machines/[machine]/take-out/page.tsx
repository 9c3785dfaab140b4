import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Mins } from "@/app/ui/mins";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { formatMinutes } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { machineNumbered, type Occupied, occupiedPositions } from "@/lib/fittings/queries";

export const metadata: Metadata = { title: "Take out" };

/** Which part comes out: what can be reached now first. */
export default async function TakeOutPicker({ params }: { params: Promise<{ machine: string }> }) {
	const { read } = await shopStore();
	const machine = await machineNumbered(read, Number((await params).machine));
	if (!machine) notFound();
	const positions = await occupiedPositions(read, machine.id);
	const free = positions.filter((position) => position.behind === "");
	const behind = positions.filter((position) => position.behind !== "");
	return (
		<Stack>
			<p>
				<ButtonLink kind="main" href={`/machines/${machine.number}/bench`}>
					At the bench, one after the other
				</ButtonLink>
			</p>
			<Card title="Take out now" aside={counted(free.length)}>
				<Positions
					machine={machine.number}
					rows={free}
					caption="What can be reached now"
					empty={
						positions.length === 0 ? (
							<Empty
								title="Nothing is fitted"
								action={<ButtonLink href={`/machines/${machine.number}/build`}>Look at the build</ButtonLink>}
							>
								No position of this machine holds a part now.
							</Empty>
						) : (
							<Empty title="Nothing can be reached">Everything is behind something else.</Empty>
						)
					}
				/>
			</Card>
			{behind.length > 0 ? (
				<Card title="Something is in the way" aside={counted(behind.length)}>
					<Positions machine={machine.number} rows={behind} caption="What is behind something" />
				</Card>
			) : null}
		</Stack>
	);
}

const counted = (count: number) => (count === 1 ? "1 position" : `${count} positions`);

function Positions({
	machine,
	rows,
	caption,
	empty,
}: {
	machine: number;
	rows: readonly Occupied[];
	caption: string;
	empty?: React.ReactNode;
}) {
	const isBehind = rows.some((row) => row.behind !== "");
	return (
		<Table
			caption={caption}
			rows={rows}
			rowKey={(row) => row.positionId}
			empty={empty}
			columns={[
				{
					key: "part",
					head: "Part",
					main: true,
					cell: (row) => (
						<Link className="inline-block" href={`/machines/${machine}/take-out/${encodeURIComponent(row.mark)}`}>
							{row.part.name}
						</Link>
					),
				},
				{
					key: "position",
					head: "Position",
					cell: (row) => (row.part.name === row.name ? row.mark : `${row.name} (${row.mark})`),
				},
				{
					key: "tag",
					head: "Tag",
					cell: (row) =>
						row.part.tag ? <TagChip tag={row.part.tag} href={`/t/${row.part.tag}`} size="small" says={row.part.name} /> : "none",
				},
				{
					key: "origin",
					head: "Origin",
					cell: (row) => <Badge means={row.part.origin === "original" ? "original" : "plain"}>{row.part.origin}</Badge>,
				},
				...(isBehind ? [{ key: "behind", head: "Behind", cell: (row: Occupied) => row.behind }] : []),
				{
					key: "minutes",
					head: "Likely",
					align: "right" as const,
					cell: (row) => (row.minutes === null ? "no estimate" : <Mins text={formatMinutes(row.minutes)} />),
				},
			]}
		/>
	);
}
