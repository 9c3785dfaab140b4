// The least opening, against a general-purpose solver of integer programs (HiGHS) on the same worlds, and how it grows.
//
// Two kinds of worlds of 300 positions of which 40 have two or three sides: shaped like machines (tests/reversal/makeWorld.ts: layers
// from the outside in, three in a hundred parts replaced, one in five positions on an assembly, 1.6 parts in the way of a side), and hard
// ones (tests/reversal/hardWorld.ts: two or three parts of a narrow band in the way of each side, three in ten on an assembly, up to
// eight changes deep inside; a third of them with a minute for everything, a third with none, so that ties abound).

import { planReversal } from "@/lib/reversal/plan";
import type { Problem } from "@/lib/reversal/problem";
import { byMilp, milpSolver, weightOf } from "@/tests/reversal/byMilp";
import { hardWorld } from "@/tests/reversal/hardWorld";
import { makeWorld } from "@/tests/reversal/makeWorld";
import { percentile, report } from "./timing";

const WORLDS = 200;
/** The solver gets so many seconds a world, and so many in all; worlds it does not come to are not compared. */
const SECONDS = 10;
const SECONDS_IN_ALL = 180;

const likeAMachine = (positions: number, seed: number): Problem =>
	makeWorld({ positions, multiSided: Math.round(positions / 7.5), seed, changed: 0.03, hosted: 0.2, blocking: 1.6 });
const hard = (positions: number, seed: number): Problem =>
	hardWorld({
		positions,
		multiSided: Math.round(positions / 7.5),
		seed,
		minutes: (["ties", "none", "spread"] as const)[seed % 3] ?? "ties",
		blocking: 2 + (seed % 2),
		band: seed % 4 < 2 ? 20 : 60,
		hosted: 0.3,
		changed: 8,
	});

const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);
const ms = (value: number): string => `${value.toFixed(value < 10 ? 1 : 0)} ms`;

function timedPlan(problem: Problem) {
	const start = performance.now();
	const plan = planReversal(problem);
	return { plan, took: performance.now() - start };
}

/** Measures, prints, and gives the number of worlds in which the two differ. */
export async function leastOpening(): Promise<number> {
	const solver = await milpSolver();
	const worlds = Array.from({ length: WORLDS }, (_, n) => (n % 2 === 0 ? likeAMachine(300, n + 1) : hard(300, n + 1)));
	for (const problem of worlds.slice(0, 6)) timedPlan(problem);
	const all: number[] = [];
	const [planner, general]: [number[], number[]] = [[], []];
	let unproved = 0;
	let unfinished = 0;
	let wrong = 0;
	const started = performance.now();
	for (const [n, problem] of worlds.entries()) {
		const { plan, took } = timedPlan(problem);
		all.push(took);
		if (!plan.leastProved) unproved++;
		if (performance.now() - started > SECONDS_IN_ALL * 1000) continue;
		const work = new Set(plan.opened.filter((at) => !plan.openedOnly.includes(at)));
		const undoAt = new Set(plan.operations.flatMap(({ kind, position }) => (kind === "undo" && position !== undefined ? [position] : [])));
		const then = new Map(Object.entries(plan.attains));
		const start = performance.now();
		const other = byMilp(solver, problem, then, work, undoAt, SECONDS);
		planner.push(took);
		general.push(performance.now() - start);
		const weight = weightOf(problem, then, plan.opened);
		const finished = other.status === "Optimal";
		if (!finished) unfinished++;
		// A solver that ran out of time may know a cheaper one all the same; and nothing is cheaper than what is proved.
		if (finished && plan.leastProved ? other.weight !== weight : finished && other.weight > weight) {
			wrong++;
			console.log(`world ${n + 1}: the planner opens for ${weight}, the solver for ${other.weight}`);
		}
	}
	const times = sorted(all);
	console.log(
		`the least opening, 300 positions, 40 with two or three sides, ${WORLDS} worlds: median ${ms(percentile(times, 50))}, worst ${ms(times.at(-1) ?? 0)}; proved least in ${WORLDS - unproved}`,
	);
	report(
		`the whole plan against HiGHS on the opening alone, the same ${general.length} of these worlds (${unfinished} it did not finish in ${SECONDS} s, ${wrong} answers differ)`,
		sorted(planner),
		sorted(general),
		null,
	);
	growth();
	return wrong;
}

function growth(): void {
	let base = 0;
	for (const positions of [50, 100, 300, 1000, 2000]) {
		for (const [name, make] of [
			["like a machine", likeAMachine],
			["hard", hard],
		] as const) {
			const runs = Array.from({ length: positions < 1000 ? 12 : 5 }, (_, n) => timedPlan(make(positions, 1000 + n)));
			const times = sorted(runs.map(({ took }) => took));
			const median = percentile(times, 50);
			if (base === 0) base = median;
			console.log(
				`a plan of ${positions} positions, ${name}: ${(median / base).toFixed(1)}x that of 50 (median ${ms(median)}, worst ${ms(times.at(-1) ?? 0)}; proved least in ${runs.filter(({ plan }) => plan.leastProved).length} of ${runs.length})`,
			);
		}
	}
}
