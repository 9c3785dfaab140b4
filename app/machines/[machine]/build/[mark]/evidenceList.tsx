import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { WithdrawEvidence } from "./evidenceForm";
import type { Said } from "./said";

const CLAIM_WORDS = { came: "when it came", made: "when it was made" } as const;

const KIND_WORDS = { seen: "seen by us", documented: "documented", told: "told", assumed: "assumed" } as const;

export function EvidenceList({ said: { page } }: { readonly said: Said }) {
	const names = new Map(page.fittings.map(({ part }) => [part.id, part.name]));
	return (
		<Table
			caption="Evidence"
			rows={page.evidence}
			rowKey={(piece) => piece.id}
			empty={<p className="af-lead">Nothing yet. Without evidence an origin is only a word.</p>}
			columns={[
				{
					key: "kind",
					head: "How",
					main: true,
					cell: (piece) => (
						<>
							{piece.stands === "no" ? <s>{KIND_WORDS[piece.kind]}</s> : KIND_WORDS[piece.kind]}
							{piece.how === "" ? "" : `, ${piece.how}`}
						</>
					),
					sub: (piece) => [piece.words, piece.whoSaid === null ? "" : `said by ${piece.whoSaid}`].filter(Boolean).join(" · "),
				},
				{
					key: "claim",
					head: "It was there",
					cell: (piece) => CLAIM_WORDS[piece.claim],
					sub: (piece) => (piece.partId === null ? "of the position" : names.get(piece.partId)),
				},
				{
					key: "paper",
					head: "Paper",
					cell: (piece) => (piece.capture?.fileSha ? <Link href={`/files/${piece.capture.fileSha}`}>see it</Link> : null),
				},
				{
					key: "deed",
					head: "Correct",
					hideHead: true,
					align: "right",
					cell: (piece) => (piece.stands === "yes" ? <WithdrawEvidence evidenceId={piece.id} /> : "withdrawn"),
				},
			]}
		/>
	);
}
