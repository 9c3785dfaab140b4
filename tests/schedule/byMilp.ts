// The least makespan as a mixed integer program with a yes or no for each activity and each minute, for a general-purpose solver.
// Shares no code with the scheduler.

import type { CheckedProblem } from "@/tests/schedule/checkSchedule";

type Solver = {
	solve(
		model: string,
		options: Readonly<Record<string, number>>,
	): { readonly Status: string; readonly Columns: Readonly<Record<string, { readonly Primal?: number }>> };
};

/** The least makespan; `horizon` is a length that surely suffices. Null when the solver did not come to an end. */
export function leastByMilp(solver: Solver, { resources = [], activities }: CheckedProblem, horizon: number, seconds = 30): number | null {
	const x = (a: number, t: number): string => `x${a}t${t}`;
	const starts = activities.map(({ minutes, wait = 0 }) => Array.from({ length: Math.max(0, horizon - minutes - wait) + 1 }, (_, t) => t));
	const rows: string[] = [];
	const at = (a: number, sign: string): string => (starts[a] ?? []).map((t) => `${sign} ${t} ${x(a, t)}`).join(" ");
	activities.forEach(({ minutes, wait = 0, after = [] }, a) => {
		rows.push(`${(starts[a] ?? []).map((t) => x(a, t)).join(" + ")} = 1`);
		rows.push(`last ${at(a, "-")} >= ${minutes + wait}`);
		for (const need of after) {
			const b = activities.findIndex(({ id }) => id === need);
			const before = activities[b];
			if (before === undefined) throw new Error(`unknown need ${need}`);
			rows.push(`${at(a, "+")} ${at(b, "-")} >= ${before.minutes + (before.wait ?? 0)}`);
		}
	});
	for (const { id, capacity } of resources)
		for (let t = 0; t < horizon; t++) {
			const held = activities.flatMap(({ minutes, uses }, a) => {
				const amount = uses?.[id] ?? 0;
				return amount === 0 ? [] : (starts[a] ?? []).filter((s) => s <= t && t < s + minutes).map((s) => `${amount} ${x(a, s)}`);
			});
			if (held.length > 0) rows.push(`${held.join(" + ")} <= ${capacity}`);
		}
	const model = [
		"Minimize",
		" obj: last",
		"Subject To",
		...rows.map((row, n) => ` r${n}: ${row}`),
		"Bounds",
		` 0 <= last <= ${horizon}`,
		"Binary",
		...activities.flatMap((_, a) => (starts[a] ?? []).map((t) => ` ${x(a, t)}`)),
		"End",
	].join("\n");
	const { Status, Columns } = solver.solve(model, { mip_rel_gap: 0, mip_abs_gap: 0.5, time_limit: seconds });
	return Status === "Optimal" ? Math.round(Columns.last?.Primal ?? Number.NaN) : null;
}
