import { day } from "@/lib/core/days";
import { addMinutes, type Instant, instant } from "@/lib/core/instants";
import { formatMinutes } from "@/lib/core/minutes";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { linksMeanwhile, overMeanwhile, UNSEEN } from "@/lib/ledger/meanwhile";
import { record } from "@/lib/ledger/record";
import { add, change, deed, type RowChange } from "@/lib/ledger/rows";
import { requireShop } from "@/lib/shop/queries";
import { type Beside, besideOf } from "@/lib/steps/besideQueries";
import { loopOfNeeds, mayClose, mayHaveBeen, mayStart, minutesTimed } from "@/lib/steps/rules";
import type {
	AddTime,
	ChangeStep,
	CorrectTime,
	DropStep,
	FinishStep,
	PlanStep,
	PlanSteps,
	StartClock,
	StepPlan,
	StopClock,
	VoidTime,
} from "@/lib/steps/schema";

const NO_STEP = refuse("no-such-step", "That step is not in the book. Load the page again.");

/** The columns of a step that its plan fills. */
const planColumns = (plan: StepPlan) => ({
	kind: plan.kind,
	title: plan.title,
	lowMinutes: plan.minutes?.low ?? 0,
	likelyMinutes: plan.minutes?.likely ?? 0,
	highMinutes: plan.minutes?.high ?? 0,
	waitMinutes: plan.wait ?? 0,
	waitLowMinutes: plan.waitLow,
	waitHighMinutes: plan.waitHigh,
	waitWhy: plan.waitWhy,
	addedWhy: plan.addedWhy,
	caution: plan.caution,
	skill: plan.skill || null,
	conversionId: plan.conversionId,
	positionId: plan.positionId,
	partId: plan.partId,
});

const heldUntil = ({ keepsThroughWait }: StepPlan) => (keepsThroughWait === "yes" ? "wait" : "finish");

const MEANWHILE = {
	fields: {
		lowMinutes: "minutes.low",
		likelyMinutes: "minutes.likely",
		highMinutes: "minutes.high",
		waitMinutes: "wait",
		waitLowMinutes: "waitLow",
		waitHighMinutes: "waitHigh",
	},
	together: [
		["lowMinutes", "likelyMinutes", "highMinutes"],
		["waitMinutes", "waitLowMinutes", "waitHighMinutes", "waitWhy"],
	],
};

/** Plans one step. Gives its id and number. */
export const planStep = async (input: PlanStep, env: Env): Promise<Result<{ id: string; number: number }>> => {
	const { machineId, ...plan } = input;
	const planned = await planSteps({ machineId, steps: [{ key: "the step", ...plan }] }, env);
	if (!planned.ok) return planned;
	const [only] = planned.value;
	if (!only) throw new Error("planned no step");
	return ok({ id: only.id, number: only.number });
};

/** Plans steps together, numbered on from the machine's last. Needs may name keys of this list, or ids of standing steps. */
export const planSteps = (input: PlanSteps, env: Env): Promise<Result<{ key: string; id: string; number: number }[]>> =>
	record(env, async (read) => {
		const machine = await read.machine.findUnique({ where: { id: input.machineId }, select: { name: true, state: true } });
		if (!machine) return refuse("no-such-machine", "That machine is not in the book. Load the page again.");
		const standing = await read.step.findMany({ where: { machineId: input.machineId }, select: { id: true, number: true } });
		const last = standing.reduce((highest, { number }) => Math.max(highest, number), 0);
		const planned = input.steps.map((step, index) => ({ step, id: env.newId(), number: last + 1 + index }));
		const idOfKey = new Map(planned.map(({ step, id }) => [step.key, id]));
		if (idOfKey.size < planned.length) return refuse("key-twice", "Two steps of the list have the same key. Give each its own.");
		const known = new Set(standing.map(({ id }) => id));
		const rows: RowChange[] = [];
		const links: RowChange[] = [];
		const needsOf = new Map<string, string[]>();
		for (const { step, id, number } of planned) {
			rows.push(
				add("Step", {
					id,
					machineId: input.machineId,
					number,
					...planColumns(step),
					state: "planned",
					words: "",
					startedAt: null,
					doneAt: null,
				}),
			);
			const needs = [...new Set(step.needs)].map((need) => idOfKey.get(need) ?? need);
			const unknown = needs.find((need) => !known.has(need) && !planned.some(({ id }) => id === need));
			if (unknown) return refuse("need-unknown", `"${step.title}" needs a step that is not there. Choose its needs again.`);
			needsOf.set(id, needs);
			for (const needsId of needs) links.push(add("Need", { id: env.newId(), stepId: id, needsId, stands: "yes" }));
			for (const personId of new Set(step.crew)) links.push(add("Crew", { id: env.newId(), stepId: id, personId, stands: "yes" }));
			for (const equipmentId of new Set(step.equipment))
				links.push(add("StepEquipment", { id: env.newId(), stepId: id, equipmentId, count: 1, until: heldUntil(step), stands: "yes" }));
			for (const purchaseId of new Set(step.parcels)) links.push(add("Parcel", { id: env.newId(), stepId: id, purchaseId, stands: "yes" }));
		}
		const loop = loopOfNeeds(needsOf.keys(), (id) => needsOf.get(id) ?? []);
		if (loop) {
			const titles = loop.map((id) => planned.find((step) => step.id === id)?.step.title ?? id);
			return refuse("needs-loop", `These steps wait for each other: ${titles.join(", which needs ")}. Take one of these needs away.`, {
				facts: { loop },
			});
		}
		const [first] = planned;
		const say =
			planned.length === 1 && first
				? `Planned step ${first.number}: ${first.step.title}.`
				: `Planned ${planned.length} steps, from number ${last + 1}.`;
		return ok(
			deed(
				input.machineId,
				planned.length === 1 ? "step.planned" : "steps.planned",
				{ table: "Step", id: first?.id ?? "" },
				{ say, count: planned.length },
				[...rows, ...links],
				planned.map(({ step, id, number }) => ({ key: step.key, id, number })),
			),
		);
	});

/** Changes a step's plan, its needs and its crew. What was done stays. */
export const changeStep = (input: ChangeStep, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.step.findUnique({
			where: { id: input.stepId },
			include: { needs: true, crew: true, equipment: true, parcels: true },
		});
		if (!before) return NO_STEP;
		const { needs, crew, equipment, parcels, ...step } = before;
		const { seen } = env.seen ?? UNSEEN;
		const wanted = {
			needs: linksMeanwhile(needs, ({ needsId }) => needsId, input.needs, seen),
			crew: linksMeanwhile(crew, ({ personId }) => personId, input.crew, seen),
			equipment: linksMeanwhile(equipment, ({ equipmentId }) => equipmentId, input.equipment, seen),
			parcels: linksMeanwhile(parcels, ({ purchaseId }) => purchaseId, input.parcels, seen),
		};
		const until = heldUntil(input);
		const ofMachine = await read.need.findMany({
			where: { step: { machineId: step.machineId }, stands: "yes" },
			select: { stepId: true, needsId: true },
		});
		const needsOf = new Map<string, string[]>();
		for (const link of ofMachine)
			if (link.stepId !== step.id) needsOf.set(link.stepId, [...(needsOf.get(link.stepId) ?? []), link.needsId]);
		needsOf.set(step.id, wanted.needs);
		const loop = loopOfNeeds([step.id], (id) => needsOf.get(id) ?? []);
		if (loop)
			return refuse("needs-loop", await loopInWords(read, loop), {
				fields: { needs: "These needs lead back to this step." },
				facts: { loop },
			});
		const laid = await overMeanwhile(read, "Step", step, env.seen ?? UNSEEN, planColumns(input), MEANWHILE);
		if (!laid.ok) return laid;
		return ok(
			deed(
				step.machineId,
				"step.changed",
				{ table: "Step", id: step.id },
				{ say: `Changed the plan of step ${step.number}: ${laid.value.title}.` },
				[
					change("Step", step, laid.value),
					...relinked(needs, "needsId", wanted.needs, {
						keep: (row, stands) => change("Need", row, { stands }),
						fresh: (needsId) => add("Need", { id: env.newId(), stepId: step.id, needsId, stands: "yes" }),
					}),
					...relinked(crew, "personId", wanted.crew, {
						keep: (row, stands) => change("Crew", row, { stands }),
						fresh: (personId) => add("Crew", { id: env.newId(), stepId: step.id, personId, stands: "yes" }),
					}),
					...relinked(equipment, "equipmentId", wanted.equipment, {
						keep: (row, stands) => change("StepEquipment", row, { stands, until }),
						fresh: (equipmentId) => add("StepEquipment", { id: env.newId(), stepId: step.id, equipmentId, count: 1, until, stands: "yes" }),
					}),
					...equipment
						.filter((row) => row.stands === "yes" && row.until !== until && wanted.equipment.includes(row.equipmentId))
						.map((row) => change("StepEquipment", row, { until })),
					...relinked(parcels, "purchaseId", wanted.parcels, {
						keep: (row, stands) => change("Parcel", row, { stands }),
						fresh: (purchaseId) => add("Parcel", { id: env.newId(), stepId: step.id, purchaseId, stands: "yes" }),
					}),
				],
				null,
			),
		);
	});

async function loopInWords(read: Reader, loop: readonly string[]): Promise<string> {
	const steps = await read.step.findMany({ where: { id: { in: [...loop] } }, select: { id: true, title: true } });
	const titles = loop.map((id) => steps.find((step) => step.id === id)?.title ?? "a step");
	return `These steps would wait for each other: ${titles.join(", which needs ")}. Take one of these needs away.`;
}

/** The link rows that have to change so that exactly `wanted` stand. Links are never deleted, only withdrawn. */
function relinked<Key extends string, Row extends { stands: "yes" | "no" } & Record<Key, string>>(
	rows: readonly Row[],
	key: Key,
	wanted: readonly string[],
	make: { readonly keep: (row: Row, stands: "yes" | "no") => RowChange; readonly fresh: (id: string) => RowChange },
): RowChange[] {
	const want = new Set(wanted);
	const standing = new Set(rows.map((row) => row[key] as string));
	return [
		...rows
			.filter((row) => (row.stands === "yes") !== want.has(row[key]))
			.map((row) => make.keep(row, row.stands === "yes" ? "no" : "yes")),
		...[...want].filter((id) => !standing.has(id)).map(make.fresh),
	];
}

/** Starts a person's clock on a step. One clock a person: the one that runs is named. */
export const startClock = (input: StartClock, env: Env): Promise<Result<{ workId: string }>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const step = await read.step.findUnique({ where: { id: input.stepId } });
		const person = await read.person.findUnique({ where: { id: input.personId }, select: { name: true } });
		if (!step || !person) return NO_STEP;
		const may = mayStart(step);
		if (!may.ok) return may;
		const running = await read.work.findFirst({
			where: { personId: input.personId, endedAt: null, how: { not: "void" } },
			select: { step: { select: { title: true } } },
		});
		if (running) return refuse("clock-runs", `${person.name}'s clock runs on "${running.step.title}". Stop it first.`);
		const at = input.at ?? env.clock();
		return ok(
			deed(
				step.machineId,
				"work.started",
				{ table: "Work", id },
				{ say: `${person.name} started on step ${step.number}: ${step.title}.` },
				[
					add("Work", {
						id,
						machineId: step.machineId,
						stepId: step.id,
						personId: input.personId,
						startedAt: at,
						endedAt: null,
						minutes: null,
						how: "timed",
						note: "",
					}),
					...(step.state === "planned" ? [change("Step", step, { state: "doing", startedAt: step.startedAt ?? at })] : []),
				],
				{ workId: id },
			),
		);
	});
};

/** Stops a clock; begun minutes count. */
export const stopClock = (input: StopClock, env: Env): Promise<Result<{ minutes: number }>> =>
	record(env, async (read) => {
		const found = await read.work.findUnique({
			where: { id: input.workId },
			include: { step: { select: { number: true, title: true } }, person: { select: { name: true } } },
		});
		if (!found) return refuse("no-such-clock", "That clock is not in the book. Load the page again.");
		const { step, person, ...work } = found;
		if (work.endedAt !== null) return refuse("clock-stopped", `${person.name}'s clock was stopped already.`);
		const at = input.at ?? env.clock();
		const minutes = minutesTimed(instant(work.startedAt), at, env.clock());
		if (!minutes.ok) return minutes;
		return ok(
			deed(
				work.machineId,
				"work.stopped",
				{ table: "Work", id: work.id },
				{
					say: `${person.name} stopped after ${formatMinutes(minutes.value)} on step ${step.number}: ${step.title}.`,
					minutes: minutes.value,
				},
				[change("Work", work, { endedAt: at, minutes: minutes.value, note: input.note || work.note })],
				{ minutes: minutes.value },
			),
		);
	});

/**
 * Adds time from memory, marked as added. Also on a step that is done: a forgotten hour is still an hour. Time that the
 * person spent on something else as well is taken, and named in the answer.
 */
export const addTime = (input: AddTime, env: Env): Promise<Result<{ workId: string; beside: Beside[] }>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const step = await read.step.findUnique({ where: { id: input.stepId } });
		const person = await read.person.findUnique({ where: { id: input.personId }, select: { name: true } });
		if (!step || !person) return NO_STEP;
		if (step.state === "dropped") return mayStart(step) as Result<never>;
		if (input.minutes === 0)
			return refuse("no-time", "Write how long it took, at least a minute.", { fields: { minutes: "At least a minute." } });
		const now = env.clock();
		const startedAt: Instant = input.startedAt ?? addMinutes(now, -input.minutes);
		const endedAt = addMinutes(startedAt, input.minutes);
		const { timeZone } = await requireShop(read);
		const machine = await read.machine.findUniqueOrThrow({ where: { id: step.machineId }, select: { receivedDay: true } });
		const may = mayHaveBeen(
			{ startedAt, endedAt, beginningTyped: input.startedAt !== undefined },
			{ receivedDay: day(machine.receivedDay) },
			now,
			timeZone,
		);
		if (!may.ok) return may;
		const beside = await besideOf(read, { id, personId: input.personId, startedAt, endedAt }, now);
		return ok(
			deed(
				step.machineId,
				"work.added",
				{ table: "Work", id },
				{
					say: `Added from memory: ${formatMinutes(input.minutes)} of ${person.name} on step ${step.number}: ${step.title}.`,
					minutes: input.minutes,
				},
				[
					add("Work", {
						id,
						machineId: step.machineId,
						stepId: step.id,
						personId: input.personId,
						startedAt,
						endedAt,
						minutes: input.minutes,
						how: "added",
						note: input.note,
					}),
					...(step.state === "planned" ? [change("Step", step, { state: "doing", startedAt: step.startedAt ?? startedAt })] : []),
				],
				{ workId: id, beside },
			),
		);
	});
};

/** Takes time back that was entered in error; the line stays readable and counts for nothing. */
export const voidTime = (input: VoidTime, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const found = await read.work.findUnique({ where: { id: input.workId }, include: { person: { select: { name: true } } } });
		if (!found) return refuse("no-such-clock", "That time is not in the book. Load the page again.");
		const { person, ...work } = found;
		if (work.how === "void") return refuse("time-void", "That time was taken back already.");
		const ended = work.endedAt === null ? { endedAt: work.startedAt, minutes: 0 } : {};
		return ok(
			deed(
				work.machineId,
				"work.voided",
				{ table: "Work", id: work.id },
				{ say: `Took back ${formatMinutes(work.minutes ?? 0)} of ${person.name}, entered in error: ${input.why}.` },
				[change("Work", work, { how: "void", note: input.why, ...ended })],
				null,
			),
		);
	});

/** Puts right how long a piece of time was: the wrong one is taken back, and the right one added as from memory. */
export const correctTime = (input: CorrectTime, env: Env): Promise<Result<{ workId: string }>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const found = await read.work.findUnique({
			where: { id: input.workId },
			include: { person: { select: { name: true } }, step: { select: { number: true, title: true } } },
		});
		if (!found) return refuse("no-such-clock", "That time is not in the book. Load the page again.");
		const { person, step, ...work } = found;
		if (work.how === "void") return refuse("time-void", "That time was taken back already.");
		if (input.minutes === 0) {
			const say = "Write how long it really was, at least a minute. Time that never was is taken back instead.";
			return refuse("no-time", say, { fields: { minutes: say } });
		}
		const startedAt = input.startedAt ?? instant(work.startedAt);
		const endedAt = addMinutes(startedAt, input.minutes);
		if (endedAt > env.clock()) {
			const say = "So long it cannot have been yet: it would end after now. Write less, or an earlier beginning.";
			return refuse("ends-ahead", say, { fields: { minutes: say } });
		}
		// What was written while it was done stays with the right time as well.
		const note = `${work.note === "" ? "" : `${work.note}; `}corrected: ${input.why}`;
		const stopped = work.endedAt === null ? { endedAt: work.startedAt, minutes: 0 } : {};
		return ok(
			deed(
				work.machineId,
				"work.corrected",
				{ table: "Work", id },
				{
					say: `Corrected the time of ${person.name} on step ${step.number}, ${step.title}: ${formatMinutes(input.minutes)}${work.minutes === null ? "" : ` instead of ${formatMinutes(work.minutes)}`}. ${input.why}`,
					minutes: input.minutes,
				},
				[
					change("Work", work, { how: "void", note, ...stopped }),
					add("Work", {
						id,
						machineId: work.machineId,
						stepId: work.stepId,
						personId: work.personId,
						startedAt,
						endedAt,
						minutes: input.minutes,
						how: "added",
						note,
					}),
				],
				{ workId: id },
			),
		);
	});
};

/** Says that a step is done and what happened. Its wait begins. */
export const finishStep = (input: FinishStep, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const step = await read.step.findUnique({ where: { id: input.stepId } });
		if (!step) return NO_STEP;
		const clocks = await clocksOn(read, step.id);
		const may = mayClose(step, clocks);
		if (!may.ok) return may;
		const at = input.at ?? env.clock();
		return ok(
			deed(
				step.machineId,
				"step.done",
				{ table: "Step", id: step.id },
				{ say: `Done, step ${step.number}: ${step.title}.${input.words ? ` ${input.words}` : ""}` },
				[change("Step", step, { state: "done", doneAt: at, startedAt: step.startedAt ?? at, words: input.words || step.words })],
				null,
			),
		);
	});

/** Drops a step that will not be done. Nothing waits for it any more. */
export const dropStep = (input: DropStep, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const step = await read.step.findUnique({ where: { id: input.stepId } });
		if (!step) return NO_STEP;
		const may = mayClose(step, await clocksOn(read, step.id));
		if (!may.ok) return may;
		return ok(
			deed(
				step.machineId,
				"step.dropped",
				{ table: "Step", id: step.id },
				{ say: `Dropped step ${step.number}: ${step.title}. ${input.why}` },
				[change("Step", step, { state: "dropped", words: input.why })],
				null,
			),
		);
	});

/** Says that a step is not done after all; the entry of its end stays. */
export const reopenStep = (input: DropStep, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const step = await read.step.findUnique({ where: { id: input.stepId } });
		if (!step) return NO_STEP;
		if (step.state !== "done" && step.state !== "dropped") return refuse("step-open", "The step is open already.");
		return ok(
			deed(
				step.machineId,
				"step.reopened",
				{ table: "Step", id: step.id },
				{ say: `Opened step ${step.number} again: ${step.title}. ${input.why}` },
				[change("Step", step, { state: step.startedAt === null ? "planned" : "doing", doneAt: null })],
				null,
			),
		);
	});

async function clocksOn(read: Reader, stepId: string): Promise<string[]> {
	const running = await read.work.findMany({
		where: { stepId, endedAt: null, how: { not: "void" } },
		orderBy: { startedAt: "asc" },
		take: 20,
		select: { person: { select: { name: true } } },
	});
	return running.map(({ person }) => person.name);
}
