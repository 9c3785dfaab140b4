import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import { type TimelineBlock, type TimelineLine, TimelinePlot } from "@/app/ui/timeline";
import type { DayAhead } from "@/lib/calendar/windows";
import { formatWeekday } from "@/lib/core/days";
import { formatWait } from "@/lib/core/minutes";
import type { ShopAhead } from "@/lib/schedule/shopQueries";
import { type Slice, type TimelineRow, timelineOf } from "@/lib/schedule/timeline";
import { momentOf, named, waitedWords } from "./said";

/** The bench timeline of these days: people, what machines wait for, equipment; and the same as a table. */
export function BenchTimeline({ ahead, days }: { readonly ahead: ShopAhead; readonly days: readonly DayAhead[] }) {
	const { columns, rows, now } = timelineOf(ahead.asked.problem, ahead.plan, days);
	const line = (row: TimelineRow): TimelineLine => ({
		key: `${row.of} ${row.at}`,
		name: nameOfRow(ahead, row),
		lanes: row.lanes.map((lane) => lane.map((slice, at) => blockOf(ahead, slice, at))),
	});
	const groups = [
		{ name: "People", lines: rows.filter(({ of }) => of === "person").map(line) },
		{ name: "What machines wait for", lines: rows.filter(({ of }) => of === "machine").map(line) },
		{ name: "Equipment", lines: rows.filter(({ of }) => of === "equipment").map(line) },
	].filter(({ lines }) => lines.length > 0);
	return (
		<TimelinePlot
			caption="Who does what, and when"
			columns={columns.map(({ day, ...column }) => ({
				key: day,
				label: formatWeekday(day),
				short: formatWeekday(day).slice(0, -4),
				...column,
			}))}
			groups={groups}
			now={now}
			note="Solid: work, by machine and step. Hatched: a wait, or what is in the post. Outlined: equipment held. Dotted: not in. Nights are left out."
		>
			<PlanTable ahead={ahead} />
		</TimelinePlot>
	);
}

function nameOfRow(ahead: ShopAhead, { of, at }: TimelineRow): string {
	if (of === "person") return ahead.people[at]?.name ?? "";
	if (of === "equipment") return ahead.equipment[at]?.name ?? "";
	const machine = ahead.machines[at];
	return machine === undefined ? "" : `${machine.number} ${machine.name}`;
}

function blockOf(ahead: ShopAhead, { task, parcel, kind, from, until, isLabelled }: Slice, at: number): TimelineBlock {
	const found = named(ahead, ahead.asked.problem.tasks[task]?.id ?? "");
	const purchase = ahead.purchases[parcel];
	const place = { key: `${at}`, kind, from, until };
	if (kind === "off") return { ...place, title: "not in" };
	if (purchase !== undefined)
		return { ...place, label: `purchase ${purchase.number}`, title: `purchase ${purchase.number} is in the post` };
	if (found === null) return { ...place, title: "" };
	const label = kind === "wait" ? found.step.waitWhy || found.short : found.short;
	return {
		...place,
		...(isLabelled ? { label } : {}),
		title: `${found.short} ${found.step.title}${kind === "wait" ? `: ${found.step.waitWhy || "waits"}` : ""}`,
	};
}

/** Every planned step by its start: who, from when to when, its wait, and why not earlier. */
export function PlanTable({ ahead, machineId }: { readonly ahead: ShopAhead; readonly machineId?: string }) {
	const rows = ahead.plan.tasks
		.map((row, task) => ({ ...row, task, found: named(ahead, row.id) }))
		.filter(
			({ found, start }) =>
				found !== null && start < Number.POSITIVE_INFINITY && (machineId === undefined || found.machine.id === machineId),
		)
		.sort((a, b) => a.start - b.start || a.finish - b.finish);
	return (
		<Table
			caption="The plan, step by step"
			rows={rows}
			rowKey={({ id }) => id}
			columns={[
				{
					key: "what",
					head: "Step",
					main: true,
					cell: ({ found }) => (
						<Link href={found?.href ?? "/plan"}>
							{found?.short} {found?.step.title}
						</Link>
					),
					sub: ({ task }) => waitedWords(ahead, task),
				},
				{ key: "who", head: "Who", cell: ({ crew }) => crew.map((person) => ahead.people[person]?.name).join(", ") },
				{ key: "start", head: "Begins", cell: ({ start }) => <Moment>{momentOf(ahead, start)}</Moment> },
				{ key: "finish", head: "Done", cell: ({ finish }) => <Moment>{momentOf(ahead, finish)}</Moment> },
				{
					key: "wait",
					head: "Waits until",
					cell: ({ finish, over }) => (over > finish ? <Moment>{momentOf(ahead, over)}</Moment> : null),
					sub: ({ finish, over, found }) =>
						over > finish ? `${formatWait(over - finish)}${found?.step.waitWhy ? `, ${found.step.waitWhy}` : ""}` : null,
				},
			]}
		/>
	);
}

/** A moment breaks, if it must, between its day and its time. */
function Moment({ children }: { readonly children: string }) {
	const [day = "", time = ""] = children.split(/(?<=,) /);
	return (
		<>
			<span className="whitespace-nowrap">{day}</span> {time}
		</>
	);
}
