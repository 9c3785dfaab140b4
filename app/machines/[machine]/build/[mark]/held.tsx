// How the part in a position is held, wired and set, or the last one was.

import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { formatFixing } from "@/lib/fixings/fixingWords";
import type { PositionPage } from "@/lib/positions/positionQueries";
import type { Said } from "./said";

const WENT = {
	home: "in place",
	bag: "in a bag",
	bench: "on the bench",
	left: "left in its hole",
	lost: "lost",
	scrapped: "scrapped",
} as const;

/** Of the part that is in it, or was last. */
const shownFitting = (page: PositionPage) => page.fittings.find((fitting) => fitting.untilAt === null) ?? page.fittings[0];

export function Fixings({ said: { page } }: { readonly said: Said }) {
	const fitting = shownFitting(page);
	if (!fitting || fitting.holds.length === 0) return null;
	return (
		<Card title={fitting.untilAt === null ? "Held by" : "Was held by"} aside={fitting.part.name}>
			<Table
				caption="Fixings"
				rows={fitting.holds}
				rowKey={({ fixing }) => fixing.id}
				columns={[
					{
						key: "what",
						head: "Fixing",
						main: true,
						cell: ({ fixing }) => formatFixing(fixing),
						sub: ({ fixing }) => [fixing.differs, fixing.note].filter(Boolean).join(". "),
					},
					{ key: "tight", head: "Tightness", cell: ({ fixing }) => fixing.tightness },
					{
						key: "place",
						head: "Where",
						cell: ({ fixing }) =>
							fixing.bag?.tag ? <TagChip size="small" tag={fixing.bag.tag.id} href={`/t/${fixing.bag.tag.id}`} /> : WENT[fixing.place],
					},
				]}
			/>
		</Card>
	);
}

export function Wires({ said: { page } }: { readonly said: Said }) {
	const fitting = shownFitting(page);
	if (!fitting || fitting.connections.length === 0) return null;
	return (
		<Card title="Wires and hoses" aside={fitting.part.name}>
			<Table
				caption="Wires and hoses"
				rows={fitting.connections}
				rowKey={(wire) => wire.id}
				columns={[
					{ key: "from", head: "From", main: true, cell: (wire) => wire.from },
					{ key: "to", head: "To", cell: (wire) => wire.to },
					{
						key: "colour",
						head: "Colour",
						cell: (wire) => <code>{wire.colour}</code>,
						sub: (wire) =>
							[wire.base, wire.tracer]
								.filter(Boolean)
								.join(" with ")
								.concat(wire.gauge === "" ? "" : `, ${wire.gauge}`)
								.replace(/^, /, ""),
					},
					{ key: "tags", head: "Tags", cell: (wire) => [wire.tagFrom, wire.tagTo].filter(Boolean).join(" · ") },
					{
						key: "state",
						head: "State",
						cell: (wire) => <Badge means={wire.state === "parked" ? "wait" : "plain"}>{wire.state}</Badge>,
						sub: (wire) => wire.note,
					},
				]}
			/>
		</Card>
	);
}

export function Settings({ said: { page } }: { readonly said: Said }) {
	const fitting = shownFitting(page);
	const round = fitting?.wayRound ?? "";
	if (!fitting || (fitting.settings.length === 0 && round === "")) return null;
	return (
		<Card title="How it was set" aside={fitting.part.name}>
			<Facts
				facts={[
					{ label: "Way round", value: round },
					...fitting.settings.map((setting) => ({
						label: setting.kind,
						value: setting.capture?.fileSha ? <Link href={`/files/${setting.capture.fileSha}`}>{setting.value}</Link> : setting.value,
					})),
				]}
			/>
		</Card>
	);
}
