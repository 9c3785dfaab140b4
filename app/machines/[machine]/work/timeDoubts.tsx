import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { formatInstant, timeOf } from "@/lib/core/days";
import type { Instant } from "@/lib/core/instants";
import { minutesBetween } from "@/lib/core/instants";
import { formatMinutes } from "@/lib/core/minutes";
import type { TimeDoubts as Found, TimeAt } from "@/lib/steps/timeCheckQueries";
import { momentToType } from "@/lib/steps/typedMoment";
import { CorrectTime } from "./correctTime";

/** A page shows so many at most; the rest show as those are put right. */
const MOST_SHOWN = 20;

/**
 * Time that cannot be right: two pieces of one person at once, a clock that ran over a night. It counts as it stands until
 * somebody puts it right. On the step's own page (`here`) it can be put right; elsewhere there is the way to it.
 */
export function TimeDoubts({
	doubts: { doubts, since },
	here,
	machine,
	timeZone,
	now,
}: {
	readonly doubts: Found;
	readonly here: number | null;
	readonly machine: number;
	readonly timeZone: string;
	readonly now: Instant;
}) {
	if (doubts.length === 0)
		return since === null ? null : (
			<Notice live="off">
				<NotLookedAt since={since} timeZone={timeZone} />
			</Notice>
		);
	const step = ({ machine: of, step: number }: TimeAt) => (
		<Link href={`/machines/${of}/work/${number}`}>{`step ${number}${of === machine ? "" : ` of machine ${of}`}`}</Link>
	);
	return (
		<Notice means="wait" title={doubts.length === 1 ? "Look at this time" : "Look at these times"}>
			<ul className="flex flex-col gap-3">
				{doubts.slice(0, MOST_SHOWN).map((doubt) => {
					const { piece } = doubt;
					const left = doubt.kind === "overlap" ? doubt.left : null;
					const mayCorrect = here !== null && piece.minutes !== null && piece.step === here && piece.machine === machine;
					return (
						<li key={`${doubt.kind} ${piece.workId} ${doubt.kind === "overlap" ? doubt.other.workId : ""}`}>
							{doubt.kind === "overnight" ? (
								<p>
									{`${piece.person}'s clock ${piece.endedAt === null ? "has run" : "ran"} over a night: from ${formatInstant(piece.startedAt, timeZone)}, ${formatMinutes(
										piece.minutes ?? minutesBetween(piece.startedAt, now),
									)}, on `}
									{step(piece)}.{" "}
									{piece.endedAt === null ? "Stop it, and say when the work stopped." : "All of it counts until it is put right."}
								</p>
							) : (
								<p>
									{`${piece.person} was at two things at once for ${formatMinutes(doubt.minutes)}: from ${formatInstant(piece.startedAt, timeZone)} on `}
									{step(piece)}
									{piece.how === "added" ? " (from memory)" : ""}
									{`, and from ${formatInstant(doubt.other.startedAt, timeZone)} on `}
									{step(doubt.other)}
									{doubt.other.how === "added" ? " (from memory)" : ""}. Both count until one is put right.
								</p>
							)}
							{mayCorrect ? (
								<CorrectTime
									workId={piece.workId}
									known={left === null ? null : `Count ${formatMinutes(left.minutes)}, from ${timeOf(left.startedAt, timeZone)}`}
									minutes={left === null ? "" : formatMinutes(left.minutes)}
									began={momentToType(left?.startedAt ?? piece.startedAt, timeZone)}
									why={doubt.kind === "overlap" ? "it ran beside other time" : "the clock ran over the night"}
								/>
							) : null}
						</li>
					);
				})}
			</ul>
			{doubts.length > MOST_SHOWN ? <p>{`And ${doubts.length - MOST_SHOWN} more.`}</p> : null}
			{since === null ? null : <NotLookedAt since={since} timeZone={timeZone} />}
		</Notice>
	);
}

const NotLookedAt = ({ since, timeZone }: { readonly since: Instant; readonly timeZone: string }) => (
	<p>{`There is more time than is read here: what began before ${formatInstant(since, timeZone)} was not looked at.`}</p>
);
