import { Badge } from "@/app/ui/badge";
import { Picture } from "@/app/ui/photoGrid";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { formatMinutes, formatWait } from "@/lib/core/minutes";
import type { Line } from "@/lib/reversal/checklist";
import { anchorOf } from "./peel";

/** What a photo of an operation is, from the photos of its part and its position. */
export type PhotoOf = (line: Line) => { readonly sha: string; readonly words: string } | null;

/** The way back, operation by operation: on paper it is complete. */
export function Checklist({ lines, photoOf }: { readonly lines: readonly Line[]; readonly photoOf: PhotoOf }) {
	return (
		<Table
			caption="The reversal, operation by operation"
			rows={lines.map((line, index) => ({ ...line, number: index + 1 }))}
			rowKey={(line) => line.id}
			empty={<p className="af-hint">Nothing to do.</p>}
			columns={[
				{
					key: "tick",
					head: "Done",
					hideHead: true,
					cell: (line) => (
						<span className="af-tick" id={anchorOf(line.id)}>
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
							<LinePhoto photo={photoOf(line)} />
							{line.deed} <span style={{ fontWeight: 400 }}>{line.what}</span>{" "}
							{line.origin === "original" ? <Badge means="original">original</Badge> : null}
							{line.leavesTrace ? <Badge means="stop">leaves a trace</Badge> : null}
						</>
					),
					sub: (line) => <LineWords line={line} />,
				},
				{
					key: "from",
					head: "From",
					cell: (line) => (line.kind === "make-safe" || line.kind === "check" ? null : <LineFrom line={line} />),
				},
				{
					key: "held",
					head: "Held by, wired",
					width: "30%",
					cell: (line) => (line.fixings.length > 0 ? line.fixings.join("; ") : null),
					sub: (line) =>
						line.wires.length > 0 ? (
							<ul>
								{line.wires.map((wire) => (
									<li key={wire}>{wire}</li>
								))}
							</ul>
						) : null,
				},
				{
					key: "likely",
					head: "Likely",
					align: "right",
					cell: (line) => (line.minutes.likely > 0 ? formatMinutes(line.minutes.likely) : null),
				},
			]}
		/>
	);
}

function LinePhoto({ photo }: { readonly photo: ReturnType<PhotoOf> }) {
	return photo === null ? null : (
		<span className="af-line-photo">
			<Picture src={`/files/${photo.sha}/small`} alt={photo.words || "how it was"} eager />
		</span>
	);
}

/** Where it is, from which side, how it was set, what to mind. */
export function LineWords({ line }: { readonly line: Line }) {
	return (
		<>
			{[
				line.mark ?? "",
				line.onBench ? `on the bench, at the ${line.onBench}` : "",
				line.side ? `from the ${line.side}` : "",
				...line.notes,
				...line.settings,
			]
				.filter(Boolean)
				.join(" · ")}
			{line.cautions.length > 0 ? (
				<ul className="af-cautions">
					{line.cautions.map((caution) => (
						<li key={caution}>{caution}</li>
					))}
				</ul>
			) : null}
			{line.wait > 0 ? " " : null}
			{line.wait > 0 ? <Badge means="wait">then wait {formatWait(line.wait)}</Badge> : null}
		</>
	);
}

/** The bags and places to fetch from; for what comes out, its own tag. */
export function LineFrom({ line }: { readonly line: Line }) {
	const own = line.kind === "take-out" || line.cameOutAt !== null;
	return (
		<>
			{own && line.tag ? (
				<span style={{ display: "block" }}>
					<TagChip tag={line.tag} href={`/t/${line.tag}`} size="small" />
					{line.cameOutAt === null ? null : <span className="af-sub">came out at {line.cameOutAt}</span>}
				</span>
			) : null}
			{line.from.map((fetch) => (
				<span key={fetch.tag ?? fetch.words} style={{ display: "block" }}>
					{fetch.tag ? <TagChip tag={fetch.tag} href={`/t/${fetch.tag}`} size="small" /> : fetch.words}
					<span className="af-sub">{fetch.where}</span>
				</span>
			))}
			{line.kind === "take-out" ? <span className="print-only af-sub">laid in: ____________</span> : null}
		</>
	);
}
