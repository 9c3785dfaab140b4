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
	/** Why it is where it is, where somebody said so. */
	readonly why?: string | undefined;
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
	readonly placeWhy?: string;
};
type PartLine = {
	readonly id: string;
	readonly tag: string | null;
	readonly name: string;
	readonly count: number;
	readonly origin: string;
	readonly machine: { readonly number: number; readonly name: string };
	readonly sinceAt: string;
	readonly why?: string;
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
		why: bag.placeWhy,
	})),
	...parts.map((part) => ({
		id: part.id,
		tag: part.tag,
		name: part.count > 1 ? `${part.count} x ${part.name}` : part.name,
		what: part.origin,
		original: part.origin === "original",
		machine: part.machine,
		sinceAt: part.sinceAt,
		why: part.why,
	})),
];

export function Things({
	caption,
	things,
	timeZone,
	empty,
	late,
}: {
	caption: string;
	things: readonly Thing[];
	timeZone: string;
	empty: React.ReactNode;
	/** What lies since before this day has lain too long: from tray to bag the same day. */
	late?: Day;
}) {
	const since = (thing: Thing): Day => dayOf(instant(thing.sinceAt), timeZone);
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
					sub: (thing) => thing.why,
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
				{
					key: "since",
					head: "Since",
					cell: (thing) =>
						late !== undefined && since(thing) < late ? (
							<Badge means="wait">since {formatDayShort(since(thing))}</Badge>
						) : (
							formatDayShort(since(thing))
						),
				},
			]}
		/>
	);
}

/** The day on which something is due, and whether that is past. */
export function Due({ day, today }: { day: string | null; today: Day }) {
	if (day === null) return <Badge means="wait">no day said</Badge>;
	const shown = formatDayShort(day as Day);
	return day < today ? <Badge means="stop">was due {shown}</Badge> : <Badge means="wait">due {shown}</Badge>;
}
