// Reads about machines: the shop page, the head of a machine's pages, what is next on its bench.

import { partsAway } from "@/lib/bags/nesting";
import { WAITS_FOR_WORDS } from "@/lib/captures/waiting";
import { addDays, type Day, dayOf, startOfDay } from "@/lib/core/days";
import { type Instant, instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import { type NextStep, nextSteps, type StepAhead, type Wait, waitsOn } from "@/lib/machines/bench";

/** Machines on one page of the shop. */
export const MACHINES_A_PAGE = 12;
/** Steps still to be done that are looked at for a machine; the page of its work shows them all. */
const MOST_STEPS = 400;
/** A wait is never looked for longer back than this. */
const LONGEST_WAIT_DAYS = 200;
/** Rows of a short list. */
const FEW = 12;

/** One machine by its number, with what the head of its pages shows; null when there is none. */
export const machineByNumber = (read: Reader, number: number) =>
	read.machine.findUnique({
		where: { number },
		include: { seller: { select: { id: true, name: true } }, owner: { select: { id: true, name: true } } },
	});
export type MachineHead = NonNullable<Awaited<ReturnType<typeof machineByNumber>>>;

/** The machines in the shop (or those that have left), busiest state first, then by number. */
export async function machinesInShop(read: Reader, page: number, left = false) {
	const where = left ? { state: "left" as const } : { state: { not: "left" as const } };
	const total = await read.machine.count({ where });
	const machines = await read.machine.findMany({
		where,
		// "work" sorts after "waiting" and "ready": newest work first is what a shop looks for.
		orderBy: [{ state: "desc" }, { number: "asc" }],
		skip: (page - 1) * MACHINES_A_PAGE,
		take: MACHINES_A_PAGE,
		select: { id: true, number: true, name: true, kind: true, made: true, state: true, leftDay: true, portraitSha: true },
	});
	return { machines, total };
}

/** Machines to choose one of: number and name. */
export const machineChoices = (read: Reader) =>
	read.machine.findMany({
		orderBy: { number: "asc" },
		take: 500,
		select: { id: true, number: true, name: true, _count: { select: { positions: true } } },
	});

export type Bench = {
	readonly next: readonly NextStep[];
	readonly waits: readonly Wait[];
	readonly planned: number;
	/** Something was taken out, or a step was done or begun. */
	readonly begun: boolean;
};

/** What is next on each machine's bench, and what is setting, drying or in the post. */
export async function benches(read: Reader, machineIds: readonly string[], now: Instant): Promise<Map<string, Bench>> {
	const ids = [...machineIds];
	const since = startOfDay(addDays(dayOf(now, "UTC"), -LONGEST_WAIT_DAYS), "UTC");
	const [ahead, done, worked, moved] = await Promise.all([
		read.step.findMany({
			where: { machineId: { in: ids }, state: { in: ["planned", "doing"] } },
			orderBy: { number: "asc" },
			take: MOST_STEPS * Math.max(1, ids.length),
			select: {
				machineId: true,
				number: true,
				title: true,
				state: true,
				likelyMinutes: true,
				caution: true,
				crew: { where: { stands: "yes" }, select: { person: { select: { name: true } } } },
				work: { where: { endedAt: null }, take: 1, select: { id: true } },
				needs: {
					where: { stands: "yes" },
					select: { needs: { select: { number: true, title: true, state: true, doneAt: true, waitMinutes: true, waitWhy: true } } },
				},
			},
		}),
		read.step.findMany({
			where: { machineId: { in: ids }, state: "done", waitMinutes: { gt: 0 }, doneAt: { gte: since } },
			orderBy: { number: "asc" },
			take: MOST_STEPS,
			select: { machineId: true, number: true, title: true, waitWhy: true, waitMinutes: true, doneAt: true },
		}),
		read.step.groupBy({ by: ["machineId"], where: { machineId: { in: ids }, startedAt: { not: null } } }),
		read.fitting.groupBy({ by: ["machineId"], where: { machineId: { in: ids }, untilAt: { not: null } } }),
	]);
	const begun = new Set([...worked, ...moved].map(({ machineId }) => machineId));
	return new Map(
		ids.map((id) => {
			const steps = ahead.flatMap((step): StepAhead[] => {
				if (step.machineId !== id || (step.state !== "planned" && step.state !== "doing")) return [];
				return [
					{
						number: step.number,
						title: step.title,
						state: step.state,
						likelyMinutes: step.likelyMinutes,
						caution: step.caution,
						who: step.crew.map(({ person }) => person.name),
						clockRuns: step.work.length > 0,
						needs: step.needs.map(({ needs }) => ({ ...needs, doneAt: needs.doneAt === null ? null : instant(needs.doneAt) })),
					},
				];
			});
			const waiting = done.flatMap((step) =>
				step.machineId === id && step.doneAt !== null ? [{ ...step, doneAt: instant(step.doneAt) }] : [],
			);
			return [id, { next: nextSteps(steps, now), waits: waitsOn(waiting, now), planned: steps.length, begun: begun.has(id) }];
		}),
	);
}

const OUTSIDE = {
	id: true,
	name: true,
	origin: true,
	dueDay: true,
	sinceAt: true,
	tag: { select: { id: true } },
	party: { select: { name: true } },
} as const;

/** Parts outside the shop, by themselves or with their bag, those due soonest first; of one machine, or of all. */
export async function partsOutside(read: Reader, machineId?: string) {
	const where = { ...(await partsAway(read)), ...(machineId === undefined ? {} : { machineId }) };
	const [parts, total] = await Promise.all([
		read.part.findMany({ where, orderBy: [{ dueDay: { sort: "asc", nulls: "last" } }, { id: "asc" }], take: FEW, select: OUTSIDE }),
		read.part.count({ where }),
	]);
	return { parts, total };
}

/** Originals outside the shop that are due by a day (late ones included), soonest first. */
export const originalsDue = (read: Reader, by: Day) =>
	read.part.findMany({
		where: { place: "out", origin: "original", dueDay: { lte: by } },
		orderBy: [{ dueDay: "asc" }, { id: "asc" }],
		take: FEW,
		select: OUTSIDE,
	});

/** Photos and papers that still wait for words, by machine. */
export async function capturesWithoutWords(read: Reader): Promise<{ number: number | null; name: string; count: number }[]> {
	const groups = await read.capture.groupBy({ by: ["machineId"], where: WAITS_FOR_WORDS, _count: { _all: true } });
	const machines = await read.machine.findMany({
		where: { id: { in: groups.flatMap((group) => group.machineId ?? []) } },
		select: { id: true, number: true, name: true },
	});
	return groups
		.map((group) => {
			const machine = machines.find(({ id }) => id === group.machineId);
			return { number: machine?.number ?? null, name: machine?.name ?? "the shop", count: group._count._all };
		})
		.sort((a, b) => b.count - a.count)
		.slice(0, FEW);
}

/** Purchases that have not arrived, or not whole, longest ordered first; with what of each line has come, and how long it was thought to take. */
export const inThePost = (read: Reader) =>
	read.purchase.findMany({
		where: { arrivedDay: null },
		orderBy: [{ orderedDay: "asc" }, { number: "asc" }],
		take: FEW,
		select: {
			number: true,
			orderedDay: true,
			leadLowDays: true,
			leadLikelyDays: true,
			leadHighDays: true,
			lines: {
				orderBy: { number: "asc" },
				take: 200,
				select: { what: true, count: true, deliveries: { where: { stands: "yes" }, select: { count: true, stands: true } } },
			},
		},
	});

/** Who has a clock running, on what. */
export const atTheBench = (read: Reader) =>
	read.work.findMany({
		where: { endedAt: null, how: "timed" },
		orderBy: { startedAt: "asc" },
		take: 50,
		select: {
			id: true,
			startedAt: true,
			person: { select: { name: true } },
			step: { select: { number: true, title: true } },
			machine: { select: { number: true } },
		},
	});

/** Words already used for machines, to offer while typing. */
export async function wordsUsed(read: Reader): Promise<{ kinds: string[]; makers: string[] }> {
	const [kinds, makers] = await Promise.all([
		read.machine.findMany({
			where: { kind: { not: "" } },
			distinct: ["kind"],
			orderBy: { kind: "asc" },
			take: 200,
			select: { kind: true },
		}),
		read.machine.findMany({
			where: { maker: { not: "" } },
			distinct: ["maker"],
			orderBy: { maker: "asc" },
			take: 200,
			select: { maker: true },
		}),
	]);
	return { kinds: kinds.map(({ kind }) => kind), makers: makers.map(({ maker }) => maker) };
}

/** The number that the next machine gets when none is asked for. */
export async function nextMachineNumber(read: Reader): Promise<number> {
	const last = await read.machine.findFirst({ orderBy: { number: "desc" }, select: { number: true } });
	return (last?.number ?? 0) + 1;
}

/** The faults of a machine, open ones first. */
export async function faultsOf(read: Reader, machineId: string) {
	const faults = await read.fault.findMany({
		where: { machineId },
		orderBy: { id: "asc" },
		take: 200,
		select: { id: true, words: true, kind: true, how: true, state: true, position: { select: { mark: true, name: true } } },
	});
	return faults.sort((a, b) => Number(b.state === "open") - Number(a.state === "open"));
}

/** The notes of a machine, newest first. */
export const notesOf = (read: Reader, machineId: string) =>
	read.note.findMany({
		where: { machineId },
		orderBy: [{ at: "desc" }, { id: "desc" }],
		take: 50,
		select: { id: true, kind: true, words: true, whoSaid: true, at: true },
	});

/** Photos of a machine to choose its portrait from: those of the whole machine first, then the newest. */
export async function photosOf(read: Reader, machineId: string): Promise<{ sha: string; words: string }[]> {
	const captures = await read.capture.findMany({
		where: { machineId, kind: "photo", stands: "yes", fileSha: { not: null } },
		orderBy: [{ takenAt: "desc" }, { id: "desc" }],
		take: 60,
		select: { fileSha: true, words: true, positionId: true, partId: true, stepId: true, bagId: true },
	});
	const ofAll = (capture: (typeof captures)[number]) =>
		[capture.positionId, capture.partId, capture.stepId, capture.bagId].every((id) => id === null);
	return captures
		.sort((a, b) => Number(ofAll(b)) - Number(ofAll(a)))
		.slice(0, 24)
		.flatMap(({ fileSha, words }) => (fileSha === null ? [] : [{ sha: fileSha, words }]));
}
