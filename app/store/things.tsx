import { Badge } from "@/app/ui/badge";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { type Day, dayOf, formatDayShort } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";

export type Thing = {
	readonly id: string;
	readonly tag: string | null;
	readonly name: string;
	readonly what: string;
	readonly original: boolean;
	readonly machine: { readonly number: number; readonly name: string } | null;
	readonly sinceAt: string;
};

type BagLine = {
	readonly id: string;
	readonly tag: string | null;
	readonly words: string;
	readonly kind: string;
	readonly role: string;
	readonly caution: string;
	readonly things: number;
	readonly machine: { readonly number: number; readonly name: string } | null;
	readonly sinceAt: string;
};
type PartLine = {
	readonly id: string;
	readonly tag: string | null;
	readonly name: string;
	readonly count: number;
	readonly origin: string;
	readonly machine: { readonly number: number; readonly name: string };
	readonly sinceAt: string;
};

/** Bags, then parts without a bag, as one list. */
export const thingsOf = (bags: readonly BagLine[], parts: readonly PartLine[]): Thing[] => [
	...bags.map((bag) => ({
		id: bag.id,
		tag: bag.tag,
		name: bag.words,
		what: [`${bag.role} ${bag.kind}`, bag.things === 0 ? "empty" : `${bag.things} in it`, bag.caution].filter(Boolean).join(", "),
		original: false,
		machine: bag.machine,
		sinceAt: bag.sinceAt,
	})),
	...parts.map((part) => ({
		id: part.id,
		tag: part.tag,
		name: part.count > 1 ? `${part.count} x ${part.name}` : part.name,
		what: part.origin,
		original: part.origin === "original",
		machine: part.machine,
		sinceAt: part.sinceAt,
	})),
];

export function Things({
	caption,
	things,
	timeZone,
	empty,
}: {
	caption: string;
	things: readonly Thing[];
	timeZone: string;
	empty: React.ReactNode;
}) {
	return (
		<Table
			caption={caption}
			rows={things}
			rowKey={(thing) => thing.id}
			empty={empty}
			columns={[
				{
					key: "name",
					head: "What",
					main: true,
					cell: (thing) => (thing.tag ? <Link href={`/t/${thing.tag}`}>{thing.name}</Link> : thing.name),
				},
				{
					key: "tag",
					head: "Tag",
					cell: (thing) => (thing.tag ? <TagChip tag={thing.tag} href={`/t/${thing.tag}`} size="small" says={thing.name} /> : "none"),
				},
				{ key: "kind", head: "It is", cell: (thing) => (thing.original ? <Badge means="original">{thing.what}</Badge> : thing.what) },
				{
					key: "machine",
					head: "Machine",
					cell: (thing) =>
						thing.machine ? (
							<Link href={`/machines/${thing.machine.number}`}>{`${thing.machine.number} ${thing.machine.name}`}</Link>
						) : (
							"the shop"
						),
				},
				{ key: "since", head: "Since", cell: (thing) => formatDayShort(dayOf(instant(thing.sinceAt), timeZone)) },
			]}
		/>
	);
}

/** The day on which something is due, and whether that is past. */
export function Due({ day, today }: { day: string | null; today: Day }) {
	if (day === null) return <>no day said</>;
	const shown = formatDayShort(day as Day);
	return day < today ? <Badge means="stop">was due {shown}</Badge> : <Badge means="wait">due {shown}</Badge>;
}
