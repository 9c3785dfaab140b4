// The reversal planner: from a problem to a plan, all data in, all data out. Format `asfound.reversal-plan/1`.

import { type Access, accessOf } from "@/lib/reversal/access";
import { type Loop, largestOpening, loopsBehind } from "@/lib/reversal/accessLoops";
import { type Attainable, attainableTarget, isBarred } from "@/lib/reversal/attainable";
import { leastOpening, SEARCH_LOOKS } from "@/lib/reversal/leastOpening";
import { type Kind, operationsOf } from "@/lib/reversal/operations";
import { orderOf } from "@/lib/reversal/order";
import type { Problem, ThreePoint } from "@/lib/reversal/problem";
import { alterationStays, positionStays, type StaysDifferent } from "@/lib/reversal/staysDifferent";
import { type WorkSet, workSet } from "@/lib/reversal/workSet";
import { type Before, byText, NO_MINUTES, NONE, partIn, type World, worldOf } from "@/lib/reversal/world";

export const PLAN_FORMAT = "asfound.reversal-plan/1";

export type Operation = {
	readonly id: string;
	readonly kind: Kind;
	readonly position?: string;
	readonly part?: string;
	readonly alteration?: string;
	/** The side to do it from, where the position has more than one. */
	readonly side?: string;
	readonly area?: string;
	/** The loose assembly it is done on; left out when it is done in the machine. */
	readonly bench?: string;
	/** Minutes to wait afterwards before anything follows: glue, paint. Not labour. */
	readonly wait?: number;
	/** The operations that must come before it. Any order that keeps to this can be carried out. */
	readonly after: readonly string[];
	readonly minutes: ThreePoint;
};

/** A part that is back where it belongs, and what is still to be known about it. */
export type ComesBack = { readonly position: string; readonly part: string | null; readonly alteration?: string; readonly say: string };

/** An access loop, part by part: each waits for the next, the last one for the first or for nothing that could ever be. */
export type PlanLoop = {
	readonly positions: readonly string[];
	readonly parts: readonly string[];
	readonly direction: "out" | "in";
	readonly say: string;
};

export type Plan = {
	readonly format: typeof PLAN_FORMAT;
	/** Every position at which something is taken out, undone or put in. Sorted. */
	readonly opened: readonly string[];
	/** Those of them that are opened only to reach the others: what is in them goes back unchanged. */
	readonly openedOnly: readonly string[];
	/** False when the search for the least opening ran out of looks: the plan holds, but a cheaper one may exist. */
	readonly leastProved: boolean;
	/** In an order that can be carried out. */
	readonly operations: readonly Operation[];
	readonly staysDifferent: readonly StaysDifferent[];
	/** Positions on an assembly that the target does not know: they go where it goes. */
	readonly travels: readonly { readonly position: string; readonly part: string; readonly with: string }[];
	/** Positions out of scope that differ from the target, by choice. */
	readonly leftAlone: readonly { readonly position: string; readonly holds: string | null; readonly wanted: string | null }[];
	readonly comesBack: readonly ComesBack[];
	readonly loops: readonly PlanLoop[];
	/** Labour: take-out, undo and put-in, and their sum. Make-safe and check are not in it. */
	readonly minutes: ThreePoint & { readonly takeOut: ThreePoint; readonly undo: ThreePoint; readonly putIn: ThreePoint };
	/** The waits of all undos, one after the other. */
	readonly waitMinutes: number;
	/** What each position holds when the plan is carried out. Empty positions are left out. */
	readonly attains: Readonly<Record<string, string>>;
};

/**
 * Plans a reversal. Requires a problem that `readProblem` let through. The same problem always gives the same plan,
 * in whatever order it lists things. For a reversal that is half done, `before` is what the positions that it touched held when it
 * began: what came out only to open the way goes in again, and what cannot come back keeps what it held then.
 */
export function planReversal(problem: Problem, looks: number = SEARCH_LOOKS, before: Before = {}): Plan {
	const world = worldOf(problem, before);
	const reached = reachableWork(world);
	const { work, access, largest } = reached;
	const opening = leastOpening(world, access, work.positions, (p) => largest.has(p), { left: looks });
	if (opening === null) throw new Error("no opening for a work set that lies within the largest one");
	return resultOf(world, reached, opening.positions, opening.proved);
}

type Reached = {
	readonly attainable: Attainable;
	readonly work: WorkSet;
	readonly access: Access;
	readonly largest: ReadonlySet<number>;
	readonly loops: readonly { readonly loop: Loop; readonly attainable: Attainable }[];
};

/** Steps 1 to 3 again and again, each time without what turned out to be in an access loop. At most once a position. */
function reachableWork(world: World): Reached {
	const inLoop = new Set<number>();
	const loops: { loop: Loop; attainable: Attainable }[] = [];
	for (;;) {
		const attainable = attainableTarget(world, inLoop);
		const work = workSet(world, attainable, inLoop);
		const access = accessOf(world, attainable.build, work.undoAt);
		const largest = largestOpening(access, (p) => isBarred(world, attainable, p));
		const stuck = work.positions.filter((p) => !largest.has(p));
		if (stuck.length === 0) return { attainable, work, access, largest, loops };
		for (const loop of loopsBehind(stuck, access, largest)) loops.push({ loop, attainable });
		for (const p of stuck) inLoop.add(p);
	}
}

function resultOf(world: World, reached: Reached, opened: readonly number[], proved: boolean): Plan {
	const { attainable, work } = reached;
	const { build } = attainable;
	const inWork = new Set(work.positions);
	const positionId = (p: number): string => world.positions[p]?.id ?? "";
	const partId = (part: number): string | null => (part === NONE ? null : (world.parts[part]?.id ?? null));
	const operations = operationsIn(world, reached, opened);
	const sum = (kind: Kind): ThreePoint => total(operations.filter((operation) => operation.kind === kind).map(({ minutes }) => minutes));
	const [takeOut, undo, putIn] = [sum("take-out"), sum("undo"), sum("put-in")];

	const differs: StaysDifferent[] = [
		...[...attainable.hindrances].map(([p, hindrance]) => positionStays(world, p, partIn(build, p), hindrance)),
		...work.staying.map((stays) => alterationStays(world, partIn(build, stays.position), stays)),
	];
	const all = world.positions.map((_, p) => p);
	return {
		format: PLAN_FORMAT,
		opened: opened.map(positionId),
		openedOnly: opened.filter((p) => !inWork.has(p)).map(positionId),
		leastProved: proved,
		operations,
		staysDifferent: differs.sort((a, b) => byText(a.position, b.position) || byText(a.alteration ?? "", b.alteration ?? "")),
		travels: [...attainable.travelling].flatMap((p) => {
			const part = partId(partIn(build, p));
			return part === null ? [] : [{ position: positionId(p), part, with: partId(world.hostOf[p] ?? NONE) ?? "" }];
		}),
		leftAlone: all
			.filter((p) => world.inScope[p] !== 1 && partIn(world.held, p) !== partIn(world.target, p))
			.map((p) => ({ position: positionId(p), holds: partId(partIn(world.held, p)), wanted: partId(partIn(world.target, p)) })),
		comesBack: comesBackIn(world, attainable, work),
		loops: reached.loops.map(({ loop, attainable: then }) => planLoop(world, loop, then)),
		minutes: { ...total([takeOut, undo, putIn]), takeOut, undo, putIn },
		waitMinutes: operations.reduce((minutes, { wait }) => minutes + (wait ?? 0), 0),
		attains: Object.fromEntries(all.flatMap((p) => (partIn(build, p) === NONE ? [] : [[positionId(p), partId(partIn(build, p)) ?? ""]]))),
	};
}

/** The operations of an opening, in order, by id. */
export function operationsIn(
	world: World,
	{ attainable, access, work }: Pick<Reached, "attainable" | "access" | "work">,
	opened: readonly number[],
): Operation[] {
	const made = operationsOf(world, { to: attainable.build, access, opened, undos: work.undos });
	const { order, bench, after } = orderOf(world, made);
	const idOf = (at: number): string => made.steps[at]?.id ?? "";
	return order.flatMap((at): Operation[] => {
		const step = made.steps[at];
		if (step === undefined) return [];
		const position = world.positions[step.position];
		const side = position?.sides?.[step.side];
		const on = world.parts[bench[at] ?? NONE]?.id;
		const wait = step.alteration?.undo?.wait;
		const part = world.parts[step.part]?.id;
		return [
			{
				id: step.id,
				kind: step.kind,
				...(position === undefined ? {} : { position: position.id }),
				...(part === undefined ? {} : { part }),
				...(step.alteration === null ? {} : { alteration: step.alteration.id }),
				...(side === undefined ? {} : { side }),
				...(position?.area === undefined ? {} : { area: position.area }),
				...(on === undefined ? {} : { bench: on }),
				...(wait === undefined || wait === 0 ? {} : { wait }),
				after: (after[at] ?? []).map(idOf),
				minutes: { low: step.minutes.low, likely: step.minutes.likely, high: step.minutes.high },
			},
		];
	});
}

const total = (all: readonly ThreePoint[]): ThreePoint =>
	all.reduce((sum, one) => ({ low: sum.low + one.low, likely: sum.likely + one.likely, high: sum.high + one.high }), NO_MINUTES);

/** Undone but leaving a trace, or back but not working: both are said, so that nobody takes the part for untouched. */
function comesBackIn(world: World, { build }: Attainable, work: WorkSet): ComesBack[] {
	const found: ComesBack[] = [];
	for (const alteration of work.undos) {
		if (alteration.leavesTrace !== true) continue;
		const p = alteration.partAt === NONE ? alteration.positionAt : (build.placeOf[alteration.partAt] ?? NONE);
		found.push({
			position: world.positions[p]?.id ?? "",
			part: alteration.part ?? null,
			alteration: alteration.id,
			say: `${alteration.name ?? alteration.id} is undone but leaves a trace`,
		});
	}
	for (const p of work.positions) {
		const part = world.parts[partIn(build, p)];
		if (part?.condition !== undefined) found.push({ position: world.positions[p]?.id ?? "", part: part.id, say: part.condition });
	}
	return found.sort((a, b) => byText(a.position, b.position) || byText(a.alteration ?? "", b.alteration ?? ""));
}

/** A loop by ids, with the parts that stand in it. */
export function planLoop(world: World, { positions, direction, isRing }: Loop, { build }: Attainable): PlanLoop {
	const partAt = (p: number): string => {
		const part = direction === "out" ? partIn(world.now, p) : partIn(build, p);
		return world.parts[part]?.id ?? "";
	};
	const ids = positions.map((p) => world.positions[p]?.id ?? "");
	const way = direction === "out" ? "come out" : "go in";
	const ring = isRing ? [...ids, ...ids.slice(0, 1)] : ids;
	const end = isRing ? "" : `, and ${ids.at(-1)} cannot be opened at all`;
	return {
		positions: ids,
		parts: positions.map(partAt).filter((id) => id !== ""),
		direction,
		say: `None of these can ${way}: ${ring.join(" waits for ")}${end}.`,
	};
}
