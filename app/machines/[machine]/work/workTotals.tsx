import { formatMinutes } from "@/lib/core/minutes";
import { sixthsToMinutes } from "@/lib/money/pert";
import { type CountedStep, totalsOf } from "@/lib/steps/progress";

/** What all steps of the machine add up to: the plan, what it took, what is still to come. */
export function WorkTotals({ steps }: { readonly steps: readonly CountedStep[] }) {
	const totals = totalsOf(steps);
	const open = steps.filter(({ state }) => state === "planned" || state === "doing").length;
	const figures = [
		{
			value: formatMinutes(totals.planLikely),
			label: "planned, likely",
			more: `${formatMinutes(totals.planLow)} to ${formatMinutes(totals.planHigh)}`,
		},
		{ value: formatMinutes(sixthsToMinutes(totals.planExpected)), label: "planned, expected", more: "(low + 4 likely + high) / 6" },
		{
			value: formatMinutes(totals.actual),
			label: "actual so far",
			more: open === 0 ? "nothing open" : `${open} ${open === 1 ? "step" : "steps"} open`,
		},
		{
			value: formatMinutes(sixthsToMinutes(totals.toCome)),
			label: "still to come, expected",
			more:
				totals.withoutCrew > 0
					? `without ${totals.withoutCrew} ${totals.withoutCrew === 1 ? "step" : "steps"} that nobody is planned for`
					: "",
		},
	];
	return (
		<ul className="grid grid-cols-2 gap-x-6 gap-y-3 md:grid-cols-4" aria-label="Sums over all steps">
			{figures.map(({ value, label, more }) => (
				<li key={label} className="af-figure">
					<span className="af-figure-value">{value}</span>
					<span className="af-figure-label">{label}</span>
					{more ? <span className="af-figure-label">{more}</span> : null}
				</li>
			))}
		</ul>
	);
}
