import type { Metadata } from "next";
import { PlanTable } from "@/app/plan/benchTimeline";
import { Doubts } from "@/app/plan/doubts";
import { momentOf, named, waitedWords, withoutWords } from "@/app/plan/said";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Curve } from "@/app/ui/curve";
import { Empty } from "@/app/ui/empty";
import { Facts } from "@/app/ui/facts";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PrintButton } from "@/app/ui/printButton";
import { Segments } from "@/app/ui/segments";
import { Table } from "@/app/ui/table";
import { systemClock } from "@/lib/core/clock";
import { day, dayOf, formatDay } from "@/lib/core/days";
import { formatWait } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { formatAmount, minor } from "@/lib/money/money";
import { machineMoney } from "@/lib/money/queries";
import { finishCurve } from "@/lib/schedule/finishCurve";
import { shopAhead } from "@/lib/schedule/shopQueries";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../../thisMachine";
import { PromiseForm } from "./promiseForm";

export const metadata: Metadata = { title: "When it is done" };

const CHANCES: Readonly<Record<number, string>> = { 10: "1 in 10", 50: "1 in 2", 80: "8 in 10", 90: "9 in 10" };
/** Steps that hardly ever mattered are left out of what the end hangs on. */
const MATTERS = 0.05;

type Props = {
	readonly params: Promise<{ machine: string }>;
	readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
};

export default async function WhenPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const { read } = await shopStore();
	const shop = await requireShop(read);
	const byRecord = (await searchParams).by === "record";
	const now = systemClock();
	const [ahead, money] = await Promise.all([shopAhead(read, now, byRecord), machineMoney(read, machine.id, dayOf(now, shop.timeZone))]);
	const at = ahead.machines.findIndex(({ id }) => id === machine.id);
	const planned = ahead.plan.machines[at];
	const simulated = ahead.simulation?.machines[at];
	const base = `/machines/${machine.number}/work`;
	if (planned === undefined || planned.end === null || simulated === undefined) {
		return (
			<Stack>
				<Doubts ahead={ahead} machineId={machine.id} />
				<Empty title="Nothing of this machine can be dated" action={<ButtonLink href={`${base}/new`}>Plan a step</ButtonLink>}>
					{ahead.steps.some(({ machineId }) => machineId === machine.id)
						? "What hinders it stands above."
						: "No step of it is open. Plan what is still to be done, and this page says when it is over."}
				</Empty>
				<Card title="Promise">
					<PromiseForm machineId={machine.id} promisedDay={ahead.machines[at]?.promisedDay ?? null} />
				</Card>
			</Stack>
		);
	}
	const when = (minutes: number): string => momentOf(ahead, minutes);
	const curve = finishCurve(simulated.ends, { from: ahead.now, timeZone: shop.timeZone, quantiles: simulated.finish.quantiles });
	const promised = ahead.machines[at]?.promisedDay ?? null;
	const labourToCome = money === null ? 0 : money.labour.persons.reduce((sum, { toCome }) => sum + toCome, 0);
	const sure = money === null ? null : money.summary.total.atCompletion - labourToCome;
	const amount = (value: number): string => formatAmount(minor(Math.round(value)), shop.currency);
	const mattering = ahead.plan.tasks
		.map((row, task) => ({ ...row, task, share: simulated.critical[task] ?? 0, found: named(ahead, row.id) }))
		.filter(({ share, found }) => share >= MATTERS && found !== null)
		.sort((a, b) => b.share - a.share || a.start - b.start);
	const parcels = ahead.purchases.flatMap(({ number }, parcel) => {
		const share = simulated.parcels[parcel] ?? 0;
		return share >= MATTERS ? [{ number, share }] : [];
	});
	return (
		<Stack>
			<Segments
				label="Which estimates"
				current={byRecord ? `${base}/when?by=record` : `${base}/when`}
				options={[
					{ href: `${base}/when`, label: "As estimated" },
					{ href: `${base}/when?by=record`, label: "By our record" },
				]}
			/>
			<Doubts ahead={ahead} machineId={machine.id} />
			<Columns>
				<Stack>
					<Card title="How likely it is done by when">
						<Curve
							caption={`${machine.name} is done`}
							points={curve.points}
							ticks={curve.ticks}
							marks={curve.marks.map(({ percent, x, y, minutes }) => ({
								x,
								y,
								label: `${CHANCES[percent] ?? `${percent} %`} by ${when(minutes)}`,
							}))}
							line={promised === null ? null : curve.lineAt(ahead.asked.problem.machines[at]?.promised ?? 0, "promised")}
							note={`${ahead.simulation?.runs.toLocaleString("en")} runs of the plan, drawn from the beta-PERT distribution of every estimate, wait and parcel, everybody's hours kept.`}
						>
							<Table
								caption="How likely it is done by when"
								stack="never"
								rows={simulated.finish.quantiles}
								rowKey={({ percent }) => `${percent}`}
								columns={[
									{ key: "chance", head: "Chance", main: true, cell: ({ percent }) => CHANCES[percent] ?? `${percent} %` },
									{ key: "by", head: "Done by", cell: ({ value }) => when(value) },
									{
										key: "error",
										head: "The simulation may be off by",
										cell: ({ low, high }) => (Number.isFinite(high) ? formatWait(Math.ceil((high - low) / 2)) : null),
									},
								]}
							/>
						</Curve>
					</Card>
					<Card title="What its end hangs on" flush>
						{parcels.map(({ number, share }) => (
							<p key={number} className="px-4 pt-3">
								In {Math.round(share * 100)} of 100 runs it waits for <Link href={`/buying/${number}`}>purchase {number}</Link>, which is in
								the post.
							</p>
						))}
						<Table
							caption="Steps on which the end hung, by how often"
							rows={mattering}
							rowKey={({ id }) => id}
							columns={[
								{
									key: "step",
									head: "Step",
									main: true,
									cell: ({ found }) => (
										<Link href={found?.href ?? base}>
											{found?.short} {found?.step.title}
										</Link>
									),
									sub: ({ task }) => waitedWords(ahead, task),
								},
								{ key: "who", head: "Who", cell: ({ crew }) => crew.map((person) => ahead.people[person]?.name).join(", ") },
								{ key: "share", head: "Of 100 runs", align: "right", cell: ({ share }) => Math.round(share * 100) },
							]}
						/>
					</Card>
					<Card title="The plan, step by step" flush>
						<PlanTable ahead={ahead} machineId={machine.id} />
					</Card>
				</Stack>
				<Stack>
					<Card title="By the plan">
						<Facts
							facts={[
								{
									label: "Done",
									value: (
										<strong>
											{when(planned.end)}
											{withoutWords(ahead, machine.id)}
										</strong>
									),
								},
								{ label: "If it had everybody to itself", value: when(planned.notBefore) },
								{
									label: "Later for other machines, by the clock",
									value: planned.end > planned.notBefore ? formatWait(Math.floor(planned.end - planned.notBefore)) : "nothing",
								},
								{ label: "Promised", value: promised === null ? null : formatDay(day(promised)) },
								{ label: "In time, of 100 runs", value: simulated.inTime === null ? null : Math.round(simulated.inTime * 100) },
							]}
						/>
						<p className="af-hint">
							The plan counts with likely times. Most estimates are likelier to be passed than not, so 1 in 2 is usually later.
						</p>
					</Card>
					<Card title="Promise">
						<PromiseForm machineId={machine.id} promisedDay={promised} />
					</Card>
					{sure === null ? null : (
						<Card title="What it comes to" aside={shop.currency} flush>
							<Table
								caption="Cost at completion, by chance"
								stack="never"
								rows={simulated.cost.quantiles}
								rowKey={({ percent }) => `${percent}`}
								columns={[
									{ key: "chance", head: "Chance", main: true, cell: ({ percent }) => CHANCES[percent] ?? `${percent} %` },
									{ key: "cost", head: "At most", align: "decimal", cell: ({ value }) => amount(sure + value) },
								]}
							/>
							<p className="af-hint px-4 pb-3">
								Spent and other costs to come {amount(sure)}, and the labour to come on average {amount(simulated.cost.mean)}, off by{" "}
								{amount(simulated.cost.meanError)} at most two times in three. What is bought is counted as estimated.
							</p>
						</Card>
					)}
					<div className="no-print">
						<PrintButton>Print</PrintButton>
					</div>
				</Stack>
			</Columns>
		</Stack>
	);
}
