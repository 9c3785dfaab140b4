// The planner's answer from its definition alone, by trying everything. Unfit for use and meant to be obviously right.
// Shares no code with the planner. For worlds of about ten positions.

import type { Problem } from "@/lib/reversal/problem";

type Builds = ReadonlyMap<string, string>;
export type Answer = { attains: Builds; opened: string[]; staysDifferent: string[] };

const fits = (build: Builds, part: string): string | undefined => [...build].find(([, held]) => held === part)?.[0];

function whole(problem: Problem, build: Builds, position: string): string {
	const host = problem.positions.find(({ id }) => id === position)?.host;
	if (host === undefined) return "the machine";
	const place = fits(build, host);
	return place === undefined ? `loose ${host}` : whole(problem, build, place);
}

function reachable(problem: Problem, build: Builds, position: string): boolean {
	const { sides } = problem.positions.find(({ id }) => id === position) ?? {};
	return (sides ?? [""]).some(
		(side) =>
			!problem.obstructions.some((o) => {
				const place = fits(build, o.part);
				return (
					o.position === position &&
					(o.sides === undefined || o.sides.includes(side)) &&
					place !== undefined &&
					place !== position &&
					whole(problem, build, place) === whole(problem, build, position)
				);
			}),
	);
}

const without = (build: Builds, position: string): Builds => new Map([...build].filter(([at]) => at !== position));

/**
 * Every order of taking out of the present build is tried, and every order of putting into the target. Where all that differs
 * is opened, the two builds are the same once it is out.
 */
function canBeWorked(problem: Problem, then: Builds, opened: ReadonlySet<string>, undoAt: ReadonlySet<string>): boolean {
	const now: Builds = new Map(Object.entries(problem.now));
	const bareNow: Builds = new Map([...now].filter(([at]) => !opened.has(at)));
	const bareThen: Builds = new Map([...then].filter(([at]) => !opened.has(at)));
	const seenOut = new Set<string>();
	const out = (build: Builds): boolean => {
		const left = [...build.keys()].filter((at) => opened.has(at));
		if (left.length === 0) return true;
		const key = left.sort().join();
		if (seenOut.has(key)) return false;
		seenOut.add(key);
		return left.some((at) => reachable(problem, build, at) && out(without(build, at)));
	};
	const seenIn = new Set<string>();
	const back = (build: Builds, left: string[]): boolean => {
		if (left.length === 0) return true;
		const key = left.join();
		if (seenIn.has(key)) return false;
		seenIn.add(key);
		return left.some(
			(at) =>
				reachable(problem, build, at) &&
				back(
					new Map([...build, [at, then.get(at) ?? ""]]),
					left.filter((other) => other !== at),
				),
		);
	};
	return (
		out(now) &&
		[...undoAt].every((at) => !opened.has(at) || reachable(problem, !now.has(at) && then.has(at) ? bareThen : bareNow, at)) &&
		back(
			bareThen,
			[...then.keys()].filter((at) => opened.has(at)),
		)
	);
}

function attainable(problem: Problem, looped: ReadonlySet<string>): Map<string, string> {
	const now = new Map(Object.entries(problem.now));
	const target = new Map(Object.entries(problem.target));
	const lost = new Set(problem.parts.filter(({ unavailable }) => unavailable !== undefined).map(({ id }) => id));
	const inScope = (at: string) => problem.scope === undefined || problem.scope.includes(at);
	const outOfHand = (at: string) => lost.has(whole(problem, now, at).replace(/^loose /, ""));
	const keeps = (at: string) => {
		const host = problem.positions.find(({ id }) => id === at)?.host;
		return !inScope(at) || looped.has(at) || outOfHand(at) || (host !== undefined && fits(target, host) === undefined);
	};
	const fails = new Set(problem.positions.map(({ id }) => id).filter(keeps));
	const excluded = (a: string, b: string) =>
		problem.parts.some(({ id, excludes }) => (id === a && excludes?.includes(b)) || (id === b && excludes?.includes(a)));
	for (;;) {
		const reached = new Map<string, string>();
		for (const { id } of problem.positions) {
			const part = target.get(id);
			if (!fails.has(id) && part !== undefined) reached.set(id, part);
		}
		const wanted = new Set(reached.values());
		for (const at of fails) {
			const held = now.get(at);
			if (held !== undefined && (keeps(at) || !wanted.has(held))) reached.set(at, held);
		}
		const failing = (hindered: (at: string, part: string) => boolean): boolean => {
			const more = problem.positions
				.map(({ id }) => id)
				.filter((at) => {
					const part = target.get(at);
					return !fails.has(at) && part !== undefined && part !== now.get(at) && hindered(at, part);
				});
			for (const at of more) fails.add(at);
			return more.length > 0;
		};
		const cannotBeHad = failing((at, part) => {
			const place = fits(now, part);
			const host = problem.positions.find(({ id }) => id === at)?.host;
			return lost.has(part) || (place !== undefined && keeps(place)) || (host !== undefined && lost.has(host));
		});
		if (cannotBeHad) continue;
		const ring = problem.positions
			.map(({ id }) => id)
			.sort()
			.find((at) => reached.get(at) !== now.get(at) && holdsItself(problem, reached, at));
		if (ring !== undefined) {
			fails.add(ring);
			continue;
		}
		// Two parts are fitted together when both are in the machine, or both on the same loose assembly.
		// The part goes in with all that stays on it.
		const arrivesAt = (position: string): string | undefined => {
			if (reached.get(position) !== now.get(position)) return position;
			const host = problem.positions.find(({ id }) => id === position)?.host;
			const seat = host === undefined ? undefined : fits(reached, host);
			return seat === undefined ? undefined : arrivesAt(seat);
		};
		const isExcluded = failing((at, part) =>
			[...reached].some(
				([from, rider]) =>
					arrivesAt(from) === at &&
					[...reached].some(
						([q, held]) =>
							now.get(q) === held &&
							excluded(rider, held) &&
							(arrivesAt(q) !== at || rider === part) &&
							whole(problem, reached, q) === whole(problem, reached, at),
					),
			),
		);
		if (!isExcluded) return reached;
	}
}

function holdsItself(problem: Problem, build: Builds, start: string): boolean {
	let at: string | undefined = start;
	for (let n = 0; n <= problem.positions.length; n++) {
		const host: string | undefined = problem.positions.find(({ id }) => id === at)?.host;
		at = host === undefined ? undefined : fits(build, host);
		if (at === undefined) return false;
		if (at === start) return true;
	}
	return false;
}

function subsets(of: readonly string[]): string[][] {
	let all: string[][] = [[]];
	for (const one of of) all = all.flatMap((set) => [set, [...set, one]]);
	return all;
}

export function byDefinition(problem: Problem): Answer {
	const now = new Map(Object.entries(problem.now));
	const target = new Map(Object.entries(problem.target));
	const ids = problem.positions.map(({ id }) => id).sort();
	const looped = new Set<string>();
	const lost = new Set(problem.parts.filter(({ unavailable }) => unavailable !== undefined).map(({ id }) => id));
	const outOfHand = (at: string) => lost.has(whole(problem, now, at).replace(/^loose /, ""));
	for (;;) {
		const then = attainable(problem, looped);
		const work = new Set(ids.filter((at) => now.get(at) !== then.get(at)));
		const undoAt = new Set<string>();
		const stays: string[] = [];
		for (const alteration of problem.alterations ?? []) {
			const shown = alteration.position ?? fits(then, alteration.part ?? "");
			if (shown === undefined || (problem.scope !== undefined && !problem.scope.includes(shown))) continue;
			const at = alteration.position ?? fits(now, alteration.part ?? "");
			if (alteration.undo === null || (at !== undefined && (looped.has(at) || outOfHand(at)))) stays.push(`${shown}/${alteration.id}`);
			else if (at !== undefined) {
				work.add(at);
				if (alteration.position !== undefined) undoAt.add(at);
			}
		}
		const openable = ids.filter((at) => !outOfHand(at));
		const largest = subsets(openable)
			.sort((a, b) => b.length - a.length)
			.find((set) => canBeWorked(problem, then, new Set(set), undoAt));
		const stuck = [...work].filter((at) => !largest?.includes(at));
		if (stuck.length > 0) {
			for (const at of stuck) looped.add(at);
			continue;
		}
		const cost = (set: readonly string[]) =>
			set.reduce((sum, at) => {
				const { out, in: back } = problem.times?.[at] ?? {};
				return sum + (now.has(at) ? (out?.likely ?? 0) : 0) + (then.has(at) ? (back?.likely ?? 0) : 0);
			}, 0);
		const opened = subsets(openable.filter((at) => !work.has(at)))
			.map((more) => [...work, ...more].sort())
			.sort((a, b) => cost(a) - cost(b) || a.length - b.length || firstDifference(a, b))
			.find((set) => canBeWorked(problem, then, new Set(set), undoAt));
		if (opened === undefined) throw new Error("no opening at all");
		for (const at of ids) {
			const host = problem.positions.find(({ id }) => id === at)?.host;
			const travels = host !== undefined && fits(target, host) === undefined && !target.has(at);
			const inScope = problem.scope === undefined || problem.scope.includes(at);
			if (inScope && !travels && then.get(at) !== target.get(at)) stays.push(`${at}/`);
		}
		return { attains: then, opened, staysDifferent: stays.sort() };
	}
}

function firstDifference(a: readonly string[], b: readonly string[]): number {
	const at = a.findIndex((one, n) => one !== b[n]);
	return at === -1 ? 0 : (a[at] ?? "") < (b[at] ?? "") ? -1 : 1;
}
