import { Card } from "@/app/ui/card";
import { Link } from "@/app/ui/link";
import { TagChip } from "@/app/ui/tagChip";
import { UNDO_WORDS } from "@/lib/alterations/schema";
import { dayOf, formatDay } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { formatMinutes } from "@/lib/core/minutes";
import type { DecisionRow } from "@/lib/decisions/queries";
import type { CurrencyCode } from "@/lib/money/currency";
import { formatMoney, minor } from "@/lib/money/money";
import { DecidedMark } from "./decidedMark";

type OptionRow = DecisionRow["options"][number];

/** A decision with its options side by side: what each costs, how long it takes, what reversal would lose by it. */
export function Decision({
	decision,
	base,
	currency,
	timeZone,
}: {
	readonly decision: DecisionRow;
	readonly base: string;
	readonly currency: CurrencyCode;
	readonly timeZone: string;
}) {
	const facts = [
		formatDay(dayOf(instant(decision.at), timeZone)),
		decision.agreedBy ? `agreed: ${decision.agreedBy}` : "nobody's agreement is recorded",
	];
	return (
		<Card title={decision.question} level={3} id={`decision-${decision.id}`} aside={facts.join(" · ")}>
			<ul className="af-options">
				{decision.options.map((option) => (
					<li key={option.id} data-state={option.state}>
						<div>
							<DecidedMark state={option.state} />
							<p className="mt-1 font-semibold">{option.words}</p>
						</div>
						<dl>
							<div>
								<dt>Cost</dt>
								<dd>{option.costMinor === null ? "not said" : formatMoney(minor(option.costMinor), currency)}</dd>
							</div>
							<div>
								<dt>Time</dt>
								<dd>{option.minutes === null ? "not said" : formatMinutes(option.minutes)}</dd>
							</div>
							<div>
								<dt>What it does</dt>
								<dd>
									<Does option={option} base={base} />
								</dd>
							</div>
							<div>
								<dt>Reversal loses</dt>
								<dd>{lossSaid(option)}</dd>
							</div>
							{option.foreseen !== null && option.loses ? (
								<div>
									<dt>Lost besides</dt>
									<dd>{option.loses}</dd>
								</div>
							) : null}
						</dl>
					</li>
				))}
			</ul>
			{decision.options.some(({ foreseen }) => foreseen !== null) ? (
				<p className="af-sub mt-2">What reversal loses was worked out on that day, from the record as it stood.</p>
			) : null}
			{decision.words ? <p className="mt-3 whitespace-pre-line">{decision.words}</p> : null}
			{decision.step ? (
				<p className="mt-2 text-ink-2">
					<Link href={`${base}/work/${decision.step.number}`}>{`Step ${decision.step.number}: ${decision.step.title}`}</Link>
				</p>
			) : null}
		</Card>
	);
}

/** What was worked out, or else what was said; options from before anybody was asked meant nothing by saying nothing. */
function lossSaid({ foreseen, loses, does }: OptionRow): string {
	if (foreseen !== null) return foreseen.replace(/^Reversal loses nothing by it\.(?=$| )/, "Nothing.");
	return loses || (does === null ? "Nothing." : "not said");
}

/** "Alters the original lantern shaft 12-0021-9: cannot be undone". */
function Does({ option, base }: { readonly option: OptionRow; readonly base: string }) {
	const { does, part, position, undo } = option;
	if (does === null || does === "other") return <>as it says above</>;
	if (does === "nothing") return <>nothing that lasts</>;
	return (
		<>
			{does === "alter" ? "alters " : "parts for good with "}
			{part ? `${part.origin === "original" ? "the original " : ""}${part.name} ` : null}
			{part?.tag ? <TagChip tag={part.tag.id} href={`/t/${part.tag.id}`} size="small" /> : null}
			{position ? <Link href={`${base}/build/${encodeURIComponent(position.mark)}`}>{`${position.mark} ${position.name}`}</Link> : null}
			{undo ? `: ${UNDO_WORDS[undo]}` : null}
		</>
	);
}
