// Where the machine stands with its owner, side by side; and when the owner is to be asked.

import { Bars } from "@/app/ui/bars";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { formatDay } from "@/lib/core/days";
import type { CurrencyCode } from "@/lib/money/currency";
import { formatAmount, minor } from "@/lib/money/money";
import type { Account } from "@/lib/owner/account";
import { paperName } from "./paperWords";
import { SumList } from "./totalsList";

type Show = { readonly account: Account; readonly currency: CurrencyCode; readonly base: string };

/** Reasons that are named; the largest ones, and how many more there are. */
const MOST_REASONS = 4;

/** What the owner has to be asked, or the shop has to mend, before more is done. */
export function OwnerNotices({ account, currency, base }: Show) {
	const amount = (value: number) => formatAmount(minor(value), currency);
	const { over, missingRates, waiting, agreedPapers, spent, awaited, leftOut } = account;
	return (
		<>
			{missingRates.length > 0 ? (
				<Notice means="stop" live="off" title="A rate is missing">
					{missingRates.map(({ name, day }) => `${name} on ${formatDay(day)}`).join(", ")}: their time is not in these figures.{" "}
					<Link href="/people">Set a rate</Link> from that day or before.
				</Notice>
			) : null}
			{leftOut.length > 0 ? (
				<Notice means="stop" live="off" title="Not all is in these figures">
					This machine has more {leftOut.join(", ")} than a page adds up: write the paper's lines yourself.
				</Notice>
			) : null}
			<SentBackNotice awaited={awaited} where="figures" base={base} />
			{over ? (
				<Notice means="stop" live="off" title="Ask the owner before going on">
					<p>
						{over.than === "limit"
							? `It will come to ${amount(account.atCompletion)} ${currency}, which is ${amount(over.by)} above the limit.`
							: `It will come to ${amount(account.atCompletion)} ${currency}, which is ${amount(over.by)} above what was agreed; no limit was named.`}
					</p>
					<ul className="list-disc pl-5">
						{over.because.slice(0, MOST_REASONS).map((reason) => (
							<li key={reason.what}>
								{reason.what}: {amount(reason.over)} more
							</li>
						))}
						{over.because.length > MOST_REASONS ? <li>and {over.because.length - MOST_REASONS} more lines with less</li> : null}
					</ul>
					{waiting.some(({ kind }) => kind === "more") ? null : (
						<p>
							<Link href={`${base}/money/owner/new?kind=more`}>Write what was found</Link> and ask.
						</p>
					)}
				</Notice>
			) : null}
			{agreedPapers.length === 0 && spent > 0 ? (
				<Notice means="wait" live="off" title="Nothing is agreed yet">
					Work and parts for {amount(spent)} {currency} are on this machine already, and the owner has agreed to nothing.
				</Notice>
			) : null}
			{waiting.map((paper) => (
				<Notice key={paper.id} means="wait" live="off">
					<Link href={`${base}/money/owner/${paper.id}`}>{paperName(paper)}</Link> of {formatDay(paper.day)} waits for the owner's answer.
				</Notice>
			))}
		</>
	);
}

type SentBack = { readonly awaited: Account["awaited"]; readonly where: string; readonly base: string };

/** What was sent back and no seller has answered for: charged to nobody yet. */
export function SentBackNotice({ awaited, where, base }: SentBack) {
	if (awaited.length === 0) return null;
	return (
		<Notice means="wait" live="off">
			{"Sent back and not credited yet: "}
			{awaited.map(({ count, what }) => `${count} × ${what}`).join(", ")}. It is in none of the {where}; what the seller does not give back
			will be. See <Link href={`${base}/money`}>the machine's money</Link>.
		</Notice>
	);
}

/** Agreed, limit, spent, still to come, at completion; paid and still due. */
export function OwnerFigures({ account, currency }: Omit<Show, "base">) {
	const amount = (value: number) => formatAmount(minor(value), currency);
	const { agreed, limit, spent, toCome, atCompletion, paid, due, statement, agreedPapers } = account;
	const none = agreedPapers.length === 0;
	return (
		<>
			<Bars
				caption="With the owner, before tax, at charge rates"
				unit={currency}
				bars={[
					{
						label: "Agreed in all",
						kind: "estimate",
						amount: none ? null : Math.max(0, agreed.net),
						text: none ? "nothing yet" : amount(agreed.net),
					},
					{ label: "Limit", kind: "estimate", amount: limit, text: limit === null ? "none named" : amount(limit) },
					{ label: "Spent so far", kind: "spent", amount: spent, text: amount(spent) },
					{ label: "Still to come", kind: "to-come", amount: toCome, from: spent, text: amount(toCome) },
					{ label: "At completion", kind: "total", amount: atCompletion, text: amount(atCompletion) },
				]}
				note="Before tax, labour at charge rates."
			/>
			{none && !statement && paid === 0 ? null : (
				<SumList
					caption="Paid and still due, with tax"
					currency={currency}
					lines={[
						{ what: statement ? `${paperName(statement)}, with tax` : "Agreed, with tax", amount: minor(due + paid) },
						{ what: "Less what was paid", amount: minor(-paid) },
					]}
					total={{ what: due < 0 ? "Paid too much" : "Still due", amount: minor(Math.abs(due)) }}
				/>
			)}
		</>
	);
}
