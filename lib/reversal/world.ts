// A problem as numbers: positions and parts by their rank in the order of ids, so that every later choice
// ("then by id") is a comparison of numbers and the order in which a problem lists things cannot matter.

import type { Alteration, Part, Position, Problem, ThreePoint } from "@/lib/reversal/problem";
import { isOn } from "@/lib/reversal/soundBuild";

/** No part, no position, no host: the machine itself. */
export const NONE = -1;

/** Which part is in each position, and the other way round. `NONE` where there is none. */
export type Build = { readonly partAt: Int32Array; readonly placeOf: Int32Array };

export type World = {
	readonly positions: readonly Position[];
	readonly parts: readonly Part[];
	readonly positionNumber: ReadonlyMap<string, number>;
	readonly partNumber: ReadonlyMap<string, number>;
	/** The part each position is on; `NONE` for the machine. */
	readonly hostOf: Int32Array;
	readonly now: Build;
	/** What each position keeps where nothing of the target comes to it: what it holds now or, half-way, held when the reversal began. */
	readonly held: Build;
	readonly target: Build;
	readonly inScope: Uint8Array;
	/** By position, by side: the parts that stand in the way while they are fitted. A position without named sides has one. */
	readonly obstructors: readonly (readonly (readonly number[])[])[];
	/** By part: the parts it cannot be fitted together with, both ways round. */
	readonly excluded: readonly (readonly number[])[];
	readonly alterations: readonly PlacedAlteration[];
	readonly outMinutes: readonly ThreePoint[];
	readonly inMinutes: readonly ThreePoint[];
	readonly mayPutDangerBack: boolean;
};

/** An alteration with the number of its position or of its part; the other one is `NONE`. */
export type PlacedAlteration = Alteration & { readonly positionAt: number; readonly partAt: number };

/** A position or part that has no time on record counts as no minutes, as the sum says what is known. */
export const NO_MINUTES: ThreePoint = { low: 0, likely: 0, high: 0 };

/** By code unit, the same on every machine and in every language. */
export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
const byIdOf = (a: { readonly id: string }, b: { readonly id: string }): number => byText(a.id, b.id);

/** The part in a position, or `NONE`. */
export const partIn = (build: Build, position: number): number => build.partAt[position] ?? NONE;
/** The position a part is in, or `NONE`. */
export const placeOfPart = (build: Build, part: number): number => build.placeOf[part] ?? NONE;

/** A build from a list of the part in each position. Requires that no part is listed twice. */
export function buildFrom(partAt: Int32Array, parts: number): Build {
	const placeOf = new Int32Array(parts).fill(NONE);
	partAt.forEach((part, position) => {
		if (part !== NONE) placeOf[part] = position;
	});
	return { partAt, placeOf };
}

/** What positions held before somebody began on them; null for one that was empty. */
export type Before = Readonly<Record<string, string | null>>;

/**
 * Numbers a problem. Requires a problem that `readProblem` let through. `before` is of positions that are being worked on; what
 * it names and the problem does not know is passed over.
 */
export function worldOf(problem: Problem, before: Before = {}): World {
	const positions = [...problem.positions].sort(byIdOf);
	const parts = [...problem.parts].sort(byIdOf);
	const positionNumber = new Map(positions.map((position, at) => [position.id, at]));
	const partNumber = new Map(parts.map((part, at) => [part.id, at]));
	const position = (id: string): number => required(positionNumber, id, "position");
	const part = (id: string): number => required(partNumber, id, "part");

	const build = (of: Readonly<Record<string, string>>): Build => {
		const partAt = new Int32Array(positions.length).fill(NONE);
		for (const [at, what] of Object.entries(of)) partAt[position(at)] = part(what);
		return buildFrom(partAt, parts.length);
	};

	const inScope = new Uint8Array(positions.length).fill(problem.scope === undefined ? 1 : 0);
	for (const id of problem.scope ?? []) inScope[position(id)] = 1;

	const excluded = parts.map(() => new Set<number>());
	for (const one of parts) {
		for (const other of one.excludes ?? []) {
			excluded[part(one.id)]?.add(part(other));
			excluded[part(other)]?.add(part(one.id));
		}
	}

	const times = new Map(Object.entries(problem.times ?? {}));
	return {
		positions,
		parts,
		positionNumber,
		partNumber,
		hostOf: Int32Array.from(positions, ({ host }) => (host === undefined ? NONE : part(host))),
		now: build(problem.now),
		held: build(heldBefore(problem, before)),
		target: build(problem.target),
		inScope,
		obstructors: obstructorsOf(problem, positions, position, part),
		excluded: excluded.map((others) => [...others].sort((a, b) => a - b)),
		alterations: [...(problem.alterations ?? [])].sort(byIdOf).map((alteration) => ({
			...alteration,
			positionAt: alteration.position === undefined ? NONE : position(alteration.position),
			partAt: alteration.part === undefined ? NONE : part(alteration.part),
		})),
		outMinutes: positions.map(({ id }) => times.get(id)?.out ?? NO_MINUTES),
		inMinutes: positions.map(({ id }) => times.get(id)?.in ?? NO_MINUTES),
		mayPutDangerBack: problem.dangerReason !== undefined,
	};
}

/** The present build with `before` laid over it, each part once: where it is now, unless that position was touched, too. */
function heldBefore(problem: Problem, before: Before): Record<string, string> {
	const positions = new Set(problem.positions.map(({ id }) => id));
	const parts = new Map(problem.parts.map((part) => [part.id, part]));
	const touched = Object.entries(before).filter(([position]) => positions.has(position));
	const isTouched = new Set(touched.map(([position]) => position));
	const held = new Map(Object.entries(problem.now).filter(([position]) => !isTouched.has(position)));
	const placeOf = new Map([...held].map(([position, part]) => [part, position]));
	const hosts = new Map(problem.positions.map(({ id, host }) => [id, host ?? null]));
	const fitted = new Set(Object.values(problem.now));
	for (const [position, part] of touched) {
		const known = part === null ? undefined : parts.get(part);
		// What was lost on the way cannot be kept, and what was taken out for safety is not put back by a rule that only tidies up.
		const isBarred = known?.unavailable !== undefined || (known?.danger !== undefined && problem.dangerReason === undefined);
		if (known === undefined || placeOf.has(known.id) || (isBarred && !fitted.has(known.id))) continue;
		// Two builds laid over each other could put an assembly onto itself; neither of them does.
		if (isOn(position, known.id, hosts, placeOf)) continue;
		held.set(position, known.id);
		placeOf.set(known.id, position);
	}
	return Object.fromEntries(held);
}

function required(numbers: ReadonlyMap<string, number>, id: string, kind: string): number {
	const found = numbers.get(id);
	if (found === undefined) throw new Error(`unknown ${kind} "${id}": read the problem with readProblem first`);
	return found;
}

function obstructorsOf(
	problem: Problem,
	positions: readonly Position[],
	position: (id: string) => number,
	part: (id: string) => number,
): number[][][] {
	const sets = positions.map(({ sides }) => (sides ?? [""]).map(() => new Set<number>()));
	for (const obstruction of problem.obstructions) {
		const at = position(obstruction.position);
		const named = positions[at]?.sides ?? [""];
		named.forEach((side, n) => {
			if (obstruction.sides === undefined || obstruction.sides.includes(side)) sets[at]?.[n]?.add(part(obstruction.part));
		});
	}
	return sets.map((bySide) => bySide.map((set) => [...set].sort((a, b) => a - b)));
}
