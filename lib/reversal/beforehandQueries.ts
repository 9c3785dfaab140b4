// What reversal to as found would lose by something that somebody is about to do: the planner on the record as it is and
// as it would be.

import { instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import { positionsThatLose, wholeOf } from "@/lib/parts/queries";
import type { LostPosition } from "@/lib/parts/rules";
import { partKey, problemOf } from "@/lib/reversal/asked";
import { afterStep, lossOf, type PlannedStep } from "@/lib/reversal/beforehand";
import type { NamedLosses } from "@/lib/reversal/lossWords";
import { planReversal } from "@/lib/reversal/plan";
import { type ReversalFacts, reversalFacts } from "@/lib/reversal/queries";
import { readProblem } from "@/lib/reversal/readProblem";

/** Null when there is nothing to go back to: as found is open, or no plan can be made of the record. */
async function lossBy(
	read: Reader,
	machine: { readonly id: string; readonly asFoundAt: string | null },
	step: (facts: ReversalFacts) => PlannedStep | null,
): Promise<NamedLosses | null> {
	if (machine.asFoundAt === null) return null;
	const asFoundAt = instant(machine.asFoundAt);
	const facts = await reversalFacts(read, machine.id);
	const planned = step(facts);
	const problem = readProblem(problemOf(facts, { asFoundAt }));
	if (!problem.ok || planned === null) return null;
	const then = afterStep(problem.value, planned);
	if (!then.ok) return null;
	const losses = lossOf(planReversal(problem.value), planReversal(then.value));
	const names = new Map(facts.positions.map(({ mark, name }) => [mark, name]));
	return { ...losses, lost: losses.lost.map((loss) => ({ ...loss, name: names.get(loss.position) ?? "" })) };
}

/** What reversal loses when a part, and what is fitted on it, goes for good. */
export async function lossByPartingWith(read: Reader, partId: string): Promise<NamedLosses | null> {
	const part = await read.part.findUnique({
		where: { id: partId },
		select: { machine: { select: { id: true, asFoundAt: true } } },
	});
	if (!part?.machine) return null;
	const whole = await wholeOf(read, partId);
	return lossBy(read, part.machine, (facts) => ({
		kind: "part-with",
		parts: facts.parts.filter(({ id }) => whole.includes(id)).map(partKey),
		why: "it is gone",
	}));
}

/**
 * The positions that could never hold their original again if the part went for good, and what is fitted on it with it.
 * While as found is open there is no way back to plan: then it is those that its originals were found in.
 */
export async function positionsLostWith(read: Reader, partId: string): Promise<LostPosition[]> {
	const losses = await lossByPartingWith(read, partId);
	if (losses === null) return positionsThatLose(read, partId);
	return losses.lost.filter((loss) => loss.of === "part").map(({ position, name }) => ({ mark: position, name }));
}

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
	return lossBy(read, machine, (facts) => {
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
	});
}
