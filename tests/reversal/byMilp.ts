// The least opening as a mixed integer program, for a general-purpose solver. Shares no code with the planner: what parts
// what is read off the two builds here again, and who comes before whom is a number for each position.

import highs from "highs";
import type { Problem } from "@/lib/reversal/problem";

type Solver = {
	solve(
		model: string,
		options: Readonly<Record<string, number>>,
	): { readonly Status: string; readonly Columns: Readonly<Record<string, { readonly Primal?: number }>> };
};

/** HiGHS, an open solver of linear and integer programs. */
export const milpSolver = async (): Promise<Solver> => {
	const solver = await highs();
	return {
		solve: (model, options) => {
			const { Status, Columns } = solver.solve(model, options);
			const primal = (column: object): number | undefined =>
				"Primal" in column && typeof column.Primal === "number" ? column.Primal : undefined;
			return { Status, Columns: Object.fromEntries(Object.entries(Columns).map(([name, column]) => [name, { Primal: primal(column) }])) };
		},
	};
};

type Build = ReadonlyMap<string, string>;

/** Emptying any position on the path between a position and a part, in the tree of hosts, parts the two. Null: different wholes. */
function pathBetween(host: ReadonlyMap<string, string | undefined>, placeOf: Build, position: string, part: string): string[] | null {
	const up = (at: string): { chain: string[]; root: string } => {
		const chain: string[] = [];
		for (let p = at; ; ) {
			const on = host.get(p);
			if (on === undefined) return { chain, root: "" };
			const next = placeOf.get(on);
			if (next === undefined) return { chain, root: on };
			chain.push(next);
			p = next;
		}
	};
	const place = placeOf.get(part);
	if (place === undefined) return null;
	const [a, b] = [up(position), up(place)];
	if (a.root !== b.root) return null;
	const own = [place, ...b.chain];
	return [...new Set([...a.chain.filter((p) => !own.includes(p)), ...own.filter((p) => !a.chain.includes(p)), place])];
}

/** Likely minutes first, then the number of positions, in one number. */
export function weightOf(problem: Problem, then: Build, opened: Iterable<string>): number {
	const now = new Map(Object.entries(problem.now));
	const times = new Map(Object.entries(problem.times ?? {}));
	let sum = 0;
	for (const at of opened) {
		const { out, in: back } = times.get(at) ?? {};
		const minutes = (now.has(at) ? (out?.likely ?? 0) : 0) + (then.has(at) ? (back?.likely ?? 0) : 0);
		sum += minutes * (problem.positions.length + 1) + 1;
	}
	return sum;
}

export type MilpAnswer = { readonly status: string; readonly opened: readonly string[]; readonly weight: number };

/** The least opening that brings now to `then`, opens `work` and gets at `undoAt`. */
export function byMilp(
	solver: Solver,
	problem: Problem,
	then: Build,
	work: ReadonlySet<string>,
	undoAt: ReadonlySet<string>,
	seconds = 120,
): MilpAnswer {
	const now: Build = new Map(Object.entries(problem.now));
	const ids = problem.positions.map(({ id }) => id);
	const number = new Map(ids.map((id, n) => [id, n]));
	const host = new Map(problem.positions.map((one) => [one.id, one.host]));
	const x = (at: string): string => `x${number.get(at)}`;
	const rows: string[] = [];
	const binaries = new Set(ids.map(x));
	const bounds: string[] = [];
	const most = ids.length;
	let ways = 0;
	for (const [direction, build] of [["o", now] as const, ["i", then] as const]) {
		const placeOf = new Map([...build].map(([at, held]) => [held, at]));
		for (const at of ids) bounds.push(`0 <= ${direction}${number.get(at)} <= ${most}`);
		for (const { id, sides } of problem.positions) {
			if (!build.has(id) && !(direction === "o" && undoAt.has(id) && !then.has(id))) continue;
			const chosen: string[] = [];
			for (const side of sides ?? [null]) {
				const paths = problem.obstructions
					.filter(
						(o) => o.position === id && placeOf.get(o.part) !== id && (side === null || o.sides === undefined || o.sides.includes(side)),
					)
					.map((o) => pathBetween(host, placeOf, id, o.part))
					.filter((path) => path !== null);
				const way = `w${ways++}`;
				binaries.add(way);
				chosen.push(way);
				for (const path of paths) {
					if (path.includes(id) && direction === "i") continue;
					const names = path
						.filter((p) => p !== id)
						.map((p, n) => {
							const name = `z${rows.length}n${n}`;
							binaries.add(name);
							rows.push(`${name} - ${x(p)} <= 0`);
							// Through p only if p comes first.
							rows.push(`${direction}${number.get(id)} - ${direction}${number.get(p)} - ${most + 1} ${name} >= ${-most}`);
							return name;
						});
					rows.push(`${names.join(" + ")} - ${way} >= 0`);
				}
			}
			rows.push(chosen.length === 0 ? `${x(id)} = 0` : `${chosen.join(" + ")} - ${x(id)} >= 0`);
		}
	}
	for (const at of work) rows.push(`${x(at)} = 1`);
	const model = [
		"Minimize",
		` obj: ${ids.map((at) => `${weightOf(problem, then, [at])} ${x(at)}`).join(" + ")}`,
		"Subject To",
		...rows.map((row, n) => ` r${n}: ${row}`),
		"Bounds",
		...bounds,
		"Binary",
		...[...binaries].map((name) => ` ${name}`),
		"End",
	].join("\n");
	const solution = solver.solve(model, { mip_rel_gap: 0, mip_abs_gap: 0.5, time_limit: seconds });
	const opened = ids.filter((at) => (solution.Columns[x(at)]?.Primal ?? 0) > 0.5);
	return { status: solution.Status, opened, weight: weightOf(problem, then, opened) };
}
