import { Card } from "@/app/ui/card";
import { Table } from "@/app/ui/table";
import { formatWait } from "@/lib/core/minutes";
import { oneMore } from "@/lib/schedule/oneMore";
import type { ShopAhead } from "@/lib/schedule/shopQueries";

/** Plans tried for each person: what a helper would gain is a rough figure anyway. */
const PLANS_EACH = 600;

const gained = (minutes: number): string =>
	minutes >= 1 ? `${formatWait(Math.floor(minutes))} earlier` : minutes <= -1 ? `${formatWait(Math.floor(-minutes))} later` : "the same";

/** What one more pair of hands would buy, person by person. */
export function OneMoreCard({ ahead }: { readonly ahead: ShopAhead }) {
	const rows = oneMore(ahead.asked.problem, ahead.plan, 1, (made) => made < PLANS_EACH);
	const machines = ahead.machines.map((machine, at) => ({ ...machine, at })).filter(({ at }) => ahead.plan.machines[at]?.end != null);
	return (
		<Card title="What one more helper would buy" flush>
			<Table
				caption="What one more helper would buy"
				rows={rows}
				rowKey={({ person }) => `${person}`}
				columns={[
					{
						key: "who",
						head: "A second",
						main: true,
						cell: ({ person }) => ahead.people[person]?.name,
						sub: ({ inAll }) => (inAll < 1 ? "nothing: what is waited for is a cure, the post, or somebody else" : null),
					},
					...machines.map(({ id, number, name, at }) => ({
						key: id,
						head: `${number} ${name}`,
						cell: ({ earlier }: (typeof rows)[number]) => gained(earlier[at] ?? 0),
					})),
				]}
			/>
			<p className="af-hint px-4 pb-3">Somebody who can do the same and is in at the same times, for this plan and by the same search.</p>
		</Card>
	);
}
