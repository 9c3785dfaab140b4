import { Badge } from "@/app/ui/badge";
import { HeroPhoto } from "@/app/ui/heroPhoto";
import { Notice } from "@/app/ui/notice";
import { TagChip } from "@/app/ui/tagChip";
import { formatMinutes, formatWait } from "@/lib/core/minutes";
import type { Reader } from "@/lib/db/store";
import { putInSheet, takeOutSheet } from "@/lib/fittings/queries";
import { currentPerson } from "@/lib/people/current";
import type { Line } from "@/lib/reversal/checklist";
import { MarkUndoneForm } from "../../changes/alterationForms";
import { PutInForm } from "../../put-in/[mark]/putInForm";
import { TakeOutForm } from "../../take-out/[mark]/takeOutForm";
import { takeOutProps } from "../../take-out/takeOutProps";
import { LineWords } from "../checklist";
import { FastForm, LeaveOutForm, NotThereForm } from "./forms";

const GO_ON = "Go on with the reversal";

/** One operation: what the checklist says of it, and the form that records it as it is done. */
export async function Next({
	read,
	machine,
	line,
	photo,
	positionId,
	partId,
	alterationId,
	reversal,
	loses,
	stays,
	resting,
}: {
	readonly read: Reader;
	readonly machine: { readonly id: string; readonly number: number; readonly name: string };
	readonly line: Line;
	/** Until when something rests there, in words; null when nothing does. */
	readonly resting: string | null;
	readonly photo: { readonly sha: string; readonly words: string } | null;
	readonly positionId: string | null;
	readonly partId: string | null;
	readonly alterationId: string | null;
	readonly reversal: { readonly id: string; readonly stepId: string | null; readonly reason: string };
	/** What reversal loses when the part that should go in is not there. */
	readonly loses: string | null;
	/** What comes out goes in again, or lies on the bench only for a while. */
	readonly stays: boolean;
}) {
	const step = reversal.stepId === null ? {} : { stepId: reversal.stepId };
	return (
		<>
			{photo ? <HeroPhoto src={`/files/${photo.sha}/small`} alt={photo.words || line.what} caption={photo.words || line.what} /> : null}
			<header>
				<p className="af-sub">
					{line.deed}
					{line.minutes.likely > 0 ? ` · likely ${formatMinutes(line.minutes.likely)}` : ""}
				</p>
				<h3 className="text-2xl" data-next tabIndex={-1}>
					{line.what}
				</h3>
				<p className="mt-1 flex flex-wrap items-center gap-3">
					{line.tag ? <TagChip tag={line.tag} href={`/t/${line.tag}`} size="large" says={line.what} /> : null}
					{line.origin === null ? null : <Badge means={line.origin === "original" ? "original" : "plain"}>{line.origin}</Badge>}
					{line.leavesTrace ? <Badge means="stop">leaves a trace</Badge> : null}
				</p>
				<div className="af-sub mt-1">
					<LineWords line={{ ...line, wait: 0 }} />
				</div>
			</header>
			{line.wait > 0 ? (
				<Notice means="wait" live="off">
					After it: wait {formatWait(line.wait)} before anything goes in there.
				</Notice>
			) : null}
			<Fetched line={line} />
			{resting === null ? (
				<Recorded {...{ read, machine, line, partId, alterationId, step, reason: reversal.reason, stays }} />
			) : (
				<>
					<Notice means="stop" live="off" title="Not yet">
						{resting}. Nothing goes in there before that.
					</Notice>
					<details className="af-details">
						<summary>It goes in before its time all the same</summary>
						<Recorded {...{ read, machine, line, partId, alterationId, step, reason: reversal.reason, stays }} />
					</details>
				</>
			)}
			<details className="af-details" id="otherwise">
				<summary>It went otherwise</summary>
				<div className="flex flex-col gap-4 pt-2">
					{line.kind === "put-in" && partId !== null ? <NotThereForm partId={partId} name={line.what} loses={loses} /> : null}
					{line.kind === "undo" && alterationId !== null ? <FastForm alterationId={alterationId} /> : null}
					{positionId === null ? null : line.kind === "take-out" ? (
						<LeaveOutForm key={`stuck ${positionId}`} reversalId={reversal.id} positionId={positionId} stuck="yes" />
					) : null}
					{positionId === null ? null : (
						<LeaveOutForm key={`stays ${positionId}`} reversalId={reversal.id} positionId={positionId} stuck="no" />
					)}
					{line.mark === null ? null : (
						<p className="af-sub">
							Is something in the way that is not in the book?{" "}
							<a className="inline-block py-1.5" href={`/machines/${machine.number}/build/${encodeURIComponent(line.mark)}`}>
								Say so at the position
							</a>
							, and the plan goes round it.
						</p>
					)}
				</div>
			</details>
		</>
	);
}

function Fetched({ line }: { readonly line: Line }) {
	if (line.from.length === 0) return null;
	return (
		<section aria-labelledby="fetch">
			<h3 id="fetch">Fetch</h3>
			<ul className="flex flex-col gap-2 pt-1">
				{line.from.map((fetch) => (
					<li key={fetch.tag ?? fetch.words}>
						{fetch.tag ? <TagChip tag={fetch.tag} href={`/t/${fetch.tag}`} says={fetch.words} /> : <strong>{fetch.words}</strong>}
						<span className="af-sub">{[fetch.tag ? fetch.words : "", fetch.where].filter(Boolean).join(" · ")}</span>
					</li>
				))}
			</ul>
		</section>
	);
}

async function Recorded({
	read,
	machine,
	line,
	partId,
	alterationId,
	step,
	reason,
	stays,
}: {
	readonly read: Reader;
	readonly machine: { readonly id: string; readonly number: number; readonly name: string };
	readonly line: Line;
	readonly partId: string | null;
	readonly alterationId: string | null;
	readonly step: { readonly stepId?: string };
	readonly reason: string;
	readonly stays: boolean;
}) {
	if (line.kind === "undo")
		return alterationId === null ? null : <MarkUndoneForm alterationId={alterationId} leavesTrace={line.leavesTrace} />;
	const mark = line.mark ?? "";
	if (line.kind === "put-in") {
		const sheet = await putInSheet(read, machine.id, mark, partId);
		if (!sheet) return null;
		return (
			<PutInForm
				machine={machine}
				person={(await currentPerson())?.id ?? null}
				position={{ id: sheet.position.id, mark: sheet.position.mark, name: sheet.position.name }}
				wanted={partId}
				candidates={sheet.candidates}
				fixings={sheet.fixings}
				gone={sheet.gone}
				wires={sheet.wires}
				settings={sheet.settings}
				ways={sheet.wayRound}
				safety={sheet.safety}
				behind={sheet.behind !== ""}
				steps={sheet.steps}
				conversions={sheet.conversions}
				goOn={GO_ON}
				reason={reason}
				heldBy={line.fixingIds}
				{...step}
			/>
		);
	}
	const sheet = await takeOutSheet(read, machine.id, mark);
	const fitting = sheet?.fitting;
	if (!sheet || !fitting) return null;
	return (
		<TakeOutForm
			{...takeOutProps(machine, await currentPerson(), sheet, fitting)}
			goOn={GO_ON}
			first={stays ? "bench" : "new-bag"}
			{...step}
		/>
	);
}
