import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Bench, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { systemClock } from "@/lib/core/clock";
import { dayOf, formatDay, formatInstant, timeOf } from "@/lib/core/days";
import { type Instant, instant, millisOf, minutesBetween } from "@/lib/core/instants";
import { formatMinutes } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import type { Reader } from "@/lib/db/store";
import { whatIsMissed } from "@/lib/parts/rules";
import { currentPerson } from "@/lib/people/current";
import { partKey } from "@/lib/reversal/asked";
import { positionsLostWith } from "@/lib/reversal/beforehandQueries";
import { planNow } from "@/lib/reversal/carryingOut/planNow";
import { clocksOn, type Done, doneFor, type ReversalRow, reversalNumbered, undoneSince } from "@/lib/reversal/carryingOut/queries";
import { askedOf, mustMakeSafe, readyIn, TARGET_WORDS, type Waiting, waitsAt } from "@/lib/reversal/carryingOut/rules";
import { startBuildSchema } from "@/lib/reversal/carryingOut/schema";
import { CHECK, checklistOf, type Line, MAKE_SAFE } from "@/lib/reversal/checklist";
import { photosOfPlan } from "@/lib/reversal/photoQueries";
import type { Plan } from "@/lib/reversal/plan";
import { type ReversalFacts, reversalFacts } from "@/lib/reversal/queries";
import { scopeInWords } from "@/lib/reversal/scope";
import { requireShop } from "@/lib/shop/queries";
import { ranOverNight } from "@/lib/steps/timeCheck";
import { JustDone } from "../../justDone";
import { thisMachine } from "../../thisMachine";
import { Elapsed, StartClock, StopClock } from "../../work/clock";
import { StaysCard } from "../staysCard";
import { timeWords } from "../timeWords";
import { FinishForm, MadeSafeForm, StopForm, TakeUpForm } from "./forms";
import { Next } from "./next";
import "../../bench.css";

export const metadata: Metadata = { title: "Carrying out a reversal" };

type Props = {
	readonly params: Promise<{ machine: string; number: string }>;
	readonly searchParams: Promise<{ readonly do?: string | string[] }>;
};

/** A reversal being carried out, planned anew from where the machine stands each time the page is made. */
export default async function CarryingOutPage({ params, searchParams }: Props) {
	const said = await params;
	const machine = await thisMachine(said.machine);
	const { read } = await shopStore();
	const reversal = /^[1-9]\d{0,5}$/.test(said.number) ? await reversalNumbered(read, machine.id, Number(said.number)) : null;
	if (!reversal) notFound();
	const [{ timeZone }, facts, done] = await Promise.all([
		requireShop(read),
		reversalFacts(read, machine.id),
		doneFor(read, machine.id, reversal.id, reversal.state === "open"),
	]);
	const asked = askedOf(reversal, machine.asFoundAt === null ? null : instant(machine.asFoundAt));
	const base = `/machines/${machine.number}`;
	const title = `Reversal ${reversal.number}: back to ${reversal.target === "moment" && reversal.targetAt !== null ? formatInstant(instant(reversal.targetAt), timeZone) : TARGET_WORDS[reversal.target]}`;
	const only = scopeInWords(facts, asked);
	// What it came to stands in the book. A plan of today would say what has happened since.
	if (reversal.state !== "open")
		return (
			<Stack>
				<h2 className="text-2xl">{title}</h2>
				{only === "" ? null : <p>Only {only}.</p>}
				<Notice
					means={reversal.state === "done" ? "original" : "wait"}
					live="off"
					title={reversal.state === "done" ? "Carried out" : "Stopped on the way"}
				>
					<p>
						{reversal.endedAt === null ? "" : formatInstant(instant(reversal.endedAt), timeZone)}
						{reversal.words ? `. ${reversal.words}` : ""}
					</p>
				</Notice>
				<DoneCard done={done} timeZone={timeZone} />
			</Stack>
		);
	const planned = planNow(facts, asked, startBuildSchema.parse(JSON.parse(reversal.startBuild)));
	if (!planned.ok)
		return (
			<Bench>
				<h2 className="text-2xl">{title}</h2>
				<Notice means="stop" title="No plan can be made of this record">
					<p>{planned.error.say}</p>
				</Notice>
				<DoneCard done={done} timeZone={timeZone} />
			</Bench>
		);
	const plan = planned.value;
	const lines = checklistOf(plan, facts);
	const now = systemClock();
	const waits = waitsAt(await undoneSince(read, machine.id, reversal.startedAt), now);
	const restsAt = (operation: Plan["operations"][number]): Waiting | undefined => {
		const { position, part } = idsOf(facts, operation);
		return waits.find(
			(wait) => (wait.positionId !== null && wait.positionId === position) || (wait.partId !== null && wait.partId === part),
		);
	};
	// What still rests comes last: nothing goes in there before its time.
	const ready = readyIn(plan).toSorted((a, b) => Number(restsAt(a) !== undefined) - Number(restsAt(b) !== undefined));
	const wanted = [(await searchParams).do].flat()[0];
	const current = ready.find(({ id }) => id === wanted) ?? ready[0];
	const line = lines.find(({ id }) => id === current?.id);
	const others = ready.filter(({ id }) => id !== current?.id);
	const unsafe = mustMakeSafe(reversal.safeAt === null ? null : instant(reversal.safeAt), now, timeZone);
	const proved = done.findLast(({ action }) => action === "reversal.isolated");
	const photoOf = await photosOfPlan(read, machine.id, facts);
	const ids = idsOf(facts, current);
	const work = lines.filter(({ kind }) => kind !== "make-safe" && kind !== "check");
	return (
		<Bench>
			<header>
				<p className="af-sub">
					<Link href={`${base}/reversal`}>Reversal</Link> of {machine.number} {machine.name}
				</p>
				<h2 className="text-2xl">{title}</h2>
				{only === "" ? null : <p>Only {only}.</p>}
				<p>
					{work.length === 0
						? "Nothing is left to take out, undo or put in."
						: `${work.length === 1 ? "1 operation" : `${work.length} operations`} to go · ${timeWords(plan, lines)}`}
				</p>
				{proved === undefined || unsafe ? null : (
					<p className="af-sub">
						{proved.by} said on {formatInstant(instant(proved.at), timeZone)}: {proved.say}
					</p>
				)}
				<MyClock reversal={reversal} now={now} base={base} />
			</header>
			{waits.length === 0 ? null : <Waits waits={waits} timeZone={timeZone} now={now} />}
			<JustDone>
				{work.length === 0 ? (
					<Stack>
						<Notice live="off" title="Check">
							<ul className="af-cautions">
								{CHECK.map((check) => (
									<li key={check}>{check}</li>
								))}
							</ul>
						</Notice>
						<ButtonLink href={`${base}/tests`}>Record what was measured, under Tests</ButtonLink>
						<FinishForm reversalId={reversal.id} />
					</Stack>
				) : unsafe ? (
					<Stack>
						<Notice means="stop" live="off" title={reversal.safeAt === null ? "Make safe first" : "Make safe again: that was long ago"}>
							<ul className="af-cautions">
								{MAKE_SAFE.map((caution) => (
									<li key={caution}>{caution}</li>
								))}
							</ul>
						</Notice>
						<MadeSafeForm reversalId={reversal.id} />
					</Stack>
				) : line === undefined || current === undefined ? (
					<Notice means="stop" live="off" title="Nothing can be done now">
						The plan waits for something. Look at what stays different below.
					</Notice>
				) : (
					<Next
						key={current.id}
						read={read}
						machine={{ id: machine.id, number: machine.number, name: machine.name }}
						line={line}
						photo={photoOf(line)}
						positionId={ids.position}
						partId={ids.part}
						alterationId={ids.alteration}
						reversal={{ id: reversal.id, stepId: reversal.step?.id ?? null, reason: reversal.reason }}
						loses={line.kind === "put-in" && ids.part !== null ? await lossOf(read, ids.part) : null}
						resting={restingWords(restsAt(current), timeZone)}
						stays={plan.operations.some(({ kind, part }) => kind === "put-in" && part !== undefined && part === current.part)}
					/>
				)}
			</JustDone>
			{unsafe || others.length === 0 ? null : (
				<Others others={others.map((operation) => ({ operation, rests: restsAt(operation) !== undefined }))} lines={lines} />
			)}
			<Rest lines={work.filter(({ id }) => !ready.some((operation) => operation.id === id))} />
			<LeftOutCard asked={asked} facts={facts} reversalId={reversal.id} />
			<StaysCard plan={plan} facts={facts} />
			<DoneCard done={done} timeZone={timeZone} />
			{unsafe ? null : (
				<details className="af-details">
					<summary>It was live since, or somebody else goes on</summary>
					<div className="pt-2">
						<MadeSafeForm reversalId={reversal.id} />
					</div>
				</details>
			)}
			<details className="af-details">
				<summary>Stop this reversal</summary>
				<div className="pt-2">
					<StopForm reversalId={reversal.id} />
				</div>
			</details>
		</Bench>
	);
}

/** What reversal loses while a part is gone; null when nothing. */
async function lossOf(read: Reader, partId: string): Promise<string | null> {
	return whatIsMissed(await positionsLostWith(read, partId)) || null;
}

const restingWords = (wait: Waiting | undefined, timeZone: string): string | null =>
	wait === undefined ? null : `${wait.what} rests until ${formatInstant(wait.until, timeZone)}`;

/** The rows that an operation of the plan is about. */
function idsOf(facts: ReversalFacts, operation: Plan["operations"][number] | undefined) {
	return {
		position: facts.positions.find(({ mark }) => mark === operation?.position)?.id ?? null,
		part: facts.parts.find((part) => partKey(part) === operation?.part)?.id ?? null,
		alteration: facts.alterations.find(({ number }) => `a${number}` === operation?.alteration)?.id ?? null,
	};
}

async function MyClock({ reversal, now, base }: { readonly reversal: ReversalRow; readonly now: Instant; readonly base: string }) {
	if (reversal.step === null) return null;
	const { read } = await shopStore();
	const [me, running, { timeZone }] = await Promise.all([currentPerson(), clocksOn(read, reversal.step.id), requireShop(read)]);
	const mine = running.find(({ personId }) => personId === me?.id);
	return (
		<div className="mt-2 flex flex-wrap items-center gap-3">
			{me === null ? null : mine ? (
				<>
					<StopClock
						key={mine.workId}
						workId={mine.workId}
						words="Stop my clock"
						forgotten={ranOverNight({ how: "timed", startedAt: mine.startedAt, endedAt: null }, now, timeZone)}
					/>
					<Elapsed seconds={Math.max(0, Math.floor((millisOf(now) - millisOf(mine.startedAt)) / 1000))} />
				</>
			) : (
				<StartClock key={`start ${running.length}`} stepId={reversal.step.id} personId={me.id} words="Start my clock" />
			)}
			<Link className="inline-block py-1.5" href={`${base}/work/${reversal.step.number}`}>
				Step {reversal.step.number}
			</Link>
		</div>
	);
}

function Waits({ waits, timeZone, now }: { readonly waits: readonly Waiting[]; readonly timeZone: string; readonly now: Instant }) {
	return (
		<Notice means="wait" live="off" title="Still resting">
			<ul>
				{waits.map(({ what, until }) => (
					<li key={`${what} ${until}`}>
						{what}: until {formatInstant(until, timeZone)}, {formatMinutes(minutesBetween(now, until))} to go
					</li>
				))}
			</ul>
		</Notice>
	);
}

/** What could be done now as well: another person, or another mood. */
function Others({
	others,
	lines,
}: {
	readonly others: readonly { readonly operation: Plan["operations"][number]; readonly rests: boolean }[];
	readonly lines: readonly Line[];
}) {
	return (
		<Card title="Can be done now as well">
			<ul className="flex flex-col gap-1">
				{others.map(({ operation, rests }) => {
					const line = lines.find(({ id }) => id === operation.id);
					return line === undefined ? null : (
						<li key={operation.id}>
							<Link className="inline-block py-2" href={`?do=${encodeURIComponent(operation.id)}`}>
								{line.deed}: {line.what}
							</Link>{" "}
							{rests ? <Badge means="wait">still resting</Badge> : null}
						</li>
					);
				})}
			</ul>
		</Card>
	);
}

function Rest({ lines }: { readonly lines: readonly Line[] }) {
	if (lines.length === 0) return null;
	return (
		<details className="af-details">
			<summary>After that: {lines.length} more</summary>
			<ol className="flex flex-col gap-1 pt-2">
				{lines.map((line) => (
					<li key={line.id}>
						{line.deed} {line.what}
						<span className="af-sub">{[line.mark, line.from[0]?.tag].filter(Boolean).join(" · ")}</span>
					</li>
				))}
			</ol>
		</details>
	);
}

function LeftOutCard({
	asked,
	facts,
	reversalId,
}: {
	readonly asked: ReturnType<typeof askedOf>;
	readonly facts: ReversalFacts;
	readonly reversalId: string;
}) {
	const left = asked.leftOut ?? [];
	if (left.length === 0) return null;
	return (
		<Card title="Left out on the way">
			<ul className="af-stays">
				{left.map(({ position, why, stuck }) => {
					const at = facts.positions.find(({ id }) => id === position);
					return (
						<li key={position}>
							<strong>
								{at?.mark} {at?.name}
							</strong>
							<span className="af-sub">
								{stuck === "yes" ? "stuck: " : ""}
								{why}
							</span>
							<TakeUpForm reversalId={reversalId} positionId={position} name={at?.name ?? "it"} />
						</li>
					);
				})}
			</ul>
		</Card>
	);
}

/** What was done so far, as the ledger has it. */
function DoneCard({ done, timeZone }: { readonly done: readonly Done[]; readonly timeZone: string }) {
	return (
		<Card title="Done so far" aside={`${done.length}`}>
			<ol className="af-stays">
				{done.map((entry) => (
					<li key={entry.seq}>
						{entry.say}
						<span className="af-sub">
							{formatDay(dayOf(instant(entry.at), timeZone))}, {timeOf(instant(entry.at), timeZone)} · {entry.by}
						</span>
					</li>
				))}
			</ol>
		</Card>
	);
}
