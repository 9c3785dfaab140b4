import { Card } from "@/app/ui/card";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { type Line, pickList } from "@/lib/reversal/checklist";

/** Everything to fetch, in the order in which one walks through the store. */
export function FetchCard({ lines }: { readonly lines: readonly Line[] }) {
	const picks = pickList(lines);
	return (
		<Card title="Fetch, in this order" flush>
			<Table
				caption="What to fetch, in the order of the store"
				rows={picks}
				rowKey={(pick) => pick.tag ?? `${pick.words} ${pick.where}`}
				empty={<p className="af-hint">Nothing to fetch.</p>}
				columns={[
					{
						key: "where",
						head: "Where",
						main: true,
						cell: (pick) => pick.where,
						sub: (pick) => pick.words,
					},
					{
						key: "tag",
						head: "Tag",
						cell: (pick) =>
							pick.tag ? <TagChip tag={pick.tag} href={`/t/${pick.tag}`} size="small" /> : <Link href="/store">no tag</Link>,
					},
				]}
			/>
		</Card>
	);
}
