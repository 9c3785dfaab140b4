import type { Metadata } from "next";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PrintButton } from "@/app/ui/printButton";
import { Segments } from "@/app/ui/segments";
import { Table } from "@/app/ui/table";
import { systemClock } from "@/lib/core/clock";
import type { Instant } from "@/lib/core/instants";
import { formatMinutes, formatWait } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { soon as soonIn } from "@/lib/machines/bench";
import { sixthsToMinutes } from "@/lib/money/pert";
import { requireShop } from "@/lib/shop/queries";
import { minutesOn, totalsOf } from "@/lib/steps/progress";
import { MOST_STEPS, type StepRow, workOfMachine } from "@/lib/steps/queries";
import { STEP_KIND_WORDS } from "@/lib/steps/schema";
import { thisMachine } from "../thisMachine";
import { SHOWN, type Shown, stepsInView, viewHref, viewOf } from "./filters";
import { StandingBadge } from "./standingBadge";
import { WorkTotals } from "./workTotals";

export const metadata: Metadata = { title: "Work" };

type Props = {
	readonly params: Promise<{ machine: string }>;
	readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
};

export default async function WorkPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const { read } = await shopStore();
	const { timeZone } = await requireShop(read);
	const now = systemClock();
	const soon = (at: Instant) => soonIn(at, now, timeZone);
	const steps = await workOfMachine(read, machine.id, now);
	const base = `/machines/${machine.number}/work`;
	const plan = (
		<ButtonLink href={`${base}/new`} kind="main">
			Plan a step
		</ButtonLink>
	);
	if (steps.length === 0) {
		return (
			<Empty title="No steps yet" action={plan}>
				Plan what is to be done, how long it takes and what has to come before it. Then a clock can run on it, and its cost is known.
			</Empty>
		);
	}
	const view = viewOf(await searchParams);
	const rows = stepsInView(steps, view);
	const totals = totalsOf(rows);
	const crews = [...new Map(steps.flatMap(({ crew }) => crew).map((person) => [person.initials, person])).values()].sort((a, b) =>
		a.name.localeCompare(b.name, "en"),
	);
	const nobody = steps.some(({ crew }) => crew.length === 0);
	const three = (step: StepRow) => `${formatMinutes(step.low)} to ${formatMinutes(step.high)}`;
	const filters = (
		<>
			<Segments
				label="Which steps"
				current={viewHref(base, view)}
				options={(Object.keys(SHOWN) as Shown[]).map((shown) => ({ href: viewHref(base, { ...view, shown }), label: SHOWN[shown] }))}
			/>
			{crews.length > 1 || nobody ? (
				<Segments
					label="Whose steps"
					current={viewHref(base, view)}
					options={[
						{ href: viewHref(base, { ...view, who: "" }), label: "Everybody" },
						...crews.map(({ initials, name }) => ({ href: viewHref(base, { ...view, who: initials }), label: name })),
						...(nobody ? [{ href: viewHref(base, { ...view, who: "-" }), label: "Nobody yet" }] : []),
					]}
				/>
			) : null}
		</>
	);
	return (
		<Stack>
			{/* On a phone what can be done comes first. */}
			<div className="max-sm:order-last">
				<WorkTotals steps={steps} />
			</div>
			<div className="no-print flex flex-wrap items-center justify-between gap-x-6 gap-y-2">
				<div className="flex flex-wrap gap-x-6 gap-y-2 max-sm:hidden">{filters}</div>
				<details className="w-full sm:hidden">
					<summary>{`${SHOWN[view.shown]} · ${crews.find(({ initials }) => initials === view.who)?.name ?? (view.who === "-" ? "nobody yet" : "everybody")}`}</summary>
					<div className="flex flex-col gap-2 pt-2">{filters}</div>
				</details>
				<div className="flex flex-wrap gap-3">
					<ButtonLink href={`${base}/when`}>When it is done</ButtonLink>
					<span className="max-sm:hidden">
						<PrintButton>Print the list</PrintButton>
					</span>
					{plan}
				</div>
			</div>
			<Card flush>
				<Table
					caption={`Steps of ${machine.name}: ${SHOWN[view.shown]}`}
					rows={rows}
					rowKey={(step) => step.id}
					empty={
						<div className="p-4">
							<Empty title="No step in this view">
								<Link href={base}>Show all steps</Link>
							</Empty>
						</div>
					}
					columns={[
						{
							key: "what",
							head: view.byNumber ? "Step, by number" : "Step, what can be done first",
							main: true,
							sort: { href: viewHref(base, { ...view, byNumber: !view.byNumber }), now: view.byNumber ? "up" : undefined },
							cell: (step) => (
								<Link href={`${base}/${step.number}`}>
									{step.number} {step.title}
								</Link>
							),
							sub: (step) => <Under step={step} />,
						},
						{
							key: "stands",
							head: "Stands",
							cell: (step) => <StandingBadge standing={step.standing} hindered={step.hindered} soon={soon} />,
							sub: (step) =>
								[
									step.clocks.map(({ name }) => name).join(", "),
									step.standing === "needs" || step.needs.length === 0 ? "" : `after ${step.needs.join(", ")}`,
								]
									.filter(Boolean)
									.join(" · "),
						},
						{
							key: "who",
							head: "Who",
							cell: (step) => step.crew.map(({ name }) => name).join(", ") || <span className="text-ink-2">nobody yet</span>,
						},
						{
							key: "likely",
							head: "Likely",
							align: "right",
							cell: (step) => formatMinutes(step.likely),
							sub: three,
							foot: formatMinutes(totals.planLikely),
						},
						{
							key: "actual",
							head: "Actual",
							align: "right",
							cell: (step) => (step.time.length === 0 ? null : formatMinutes(minutesOn(step))),
							foot: formatMinutes(totals.actual),
						},
						{
							key: "wait",
							head: "Wait after",
							cell: (step) => (step.waitMinutes === 0 ? null : formatWait(step.waitMinutes)),
							sub: (step) => (step.waitsUntil === null ? step.waitWhy : <Badge means="wait">{`until ${soon(step.waitsUntil)}`}</Badge>),
						},
					]}
				/>
			</Card>
			<p className="text-ink-2">
				Sums count every person: a step for two counts twice. Steps of the first plan: expected{" "}
				{formatMinutes(sixthsToMinutes(totals.planExpected))} in this view.
				{steps.length === MOST_STEPS ? ` Only the first ${MOST_STEPS} steps are shown.` : ""}
			</p>
		</Stack>
	);
}

function Under({ step }: { step: StepRow }) {
	const words = [
		STEP_KIND_WORDS[step.kind],
		step.position ? `${step.position.mark} ${step.position.name}` : "",
		step.conversion ? `C${step.conversion.number} ${step.conversion.name}` : "",
		step.addedWhy ? `added: ${step.addedWhy}` : "",
	].filter(Boolean);
	return (
		<>
			{words.join(" · ")}
			{step.caution ? (
				<>
					{" "}
					<Badge means="stop">caution</Badge>
				</>
			) : null}
		</>
	);
}
