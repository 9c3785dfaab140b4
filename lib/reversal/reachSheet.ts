// "What must come off to get at X, and how long does it take?", for service: the least opening over the record as it stands.
// Pure.

import type { Instant } from "@/lib/core/instants";
import { ok, type Result } from "@/lib/core/result";
import { partKey, problemOf } from "@/lib/reversal/asked";
import { checklistOf, type Line } from "@/lib/reversal/checklist";
import type { Problem } from "@/lib/reversal/problem";
import type { ReversalFacts } from "@/lib/reversal/queries";
import { openingFor, type Reach } from "@/lib/reversal/reach";
import { readProblem } from "@/lib/reversal/readProblem";

/** A position with what is in it now. */
export type Seat = {
	readonly mark: string;
	readonly name: string;
	readonly kind: "seat" | "place";
	readonly part: string | null;
	readonly tag: string | null;
};

/** Likely minutes out and in again; `unknown` is how many of them nobody has estimated, and they are not in the sum. */
export type ReachTime = { readonly minutes: number; readonly of: number; readonly unknown: number };

export type ReachSheet = {
	/** What somebody wants to get at, as far as it can be reached. */
	readonly wanted: readonly Seat[];
	/** What comes off first, in the order of the marks. */
	readonly first: readonly Seat[];
	readonly firstTime: ReachTime;
	/** What is wanted itself, out and in again. */
	readonly wantedTime: ReachTime;
	readonly out: readonly Line[];
	readonly into: readonly Line[];
	/** The next best way, if `without` is to stay in: what comes off instead, and how much dearer that is. */
	readonly next: { readonly without: Seat; readonly instead: readonly Seat[]; readonly dearerBy: number; readonly unknown: number } | null;
	readonly stuck: readonly (Seat & { readonly why: string })[];
	/** False where the search was cut short: a cheaper way, or another next best one, may exist. */
	readonly leastProved: boolean;
	readonly nextProved: boolean;
	/** Marks that are no position of the machine. */
	readonly unknown: readonly string[];
};

/** `marks` are those of the positions to get at. Refused where the record is too large, or says what cannot be. */
export function reachSheet(facts: ReversalFacts, marks: readonly string[], now: Instant): Result<ReachSheet> {
	const problem = readProblem(problemOf(facts, { asFoundAt: null, at: now }));
	if (!problem.ok) return problem;
	const positions = new Map(facts.positions.map((position) => [position.mark, position]));
	const asked = [...new Set(marks)];
	const known = asked.filter((mark) => positions.has(mark));
	const reach = openingFor(problem.value, known);
	const seatOf = seatsIn(facts, problem.value);
	const timed = timing(facts, problem.value);
	const wanted = known.filter((mark) => !reach.outOfReach.includes(mark));
	const lines = checklistOf({ operations: reach.operations }, facts);
	return ok({
		wanted: wanted.map(seatOf),
		first: reach.openedOnly.map(seatOf),
		firstTime: timed(reach.openedOnly),
		wantedTime: timed(wanted),
		out: lines.filter(({ kind }) => kind === "take-out"),
		into: lines.filter(({ kind }) => kind === "put-in"),
		next: nextOf(reach, seatOf, timed),
		stuck: reach.outOfReach.map((mark) => ({ ...seatOf(mark), why: whyStuck(mark, reach, problem.value) })),
		leastProved: reach.leastProved,
		nextProved: reach.secondBestProved,
		unknown: asked.filter((mark) => !positions.has(mark)),
	});
}

function seatsIn(facts: ReversalFacts, problem: Problem): (mark: string) => Seat {
	const positions = new Map(facts.positions.map((position) => [position.mark, position]));
	const parts = new Map(facts.parts.map((part) => [partKey(part), part]));
	return (mark) => {
		const part = parts.get(problem.now[mark] ?? "");
		const { name = mark, kind = "seat" } = positions.get(mark) ?? {};
		return { mark, name, kind, part: part?.name ?? null, tag: part?.tag?.id ?? null };
	};
}

/** The likely minutes of positions that hold something, and how many of those nobody has estimated. */
function timing(facts: ReversalFacts, problem: Problem): (marks: readonly string[]) => ReachTime {
	const positions = new Map(facts.positions.map((position) => [position.mark, position]));
	return (marks) => {
		const held = marks.filter((mark) => problem.now[mark] !== undefined).flatMap((mark) => positions.get(mark) ?? []);
		return {
			minutes: held.reduce((sum, { outLikely, inLikely }) => sum + (outLikely ?? 0) + (inLikely ?? 0), 0),
			of: held.length,
			unknown: held.filter(({ outLikely, inLikely }) => outLikely === null || inLikely === null).length,
		};
	};
}

function nextOf(reach: Reach, seatOf: (mark: string) => Seat, timed: (marks: readonly string[]) => ReachTime): ReachSheet["next"] {
	const next = reach.secondBest;
	if (next === null) return null;
	return {
		without: seatOf(next.without),
		instead: next.openedOnly.filter((mark) => !reach.openedOnly.includes(mark)).map(seatOf),
		dearerBy: next.dearerBy,
		unknown: timed(next.openedOnly).unknown + timed(reach.openedOnly).unknown,
	};
}

/** The loop that keeps it shut, part by part; or the assembly that it sits on is not to be had. */
function whyStuck(mark: string, { loops }: Reach, problem: Problem): string {
	const loop = loops.find(({ positions }) => positions.includes(mark)) ?? loops[0];
	const host = problem.positions.find(({ id }) => id === mark)?.host;
	const part = problem.parts.find(({ id }) => id === host);
	if (part?.unavailable) return `It sits on the ${part.name ?? part.id}, which is ${part.unavailable}.`;
	if (loop === undefined) return "No opening reaches it, as the record has it.";
	const names = new Map(problem.positions.map(({ id, name }) => [id, name ?? id]));
	return `${loop.say} (${loop.positions.map((id) => `${id} ${names.get(id) ?? ""}`).join(", ")})`;
}
