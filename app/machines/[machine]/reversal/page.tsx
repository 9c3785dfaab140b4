import type { Metadata } from "next";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PrintButton } from "@/app/ui/printButton";
import { systemClock } from "@/lib/core/clock";
import { dayOf, formatInstant } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { formatWait } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { originalsIn } from "@/lib/originality/counts";
import { originFacts } from "@/lib/originality/queries";
import { NO_AREA } from "@/lib/originality/strip";
import { heldAfter, problemOf } from "@/lib/reversal/asked";
import { reversalsOf } from "@/lib/reversal/carryingOut/queries";
import { TARGET_WORDS } from "@/lib/reversal/carryingOut/rules";
import { CHECK_MINUTES, checklistOf, MAKE_SAFE, MAKE_SAFE_MINUTES } from "@/lib/reversal/checklist";
import { mayAsk, safetyAsked } from "@/lib/reversal/mayAsk";
import { mostEver } from "@/lib/reversal/mostEver";
import { photosOfPlan } from "@/lib/reversal/photoQueries";
import { type Plan, planReversal } from "@/lib/reversal/plan";
import { type ReversalFacts, reversalFacts } from "@/lib/reversal/queries";
import { readProblem } from "@/lib/reversal/readProblem";
import { standingConversions } from "@/lib/reversal/scope";
import { scopeSense } from "@/lib/reversal/scopeSense";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../thisMachine";
import { AskedForm } from "./askedForm";
import { type AskedHere, addressWith, askedHere, askedOfPlanner, momentOf, type Search, titleOf } from "./askedOfAddress";
import { Checklist } from "./checklist";
import { FetchCard } from "./fetchCard";
import { Peel } from "./peel";
import { ScopeNotes } from "./scopeNotes";
import { StartForm } from "./startForm";
import { StaysCard } from "./staysCard";
import { timeWords } from "./timeWords";

export const metadata: Metadata = { title: "Reversal" };

type Props = { readonly params: Promise<{ machine: string }>; readonly searchParams: Promise<Search> };

export default async function ReversalPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const search = await searchParams;
	const { read } = await shopStore();
	const [shop, facts, origins, begun] = await Promise.all([
		requireShop(read),
		reversalFacts(read, machine.id),
		originFacts(read, [machine.id]),
		reversalsOf(read, machine.id),
	]);
	const here = askedHere(search, facts, dayOf(systemClock(), shop.timeZone), shop.timeZone);
	const asked = askedOfPlanner(here, facts, machine.asFoundAt === null ? null : instant(machine.asFoundAt), shop.timeZone);
	const may = mayAsk(facts, asked);
	const form = (
		<AskedForm
			asked={here}
			conversions={facts.conversions.map(({ number, name, purpose }) => ({ number, name, safety: purpose === "safety" }))}
			areas={areasOf(facts)}
			errors={{ ...here.wrongs, ...(may.ok ? {} : may.error.fields) }}
		/>
	);
	const problem = readProblem(problemOf(facts, asked));
	const wrong = Object.values(here.wrongs)[0] ?? (may.ok ? null : may.error.say);
	if (!problem.ok || wrong !== null)
		return (
			<Stack>
				<Begun begun={begun} number={machine.number} timeZone={shop.timeZone} />
				<Card title="What to go back to">{form}</Card>
				<Notice means="stop" title={wrong === null ? "No plan can be made of this record" : "Nothing is planned yet"}>
					<p>{wrong ?? (problem.ok ? "" : problem.error.say)}</p>
				</Notice>
			</Stack>
		);
	const plan = planReversal(problem.value);
	const lines = checklistOf(plan, facts);
	const originality = origins.get(machine.id);
	const after = heldAfter(facts, plan);
	const photoOf = await photosOfPlan(read, machine.id, facts);
	const notes = scopeSense(problem.value, standingConversions(facts, asked));
	const counted = originality?.positions.filter((position) => position.asFound && position.kind === "seat").length ?? 0;
	const work = lines.filter(({ kind }) => kind !== "make-safe" && kind !== "check").length;
	const dangers = safetyAsked(facts, asked);
	const open = begun.find(({ state }) => state === "open");
	return (
		<Stack>
			<div className="af-pagehead">
				<div className="af-pagehead-words">
					<h2>{titleOf(here)}</h2>
					<p className="af-lead">
						{lines.length === 0
							? "Nothing has to be done: it stands as it did."
							: `${work} ${work === 1 ? "operation" : "operations"} · ${timeWords(plan, lines)}${plan.waitMinutes > 0 ? `, plus ${formatWait(plan.waitMinutes)} of waiting` : ""} · ${plan.opened.length} of ${facts.positions.length} positions opened, ${plan.openedOnly.length} of them only to reach the others`}
					</p>
					<p className="af-hint">{scopeWords(here, facts, plan)}</p>
				</div>
				<div className="af-pagehead-actions">
					{lines.length === 0 ? null : open ? (
						<ButtonLink href={`/machines/${machine.number}/reversal/${open.number}`}>{`Go on with reversal ${open.number}`}</ButtonLink>
					) : machine.asFoundAt === null ? null : (
						<StartForm
							key={addressWith(here, [])}
							machine={{ id: machine.id, number: machine.number }}
							question={{
								target: here.to === "as-made" ? "asMade" : here.to === "day" ? "moment" : "asFound",
								targetAt: momentOf(here, shop.timeZone),
								conversionIds: asked.conversions ?? [],
								positionIds: asked.positions ?? [],
								reason: here.reason,
							}}
						/>
					)}
					<PrintButton>Print the checklist</PrintButton>
				</div>
			</div>
			<Begun begun={begun} number={machine.number} timeZone={shop.timeZone} />
			<details className="af-details no-print" open={lines.length === 0}>
				<summary>Go back to something else, or only in part</summary>
				<Card>{form}</Card>
			</details>
			{dangers.length === 0 ? null : (
				<Notice means="stop" live="off" title="This puts a danger back">
					<p>
						{dangers.join(" and ")} {dangers.length === 1 ? "was" : "were"} done for safety. Why it is undone all the same: {here.reason}.
						It must not be switched on like this; a licensed electrician and local codes decide whether it may be done at all.
					</p>
					<p>Wires and bonds that were put in for it are on record with the conversion, and are not operations of this list.</p>
				</Notice>
			)}
			{lines.length === 0 ? null : (
				<Notice means="stop" live="off" title="Before anything is opened">
					<ul className="af-cautions">
						{[...MAKE_SAFE, ...machine.hazards.split("\n").filter((hazard) => hazard.trim() !== "")].map((caution) => (
							<li key={caution}>{caution}</li>
						))}
					</ul>
				</Notice>
			)}
			<ScopeNotes notes={notes} asked={here} />
			{originality && counted > 0 ? (
				<p>
					<strong>{originalsIn(originality, after)}</strong> of {counted} positions would hold their original after it;{" "}
					<strong>{originalsIn(originality, mostEver(facts, asked.asFoundAt) ?? after)}</strong> is the most that it can ever be again.
				</p>
			) : null}
			{lines.length === 0 ? null : (
				<Card title="In which order">
					<Peel plan={plan} lines={lines} />
				</Card>
			)}
			<Columns even>
				<StaysCard plan={plan} facts={facts} />
				<FetchCard lines={lines} />
			</Columns>
			<Card title="Checklist" flush>
				<div className="af-checklist">
					<Checklist lines={lines} photoOf={photoOf} />
				</div>
				{lines.length === 0
					? null
					: ["Carried out by", "On", "Signature"].map((words) => (
							<p key={words} className="print-only af-signed">
								{words}
							</p>
						))}
			</Card>
		</Stack>
	);
}

/** What is chosen, what is left for safety, what is not in the sum. */
function scopeWords(here: AskedHere, facts: ReversalFacts, plan: Plan): string {
	const chosen = facts.conversions.filter(({ number }) => here.undo.includes(String(number)));
	const isChosen = chosen.length + here.positions.length > 0;
	const left = isChosen ? [] : facts.conversions.filter(({ purpose }) => purpose === "safety");
	const only = [
		chosen.map(({ number, name }) => `${number} ${name}`).join(" and "),
		here.positions.length === 0 ? "" : `the positions ${here.positions.join(", ")}`,
	].filter(Boolean);
	return [
		isChosen ? `Undoing ${only.join(" and ")} only.` : "",
		left.length > 0 ? `Done for safety and left as it is: ${left.map(({ number, name }) => `${number} ${name}`).join(", ")}.` : "",
		`Making safe (about ${MAKE_SAFE_MINUTES} min) and checks (about ${CHECK_MINUTES} min, both common practice) are not in the sum.`,
		plan.leastProved ? "" : "The search for the least opening was cut short: a cheaper way may exist.",
	]
		.filter(Boolean)
		.join(" ");
}

const STATES = { open: "being carried out", done: "carried out", stopped: "stopped on the way" } as const;

/** The reversals that were begun on this machine, and how they stand. */
function Begun({
	begun,
	number,
	timeZone,
}: {
	readonly begun: Awaited<ReturnType<typeof reversalsOf>>;
	readonly number: number;
	readonly timeZone: string;
}) {
	if (begun.length === 0) return null;
	return (
		<div className="no-print">
			<Notice live="off" title="Begun before">
				<ul>
					{begun.map((reversal) => (
						<li key={reversal.id}>
							<Link className="inline-block py-1.5" href={`/machines/${number}/reversal/${reversal.number}`}>
								Reversal {reversal.number}, back to {TARGET_WORDS[reversal.target]}
							</Link>
							: {STATES[reversal.state]}, begun {formatInstant(instant(reversal.startedAt), timeZone)}
						</li>
					))}
				</ul>
			</Notice>
		</div>
	);
}

function areasOf(facts: ReversalFacts): { name: string; positions: { mark: string; name: string }[] }[] {
	const areas = new Map<string, { mark: string; name: string }[]>();
	for (const { area, mark, name } of facts.positions) {
		const key = area || NO_AREA;
		areas.set(key, [...(areas.get(key) ?? []), { mark, name }]);
	}
	return [...areas].map(([name, positions]) => ({ name, positions }));
}
