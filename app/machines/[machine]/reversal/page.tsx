import type { Metadata } from "next";
import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PrintButton } from "@/app/ui/printButton";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { addDays, formatDay, isDay, startOfDay } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { formatMinutes, formatWait } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { originalsIn } from "@/lib/originality/counts";
import { originFacts } from "@/lib/originality/queries";
import { heldAfter, problemOf } from "@/lib/reversal/asked";
import { checklistOf, type Line, pickList } from "@/lib/reversal/checklist";
import { type Plan, planReversal } from "@/lib/reversal/plan";
import { type ReversalFacts, reversalFacts } from "@/lib/reversal/queries";
import { readProblem } from "@/lib/reversal/readProblem";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../thisMachine";
import { AskedForm } from "./askedForm";

export const metadata: Metadata = { title: "Reversal" };

type Search = { readonly to?: string; readonly day?: string; readonly undo?: string | string[]; readonly reason?: string };
type Props = { readonly params: Promise<{ machine: string }>; readonly searchParams: Promise<Search> };

/** Make safe and the checks by hand take about this long (common practice, no source); they are not in the plan's sum. */
const MAKE_SAFE_MINUTES = 15;
const CHECK_MINUTES = 30;

export default async function ReversalPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const search = await searchParams;
	const { read } = await shopStore();
	const [shop, facts, origins] = await Promise.all([requireShop(read), reversalFacts(read, machine.id), originFacts(read, [machine.id])]);
	const undo = [search.undo ?? []].flat().filter((number) => facts.conversions.some((conversion) => String(conversion.number) === number));
	const toDay = search.to === "day" && search.day && isDay(search.day) ? search.day : null;
	const reason = (search.reason ?? "").trim().slice(0, 300);
	const asked = {
		asFoundAt: machine.asFoundAt === null ? null : instant(machine.asFoundAt),
		// A day means its end: what was so when the shop closed.
		...(toDay === null ? {} : { at: startOfDay(addDays(toDay, 1), shop.timeZone) }),
		conversions: facts.conversions.filter(({ number }) => undo.includes(String(number))).map(({ id }) => id),
		...(reason ? { reason } : {}),
	};
	const form = (
		<AskedForm
			toDay={toDay}
			undo={undo}
			reason={reason}
			conversions={facts.conversions.map(({ number, name, purpose }) => ({ number, name, safety: purpose === "safety" }))}
		/>
	);
	const problem = readProblem(problemOf(facts, asked));
	if (!problem.ok)
		return (
			<Stack>
				<Card title="What to go back to">{form}</Card>
				<Notice means="stop" title="No plan can be made of this record">
					<p>{problem.error.say}</p>
				</Notice>
			</Stack>
		);
	const plan = planReversal(problem.value);
	const lines = checklistOf(plan, facts);
	const facts1 = origins.get(machine.id);
	const after = heldAfter(facts, plan);
	const title = toDay === null ? "Back to as found" : `Back to ${formatDay(toDay)}`;
	const chosen = facts.conversions.filter(({ number }) => undo.includes(String(number)));
	const left = chosen.length > 0 ? [] : facts.conversions.filter(({ purpose }) => purpose === "safety");
	return (
		<Stack>
			<div className="af-pagehead">
				<div className="af-pagehead-words">
					<h2>{title}</h2>
					<p className="af-lead">
						{lines.length === 0
							? "Nothing has to be done: it stands as it did."
							: `${lines.length} operations · ${timeWords(plan, lines)}${plan.waitMinutes > 0 ? `, plus ${formatWait(plan.waitMinutes)} of waiting` : ""} · ${plan.opened.length} of ${facts.positions.length} positions opened, ${plan.openedOnly.length} of them only to reach the others`}
					</p>
					<p className="af-hint">
						{chosen.length > 0 ? `Undoing ${chosen.map(({ number, name }) => `${number} ${name}`).join(" and ")} only. ` : ""}
						{left.length > 0
							? `Done for safety and left as it is: ${left.map(({ number, name }) => `${number} ${name}`).join(", ")}. `
							: ""}
						Making safe (about {MAKE_SAFE_MINUTES} min) and checks (about {CHECK_MINUTES} min, both common practice) are not in the sum.
						{plan.leastProved ? "" : " The search for the least opening was cut short: a cheaper way may exist."}
					</p>
				</div>
				<div className="af-pagehead-actions">
					<PrintButton>Print the checklist</PrintButton>
				</div>
			</div>
			<div className="no-print">
				<Card title="What to go back to">{form}</Card>
			</div>
			{facts1 && facts1.positions.length > 0 ? (
				<p>
					<strong>{originalsIn(facts1, after)}</strong> of{" "}
					{facts1.positions.filter((position) => position.asFound && position.kind === "seat").length} positions would hold their original
					after it.
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
					<Checklist lines={lines} />
				</div>
				{lines.length === 0 ? null : <p className="print-only af-signed">Carried out by, on, signature</p>}
			</Card>
		</Stack>
	);
}

/** The estimate, and how much of it nobody has estimated. */
function timeWords({ minutes }: Plan, lines: readonly Line[]): string {
	const work = lines.filter(({ kind }) => kind === "take-out" || kind === "undo" || kind === "put-in");
	const open = work.filter((line) => line.minutes.high === 0).length;
	if (work.length > 0 && open === work.length) return "no estimate of the time for any of them";
	const likely = `likely ${formatMinutes(minutes.likely)} (${formatMinutes(minutes.low)} to ${formatMinutes(minutes.high)})`;
	return open === 0 ? likely : `${likely}, without ${open} of them that have no estimate`;
}

function Checklist({ lines }: { lines: readonly Line[] }) {
	return (
		<Table
			caption="The reversal, operation by operation"
			rows={lines.map((line, index) => ({ ...line, number: index + 1 }))}
			rowKey={(line) => line.id}
			empty={<p className="af-hint">Nothing to do.</p>}
			columns={[
				{
					key: "tick",
					head: "Done",
					hideHead: true,
					cell: (line) => (
						<span className="af-tick">
							<svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
								<rect x="1.5" y="1.5" width="13" height="13" fill="none" stroke="currentColor" strokeWidth="1.5" />
							</svg>{" "}
							{line.number}
						</span>
					),
				},
				{
					key: "do",
					head: "Do",
					main: true,
					cell: (line) => (
						<>
							{line.deed} <span style={{ fontWeight: 400 }}>{line.what}</span>{" "}
							{line.origin === "original" ? <Badge means="original">original</Badge> : null}
							{line.leavesTrace ? <Badge means="stop">leaves a trace</Badge> : null}
						</>
					),
					sub: (line) => (
						<>
							{[
								line.mark ?? "",
								line.onBench ? `on the bench, at the ${line.onBench}` : "",
								line.side ? `from the ${line.side}` : "",
								...line.notes,
								...line.settings,
							]
								.filter(Boolean)
								.join(" · ")}
							{line.cautions.length > 0 ? (
								<ul className="af-cautions">
									{line.cautions.map((caution) => (
										<li key={caution}>{caution}</li>
									))}
								</ul>
							) : null}
							{line.wait > 0 ? <Badge means="wait">then wait {formatWait(line.wait)}</Badge> : null}
						</>
					),
				},
				{
					key: "from",
					head: "From",
					cell: (line) =>
						line.from.length === 0 ? (
							line.kind === "take-out" && line.tag ? (
								<TagChip tag={line.tag} href={`/t/${line.tag}`} size="small" />
							) : null
						) : (
							line.from.map((fetch) => (
								<span key={fetch.tag ?? fetch.words} style={{ display: "block" }}>
									{fetch.tag ? <TagChip tag={fetch.tag} href={`/t/${fetch.tag}`} size="small" /> : fetch.words}
									<span className="af-sub">{fetch.where}</span>
								</span>
							))
						),
				},
				{
					key: "held",
					head: "Held by, wired",
					cell: (line) => (line.fixings.length > 0 ? line.fixings.join("; ") : null),
					sub: (line) => (line.wires.length > 0 ? line.wires.join("; ") : null),
				},
				{
					key: "likely",
					head: "Likely",
					align: "right",
					cell: (line) => (line.minutes.likely > 0 ? formatMinutes(line.minutes.likely) : null),
				},
			]}
		/>
	);
}

/** Layers of what can be done once the layer before is done, from the plan's own "after". */
function Peel({ plan, lines }: { plan: Plan; lines: readonly Line[] }) {
	const depth = new Map<string, number>();
	for (const operation of plan.operations) depth.set(operation.id, Math.max(-1, ...operation.after.map((id) => depth.get(id) ?? 0)) + 1);
	const layers = [...new Set(depth.values())].sort((a, b) => a - b).map((layer) => lines.filter((line) => depth.get(line.id) === layer));
	return (
		<ol className="af-peel">
			{layers.map((layer, index) => (
				<li key={layer[0]?.id ?? index}>
					<p className="af-peel-layer">Layer {index + 1}</p>
					<ul>
						{layer.map((line) => (
							<li key={line.id} data-kind={line.kind} data-trace={line.leavesTrace ? "" : undefined}>
								<span className="af-peel-deed">{line.deed}</span>
								{line.kind === "make-safe" || line.kind === "check" ? null : line.what}
								{line.from[0]?.tag ? <span className="af-sub">{line.from[0].tag}</span> : null}
							</li>
						))}
					</ul>
				</li>
			))}
		</ol>
	);
}

function StaysCard({ plan, facts }: { plan: Plan; facts: ReversalFacts }) {
	const nameOf = new Map(facts.positions.map(({ mark, name }) => [mark, name]));
	// A place that is no position and cannot be undone is nothing to plan, but the next owner must read it.
	const places = facts.alterations.filter(
		({ place, undo, partId, positionId }) => place !== null && undo === "never" && !partId && !positionId,
	);
	const listed = new Set(plan.staysDifferent.map(({ alteration }) => alteration));
	return (
		<Card title="Stays different">
			{plan.staysDifferent.length + places.length + plan.leftAlone.length === 0 ? (
				<p className="af-hint">Nothing: every position comes back.</p>
			) : null}
			<ul className="af-stays">
				{plan.staysDifferent.map((stays) => (
					<li key={`${stays.position} ${stays.alteration ?? ""}`}>
						<strong>
							{stays.position} {nameOf.get(stays.position) ?? ""}
						</strong>
						<span className="af-sub">{stays.why}</span>
						{stays.freedBy ? <span className="af-sub">Freed by {stays.freedBy}.</span> : null}
					</li>
				))}
				{places
					.filter(({ number }) => !listed.has(`a${number}`))
					.map((alteration) => (
						<li key={alteration.id}>
							<strong>{alteration.place}</strong>
							<span className="af-sub">{alteration.what}: cannot be undone</span>
						</li>
					))}
			</ul>
			{plan.leftAlone.length > 0 ? (
				<>
					<h3>Left as it is by choice</h3>
					<p className="af-hint">{plan.leftAlone.map(({ position }) => `${position} ${nameOf.get(position) ?? ""}`).join(", ")}</p>
				</>
			) : null}
			{plan.comesBack.length > 0 ? (
				<>
					<h3>Comes back, but</h3>
					<ul className="af-stays">
						{plan.comesBack.map((back) => (
							<li key={`${back.position} ${back.alteration ?? ""} ${back.say}`}>
								<strong>
									{back.position} {nameOf.get(back.position) ?? ""}
								</strong>
								<span className="af-sub">{back.say}</span>
							</li>
						))}
					</ul>
				</>
			) : null}
			{plan.loops.map((loop) => (
				<Notice key={loop.say} means="stop" live="off">
					{loop.say}
				</Notice>
			))}
		</Card>
	);
}

function FetchCard({ lines }: { lines: readonly Line[] }) {
	const picks = pickList(lines);
	return (
		<Card title="Fetch, in this order" flush>
			<Table
				caption="What to fetch, in the order of the store"
				rows={picks}
				rowKey={(pick) => pick.tag ?? `${pick.words} ${pick.where}`}
				empty={<p className="af-hint">Nothing to fetch.</p>}
				columns={[
					{
						key: "where",
						head: "Where",
						main: true,
						cell: (pick) => pick.where,
						sub: (pick) => pick.words,
					},
					{
						key: "tag",
						head: "Tag",
						cell: (pick) =>
							pick.tag ? <TagChip tag={pick.tag} href={`/t/${pick.tag}`} size="small" /> : <Link href="/store">no tag</Link>,
					},
				]}
			/>
		</Card>
	);
}
