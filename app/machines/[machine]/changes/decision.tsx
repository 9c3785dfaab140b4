import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Link } from "@/app/ui/link";
import type { Means } from "@/app/ui/means";
import { dayOf, formatDay } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { formatMinutes } from "@/lib/core/minutes";
import type { DecisionRow } from "@/lib/decisions/queries";
import type { CurrencyCode } from "@/lib/money/currency";
import { formatMoney, minor } from "@/lib/money/money";

const STATE: Readonly<Record<"open" | "chosen" | "refused", { readonly words: string; readonly means: Means }>> = {
	chosen: { words: "chosen", means: "original" },
	refused: { words: "refused", means: "plain" },
	open: { words: "still open", means: "wait" },
};

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
			<ul className="grid gap-3 sm:grid-cols-[repeat(auto-fit,minmax(13rem,1fr))]">
				{decision.options.map((option) => (
					<li key={option.id} className="rounded-plain border border-line p-3">
						<Badge means={STATE[option.state].means}>{STATE[option.state].words}</Badge>
						<p className="mt-1 font-semibold">{option.words}</p>
						<dl className="mt-2 grid grid-cols-[auto_1fr] gap-x-3 gap-y-1">
							<dt className="text-ink-2">Cost</dt>
							<dd>{option.costMinor === null ? "not said" : formatMoney(minor(option.costMinor), currency)}</dd>
							<dt className="text-ink-2">Time</dt>
							<dd>{option.minutes === null ? "not said" : formatMinutes(option.minutes)}</dd>
							<dt className="text-ink-2">Reversal loses</dt>
							<dd>{option.loses || "nothing"}</dd>
						</dl>
					</li>
				))}
			</ul>
			{decision.words ? <p className="mt-3 whitespace-pre-line">{decision.words}</p> : null}
			{decision.step ? (
				<p className="mt-2 text-ink-2">
					<Link href={`${base}/work/${decision.step.number}`}>{`Step ${decision.step.number}: ${decision.step.title}`}</Link>
				</p>
			) : null}
		</Card>
	);
}
