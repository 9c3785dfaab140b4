import { dayOf, formatDayShort } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import type { RunRow } from "@/lib/tests/queries";
import { VerdictMark } from "./verdictMark";

/** A reading with its unit, where it is a figure that does not name one. */
export const withUnit = (value: string, unit: string): string =>
	unit !== "" && /\d$/.test(value) && !/ of \d+$/.test(value) ? `${value} ${unit}` : value;

/** The runs of one test before or after the work, earliest first. Runs that failed stay among them. */
export function Runs({ runs, unit, timeZone }: { readonly runs: readonly RunRow[]; readonly unit: string; readonly timeZone: string }) {
	return (
		<ul className="flex flex-col gap-2">
			{runs.map((run) => (
				<li key={run.id}>
					<span className="flex flex-wrap items-baseline gap-x-2">
						<strong>{withUnit(run.value, unit)}</strong>
						<VerdictMark verdict={run.verdict} />
					</span>
					<span className="af-sub">
						{[run.instrument, run.person.name, formatDayShort(dayOf(instant(run.at), timeZone))].filter(Boolean).join(" · ")}
					</span>
					{run.words ? <span className="af-sub">{run.words}</span> : null}
				</li>
			))}
		</ul>
	);
}
