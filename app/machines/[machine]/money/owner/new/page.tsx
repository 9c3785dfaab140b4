import type { Metadata } from "next";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { Segments } from "@/app/ui/segments";
import { systemClock } from "@/lib/core/clock";
import { addDays, type Day, dayOf, formatDay } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import { type Account, coveredBy, type PaperKind } from "@/lib/owner/account";
import { type Basis, moreBasis, quoteBasis, statementBasis } from "@/lib/owner/proposal";
import { ownerBook } from "@/lib/owner/queries";
import { PAPER_KIND_WORDS, PAPER_KINDS } from "@/lib/owner/schema";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../../../thisMachine";
import { noOwner } from "../noOwner";
import { FIRST_TERMS, paperName, UNTIL_WORDS } from "../paperWords";
import { OwnerNotices, SentBackNotice } from "../standing";
import { PaperForm } from "./paperForm";

export const metadata: Metadata = { title: "A paper for the owner" };

type Props = {
	readonly params: Promise<{ machine: string }>;
	readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
};

/** A quote holds, and a statement is due, so many days on, unless the desk says otherwise. Common practice, no source. */
const DAYS: Readonly<Record<PaperKind, number>> = { quote: 30, more: 14, statement: 14 };

export default async function NewPaperPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const nobody = noOwner(machine);
	if (nobody) return nobody;
	const asked = [(await searchParams).kind].flat()[0];
	const kind = PAPER_KINDS.find((one) => one === asked) ?? "quote";
	const { read } = await shopStore();
	const { currency, timeZone } = await requireShop(read);
	const today = dayOf(systemClock(), timeZone);
	const { account, of, papers } = await ownerBook(read, machine.id, today);
	const base = `/machines/${machine.number}`;
	const here = `${base}/money/owner`;
	const basis = {
		quote: () => quoteBasis(of, { today, covered: coveredBy(papers, ["agreed"]) }),
		more: () => moreBasis(of, { today, covered: coveredBy(papers) }),
		statement: () => statementBasis(of, today),
	}[kind]();
	return (
		<Stack>
			<Segments
				label="Which paper"
				current={`${here}/new?kind=${kind}`}
				options={PAPER_KINDS.map((one) => ({ href: `${here}/new?kind=${one}`, label: PAPER_KIND_WORDS[one] }))}
			/>
			{kind === "statement" ? <OwnerNotices account={{ ...account, awaited: [] }} currency={currency} base={base} /> : null}
			<BasisNotices kind={kind} basis={basis} base={base} planned={of.steps.length > 0} />
			<TakesThePlace kind={kind} account={account} today={today} />
			<PaperForm
				key={kind}
				machineId={machine.id}
				kind={kind}
				currency={currency}
				basis={basis}
				here={here}
				agreedNet={account.agreedPapers.length === 0 ? null : account.agreed.net}
				limit={account.limit}
				paid={account.paid}
				takesIn={papers.filter(({ state, kind: of }) => state === "agreed" && of !== "statement").map(({ id }) => id)}
				untilLabel={UNTIL_WORDS[kind]}
				defaults={{
					day: today,
					untilDay: addDays(today, DAYS[kind]),
					terms: FIRST_TERMS[kind],
					handling: account.agreedPapers.at(-1)?.handling ?? "",
					tax: papers.at(-1)?.lines.at(0)?.taxPercent ?? "",
				}}
			/>
		</Stack>
	);
}

/** What the book could not propose, and where that is mended. */
function BasisNotices({ kind, basis, base, planned }: { kind: PaperKind; basis: Basis; base: string; planned: boolean }) {
	const nothing = basis.labour.kind.length === 0 && basis.parts.length === 0 && basis.costs.length === 0;
	return (
		<>
			{basis.missingRates.length > 0 ? (
				<Notice means="stop" live="off" title="A rate is missing">
					{basis.missingRates.map(({ name, day }) => `${name} on ${formatDay(day)}`).join(", ")}: the lines with their time are left open
					below. <Link href="/people">Set a rate</Link> from that day or before, and come back.
				</Notice>
			) : null}
			{basis.nobody.length > 0 ? (
				<Notice means="wait" live="off" title="Nobody is planned for it">
					{basis.nobody.length === 1 ? "Step " : "Steps "}
					{basis.nobody.map((number, index) => (
						<span key={number}>
							{index === 0 ? "" : ", "}
							<Link href={`${base}/work/${number}/plan`}>{number}</Link>
						</span>
					))}
					{kind === "more"
						? ": write the amount yourself, or say who does it."
						: ": that time is in no line. Say who does it, or add a line."}
				</Notice>
			) : null}
			<SentBackNotice awaited={basis.awaited} where="lines below" base={base} />
			{nothing ? (
				<Empty title={NOTHING[kind].title}>
					{kind === "quote" && planned ? "No step of the first plan has anybody to do it. " : NOTHING[kind].say}{" "}
					<Link href={`${base}/work${kind === "statement" ? "" : "/new"}`}>{kind === "statement" ? "Go to the work" : "Plan a step"}</Link>,
					or write the lines yourself.
				</Empty>
			) : null}
			{!nothing && basis.parts.length === 0 && kind === "quote" ? (
				<Notice live="off">
					Nothing to be bought is in it. What will be wanted is written down on the machine's <Link href={`${base}/money`}>money page</Link>
					.
				</Notice>
			) : null}
		</>
	);
}

const NOTHING: Readonly<Record<PaperKind, { readonly title: string; readonly say: string }>> = {
	quote: { title: "No plan yet", say: "A quote is proposed from the steps of the plan, who does them and what is to be bought." },
	more: {
		title: "Nothing new to ask about",
		say: "More work found is proposed from steps and parts that say why they were added to the plan, and that the owner was not asked about yet.",
	},
	statement: {
		title: "Nothing was done yet",
		say: "A statement is proposed from time that was worked, parts that were used and costs that were spent.",
	},
};

/** Which papers this one takes the place of. */
function TakesThePlace({ kind, account, today }: { kind: PaperKind; account: Account; today: Day }) {
	const waiting = account.waiting.filter((paper) => paper.kind === "quote");
	const [agreedQuote] = account.agreedPapers.filter((paper) => paper.kind === "quote");
	if (kind === "quote" && waiting.length > 0)
		return (
			<Notice means="wait" live="off">
				{waiting.map(paperName).join(", ")} has no answer yet: it is taken back when this one is given on {formatDay(today)} or before.
			</Notice>
		);
	if (kind === "quote" && agreedQuote)
		return (
			<Notice live="off">
				{paperName(agreedQuote)} is agreed. This quote is of the whole job, with what was agreed since; once the owner agrees to it, it
				takes the place of both. For what was found since, <strong>more work found</strong> is enough.
			</Notice>
		);
	if (kind === "more" && !agreedQuote)
		return <Notice live="off">No quote is agreed yet: this paper alone would be what was agreed.</Notice>;
	if (kind === "statement" && account.statement)
		return (
			<Notice live="off">{paperName(account.statement)} stands. This statement is of the whole job again, and takes its place.</Notice>
		);
	return null;
}
