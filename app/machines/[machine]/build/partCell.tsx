import { Badge } from "@/app/ui/badge";
import { TagChip } from "@/app/ui/tagChip";
import { dayOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { heldWords } from "@/lib/originality/counts";
import { whereItIs } from "@/lib/parts/whereItIs";
import type { BuildPart, BuildRow } from "@/lib/positions/build";

/** Where a part is, its bag as a tag that leads there. */
export function Whereabouts({ part, timeZone }: { readonly part: BuildPart; readonly timeZone: string }) {
	if (part.place === "bag" && part.bag?.tag) {
		return (
			<>
				in bag <TagChip size="small" tag={part.bag.tag} href={`/t/${part.bag.tag}`} />
			</>
		);
	}
	return whereItIs({
		place: part.place,
		placeWhy: part.placeWhy,
		sinceDay: dayOf(instant(part.sinceAt), timeZone),
		dueDay: part.dueDay,
		bagTag: part.bag?.tag ?? null,
		location: part.location,
		party: part.party,
		position: null,
	});
}

/** What a position holds: the part's tag, what it is, and what is to be minded; or why it holds nothing. */
export function HoldsCell({ row, timeZone }: { readonly row: BuildRow; readonly timeZone: string }) {
	const { part, original } = row;
	if (row.kind === "place") return <span className="af-sub">a place with no part of its own</span>;
	if (part === null) {
		if (original === null) return row.says;
		return (
			<>
				{original.tag ? <TagChip size="small" tag={original.tag} href={`/t/${original.tag}`} /> : original.name}{" "}
				<Whereabouts part={original} timeZone={timeZone} />
			</>
		);
	}
	return (
		<>
			{part.tag ? <TagChip size="small" tag={part.tag} href={`/t/${part.tag}`} /> : null} {part.count > 1 ? `${part.count} × ` : ""}
			{heldWords(part.origin)}
			{row.state === "unseen" ? ", presumed: not seen yet" : ""} {row.notConnected ? <Badge means="wait">not connected</Badge> : null}{" "}
			{row.altered === null ? null : <Badge means={row.altered === "never" ? "stop" : "plain"}>altered</Badge>}{" "}
			{part.works === "faulty" ? <Badge means="wait">faulty</Badge> : null}
			{part.name.toLowerCase() === row.name.toLowerCase() ? null : <span className="af-sub">{part.name}</span>}
			{original === null ? null : (
				<span className="af-sub">
					original {original.tag ?? original.name}: <Whereabouts part={original} timeZone={timeZone} />
				</span>
			)}
		</>
	);
}
