import { Badge } from "@/app/ui/badge";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { formatMinutes } from "@/lib/core/minutes";
import type { Line } from "@/lib/reversal/checklist";
import type { Seat } from "@/lib/reversal/reachSheet";

/** Operations in their order, each with its side, what holds it, how it is wired, what to mind, and how long it takes. */
export function InOrder({
	caption,
	lines,
	wanted,
	base,
	startAt = 0,
}: {
	readonly caption: string;
	readonly lines: readonly Line[];
	readonly wanted: readonly Seat[];
	readonly base: string;
	readonly startAt?: number;
}) {
	const goals = new Set(wanted.map(({ mark }) => mark));
	return (
		<Table
			caption={caption}
			rows={lines.map((line, index) => ({ ...line, number: startAt + index + 1 }))}
			rowKey={(line) => line.id}
			columns={[
				{
					key: "tick",
					head: "Done",
					hideHead: true,
					cell: (line) => (
						<span className="af-tick">
							<svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
								<rect x="1.5" y="1.5" width="13" height="13" fill="none" stroke="currentColor" strokeWidth="1.5" />
							</svg>{" "}
							{line.number}
						</span>
					),
				},
				{
					key: "do",
					head: "Do",
					main: true,
					cell: (line) => (
						<>
							{line.deed} {line.mark ? <Link href={`${base}/build/${encodeURIComponent(line.mark)}`}>{line.what}</Link> : line.what}{" "}
							{goals.has(line.mark ?? "") ? <Badge>what you are after</Badge> : null}
						</>
					),
					sub: (line) => (
						<>
							{[
								line.mark ?? "",
								line.onBench ? `on the bench, at the ${line.onBench}` : "",
								line.side ? `from the ${line.side}` : "",
								...line.settings,
							]
								.filter(Boolean)
								.join(" · ")}
							{[...line.notes, ...line.cautions].map((words) => (
								<span key={words} className="block font-semibold">
									{words}
								</span>
							))}
						</>
					),
				},
				{
					key: "tag",
					head: "Tag",
					cell: (line) => (line.tag ? <TagChip tag={line.tag} href={`/t/${line.tag}`} size="small" /> : null),
				},
				{
					key: "held",
					head: "Held by, wired",
					cell: (line) => (line.fixings.length > 0 ? line.fixings.join("; ") : null),
					sub: (line) => (line.wires.length > 0 ? line.wires.join("; ") : null),
				},
				{
					key: "likely",
					head: "Likely",
					align: "right",
					cell: (line) => (line.minutes.high > 0 ? formatMinutes(line.minutes.likely) : "no estimate"),
				},
			]}
		/>
	);
}
