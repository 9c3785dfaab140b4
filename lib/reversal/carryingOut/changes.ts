// Begins a reversal and says how it goes. What is taken out, undone and put in on the way is recorded by its own doors; the plan
// is made anew from where the machine stands.

import { instant } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, type Deed, deed, type Tables } from "@/lib/ledger/rows";
import { problemOf } from "@/lib/reversal/asked";
import { planNow } from "@/lib/reversal/carryingOut/planNow";
import { askedOf, TARGET_WORDS } from "@/lib/reversal/carryingOut/rules";
import {
	type FinishReversal,
	type LeaveOut,
	leftOutSchema,
	type MadeSafe,
	type StartReversal,
	type StopReversal,
	type TakeUp,
} from "@/lib/reversal/carryingOut/schema";
import { MAKE_SAFE_AND_CHECK } from "@/lib/reversal/checklist";
import { planReversal } from "@/lib/reversal/plan";
import { reversalFacts } from "@/lib/reversal/queries";
import { readProblem } from "@/lib/reversal/readProblem";
import { mayAsk } from "@/lib/reversal/scope";

/**
 * Begins a reversal, with a step for its time. Gives its number in the machine.
 *
 * Refused while another one is open, while as found is open, when there is nothing to do, and without a reason when it would
 * put a danger back.
 */
export const startReversal = (input: StartReversal, env: Env): Promise<Result<{ number: number }>> => {
	const [id, stepId] = [env.newId(), env.newId()];
	return record(env, async (read) => {
		const machine = await read.machine.findUnique({ where: { id: input.machineId }, select: { id: true, asFoundAt: true } });
		if (!machine) return refuse("no-such-machine", "That machine is not in the book. Load the page again.");
		if (machine.asFoundAt === null)
			return refuse("as-found-open", "The as found record is still open, so there is nothing yet to go back to. Stamp it first.");
		if ((input.target === "moment") !== Boolean(input.targetAt)) return refuse("no-moment", "Say which day to go back to.");
		const open = await read.reversal.findFirst({ where: { machineId: machine.id, state: "open" }, select: { number: true } });
		if (open) return refuse("reversal-open", `Reversal ${open.number} is being carried out. Finish or stop it first.`);
		const columns = {
			target: input.target,
			targetAt: input.targetAt ?? null,
			conversionIds: JSON.stringify(input.conversionIds),
			positionIds: JSON.stringify(input.positionIds),
			leftOut: "[]",
			reason: input.reason,
		};
		const facts = await reversalFacts(read, machine.id);
		const asked = askedOf(columns, instant(machine.asFoundAt));
		const may = mayAsk(facts, asked);
		if (!may.ok) return may;
		const problem = readProblem(problemOf(facts, asked));
		if (!problem.ok) return problem;
		const plan = planReversal(problem.value);
		if (plan.operations.length === 0) return refuse("nothing-to-do", "There is nothing to do: it stands as it did.");
		const [last, lastStep] = await Promise.all([
			read.reversal.findFirst({ where: { machineId: machine.id }, orderBy: { number: "desc" }, select: { number: true } }),
			read.step.findFirst({ where: { machineId: machine.id }, orderBy: { number: "desc" }, select: { number: true } }),
		]);
		const number = (last?.number ?? 0) + 1;
		const title = `Reversal ${number}: back to ${TARGET_WORDS[input.target]}`;
		const at = env.clock();
		return ok(
			deed(
				machine.id,
				"reversal.started",
				{ table: "Reversal", id },
				{
					say: `Began reversal ${number}, back to ${TARGET_WORDS[input.target]}: ${plan.operations.length} operations.`,
					number,
					operations: plan.operations.length,
				},
				[
					add("Step", {
						id: stepId,
						machineId: machine.id,
						number: (lastStep?.number ?? 0) + 1,
						kind: "other",
						title,
						state: "planned",
						lowMinutes: plan.minutes.low + MAKE_SAFE_AND_CHECK,
						likelyMinutes: plan.minutes.likely + MAKE_SAFE_AND_CHECK,
						highMinutes: plan.minutes.high + MAKE_SAFE_AND_CHECK,
						waitMinutes: 0,
						waitWhy: "",
						addedWhy: "a reversal was begun",
						words: "",
						caution: "Isolate and prove dead before anything is opened; local codes and a licensed electrician come first.",
						conversionId: null,
						positionId: null,
						partId: null,
						startedAt: null,
						doneAt: null,
					}),
					add("Reversal", {
						id,
						machineId: machine.id,
						number,
						...columns,
						state: "open",
						startedAt: at,
						safeAt: null,
						endedAt: null,
						words: "",
						stepId,
					}),
				],
				{ number },
			),
		);
	});
};

/** Changes an open reversal; `decide` gives the sentence and the columns, or a refusal. */
const changeOpen = (
	reversalId: string,
	action: string,
	env: Env,
	decide: (
		before: Tables["Reversal"],
		read: Reader,
	) => Promise<Result<{ readonly say: string; readonly columns: Partial<Omit<Tables["Reversal"], "id" | "entry">> }>>,
): Promise<Result<null>> =>
	record(env, async (read): Promise<Result<Deed<null>>> => {
		const before = await read.reversal.findUnique({ where: { id: reversalId } });
		if (!before) return refuse("no-such-reversal", "That reversal is not in the book. Load the page again.");
		if (before.state !== "open") return refuse("reversal-ended", `Reversal ${before.number} has ended. Begin another one.`);
		const said = await decide(before, read);
		if (!said.ok) return said;
		const { say, columns } = said.value;
		return ok(
			deed(
				before.machineId,
				action,
				{ table: "Reversal", id: before.id },
				{ say, number: before.number },
				[change("Reversal", before, columns)],
				null,
			),
		);
	});

/** Says that the machine was isolated and proved dead. It never says that it is so now: who said it and when is kept. */
export const sayMadeSafe = (input: MadeSafe, env: Env): Promise<Result<null>> =>
	changeOpen(input.reversalId, "reversal.isolated", env, async ({ number }) =>
		ok({
			say: `Isolated and proved dead for reversal ${number}${input.words ? `: ${input.words}` : ""}.`,
			columns: { safeAt: env.clock() },
		}),
	);

/** A position stays as it is after all; one that is stuck is no way to anything else either. */
export const leaveOut = (input: LeaveOut, env: Env): Promise<Result<null>> =>
	changeOpen(input.reversalId, "reversal.left-out", env, async (before, read) => {
		const position = await read.position.findUnique({
			where: { id: input.positionId },
			select: { mark: true, name: true, machineId: true },
		});
		if (!position || position.machineId !== before.machineId)
			return refuse("position-of-another", "That position is of another machine. Load the page again.");
		const left = leftOutSchema.parse(JSON.parse(before.leftOut)).filter((one) => one.position !== input.positionId);
		return ok({
			say: `${position.name} (${position.mark}) ${input.stuck === "yes" ? "is stuck and stays" : "stays"} as it is: ${input.why}.`,
			columns: { leftOut: JSON.stringify([...left, { position: input.positionId, why: input.why, stuck: input.stuck }]) },
		});
	});

/** A position that was left out is taken back after all. */
export const takeUp = (input: TakeUp, env: Env): Promise<Result<null>> =>
	changeOpen(input.reversalId, "reversal.taken-up", env, async (before, read) => {
		const left = leftOutSchema.parse(JSON.parse(before.leftOut));
		const position = await read.position.findUnique({ where: { id: input.positionId }, select: { mark: true, name: true } });
		if (!position || !left.some((one) => one.position === input.positionId))
			return refuse("not-left-out", "That position was not left out. Load the page again.");
		return ok({
			say: `${position.name} (${position.mark}) is taken back after all.`,
			columns: { leftOut: JSON.stringify(left.filter((one) => one.position !== input.positionId)) },
		});
	});

/** Ends a reversal of which nothing is left to do. */
export const finishReversal = (input: FinishReversal, env: Env): Promise<Result<null>> =>
	changeOpen(input.reversalId, "reversal.finished", env, async (before, read) => {
		const machine = await read.machine.findUniqueOrThrow({ where: { id: before.machineId }, select: { asFoundAt: true } });
		const facts = await reversalFacts(read, before.machineId);
		const asked = askedOf(before, machine.asFoundAt === null ? null : instant(machine.asFoundAt));
		const plan = planNow(facts, asked, instant(before.startedAt));
		if (!plan.ok) return plan;
		const left = plan.value.operations.length;
		if (left > 0)
			return refuse("not-finished", `${left} operations are still to do. Do them, leave them out, or stop the reversal here.`, {
				facts: { left },
			});
		return ok({
			say: `Finished reversal ${before.number}${input.words ? `: ${input.words}` : ""}.`,
			columns: { state: "done", endedAt: env.clock(), words: input.words },
		});
	});

/** Ends a reversal where it stands. */
export const stopReversal = (input: StopReversal, env: Env): Promise<Result<null>> =>
	changeOpen(input.reversalId, "reversal.stopped", env, async ({ number }) =>
		ok({ say: `Stopped reversal ${number}: ${input.words}.`, columns: { state: "stopped", endedAt: env.clock(), words: input.words } }),
	);
