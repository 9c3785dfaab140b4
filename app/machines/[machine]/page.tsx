import { Suspense } from "react";
import { Badge } from "@/app/ui/badge";
import { Bars } from "@/app/ui/bars";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Facts } from "@/app/ui/facts";
import { Buttons, Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { OriginalityStrip } from "@/app/ui/originalityStrip";
import { Segments } from "@/app/ui/segments";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { systemClock } from "@/lib/core/clock";
import { type Day, dayOf, daysBetween, formatDay, formatInstant } from "@/lib/core/days";
import { edtfInWords } from "@/lib/core/edtf";
import { type Instant, instant } from "@/lib/core/instants";
import { formatMinutes } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { dueWords, hinderedWords, OWNERSHIP_WORDS, soon } from "@/lib/machines/bench";
import { type Bench, benches, faultsOf, type MachineHead, notesOf, partsOutside } from "@/lib/machines/queries";
import { counted } from "@/lib/machines/rules";
import { type CurrencyCode, isCurrency } from "@/lib/money/currency";
import { formatAmount, minor } from "@/lib/money/money";
import { type MachineMoney, machineMoney } from "@/lib/money/queries";
import {
	countOriginality,
	evidenceInWords,
	heldInWords,
	type OriginalityCounts,
	originalityStatement,
	originalsIn,
} from "@/lib/originality/counts";
import type { OriginFacts } from "@/lib/originality/facts";
import { originFacts } from "@/lib/originality/queries";
import { type StripOf, stripOf } from "@/lib/originality/strip";
import { openReversal } from "@/lib/reversal/carryingOut/queries";
import { requireShop } from "@/lib/shop/queries";
import { afterReversal, mostEverOf } from "./afterReversal";
import { FaultForm, FaultState, NoteForm } from "./nowForms";
import { FindOnPhoto } from "./papers/pinnedPhotos";
import { thisMachine } from "./thisMachine";

type Props = {
	readonly params: Promise<{ machine: string }>;
	readonly searchParams: Promise<{ strip?: string | string[] }>;
};

export default async function NowPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const { strip } = await searchParams;
	const { read } = await shopStore();
	const shop = await requireShop(read);
	const now = systemClock();
	const today = dayOf(now, shop.timeZone);
	const [origins, bench, outside, money, faults, notes, reversal] = await Promise.all([
		originFacts(read, [machine.id]),
		benches(read, [machine.id], now),
		partsOutside(read, machine.id),
		machineMoney(read, machine.id, today),
		faultsOf(read, machine.id),
		notesOf(read, machine.id),
		openReversal(read, machine.id),
	]);
	const facts = origins.get(machine.id) ?? { positions: [], parts: [] };
	const counts = countOriginality(facts);
	const base = `/machines/${machine.number}`;
	return (
		<Stack>
			{machine.hazards === "" ? null : (
				<Notice means="stop" live="off" title="Hazards">
					<Lines of={machine.hazards} />
				</Notice>
			)}
			{reversal === null ? null : (
				<Notice means="wait" live="off" title={`Reversal ${reversal.number} is being carried out`}>
					<Buttons>
						<ButtonLink href={`${base}/reversal/${reversal.number}`}>Go on with it</ButtonLink>
					</Buttons>
				</Notice>
			)}
			{machine.state === "intake" ? <StillOpen base={base} counts={counts} /> : null}
			<Columns>
				<Stack>
					<Originality base={base} machine={machine} facts={facts} counts={counts} shown={[strip].flat()[0] ?? "now"} />
					<NextOnBench
						base={base}
						bench={bench.get(machine.id) ?? { next: [], waits: [], planned: 0, begun: false }}
						now={now}
						timeZone={shop.timeZone}
					/>
					<FindOnPhoto read={read} machineId={machine.id} machine={machine.number} />
					<Faults machineId={machine.id} base={base} faults={faults} facts={facts} />
				</Stack>
				<Stack>
					{money === null ? null : <Cost base={base} money={money} currency={shop.currency} />}
					<Waits bench={bench.get(machine.id)} now={now} timeZone={shop.timeZone} />
					<Outside outside={outside} today={today} />
					<About machine={machine} currency={shop.currency} timeZone={shop.timeZone} base={base} />
					<Notes machineId={machine.id} notes={notes} timeZone={shop.timeZone} />
				</Stack>
			</Columns>
		</Stack>
	);
}

function StillOpen({ base, counts }: { readonly base: string; readonly counts: OriginalityCounts }) {
	const unseen = counts.asFound.unseen;
	return (
		<Notice means="wait" live="off" title="The as found record is still open">
			<p>
				{counts.positions === 0
					? "No position is recorded yet. Record what is there before anything is touched."
					: `${counted(counts.positions, "position")} recorded${unseen === 0 ? "" : `, ${unseen} not seen yet`}. Stamp it when you have looked at everything you can see without a tool.`}
			</p>
			<Buttons>
				<ButtonLink href={`${base}/build`}>{counts.positions === 0 ? "Record what was found" : "Go on with the build"}</ButtonLink>
			</Buttons>
		</Notice>
	);
}

async function Originality({
	base,
	machine,
	facts,
	counts,
	shown,
}: {
	readonly base: string;
	readonly machine: MachineHead;
	readonly facts: OriginFacts;
	readonly counts: OriginalityCounts;
	readonly shown: string;
}) {
	const stamped = machine.asFoundAt !== null;
	const view = shown === "as-found" || (shown === "after" && stamped) ? shown : "now";
	const seen = counts.positions - counts.asFound.unseen;
	const options = [
		{ href: `${base}?strip=as-found`, label: "As found" },
		{ href: base, label: "Now" },
		...(stamped ? [{ href: `${base}?strip=after`, label: "After reversal" }] : []),
	];
	return (
		<Card
			title="Originality"
			aside={<Segments label="Which state the marks show" options={options} current={view === "now" ? base : `${base}?strip=${view}`} />}
		>
			{facts.positions.length === 0 ? (
				<Empty title="No positions yet" action={<ButtonLink href={`${base}/build`}>Record what was found</ButtonLink>}>
					Every position will stand here as one small mark: original, kept, not original, not known, lost, empty or not seen yet.
				</Empty>
			) : (
				<Stack>
					<ul className="af-figures">
						<Figure value={`${seen} of ${counts.positions}`} label="positions seen, as found" />
						<Figure value={counts.now.original} label="original and fitted now" />
						{stamped ? (
							<Suspense fallback={<Figure value="…" label="original after reversal" />}>
								<FigureAfterReversal machine={machine} facts={facts} />
							</Suspense>
						) : null}
						{stamped ? (
							<Suspense fallback={<Figure value="…" label="the most it can ever be" />}>
								<FigureAtBest machine={machine} facts={facts} />
							</Suspense>
						) : null}
						<Figure value={counts.gone} label="whose original is lost, sold or scrapped" means={counts.gone > 0 ? "stop" : undefined} />
					</ul>
					{view === "after" ? (
						<Suspense fallback={<p className="af-lead">Planning the way back …</p>}>
							<StripAfterReversal base={base} machine={machine} facts={facts} />
						</Suspense>
					) : (
						<Strip
							base={base}
							facts={facts}
							of={view === "as-found" ? "as-found" : "now"}
							label={view === "as-found" ? "As found" : "Now"}
						/>
					)}
					<details className="af-details">
						<summary>The counts in words</summary>
						<p>{originalityStatement(counts)}</p>
						<Facts
							facts={[
								{ label: "As found", value: `${counts.positions}: ${heldInWords(counts.asFound)}` },
								{ label: "How the originals are known", value: evidenceInWords(counts.evidenceAsFound) },
								{ label: "Now, the same positions", value: heldInWords(counts.now) },
								{ label: "How those originals are known", value: evidenceInWords(counts.evidenceNow) },
								{ label: "Places the work made", value: heldInWords(counts.added) },
								{ label: "Originals out and kept", value: counts.kept },
							]}
						/>
						<p className="af-hint">
							Counted are the positions that were there when the machine came and can hold a part; small fixings are no positions. Evidence
							counts for an original only when it shows that the part was in the machine when it was made.
						</p>
						<p>
							<Link className="inline-block py-2" href={`${base}/originality`}>
								Position by position, to be checked
							</Link>
						</p>
					</details>
				</Stack>
			)}
		</Card>
	);
}

function Strip({
	base,
	facts,
	of,
	label,
}: {
	readonly base: string;
	readonly facts: OriginFacts;
	readonly of: StripOf;
	readonly label: string;
}) {
	const groups = stripOf(facts, of).map((area) => ({
		name: area.name,
		marks: area.positions.map((position) => ({
			id: position.id,
			name: `${position.mark} ${position.name} (${position.says})`,
			state: position.state,
			href: `${base}/build/${encodeURIComponent(position.mark)}`,
		})),
	}));
	return <OriginalityStrip label={label} groups={groups} />;
}

async function StripAfterReversal({
	base,
	machine,
	facts,
}: {
	readonly base: string;
	readonly machine: MachineHead;
	readonly facts: OriginFacts;
}) {
	const after = await afterReversal((await shopStore()).read, machine.id, machine.asFoundAt);
	if (after === null) {
		return (
			<p>
				No plan can be made of this record. <Link href={`${base}/reversal`}>The page of its reversal</Link> says why.
			</p>
		);
	}
	return <Strip base={base} facts={facts} of={after} label="After reversal" />;
}

async function FigureAfterReversal({ machine, facts }: { readonly machine: MachineHead; readonly facts: OriginFacts }) {
	const after = await afterReversal((await shopStore()).read, machine.id, machine.asFoundAt);
	return <Figure value={after === null ? "no plan" : originalsIn(facts, after)} label="original after reversal" />;
}

async function FigureAtBest({ machine, facts }: { readonly machine: MachineHead; readonly facts: OriginFacts }) {
	const atBest = await mostEverOf((await shopStore()).read, machine.id, machine.asFoundAt);
	return <Figure value={atBest === null ? "no plan" : originalsIn(facts, atBest)} label="the most it can ever be" />;
}

function Figure({ value, label, means }: { readonly value: string | number; readonly label: string; readonly means?: "stop" | undefined }) {
	return (
		<li className="af-figure" data-means={means}>
			<span className="af-figure-value">{value}</span>
			<span className="af-figure-label">{label}</span>
		</li>
	);
}

/** Steps shown on the first page of a machine; the others stand under Work. */
const FEW_STEPS = 6;

function NextOnBench({
	base,
	bench,
	now,
	timeZone,
}: {
	readonly base: string;
	readonly bench: Bench;
	readonly now: Instant;
	readonly timeZone: string;
}) {
	return (
		<Card
			title="Next on the bench"
			aside={
				bench.next.length > FEW_STEPS ? (
					<Link href={`${base}/work`}>all {bench.next.length} steps</Link>
				) : (
					<Link href={`${base}/work`}>work</Link>
				)
			}
		>
			<Table
				caption="The next steps"
				rows={bench.next.slice(0, FEW_STEPS)}
				rowKey={(step) => String(step.number)}
				empty={
					<Empty title="Nothing planned" action={<ButtonLink href={`${base}/work`}>Plan the first step</ButtonLink>}>
						Steps that can begin now stand first, with who does them and what they wait for.
					</Empty>
				}
				columns={[
					{
						key: "step",
						head: "Step",
						main: true,
						cell: (step) => <Link href={`${base}/work/${step.number}`}>{step.title}</Link>,
						sub: (step) => (
							<>
								{step.clockRuns ? <Badge means="original">on the bench</Badge> : null}
								{step.caution}
							</>
						),
					},
					{ key: "who", head: "Who", cell: (step) => step.who.join(", ") },
					{ key: "likely", head: "Likely", align: "right", cell: (step) => formatMinutes(step.likelyMinutes) },
					{ key: "waits", head: "Waits for", cell: (step) => hinderedWords(step.hindered, now, timeZone) || "nothing" },
				]}
			/>
		</Card>
	);
}

function Cost({ base, money, currency }: { readonly base: string; readonly money: MachineMoney; readonly currency: CurrencyCode }) {
	if (!isCurrency(money.currency)) return null;
	const { total } = money.summary;
	const text = (amount: number) => formatAmount(minor(amount), currency);
	return (
		<Card title="Cost" aside={<Link href={`${base}/money`}>{currency}</Link>}>
			<Bars
				caption="Cost of the work"
				unit={currency}
				bars={[
					{
						label: "Estimated",
						kind: "estimate",
						amount: total.estimated === 0 ? null : total.estimated,
						text: total.estimated === 0 ? "no estimate yet" : text(total.estimated),
					},
					{ label: "Spent", kind: "spent", amount: total.spent, text: text(total.spent) },
					{ label: "Still to come", kind: "to-come", amount: total.toCome, from: total.spent, text: text(total.toCome) },
					{ label: "At completion", kind: "total", amount: total.atCompletion, text: text(total.atCompletion) },
				]}
				note={`In the books for ${text(money.books)} ${currency}, with what was paid for it and its carriage.`}
			/>
		</Card>
	);
}

function Waits({ bench, now, timeZone }: { readonly bench: Bench | undefined; readonly now: Instant; readonly timeZone: string }) {
	if (!bench || bench.waits.length === 0) return null;
	return (
		<Card title="Setting, drying, in the post">
			<Facts
				facts={bench.waits.map((wait) => ({
					label: `Step ${wait.number}`,
					value: (
						<>
							{wait.why} <Badge means="wait">until {soon(wait.until, now, timeZone)}</Badge>
						</>
					),
				}))}
			/>
		</Card>
	);
}

function Outside({ outside, today }: { readonly outside: Awaited<ReturnType<typeof partsOutside>>; readonly today: Day }) {
	if (outside.total === 0) return null;
	return (
		<Card title="Outside the shop" aside={outside.total > outside.parts.length ? `${outside.parts.length} of ${outside.total}` : undefined}>
			<Table
				caption="Parts outside the shop"
				rows={outside.parts}
				rowKey={(part) => part.id}
				columns={[
					{
						key: "tag",
						head: "Tag",
						hideHead: true,
						cell: (part) => (part.tag ? <TagChip size="small" tag={part.tag.id} href={`/t/${part.tag.id}`} /> : null),
					},
					{
						key: "name",
						head: "Part",
						hideHead: true,
						main: true,
						cell: (part) => part.name,
						sub: (part) => `${part.origin}${part.party ? `, with ${part.party.name}` : ""}`,
					},
					{
						key: "due",
						head: "Due",
						hideHead: true,
						align: "right",
						cell: (part) => {
							if (part.dueDay === null) return "no day given";
							const due = part.dueDay as Day;
							const words = dueWords(due, today, daysBetween(due, today));
							return <Badge means={words.late ? "stop" : "wait"}>{words.words}</Badge>;
						},
					},
				]}
			/>
		</Card>
	);
}

function About({
	machine,
	currency,
	timeZone,
	base,
}: {
	readonly machine: MachineHead;
	readonly currency: CurrencyCode;
	readonly timeZone: string;
	readonly base: string;
}) {
	const amount = (minorUnits: number | null) => (minorUnits === null ? null : `${formatAmount(minor(minorUnits), currency)} ${currency}`);
	return (
		<Card title="About this machine" aside={<Link href={`${base}/about`}>correct, hand over</Link>}>
			<Facts
				facts={[
					{ label: "Maker", value: [machine.maker, machine.model].filter(Boolean).join(", ") },
					{ label: "Serial number", value: machine.serial },
					{ label: "Made", value: machine.made === null ? null : edtfInWords(machine.made) },
					{
						label: "Whose",
						value: machine.owner ? `${OWNERSHIP_WORDS[machine.ownership]}: ${machine.owner.name}` : OWNERSHIP_WORDS[machine.ownership],
					},
					{ label: "Came in", value: formatDay(machine.receivedDay as Day) },
					{ label: "From", value: machine.seller?.name },
					{ label: "Paid", value: amount(machine.priceMinor) },
					{ label: "Carriage", value: amount(machine.carriageMinor) },
					{ label: "Carried", value: machine.carried },
					{ label: "Condition", value: machine.condition },
					{
						label: "As found stamped",
						value: machine.asFoundAt === null ? "not yet" : formatInstant(instant(machine.asFoundAt), timeZone),
					},
				]}
			/>
		</Card>
	);
}

function Faults({
	machineId,
	base,
	faults,
	facts,
}: {
	readonly machineId: string;
	readonly base: string;
	readonly faults: Awaited<ReturnType<typeof faultsOf>>;
	readonly facts: OriginFacts;
}) {
	return (
		<Card title="Faults" aside={faults.length === 0 ? undefined : `${faults.filter((fault) => fault.state === "open").length} open`}>
			<Table
				caption="Faults"
				rows={faults}
				rowKey={(fault) => fault.id}
				empty={<p className="af-lead">No fault noted.</p>}
				columns={[
					{
						key: "words",
						head: "What",
						main: true,
						cell: (fault) => fault.words,
						sub: (fault) => [fault.kind, fault.how].filter(Boolean).join(": "),
					},
					{
						key: "where",
						head: "Where",
						cell: (fault) =>
							fault.position ? (
								<Link href={`${base}/build/${encodeURIComponent(fault.position.mark)}`}>
									{fault.position.mark} {fault.position.name}
								</Link>
							) : (
								"the machine"
							),
					},
					{
						key: "state",
						head: "State",
						cell: (fault) => (
							<Badge means={fault.state === "open" ? "wait" : fault.state === "mended" ? "original" : "plain"}>
								{FAULT_WORDS[fault.state]}
							</Badge>
						),
					},
					{
						key: "deed",
						head: "What became of it",
						hideHead: true,
						cell: (fault) => <FaultState faultId={fault.id} state={fault.state} />,
					},
				]}
			/>
			<details className="af-details">
				<summary>Note a fault</summary>
				<FaultForm
					machineId={machineId}
					positions={facts.positions.map((position) => ({ id: position.id, label: `${position.mark} ${position.name}` }))}
				/>
			</details>
		</Card>
	);
}

const FAULT_WORDS = { open: "open", mended: "mended", stays: "left so" } as const;

function Notes({
	machineId,
	notes,
	timeZone,
}: {
	readonly machineId: string;
	readonly notes: Awaited<ReturnType<typeof notesOf>>;
	readonly timeZone: string;
}) {
	return (
		<Card title="Notes">
			{notes.length === 0 ? (
				<p className="af-lead">Nothing noted yet.</p>
			) : (
				<Facts
					facts={notes.map((note) => ({
						label: formatInstant(instant(note.at), timeZone),
						value: (
							<>
								{note.words}
								<span className="af-sub">
									{note.kind}
									{note.whoSaid === null ? "" : ` by ${note.whoSaid}`}
								</span>
							</>
						),
					}))}
				/>
			)}
			<details className="af-details">
				<summary>Write a note</summary>
				<NoteForm machineId={machineId} />
			</details>
		</Card>
	);
}

/** What was written one a line is read one a line. */
function Lines({ of }: { of: string }) {
	const lines = of.split("\n").filter((line) => line.trim() !== "");
	if (lines.length < 2) return <p>{of}</p>;
	return (
		<ul>
			{lines.map((line) => (
				<li key={line}>{line}</li>
			))}
		</ul>
	);
}
