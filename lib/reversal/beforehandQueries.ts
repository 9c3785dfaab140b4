// What reversal to as found would lose by something that somebody is about to do: the planner on the record as it is and
// as it would be.

import { bagsWithin } from "@/lib/bags/nesting";
import { instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import { positionsThatLose, wholeOf } from "@/lib/parts/queries";
import type { LostPosition } from "@/lib/parts/rules";
import { partKey, problemOf } from "@/lib/reversal/asked";
import { afterStep, countAttained, lossOf, type PlannedStep } from "@/lib/reversal/beforehand";
import { lossWords, type NamedLosses } from "@/lib/reversal/lossWords";
import { planReversal } from "@/lib/reversal/plan";
import { type ReversalFacts, reversalFacts } from "@/lib/reversal/queries";
import { readProblem } from "@/lib/reversal/readProblem";
import { type Foreseen, type Thought, thoughtOf } from "@/lib/reversal/thought";

/** What is asked of a record that was read once: what reversal loses by a step. Null when the step is of nothing on record. */
type Asking = (step: (facts: ReversalFacts) => PlannedStep | null) => NamedLosses | null;

/** Null when there is nothing to go back to: as found is open, or no plan can be made of the record. */
async function askingOf(read: Reader, machine: { readonly id: string; readonly asFoundAt: string | null }): Promise<Asking | null> {
	if (machine.asFoundAt === null) return null;
	const facts = await reversalFacts(read, machine.id);
	const problem = readProblem(problemOf(facts, { asFoundAt: instant(machine.asFoundAt) }));
	if (!problem.ok) return null;
	const now = planReversal(problem.value);
	const names = new Map(facts.positions.map(({ mark, name }) => [mark, name]));
	const originals = new Set(facts.parts.filter(({ origin }) => origin === "original").map(partKey));
	const wanted = new Map(Object.entries(problem.value.target));
	const wantedOriginals = new Map([...wanted].filter(([, part]) => originals.has(part)));
	return (step) => {
		const planned = step(facts);
		const after = planned === null ? null : afterStep(problem.value, planned);
		if (!after?.ok) return null;
		const then = planReversal(after.value);
		const losses = lossOf(now, then);
		return {
			...losses,
			lost: losses.lost.map((loss) => ({
				...loss,
				name: names.get(loss.position) ?? "",
				original: wantedOriginals.has(loss.position),
			})),
			originals: { now: countAttained(now, wantedOriginals), after: countAttained(then, wantedOriginals) },
		};
	};
}

async function lossBy(
	read: Reader,
	machine: { readonly id: string; readonly asFoundAt: string | null },
	step: (facts: ReversalFacts) => PlannedStep | null,
): Promise<NamedLosses | null> {
	return (await askingOf(read, machine))?.(step) ?? null;
}

const partingWith =
	(whole: readonly string[]) =>
	(facts: ReversalFacts): PlannedStep => ({
		kind: "part-with",
		parts: facts.parts.filter(({ id }) => whole.includes(id)).map(partKey),
		why: "it is gone",
	});

/** What reversal loses when a part, and what is fitted on it, goes for good. */
export async function lossByPartingWith(read: Reader, partId: string): Promise<NamedLosses | null> {
	const part = await read.part.findUnique({
		where: { id: partId },
		select: { machine: { select: { id: true, asFoundAt: true } } },
	});
	if (!part?.machine) return null;
	const whole = await wholeOf(read, partId);
	return lossBy(read, part.machine, partingWith(whole));
}

/**
 * The positions that could never hold their original again if the part went for good, and what is fitted on it with it.
 * While as found is open there is no way back to plan: then it is those that its originals were found in.
 */
export async function positionsLostWith(read: Reader, partId: string): Promise<LostPosition[]> {
	const losses = await lossByPartingWith(read, partId);
	if (losses === null) return positionsThatLose(read, partId);
	return positionsIn(losses);
}

const positionsIn = ({ lost }: NamedLosses): LostPosition[] =>
	lost.filter((loss) => loss.of === "part").map(({ position, name, original }) => ({ mark: position, name, original: original !== false }));

/** The same for all that lies in a bag and in the bags within it, were the bag gone. */
export async function positionsLostWithBag(read: Reader, bagId: string): Promise<LostPosition[]> {
	const bag = await read.bag.findUnique({ where: { id: bagId }, select: { machine: { select: { id: true, asFoundAt: true } } } });
	if (!bag?.machine) return [];
	const inIt = await read.part.findMany({
		where: { bagId: { in: await bagsWithin(read, bagId) } },
		orderBy: { id: "asc" },
		take: MOST_IN_BAG,
		select: { id: true },
	});
	const wholes = await Promise.all(inIt.map(({ id }) => wholeOf(read, id)));
	const losses = inIt.length === 0 ? null : await lossBy(read, bag.machine, partingWith(wholes.flat()));
	if (losses !== null) return positionsIn(losses);
	const lost = await Promise.all(inIt.map(({ id }) => positionsThatLose(read, id)));
	return [...new Map(lost.flat().map((position) => [position.mark, position])).values()];
}

/** More parts than so many lie in no bag. */
const MOST_IN_BAG = 500;

/** A change that is thought about, on a part or at a position, and whether it could ever be undone. */
export type ThoughtOf = {
	readonly machineId: string;
	readonly positionId: string | null;
	readonly partId: string | null;
	readonly what: string;
	readonly undo: "clean" | "trace" | "never";
	readonly minutes: { readonly low: number; readonly likely: number; readonly high: number };
};

/** What reversal loses by an alteration. */
export async function lossByAltering(read: Reader, thought: ThoughtOf): Promise<NamedLosses | null> {
	const machine = await read.machine.findUnique({ where: { id: thought.machineId }, select: { id: true, asFoundAt: true } });
	if (!machine) return null;
	return lossBy(read, machine, altering(thought));
}

const altering =
	(thought: Omit<ThoughtOf, "machineId">) =>
	(facts: ReversalFacts): PlannedStep | null => {
		const on = facts.parts.find(({ id }) => id === thought.partId);
		const at = facts.positions.find(({ id }) => id === thought.positionId);
		if (!on && !at) return null;
		return {
			kind: "alter",
			alteration: {
				id: "this change",
				name: thought.what || "this change",
				...(on ? { part: partKey(on) } : { position: at?.mark ?? "" }),
				undo: thought.undo === "never" ? null : thought.minutes,
				...(thought.undo === "trace" ? { leavesTrace: true as const } : {}),
			},
		};
	};

/** Nobody is asked how long undoing takes: what is lost does not depend on it, and no time is said. */
const NO_TIME = { low: 0, likely: 0, high: 0 };

const NOT_WORKED_OUT =
	"What reversal loses by it cannot be worked out yet: there is no plan for the way back while as found is open, or none can be made of the record.";

/**
 * What reversal would lose by each of the things thought about, the record read once for all of them. Null for a thing that is
 * not on this machine's record.
 */
export async function foresee(read: Reader, machineId: string, thoughts: readonly Thought[]): Promise<readonly (Foreseen | null)[]> {
	const machine = await read.machine.findUnique({ where: { id: machineId }, select: { id: true, asFoundAt: true } });
	if (!machine) return thoughts.map(() => null);
	const asking = thoughts.some(({ does }) => does !== "nothing") ? await askingOf(read, machine) : null;
	return Promise.all(
		thoughts.map(async (thought): Promise<Foreseen | null> => {
			if (thought.does === "nothing") return { say: "Reversal loses nothing by it.", loses: false, counts: { positions: 0, states: 0 } };
			if (!(await isOfMachine(read, machineId, thought))) return null;
			if (asking === null) return notWorkedOut(read, thought);
			const losses = asking(
				thought.does === "parting"
					? partingWith(await wholeOf(read, thought.partId))
					: altering({ ...thought, what: "", minutes: NO_TIME }),
			);
			return losses === null ? null : foreseenIn(losses, thought.does === "alter" && thought.undo === "trace");
		}),
	);
}

/**
 * What reversal would lose if a step changed for good what it is about: its part, or the part in its position, or the position
 * itself where none is. Null where it loses nothing, or nothing can be said of it.
 */
export async function foreseeStep(
	read: Reader,
	machineId: string,
	about: { readonly partId: string | null; readonly positionId: string | null },
): Promise<Foreseen | null> {
	const held =
		about.partId ??
		(about.positionId === null
			? null
			: (await read.part.findUnique({ where: { positionId: about.positionId }, select: { id: true } }))?.id);
	const thought = thoughtOf({ does: "alter", partId: held ?? null, positionId: about.positionId, undo: "never" });
	const [foreseen] = thought === null ? [] : await foresee(read, machineId, [thought]);
	return foreseen?.counts && foreseen.loses ? foreseen : null;
}

function foreseenIn(losses: NamedLosses, leavesTrace: boolean): Foreseen {
	const trace = leavesTrace ? " What comes back shows a trace of it." : "";
	const of = (kind: "part" | "state"): number => losses.lost.filter((loss) => loss.of === kind).length;
	return {
		say: lossWords({ ...losses, minutesMore: 0 }) + trace,
		loses: losses.lost.length > 0 || leavesTrace,
		counts: { positions: of("part"), states: of("state") },
	};
}

/** While there is no way back to plan, a part that goes takes with it what its originals were found in. */
async function notWorkedOut(read: Reader, thought: Exclude<Thought, { does: "nothing" }>): Promise<Foreseen> {
	if (thought.does === "alter") return { say: NOT_WORKED_OUT, loses: thought.undo !== "clean", counts: null };
	const lost = await positionsThatLose(read, thought.partId);
	return {
		say: lossWords({ lost: lost.map(({ mark, name }) => ({ position: mark, name, of: "part" })), minutesMore: 0 }),
		loses: lost.length > 0,
		counts: { positions: lost.length, states: 0 },
	};
}

async function isOfMachine(read: Reader, machineId: string, thought: Exclude<Thought, { does: "nothing" }>): Promise<boolean> {
	if (thought.does === "alter" && thought.positionId !== null)
		return (await read.position.count({ where: { id: thought.positionId, machineId } })) > 0;
	const of = [{ machineId }, { position: { machineId } }];
	return (await read.part.count({ where: { id: thought.partId ?? "", OR: of, place: { not: "void" } } })) > 0;
}
