// What was found at a position, and what has been in it.

import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { dayOf, formatDayShort, formatInstant } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { formatFixings } from "@/lib/fixings/fixingWords";
import { heldWords, strongestOf } from "@/lib/originality/counts";
import { type Part, type Said, whereOf } from "./said";

const STATE_WORDS = { there: "there", missing: "missing", wrong: "there, but wrong", unseen: "not seen yet" } as const;

export function FoundWords({ said: { page }, words }: { readonly said: Said; readonly words: string }) {
	const last = page.findings.at(-1);
	const partId = last?.part?.id ?? null;
	// Two claims that are never mixed: only evidence of "when it was made" backs an original.
	const claim = words === "original" ? "made" : "came";
	const known = page.evidence.filter((piece) => piece.stands === "yes" && (partId === null || piece.partId === partId));
	const backing = known.some((piece) => piece.claim === claim)
		? known.filter((piece) => piece.claim === claim)
		: words === "original"
			? []
			: known;
	const strongest = strongestOf(backing.map((piece) => piece.kind));
	const by = backing.find((piece) => piece.kind === strongest)?.how ?? "";
	return (
		<>
			<Badge means={words === "original" ? "original" : "plain"}>{words}</Badge>{" "}
			{strongest === null ? "without evidence yet" : `${strongest === "seen" ? "seen by us" : strongest}${by === "" ? "" : `, ${by}`}`}
		</>
	);
}

export function PartWords({ part, said: { timeZone } }: { readonly part: Part; readonly said: Said }) {
	return (
		<>
			{part.tag ? <TagChip size="small" tag={part.tag.id} href={`/t/${part.tag.id}`} isVoid={part.place === "void"} /> : null}{" "}
			{part.count > 1 ? `${part.count} × ` : ""}
			{part.name}, {heldWords(part.origin)}
			{part.place === "fitted" ? null : (
				<span className="af-sub">
					{part.place === "bag" && part.bag?.tag ? (
						<>
							in bag <TagChip size="small" tag={part.bag.tag.id} href={`/t/${part.bag.tag.id}`} />
						</>
					) : (
						whereOf(part, timeZone)
					)}
				</span>
			)}
		</>
	);
}

export function History({ said: { page, base, timeZone } }: { readonly said: Said }) {
	if (page.fittings.length === 0) return null;
	const day = (at: string) => formatDayShort(dayOf(instant(at), timeZone));
	return (
		<Card title="What it has held" aside="newest first">
			<Table
				caption="Every part that was fitted here"
				rows={page.fittings}
				rowKey={(fitting) => fitting.id}
				columns={[
					{ key: "part", head: "Part", main: true, cell: (fitting) => <PartWords part={fitting.part} said={{ page, base, timeZone }} /> },
					{
						key: "from",
						head: "From",
						cell: (fitting) => day(fitting.fromAt),
						sub: (fitting) =>
							fitting.fromStep ? (
								<Link href={`${base}/work/${fitting.fromStep.number}`}>{fitting.fromStep.title}</Link>
							) : (
								fitting.conversion?.name
							),
					},
					{
						key: "until",
						head: "Until",
						cell: (fitting) => (fitting.untilAt === null ? "now" : day(fitting.untilAt)),
						sub: (fitting) =>
							fitting.untilStep ? (
								<Link href={`${base}/work/${fitting.untilStep.number}`}>{fitting.untilStep.title}</Link>
							) : (
								fitting.outConversion?.name
							),
					},
					{ key: "held", head: "Held by", cell: (fitting) => formatFixings(fitting.holds.map(({ fixing }) => fixing)) },
				]}
			/>
		</Card>
	);
}

export function Findings({ said: { page, timeZone }, asFoundAt }: { readonly said: Said; readonly asFoundAt: string | null }) {
	if (page.asFound === "no" && page.findings.length === 0)
		return <p className="af-lead">There was no such place as found: the shop's work made it.</p>;
	return (
		<Facts
			facts={page.findings.map((finding) => ({
				label: formatInstant(instant(finding.at), timeZone),
				value: (
					<>
						{STATE_WORDS[finding.state]}
						{finding.part ? `: ${finding.part.name}` : ""}{" "}
						{asFoundAt !== null && finding.at > asFoundAt ? <Badge means="wait">later knowledge</Badge> : null}
						{finding.words === "" ? null : <span className="af-sub">{finding.words}</span>}
					</>
				),
			}))}
		/>
	);
}
