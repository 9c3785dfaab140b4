import { Card } from "@/app/ui/card";
import { Table } from "@/app/ui/table";
import { formatWait } from "@/lib/core/minutes";
import { oneMore } from "@/lib/schedule/oneMore";
import { plansFor, type ShopAhead } from "@/lib/schedule/shopQueries";

/** So many people are asked about, those with the most to do. */
const MOST_PEOPLE = 8;

const gained = (minutes: number): string =>
	minutes > 0 ? `${formatWait(Math.ceil(minutes))} earlier` : `${formatWait(Math.ceil(-minutes))} later`;

/** What one more pair of hands would buy, person by person. */
export function OneMoreCard({ ahead }: { readonly ahead: ShopAhead }) {
	const { problem } = ahead.asked;
	const plans = Math.ceil(plansFor(problem.tasks.length) / 2);
	const rows = oneMore(problem, ahead.plan, 1, plans).slice(0, MOST_PEOPLE);
	return (
		<Card title="What one more helper would buy" flush>
			<Table
				caption="What one more helper would buy"
				rows={rows}
				rowKey={({ person }) => `${person}`}
				columns={[
					{ key: "who", head: "A second", main: true, cell: ({ person }) => ahead.people[person]?.name },
					{
						key: "gains",
						head: "Brings",
						cell: ({ earlier }) => {
							const moved = ahead.machines.flatMap(({ number, name }, at) =>
								Math.abs(earlier[at] ?? 0) >= 1 ? [`${number} ${name} ${gained(earlier[at] ?? 0)}`] : [],
							);
							return moved.length === 0 ? "nothing that was found: others, a cure or the post are waited for" : moved.join("; ");
						},
					},
				]}
			/>
			<p className="af-hint px-4 pb-3">
				Somebody who can do the same and is in at the same times. Found by {plans.toLocaleString("en")} more plans for each, from this one
				on.
			</p>
		</Card>
	);
}
