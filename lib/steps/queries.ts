// Reads about a machine's steps: the list of its work, one step with all that belongs to it, and what a form offers.

import { type Instant, instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import { PICTURES } from "@/lib/files/mediaTypes";
import { skillsIn } from "@/lib/people/skills";
import { inOrderOfWork, type Standing, standingOf } from "@/lib/steps/progress";
import { type Hindrance, hindrances, overAt, type StepState } from "@/lib/steps/rules";
import type { STEP_KINDS } from "@/lib/steps/schema";

/** No machine's list of work shows more steps than this; a longer one says so. */
export const MOST_STEPS = 600;
/** Rows of a short list beside a step. */
const FEW = 60;

export type Clock = { readonly workId: string; readonly personId: string; readonly name: string; readonly startedAt: Instant };

export type StepRow = {
	readonly id: string;
	readonly number: number;
	readonly kind: (typeof STEP_KINDS)[number];
	readonly title: string;
	readonly state: StepState;
	readonly standing: Standing;
	readonly low: number;
	readonly likely: number;
	readonly high: number;
	readonly waitMinutes: number;
	readonly waitWhy: string;
	/** Until when its own wait lasts; null when it has none or is not done. */
	readonly waitsUntil: Instant | null;
	readonly addedWhy: string;
	readonly caution: string;
	readonly conversion: { readonly number: number; readonly name: string } | null;
	readonly position: { readonly mark: string; readonly name: string } | null;
	readonly crew: readonly { readonly id: string; readonly name: string; readonly initials: string }[];
	readonly needs: readonly number[];
	readonly hindered: readonly Hindrance[];
	readonly time: readonly { readonly personId: string; readonly minutes: number }[];
	readonly clocks: readonly Clock[];
};

const PARCEL = {
	id: true,
	number: true,
	arrivedDay: true,
	lines: { orderBy: { number: "asc" }, take: 2, select: { what: true } },
} as const;
const NEED = { number: true, title: true, state: true, doneAt: true, waitMinutes: true, waitWhy: true } as const;
const asNeed = <Step extends { doneAt: string | null }>(step: Step) => ({
	...step,
	doneAt: step.doneAt === null ? null : instant(step.doneAt),
});

const LISTED = {
	id: true,
	number: true,
	kind: true,
	title: true,
	state: true,
	lowMinutes: true,
	likelyMinutes: true,
	highMinutes: true,
	waitMinutes: true,
	waitWhy: true,
	addedWhy: true,
	caution: true,
	doneAt: true,
	conversion: { select: { number: true, name: true } },
	position: { select: { mark: true, name: true } },
	crew: { where: { stands: "yes" }, orderBy: { id: "asc" }, select: { person: { select: { id: true, name: true, initials: true } } } },
	needs: { where: { stands: "yes" }, select: { needs: { select: NEED } } },
	work: {
		where: { how: { not: "void" } },
		orderBy: { startedAt: "asc" },
		select: { id: true, personId: true, minutes: true, startedAt: true, person: { select: { name: true } } },
	},
} as const;

const rowsOf = (read: Reader, machineId: string) =>
	read.step.findMany({ where: { machineId }, orderBy: { number: "asc" }, take: MOST_STEPS, select: LISTED });

function asRow(step: Awaited<ReturnType<typeof rowsOf>>[number], now: Instant): StepRow {
	const hindered = hindrances(
		step.needs.map(({ needs }) => asNeed(needs)),
		now,
	);
	const clocks = step.work.flatMap((work): Clock[] =>
		work.minutes === null ? [{ workId: work.id, personId: work.personId, name: work.person.name, startedAt: instant(work.startedAt) }] : [],
	);
	const over = overAt(asNeed(step));
	return {
		id: step.id,
		number: step.number,
		kind: step.kind,
		title: step.title,
		state: step.state,
		standing: standingOf({ state: step.state, clocks: clocks.length, hindered }),
		low: step.lowMinutes,
		likely: step.likelyMinutes,
		high: step.highMinutes,
		waitMinutes: step.waitMinutes,
		waitWhy: step.waitWhy,
		waitsUntil: step.state === "done" && over !== null && over > now ? over : null,
		addedWhy: step.addedWhy,
		caution: step.caution,
		conversion: step.conversion,
		position: step.position,
		crew: step.crew.map(({ person }) => person),
		needs: step.needs.map(({ needs }) => needs.number).sort((a, b) => a - b),
		hindered,
		time: step.work.flatMap(({ personId, minutes }) => (minutes === null ? [] : [{ personId, minutes }])),
		clocks,
	};
}

/** All steps of a machine, in the order in which they can be taken up at `now`. */
export const workOfMachine = async (read: Reader, machineId: string, now: Instant): Promise<StepRow[]> =>
	inOrderOfWork((await rowsOf(read, machineId)).map((step) => asRow(step, now)));

/** One step of a machine with its time, its needs, its photos and what was changed and tested in it; null when there is none. */
export async function stepOfMachine(read: Reader, machineId: string, number: number, now: Instant) {
	const step = await read.step.findUnique({
		where: { machineId_number: { machineId, number } },
		select: {
			...LISTED,
			entry: true,
			words: true,
			startedAt: true,
			conversionId: true,
			positionId: true,
			partId: true,
			waitLowMinutes: true,
			waitHighMinutes: true,
			skill: true,
			equipment: { where: { stands: "yes" }, select: { until: true, equipment: { select: { id: true, name: true } } } },
			parcels: {
				where: { stands: "yes" },
				orderBy: { purchase: { number: "asc" } },
				select: { purchase: { select: PARCEL } },
			},
			part: { select: { name: true, tag: { select: { id: true } } } },
			needs: { where: { stands: "yes" }, orderBy: { needs: { number: "asc" } }, select: { needs: { select: { ...NEED, id: true } } } },
			neededBy: {
				where: { stands: "yes" },
				orderBy: { step: { number: "asc" } },
				take: FEW,
				select: { step: { select: { number: true, title: true, state: true } } },
			},
			captures: {
				where: { stands: "yes", file: { mediaType: { in: [...PICTURES] } } },
				orderBy: [{ takenAt: "asc" }, { id: "asc" }],
				take: FEW,
				select: { id: true, fileSha: true, words: true, takenAt: true },
			},
			alterations: {
				where: { state: { not: "void" } },
				orderBy: { number: "asc" },
				take: FEW,
				select: { number: true, what: true, undo: true, state: true },
			},
			decisions: { orderBy: { at: "asc" }, take: FEW, select: { id: true, question: true } },
			tests: { orderBy: { number: "asc" }, take: FEW, select: { number: true, name: true } },
			putIn: {
				take: FEW,
				orderBy: { fromAt: "asc" },
				select: { id: true, part: { select: { name: true } }, position: { select: { mark: true } } },
			},
			tookOut: {
				take: FEW,
				orderBy: { untilAt: "asc" },
				select: { id: true, part: { select: { name: true } }, position: { select: { mark: true } } },
			},
		},
	});
	if (!step) return null;
	const time = await read.work.findMany({
		where: { stepId: step.id },
		orderBy: [{ startedAt: "asc" }, { id: "asc" }],
		take: 200,
		select: {
			id: true,
			startedAt: true,
			endedAt: true,
			minutes: true,
			how: true,
			note: true,
			person: { select: { id: true, name: true } },
		},
	});
	return { ...step, row: asRow(step, now), allTime: time };
}
export type StepPage = NonNullable<Awaited<ReturnType<typeof stepOfMachine>>>;

/** The clock that a person has running anywhere, or null. */
export const runningClock = (read: Reader, personId: string) =>
	read.work.findFirst({
		where: { personId, endedAt: null, how: { not: "void" } },
		select: {
			id: true,
			startedAt: true,
			machine: { select: { number: true, name: true } },
			step: { select: { id: true, number: true, title: true } },
		},
	});

/** The clocks of everybody, with the step that each runs on. */
export const allClocks = (read: Reader) =>
	read.work.findMany({
		where: { endedAt: null, how: { not: "void" } },
		orderBy: { startedAt: "asc" },
		take: 200,
		select: {
			personId: true,
			person: { select: { name: true } },
			step: { select: { id: true, number: true } },
			machine: { select: { number: true } },
		},
	});

/** What the forms of a machine's pages offer to choose from. */
export async function choicesOfMachine(read: Reader, machineId: string) {
	const [steps, positions, conversions, parts] = await Promise.all([
		read.step.findMany({
			where: { machineId },
			orderBy: { number: "asc" },
			take: MOST_STEPS,
			select: { id: true, number: true, title: true, state: true },
		}),
		read.position.findMany({
			where: { machineId },
			orderBy: [{ rank: "asc" }, { mark: "asc" }],
			take: 1000,
			select: { id: true, mark: true, name: true, area: true, part: { select: { origin: true } } },
		}),
		read.conversion.findMany({
			where: { machineId },
			orderBy: { number: "asc" },
			take: 200,
			select: { id: true, number: true, name: true },
		}),
		read.part.findMany({
			where: { machineId, place: { not: "void" } },
			orderBy: [{ name: "asc" }, { id: "asc" }],
			take: 1000,
			select: { id: true, name: true, origin: true, tag: { select: { id: true } } },
		}),
	]);
	return { steps, positions, conversions, parts, ...(await choicesOfShop(read)) };
}

/** Equipment that is here, purchases that are in the post, and what people can do. */
async function choicesOfShop(read: Reader) {
	const [equipment, purchases, people] = await Promise.all([
		read.equipment.findMany({ where: { state: "here" }, orderBy: { name: "asc" }, take: 100, select: { id: true, name: true } }),
		read.purchase.findMany({
			where: { arrivedDay: null },
			orderBy: { number: "desc" },
			take: FEW,
			select: PARCEL,
		}),
		read.person.findMany({ where: { state: "here" }, take: 200, select: { skills: true } }),
	]);
	const skills = [...new Set(people.flatMap(({ skills: said }) => skillsIn(said)))].sort((a, b) => a.localeCompare(b, "en"));
	return { equipment, purchases, skills };
}
export type Choices = Awaited<ReturnType<typeof choicesOfMachine>>;

/** What waits were called before, in the whole shop, to offer while typing. */
export async function waitsNamed(read: Reader): Promise<string[]> {
	const named = await read.step.findMany({
		where: { waitWhy: { not: "" } },
		distinct: ["waitWhy"],
		orderBy: { waitWhy: "asc" },
		take: 100,
		select: { waitWhy: true },
	});
	return named.map(({ waitWhy }) => waitWhy);
}
