// Simulation of a plan that is kept to: the steps are done in the plan's order, each as early as its needs and its people and
// equipment allow, and take what chance makes of their estimates. Pure: chance is handed in. Time is counted in seconds, so that
// rounding a draw does not show.

import type { Random } from "@/lib/core/random";
import type { ThreePoint } from "@/lib/money/pert";
import { betaPert } from "@/lib/schedule/betaPert";
import { type ProjectInput, projectOf } from "@/lib/schedule/project";
import { type SampleSummary, summaryOf } from "@/lib/schedule/sample";
import { inOrderOf, Serial } from "@/lib/schedule/serial";

export type SimulatedStep = {
	readonly estimate: ThreePoint;
	/** Minutes; no spread: glue takes what it takes. */
	readonly wait: number;
	/** Numbers of the steps that must be over before. */
	readonly after: readonly number[];
	/** Amount of each resource. */
	readonly uses: readonly number[];
	/** What a minute of it costs, in any unit; for its people together. */
	readonly costAMinute: number;
};

export type Simulation = {
	/** When everything is over, in minutes from the start. */
	readonly finish: SampleSummary;
	readonly cost: SampleSummary;
	/** By step: the share of the runs in which it was on a critical path, 0 to 1. */
	readonly critical: readonly number[];
};

const SECONDS = 60;

/**
 * Runs the plan so many times. `planned` are the starts of the plan that is kept to, by step. Requires needs without a loop and
 * amounts that are there.
 */
export function simulate(
	{
		capacity,
		steps,
		planned,
	}: { readonly capacity: readonly number[]; readonly steps: readonly SimulatedStep[]; readonly planned: readonly number[] },
	runs: number,
	random: Random,
): Simulation {
	const input: ProjectInput = {
		capacity,
		activities: steps.map(({ estimate, wait, after, uses }) => ({ minutes: estimate.likely * SECONDS, wait: wait * SECONDS, after, uses })),
	};
	const project = projectOf(input);
	const { count, duration } = project;
	const serial = new Serial(project);
	const list = new Int32Array(count);
	inOrderOf(Int32Array.from(planned), project.rank, list);
	const draws = steps.map(({ estimate }) => betaPert(estimate, random));
	const start = new Int32Array(count);
	const critical = new Float64Array(count);
	const critics = new Critics(project);
	const [finish, cost] = [new Float64Array(runs), new Float64Array(runs)];
	for (let run = 0; run < runs; run++) {
		let spent = 0;
		for (let a = 0; a < count; a++) {
			const minutes = draws[a]?.() ?? 0;
			duration[a] = Math.round(minutes * SECONDS);
			spent += minutes * (steps[a]?.costAMinute ?? 0);
		}
		const makespan = serial.schedule(list, project.forwards, start);
		finish[run] = makespan / SECONDS;
		cost[run] = spent;
		for (const a of critics.of(start, makespan)) critical[a] = (critical[a] ?? 0) + 1;
	}
	return { finish: summaryOf(finish), cost: summaryOf(cost), critical: [...critical].map((times) => times / runs) };
}

/** Finds what a finished schedule was held up by: from its end back along what each step waited for. */
class Critics {
	private readonly isCritical: Uint8Array;
	private readonly pending: number[] = [];

	constructor(private readonly project: ReturnType<typeof projectOf>) {
		this.isCritical = new Uint8Array(project.count);
	}

	of(start: Int32Array, makespan: number): number[] {
		const { count, duration, forwards } = this.project;
		const { isCritical, pending } = this;
		isCritical.fill(0);
		const found: number[] = [];
		const take = (a: number) => {
			if (isCritical[a] === 1) return;
			isCritical[a] = 1;
			found.push(a);
			pending.push(a);
		};
		for (let a = 0; a < count; a++) if ((start[a] as number) + (duration[a] as number) + (forwards.tail[a] as number) === makespan) take(a);
		for (let a = pending.pop(); a !== undefined; a = pending.pop()) {
			const moment = start[a] as number;
			let held = false;
			for (let arc = forwards.arcStart[a] as number; arc < (forwards.arcStart[a + 1] as number); arc++) {
				const need = forwards.arcFrom[arc] as number;
				if ((start[need] as number) + (duration[need] as number) + (forwards.arcLag[arc] as number) !== moment) continue;
				held = true;
				take(need);
			}
			// Nothing that it needs ended just then: it waited for whoever held what it holds.
			if (held || moment === 0) continue;
			for (let b = 0; b < count; b++) if ((start[b] as number) + (duration[b] as number) === moment && this.shares(a, b)) take(b);
		}
		return found;
	}

	private shares(a: number, b: number): boolean {
		const { useStart, useOf } = this.project;
		for (let u = useStart[a] as number; u < (useStart[a + 1] as number); u++)
			for (let v = useStart[b] as number; v < (useStart[b + 1] as number); v++) if (useOf[u] === useOf[v]) return true;
		return false;
	}
}
