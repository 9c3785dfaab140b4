// "What must come off first?" against trying everything: every set of positions, and for each whether hands can empty it.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Problem } from "@/lib/reversal/problem";
import { openingFor } from "@/lib/reversal/reach";
import { Bench } from "@/tests/reversal/carryOut";
import { aSmallWorld, aWorldOfChoices } from "@/tests/reversal/smallWorld";

const settings = { numRuns: Number(process.env.ASFOUND_WORLDS ?? 300), seed: Number(process.env.ASFOUND_SEED ?? 1936) };
const LONG = 1000 * 60 * 60;

/** Whether all of a set can be emptied, one after the other, and filled again the other way round. */
function canBeOpened(problem: Problem, opened: readonly string[]): boolean {
	const bench = new Bench(problem);
	// What has come out never stands in the way of anything, so whichever comes out first is as good as any other.
	for (let left = opened.filter((at) => bench.build.has(at)); left.length > 0; ) {
		const next = left.find((at) => bench.isWithinReach(at));
		if (next === undefined) return false;
		bench.build.delete(next);
		left = left.filter((at) => at !== next);
	}
	if (!opened.filter((at) => !Object.hasOwn(problem.now, at)).every((at) => bench.isWithinReach(at))) return false;
	const filled = new Bench(problem);
	for (let left = opened.filter((at) => filled.build.has(at)); left.length > 0; ) {
		const last = left.find((at) => {
			const part = filled.build.get(at) ?? "";
			filled.build.delete(at);
			if (filled.isWithinReach(at)) return true;
			filled.build.set(at, part);
			return false;
		});
		if (last === undefined) return false;
		left = left.filter((at) => at !== last);
	}
	return true;
}

const subsets = (of: readonly string[]): string[][] =>
	of.reduce<string[][]>((all, one) => all.flatMap((set) => [set, [...set, one]]), [[]]);

/** The least opening that has all of `asked`, and the least without one of those that it only opens for them. Null: there is none. */
function byTrying(problem: Problem, asked: readonly string[], openable: readonly string[]) {
	const minutes = (at: string): number => {
		const { out, in: back } = new Map(Object.entries(problem.times ?? {})).get(at) ?? {};
		return Object.hasOwn(problem.now, at) ? (out?.likely ?? 0) + (back?.likely ?? 0) : 0;
	};
	const ways = subsets(openable.filter((at) => !asked.includes(at)))
		.map((more) => [...asked, ...more].sort())
		.filter((set) => canBeOpened(problem, set))
		.map((opened) => ({ opened, minutes: opened.reduce((sum, at) => sum + minutes(at), 0) }))
		.sort((a, b) => a.minutes - b.minutes || a.opened.length - b.opened.length || (a.opened.join("\n") < b.opened.join("\n") ? -1 : 1));
	const best = ways[0];
	if (best === undefined) return null;
	const spared = best.opened.filter((at) => !asked.includes(at));
	const second = ways.find(({ opened }) => spared.some((at) => !opened.includes(at)));
	return { best, second };
}

describe("the opening that reaches some positions", () => {
	for (const [name, worlds] of [
		["small worlds", aSmallWorld(7)],
		["worlds of choices", aWorldOfChoices(7)],
	] as const) {
		it(
			`${name}: is the least one, and the next best is the least without one of those it opens on the way`,
			() => {
				fc.assert(
					fc.property(worlds, fc.nat(), fc.nat(), (problem, a, b) => {
						const ids = problem.positions.map(({ id }) => id);
						const asked = [...new Set([ids[a % ids.length] ?? "", ids[b % ids.length] ?? ""])];
						const reach = openingFor(problem, asked);
						// Nobody can open what is on an assembly that is lost.
						const lost = new Set(problem.parts.filter(({ unavailable }) => unavailable !== undefined).map(({ id }) => id));
						const bench = new Bench(problem);
						const openable = ids.filter((at) => !lost.has(bench.wholeOf(at) ?? ""));
						const within = asked.filter((at) => !reach.outOfReach.includes(at));
						for (const at of reach.outOfReach) expect(openable.includes(at) && byTrying(problem, [at], openable) !== null).toBe(false);
						const answer = byTrying(problem, within, openable);
						expect([reach.opened, reach.minutes]).toEqual([answer?.best.opened, answer?.best.minutes]);
						expect([reach.leastProved, reach.secondBestProved]).toEqual([true, true]);
						expect(reach.secondBest?.minutes).toBe(answer?.second?.minutes);
					}),
					settings,
				);
			},
			LONG,
		);
	}

	it("keeps to one budget, and then says that it proved nothing", () => {
		const [problem] = fc.sample(aWorldOfChoices(10), { numRuns: 1, seed: 3 });
		if (problem === undefined) throw new Error("no world");
		const reach = openingFor(
			problem,
			problem.positions.slice(0, 2).map(({ id }) => id),
			0,
		);
		expect([reach.leastProved, reach.secondBestProved]).toEqual([false, false]);
		expect(canBeOpened(problem, reach.opened)).toBe(true);
	});
});
