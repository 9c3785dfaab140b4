import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PageHead } from "@/app/ui/pageHead";
import { PrintButton } from "@/app/ui/printButton";
import { Segments } from "@/app/ui/segments";
import { Table } from "@/app/ui/table";
import { daysAhead } from "@/lib/calendar/windows";
import { systemClock } from "@/lib/core/clock";
import { day, formatDayShort } from "@/lib/core/days";
import { formatWait } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { currentPerson } from "@/lib/people/current";
import { shopAhead } from "@/lib/schedule/shopQueries";
import { theShop } from "@/lib/shop/queries";
import { BenchTimeline, PlanTable } from "./benchTimeline";
import { Doubts } from "./doubts";
import { NextByPerson } from "./nextByPerson";
import { OneMoreCard } from "./oneMoreCard";
import { momentOf, withoutWords } from "./said";

export const metadata: Metadata = { title: "Plan" };

/** Days in the picture, and how far ahead it can be leafed. */
const WEEK = 7;
const MOST_WEEKS = 52;

export default async function PlanPage({ searchParams }: { searchParams: Promise<Record<string, string | string[] | undefined>> }) {
	const { read } = await shopStore();
	const shop = await theShop(read);
	if (!shop) redirect("/welcome");
	const asked = await searchParams;
	const byRecord = asked.by === "record";
	const withOneMore = asked.more === "hands";
	const week = Math.min(MOST_WEEKS, Math.max(0, Math.floor(Number(asked.week)) || 0));
	const address = (to: { readonly by?: boolean; readonly week?: number }): string => {
		const query = new URLSearchParams({
			...((to.by ?? byRecord) ? { by: "record" } : {}),
			...((to.week ?? week) > 0 ? { week: String(to.week ?? week) } : {}),
		});
		return query.size === 0 ? "/plan" : `/plan?${query}`;
	};
	const [ahead, person] = await Promise.all([shopAhead(read, systemClock(), byRecord), currentPerson()]);
	const { plan, simulation } = ahead;
	const days = daysAhead(ahead.now, shop.timeZone, (week + 1) * WEEK).slice(week * WEEK);
	const lastWeek = Math.min(MOST_WEEKS, Math.floor(plan.makespan / (WEEK * 1440)));
	const machines = ahead.machines.map((machine, at) => ({ ...machine, planned: plan.machines[at], simulated: simulation?.machines[at] }));
	const open = machines.filter(({ planned }) => planned !== undefined && planned.end !== null);
	return (
		<Stack>
			<PageHead
				title="Plan"
				lead="Who does what next, and when each machine is done, all machines together."
				actions={
					<>
						<ButtonLink href="/people/hours">Hours and days off</ButtonLink>
						<ButtonLink href="/plan/record">What our record says</ButtonLink>
					</>
				}
			/>
			<Segments
				label="Which estimates"
				current={address({})}
				options={[
					{ href: address({ by: false }), label: "As estimated" },
					{ href: address({ by: true }), label: "By our record" },
				]}
			/>
			{byRecord ? (
				<p className="text-ink-2">
					Every estimate is multiplied by what steps of its kind took before, also those that were corrected while they were planned.
				</p>
			) : null}
			<Doubts ahead={ahead} />
			{ahead.steps.length === 0 ? (
				<Empty title="Nothing is planned" action={<ButtonLink href="/">Choose a machine</ButtonLink>}>
					Plan steps under a machine's Work: what is to be done, by whom, and what has to come before it.
				</Empty>
			) : (
				<>
					<NextByPerson ahead={ahead} me={person?.id ?? null} />
					<Card
						title="Who does what, and when"
						aside={
							<span className="no-print flex gap-4">
								{week > 0 ? <Link href={address({ week: week - 1 })}>Week before</Link> : null}
								{week < lastWeek ? <Link href={address({ week: week + 1 })}>Week after</Link> : null}
							</span>
						}
					>
						<BenchTimeline ahead={ahead} days={days} />
						<p className="print-only">Planned {momentOf(ahead, 0)}.</p>
					</Card>
					<div className="print-only">
						<Card title="The plan, step by step" flush>
							<PlanTable ahead={ahead} />
						</Card>
					</div>
					<Card title="When each machine is done" flush>
						<Table
							caption="When each machine is done"
							rows={open}
							rowKey={({ id }) => id}
							empty={<Empty title="No machine has a date">What hinders it stands above.</Empty>}
							columns={[
								{
									key: "machine",
									head: "Machine",
									main: true,
									cell: ({ number, name }) => (
										<Link href={`/machines/${number}/work/when`}>
											{number} {name}
										</Link>
									),
									sub: ({ promisedDay }) => (promisedDay === null ? null : `promised ${formatDayShort(day(promisedDay))}`),
								},
								{
									key: "plan",
									head: "By the plan",
									cell: ({ planned, id }) => `${momentOf(ahead, planned?.end ?? 0)}${withoutWords(ahead, id)}`,
									sub: ({ planned }) =>
										planned !== undefined && planned.late > 0 ? <Badge means="stop">{`${formatWait(planned.late)} late`}</Badge> : null,
								},
								{
									key: "alone",
									head: "If it had everybody to itself",
									cell: ({ planned }) => momentOf(ahead, planned?.notBefore ?? 0),
								},
								...([50, 90] as const).map((percent) => ({
									key: `p${percent}`,
									head: percent === 50 ? "1 in 2 by" : "9 in 10 by",
									cell: ({ simulated }: (typeof open)[number]) => {
										const quantile = simulated?.finish.quantiles.find((one) => one.percent === percent);
										return quantile === undefined ? null : momentOf(ahead, quantile.value);
									},
								})),
							]}
						/>
					</Card>
					{withOneMore ? (
						<OneMoreCard ahead={ahead} />
					) : (
						<div className="no-print">
							<ButtonLink href={`${address({})}${address({}).includes("?") ? "&" : "?"}more=hands`}>
								What would one more helper buy?
							</ButtonLink>
						</div>
					)}
					<p className="text-ink-2">
						The last of it is over by {momentOf(ahead, plan.makespan)}; no plan has the last of it over before{" "}
						{momentOf(ahead, plan.lowerBound)}. Machines that were promised come first, then early ends, all machines together.
						{simulation === null ? "" : ` Chances by ${simulation.runs.toLocaleString("en")} runs of this plan, the same seed each time.`}
					</p>
					<div className="no-print">
						<PrintButton>Print the plan</PrintButton>
					</div>
				</>
			)}
		</Stack>
	);
}
