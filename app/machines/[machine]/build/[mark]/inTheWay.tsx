import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import type { positionChoices } from "@/lib/positions/positionQueries";
import { sidesOf } from "@/lib/positions/sides";
import { ObstructionForm, WithdrawObstruction } from "./obstructionForm";
import type { Said } from "./said";

export function InTheWay({
	said: { page, base },
	choices,
}: {
	readonly said: Said;
	readonly choices: Awaited<ReturnType<typeof positionChoices>>;
}) {
	const parts = choices.flatMap(({ id, mark, part }) =>
		part === null || id === page.id || part.id === page.hostId ? [] : [{ id: part.id, label: `${mark} ${part.name}` }],
	);
	return (
		<Card title="What must come off first">
			<Table
				caption="Parts that stand in the way"
				rows={page.behind}
				rowKey={(row) => row.id}
				empty={<p className="af-lead">Nothing is known to stand in the way.</p>}
				columns={[
					{
						key: "part",
						head: "Part",
						main: true,
						cell: (row) =>
							row.part.position ? (
								<Link href={`${base}/build/${encodeURIComponent(row.part.position.mark)}`}>{row.part.name}</Link>
							) : (
								row.part.name
							),
						sub: (row) => row.note,
					},
					{ key: "side", head: "From", cell: (row) => (row.side === "" ? "every side" : row.side) },
					{
						key: "now",
						head: "Now",
						cell: (row) => (row.part.place === "fitted" ? <Badge means="wait">in the way</Badge> : "out already"),
					},
					{ key: "deed", head: "Correct", hideHead: true, align: "right", cell: (row) => <WithdrawObstruction obstructionId={row.id} /> },
				]}
			/>
			{page.inTheWayOf.length === 0 ? null : (
				<p className="af-sub">
					It stands in the way of{" "}
					{page.inTheWayOf.map((row, index) => (
						<span key={row.id}>
							{index > 0 ? ", " : ""}
							<Link href={`${base}/build/${encodeURIComponent(row.position.mark)}`}>{row.position.name}</Link>
							{row.side === "" ? "" : ` (from the ${row.side})`}
						</span>
					))}
					.
				</p>
			)}
			<details className="af-details">
				<summary>Something else comes off first</summary>
				<ObstructionForm positionId={page.id} sides={sidesOf(page.sides)} parts={parts} />
			</details>
		</Card>
	);
}
