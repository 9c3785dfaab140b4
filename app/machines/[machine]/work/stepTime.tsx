import { Badge } from "@/app/ui/badge";
import { Empty } from "@/app/ui/empty";
import { Table } from "@/app/ui/table";
import { dayOf, formatDayShort, timeOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { formatMinutes } from "@/lib/core/minutes";
import type { StepPage } from "@/lib/steps/queries";
import { VoidTimeForm } from "./stepForms";

/** Every piece of time on a step: timed, from memory, and what was taken back. */
export function StepTime({ time, timeZone }: { readonly time: StepPage["allTime"]; readonly timeZone: string }) {
	return (
		<Table
			caption="Time on this step"
			rows={time}
			rowKey={(work) => work.id}
			empty={
				<div className="p-4">
					<Empty title="No time yet">Start the clock, or add what it took from memory.</Empty>
				</div>
			}
			columns={[
				{
					key: "who",
					head: "Who",
					main: true,
					cell: (work) => work.person.name,
					sub: (work) => (work.how === "void" ? "" : work.note),
				},
				{
					key: "when",
					head: "When",
					cell: (work) => {
						const from = instant(work.startedAt);
						return `${formatDayShort(dayOf(from, timeZone))}, ${timeOf(from, timeZone)}`;
					},
				},
				{
					key: "minutes",
					head: "Time",
					align: "right",
					cell: (work) =>
						work.how === "void" ? <s>{formatMinutes(work.minutes ?? 0)}</s> : work.minutes === null ? "runs" : formatMinutes(work.minutes),
				},
				{
					key: "how",
					head: "How",
					cell: (work) =>
						work.how === "added" ? (
							<Badge>from memory</Badge>
						) : work.how === "void" ? (
							<span className="text-ink-2">{`taken back: ${work.note}`}</span>
						) : (
							"timed"
						),
				},
				{
					key: "back",
					head: "Take back",
					hideHead: true,
					cell: (work) =>
						work.how === "void" ? null : (
							<VoidTimeForm workId={work.id} whose={work.minutes === null ? "this clock" : `these ${formatMinutes(work.minutes)}`} />
						),
				},
			]}
		/>
	);
}
