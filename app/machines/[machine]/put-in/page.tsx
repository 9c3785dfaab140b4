import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { shopStore } from "@/lib/db/shopStore";
import { emptyPositions, machineNumbered } from "@/lib/fittings/queries";

export const metadata: Metadata = { title: "Put in" };

/** Which position is filled: those that are empty now. */
export default async function PutInPicker({
	params,
	searchParams,
}: {
	params: Promise<{ machine: string }>;
	searchParams: Promise<{ part?: string | string[] }>;
}) {
	const part = [(await searchParams).part].flat()[0];
	const chosen = part === undefined ? "" : `?${new URLSearchParams({ part })}`;
	const { read } = await shopStore();
	const machine = await machineNumbered(read, Number((await params).machine));
	if (!machine) notFound();
	const positions = await emptyPositions(read, machine.id);
	return (
		<Stack>
			<Card title="Put in" aside={positions.length === 1 ? "1 empty position" : `${positions.length} empty positions`}>
				<Table
					caption="Empty positions"
					rows={positions}
					rowKey={(row) => row.id}
					empty={<Empty title="No position is empty">Take something out first, or add a position to the build.</Empty>}
					columns={[
						{
							key: "name",
							head: "Position",
							main: true,
							cell: (row) => <Link href={`/machines/${machine.number}/put-in/${encodeURIComponent(row.mark)}${chosen}`}>{row.name}</Link>,
						},
						{ key: "mark", head: "Mark", cell: (row) => row.mark },
						{ key: "was", head: "Held last", cell: (row) => row.last ?? "nothing yet" },
					]}
				/>
			</Card>
		</Stack>
	);
}
