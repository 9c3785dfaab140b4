// Begins a reversal and says how it goes. What is taken out, undone and put in on the way is recorded by its own doors; the plan
// is made anew from where the machine stands.

import { type Instant, instant } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, type Deed, deed, type RowChange, type Tables } from "@/lib/ledger/rows";
import { frozenOf } from "@/lib/reversal/asked";
import { planNow } from "@/lib/reversal/carryingOut/planNow";
import { undoneSince } from "@/lib/reversal/carryingOut/queries";
import { askedOf, TARGET_WORDS, waitsAt } from "@/lib/reversal/carryingOut/rules";
import {
	type FinishReversal,
	type LeaveOut,
	leftOutSchema,
	type MadeSafe,
	type StartReversal,
	type StopReversal,
	startBuildSchema,
	type TakeUp,
} from "@/lib/reversal/carryingOut/schema";
import { MAKE_SAFE_AND_CHECK } from "@/lib/reversal/checklist";
import { mayAsk } from "@/lib/reversal/mayAsk";
import { type ReversalFacts, reversalFacts } from "@/lib/reversal/queries";
import { type Asked, scopeInWords } from "@/lib/reversal/scope";
import { mayClose } from "@/lib/steps/rules";

/** A step's title is one line of the list of work. */
const MOST_TITLE = 200;

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
		const facts = await reversalFacts(read, machine.id);
		const known = knownIn(facts, input);
		if (!known.ok) return known;
		const asked: Asked = {
			asFoundAt: instant(machine.asFoundAt),
			...(input.targetAt ? { at: input.targetAt } : {}),
			...(input.target === "asMade" ? { asMade: true } : {}),
			...known.value,
			...(input.reason ? { reason: input.reason } : {}),
		};
		const may = mayAsk(facts, asked);
		if (!may.ok) return may;
		const [last, lastStep] = await Promise.all([
			read.reversal.findFirst({
				where: { machineId: machine.id },
				orderBy: { number: "desc" },
				select: { number: true, state: true, startBuild: true },
			}),
			read.step.findFirst({ where: { machineId: machine.id }, orderBy: { number: "desc" }, select: { number: true } }),
		]);
		// What the last one had opened when it was stopped still waits to go in again.
		const opened = last?.state === "stopped" ? startBuildSchema.parse(JSON.parse(last.startBuild)) : {};
		const startBuild = startOf(facts, opened);
		const planned = planNow(facts, asked, startBuild);
		if (!planned.ok) return planned;
		const plan = planned.value;
		if (plan.operations.length === 0) return refuse("nothing-to-do", "There is nothing to do: it stands as it did.");
		const columns = {
			target: input.target,
			targetAt: input.targetAt ?? null,
			conversionIds: JSON.stringify(asked.conversions),
			positionIds: JSON.stringify(asked.positions),
			frozen: JSON.stringify(frozenOf(facts, asked)),
			startBuild: JSON.stringify(startBuild),
			leftOut: "[]",
			reason: input.reason,
		};
		const number = (last?.number ?? 0) + 1;
		const only = scopeInWords(facts, asked);
		const title = `Reversal ${number}: back to ${TARGET_WORDS[input.target]}${only === "" ? "" : `, only ${only}`}`.slice(0, MOST_TITLE);
		const at = env.clock();
		return ok(
			deed(
				machine.id,
				"reversal.started",
				{ table: "Reversal", id },
				{
					say: `Began reversal ${number}, back to ${TARGET_WORDS[input.target]}${only === "" ? "" : `, only ${only}`}: ${plan.operations.length} operations.`,
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
						waitLowMinutes: null,
						waitHighMinutes: null,
						waitWhy: "",
						addedWhy: "a reversal was begun",
						words: "",
						caution: "Isolate and prove dead before anything is opened; local codes and a licensed electrician come first.",
						skill: null,
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

/** The ids that a question names, each once; refused when one is not of this machine. */
function knownIn(
	facts: ReversalFacts,
	{ conversionIds, positionIds }: StartReversal,
): Result<{ readonly conversions: readonly string[]; readonly positions: readonly string[] }> {
	const [conversions, positions] = [new Set(conversionIds), new Set(positionIds)];
	const strange =
		[...conversions].some((id) => !facts.conversions.some((one) => one.id === id)) ||
		[...positions].some((id) => !facts.positions.some((one) => one.id === id));
	return strange
		? refuse("not-of-this-machine", "Something that was chosen is not of this machine. Load the page again and choose anew.")
		: ok({ conversions: [...conversions], positions: [...positions] });
}

/** The build now, by ids, and in positions that are empty what an earlier reversal took out of them. */
function startOf(facts: ReversalFacts, opened: Readonly<Record<string, string>>): Record<string, string> {
	const mine = new Set(facts.positions.map(({ id }) => id));
	const fitted = facts.parts.flatMap(({ id, positionId }) =>
		positionId !== null && mine.has(positionId) ? [[positionId, id] as const] : [],
	);
	const [held, placed] = [new Set(fitted.map(([position]) => position)), new Set(fitted.map(([, part]) => part))];
	const waiting = Object.entries(opened).filter(([position, part]) => mine.has(position) && !held.has(position) && !placed.has(part));
	return Object.fromEntries([...fitted, ...waiting].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Changes an open reversal; `decide` gives the sentence and the columns, or a refusal. */
const changeOpen = (
	reversalId: string,
	action: string,
	env: Env,
	decide: (
		before: Tables["Reversal"],
		read: Reader,
	) => Promise<
		Result<{
			readonly say: string;
			readonly columns: Partial<Omit<Tables["Reversal"], "id" | "entry">>;
			/** Other rows that change with it. */
			readonly rows?: readonly RowChange[];
		}>
	>,
): Promise<Result<null>> =>
	record(env, async (read): Promise<Result<Deed<null>>> => {
		const before = await read.reversal.findUnique({ where: { id: reversalId } });
		if (!before) return refuse("no-such-reversal", "That reversal is not in the book. Load the page again.");
		if (before.state !== "open") return refuse("reversal-ended", `Reversal ${before.number} has ended. Begin another one.`);
		const said = await decide(before, read);
		if (!said.ok) return said;
		const { say, columns, rows = [] } = said.value;
		return ok(
			deed(
				before.machineId,
				action,
				{ table: "Reversal", id: before.id },
				{ say, number: before.number },
				[change("Reversal", before, columns), ...rows],
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
		const planned = planNow(facts, asked, startBuildSchema.parse(JSON.parse(before.startBuild)));
		if (!planned.ok) return planned;
		const { operations, staysDifferent } = planned.value;
		const left = operations.filter(({ kind }) => kind !== "make-safe" && kind !== "check").length;
		if (left > 0)
			return refuse(
				"not-finished",
				`${left === 1 ? "1 operation is" : `${left} operations are`} still to do. Do them, leave them out, or stop the reversal here.`,
				{
					facts: { left },
				},
			);
		const [rests] = waitsAt(await undoneSince(read, before.machineId, before.startedAt), env.clock());
		if (rests)
			return refuse("still-resting", `${rests.what} still rests, so the reversal is not over yet. Finish it when that is done.`, {
				facts: { until: rests.until },
			});
		const closed = await stepClosed(read, before, "done", env.clock());
		if (!closed.ok) return closed;
		const differs = [...new Set(staysDifferent.map(({ position }) => position))];
		return ok({
			say: `Finished reversal ${before.number}${input.words ? `: ${input.words}` : ""}.${differs.length === 0 ? "" : ` Stays different: ${differs.join(", ")}.`}`,
			columns: { state: "done", endedAt: env.clock(), words: input.words },
			rows: closed.value,
		});
	});

/** Ends a reversal where it stands. */
export const stopReversal = (input: StopReversal, env: Env): Promise<Result<null>> =>
	changeOpen(input.reversalId, "reversal.stopped", env, async (before, read) => {
		const closed = await stepClosed(read, before, "stopped", env.clock());
		if (!closed.ok) return closed;
		return ok({
			say: `Stopped reversal ${before.number}: ${input.words}.`,
			columns: { state: "stopped", endedAt: env.clock(), words: input.words },
			rows: closed.value,
		});
	});

/** The reversal's step, closed with it: done, or dropped where it was stopped before anybody put time on it. */
async function stepClosed(
	read: Reader,
	{ stepId }: Tables["Reversal"],
	how: "done" | "stopped",
	at: Instant,
): Promise<Result<RowChange[]>> {
	if (stepId === null) return ok([]);
	const found = await read.step.findUnique({
		where: { id: stepId },
		include: { work: { where: { how: { not: "void" } }, select: { endedAt: true, minutes: true, person: { select: { name: true } } } } },
	});
	if (!found || found.state === "done" || found.state === "dropped") return ok([]);
	const { work, ...step } = found;
	const may = mayClose(
		step,
		work.flatMap(({ endedAt, minutes, person }) => (endedAt === null && minutes === null ? [person.name] : [])),
	);
	if (!may.ok) return may;
	const dropped = how === "stopped" && work.length === 0;
	return ok([change("Step", step, dropped ? { state: "dropped" } : { state: "done", startedAt: step.startedAt ?? at, doneAt: at })]);
}
