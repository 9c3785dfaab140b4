import type { ReactNode } from "react";
import { Badge } from "@/app/ui/badge";
import { Link } from "@/app/ui/link";
import { type Column, Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import type { Pin } from "@/lib/pins/queries";
import { Disc } from "./pinnedPicture";
import { pinHref } from "./pinWords";

/** What the numbers on a photo mean: on the screen the way to each, on paper the legend. `deed` is a last column, for the screen alone. */
export function PinLegend({
	pins,
	base,
	caption,
	deed,
}: {
	readonly pins: readonly Pin[];
	readonly base: string;
	readonly caption: string;
	readonly deed?: (pin: Pin) => ReactNode;
}) {
	const columns: Column<Pin>[] = [
		{
			key: "what",
			head: "No. and what",
			main: true,
			cell: (pin) => {
				const href = pin.mark === null ? undefined : pinHref({ ...pin, opens: null }, base);
				return (
					<span className="af-pin-line">
						<Disc number={pin.number} />
						<span>{href ? <Link href={href}>{pin.name}</Link> : pin.name}</span>
					</span>
				);
			},
			sub: (pin) => [pin.part === pin.name ? "" : pin.part, pin.words === pin.name ? "" : pin.words].filter(Boolean).join(" · "),
		},
		{ key: "mark", head: "Mark", cell: ({ mark }) => mark },
		{
			key: "tag",
			head: "Tag",
			cell: ({ tag, part }) => (tag === null ? null : <TagChip size="small" tag={tag} says={part ?? undefined} href={`/t/${tag}`} />),
		},
		{
			key: "now",
			head: "Where it is now",
			cell: ({ now, gone }) => (
				<>
					{gone ? <Badge means="wait">not there now</Badge> : null} {now}
				</>
			),
		},
		...(deed ? [{ key: "deed", head: "Change", hideHead: true, cell: deed }] : []),
	];
	return <Table caption={caption} columns={columns} rows={pins} rowKey={({ id }) => id} />;
}
