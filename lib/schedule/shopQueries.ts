// Reads what is open in the whole shop, and plans it. A plan is worked out once for the book as it stands and kept for some minutes.

import { partsAway } from "@/lib/bags/nesting";
import { daysOffFrom, hoursOfPeople } from "@/lib/calendar/queries";
import { daysAhead, hoursOf, windowsOf } from "@/lib/calendar/windows";
import { addDays, type Day, day, dayOf, startOfDay } from "@/lib/core/days";
import { type Instant, instant, instantOf, millisOf, minutesBetween } from "@/lib/core/instants";
import { seededRandom } from "@/lib/core/random";
import type { Reader } from "@/lib/db/store";
import { rateOn } from "@/lib/money/labour";
import { minor } from "@/lib/money/money";
import { type FactStep, type ShopAsked, type ShopFacts, shopAskedOf } from "@/lib/schedule/shopFacts";
import { PLANS, type ShopPlan, shopPlanOf } from "@/lib/schedule/shopPlan";
import { type ShopSimulation, simulateShop } from "@/lib/schedule/shopSimulate";
import { requireShop } from "@/lib/shop/queries";
import { corrected, factorOf, type Overrun, overruns } from "@/lib/steps/overrun";
import { overAt } from "@/lib/steps/rules";

const MOST_STEPS = 5000;
/** Parts outside the shop that a plan speaks of. */
const MOST_OUT = 100;
const DAY_MINUTES = 1440;
/** What comes by post is counted as there at noon. */
const NOON = 720;
/** The same seed for everybody, so that a page shows the same figures twice. */
const SEED = 1;
const MOST_RUNS = 10_000;
const LEAST_RUNS = 500;
/** So many steps get all runs; more get fewer, so that a page of a large shop comes in a second or two, too. */
const RUNS_SIZE = 45;
const PLANS_SIZE = 80;
const [LEAST_PLANS, MOST_PLANS] = [60, 20_000];

/** How many plans are tried for so many steps: a plan of twice as many costs more than twice as much. */
export const plansFor = (steps: number): number =>
	Math.min(MOST_PLANS, Math.max(LEAST_PLANS, Math.floor(PLANS * (PLANS_SIZE / Math.max(1, steps)) ** 1.5)));

let keptRecord: { readonly key: string; readonly record: Promise<Overrun[]> } | null = null;

/** How much longer the shop's steps took than was thought, by kind. Kept while nothing is entered. */
export async function overrunsOfShop(read: Reader): Promise<Overrun[]> {
	const key = await lastEntry(read);
	if (keptRecord?.key === key) return keptRecord.record;
	const record = readOverruns(read);
	keptRecord = { key, record };
	record.catch(() => {
		keptRecord = null;
	});
	return record;
}

/** The book as it stands, in a word. */
async function lastEntry(read: Reader): Promise<string> {
	const last = await read.entry.findFirst({ orderBy: { seq: "desc" }, select: { seq: true, hash: true } });
	return last === null ? "" : `${last.seq} ${last.hash}`;
}

async function readOverruns(read: Reader): Promise<Overrun[]> {
	const steps = await read.step.findMany({
		where: { state: "done" },
		orderBy: [{ doneAt: "desc" }, { id: "asc" }],
		take: MOST_STEPS,
		select: {
			kind: true,
			lowMinutes: true,
			likelyMinutes: true,
			highMinutes: true,
			crew: { where: { stands: "yes" }, select: { id: true } },
			work: { where: { how: { not: "void" } }, select: { personId: true, minutes: true } },
		},
	});
	return overruns(
		steps.map(({ kind, lowMinutes, likelyMinutes, highMinutes, crew, work }) => ({
			kind,
			estimate: { low: lowMinutes, likely: likelyMinutes, high: highMinutes },
			crew: crew.length,
			minutes: work.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0),
			workers: new Set(work.map(({ personId }) => personId)).size,
		})),
	);
}

/** Open steps of all machines that are here, with what the pages call them. */
async function openWork(read: Reader) {
	const machines = await read.machine.findMany({
		where: { state: { not: "left" } },
		orderBy: { number: "asc" },
		take: 500,
		select: { id: true, number: true, name: true, promisedDay: true },
	});
	const steps = await read.step.findMany({
		where: { state: { in: ["planned", "doing"] }, machine: { state: { not: "left" } } },
		orderBy: [{ machine: { number: "asc" } }, { number: "asc" }],
		take: MOST_STEPS,
		select: {
			id: true,
			machineId: true,
			number: true,
			kind: true,
			title: true,
			lowMinutes: true,
			likelyMinutes: true,
			highMinutes: true,
			waitMinutes: true,
			waitLowMinutes: true,
			waitHighMinutes: true,
			waitWhy: true,
			skill: true,
			crew: { where: { stands: "yes" }, orderBy: { id: "asc" }, select: { personId: true } },
			equipment: { where: { stands: "yes" }, select: { equipmentId: true, count: true, until: true } },
			parcels: { where: { stands: "yes", purchase: { arrivedDay: null } }, select: { purchaseId: true } },
			wanted: {
				where: { OR: [{ state: "open" }, { state: "bought", line: { purchase: { arrivedDay: null } } }] },
				orderBy: { id: "asc" },
				select: {
					words: true,
					line: {
						select: { purchaseId: true, count: true, deliveries: { where: { stands: "yes" }, select: { count: true } } },
					},
				},
			},
			needs: {
				where: { stands: "yes" },
				select: { needs: { select: { id: true, state: true, doneAt: true, waitMinutes: true } } },
			},
			work: { where: { how: { not: "void" } }, select: { personId: true, minutes: true, startedAt: true } },
		},
	});
	return { machines, steps };
}

type OpenWork = Awaited<ReturnType<typeof openWork>>;
export type OpenStep = OpenWork["steps"][number];

export type ShopAhead = {
	/** The plan's zero. */
	readonly now: Instant;
	readonly timeZone: string;
	readonly machines: OpenWork["machines"];
	readonly steps: readonly OpenStep[];
	readonly people: readonly { readonly id: string; readonly name: string; readonly initials: string }[];
	readonly equipment: readonly { readonly id: string; readonly name: string; readonly count: number }[];
	readonly purchases: readonly { readonly id: string; readonly number: number }[];
	readonly facts: ShopFacts;
	readonly asked: ShopAsked;
	readonly plan: ShopPlan;
	/** Null when there is nothing to simulate. */
	readonly simulation: ShopSimulation | null;
	readonly record: readonly Overrun[];
};

/** A plan is kept so long: then what was to begin now is looked at anew. */
const KEPT_MINUTES = 10;
/** One by the record and one without. */
const kept = new Map<boolean, { readonly key: string; readonly ahead: Promise<ShopAhead> }>();

/**
 * The plan of the whole shop from now on. With `byRecord` the estimates are corrected by what the shop's steps really took. Kept for
 * as long as nothing is entered, but not for more than some minutes.
 */
export async function shopAhead(read: Reader, now: Instant, byRecord: boolean): Promise<ShopAhead> {
	const tenth = Math.floor(millisOf(now) / (KEPT_MINUTES * 60_000));
	const key = `${await lastEntry(read)} ${tenth}`;
	const standing = kept.get(byRecord);
	if (standing?.key === key) return standing.ahead;
	const ahead = aheadOf(read, instantOf(Math.floor(millisOf(now) / 60_000) * 60_000), byRecord);
	kept.set(byRecord, { key, ahead });
	// What failed is not kept: whoever asks next has it worked out anew.
	ahead.catch(() => kept.delete(byRecord));
	return ahead;
}

async function aheadOf(read: Reader, now: Instant, byRecord: boolean): Promise<ShopAhead> {
	const { timeZone } = await requireShop(read);
	const today = dayOf(now, timeZone);
	const [{ machines, steps }, record, people, off, equipment, purchases, outside] = await Promise.all([
		openWork(read),
		overrunsOfShop(read),
		everybody(read),
		daysOffFrom(read, today),
		read.equipment.findMany({
			where: { state: "here" },
			orderBy: { name: "asc" },
			take: 200,
			select: { id: true, name: true, count: true },
		}),
		read.purchase.findMany({
			where: { arrivedDay: null },
			orderBy: { number: "asc" },
			take: 500,
			select: { id: true, number: true, orderedDay: true, leadLowDays: true, leadLikelyDays: true, leadHighDays: true },
		}),
		partsOut(read),
	]);
	const ahead = daysAhead(now, timeZone);
	const fromNow = (at: Instant): number => Math.ceil((millisOf(at) - millisOf(now)) / 60_000);
	const offDays = off.map(({ personId, fromDay, untilDay }) => ({ personId, fromDay: day(fromDay), untilDay: day(untilDay) }));
	const facts: ShopFacts = {
		people: people.map(({ id, name, skills, state, hours, rates }) => ({
			id,
			name,
			skills,
			isHere: state === "here",
			windows: windowsOf(
				ahead,
				hoursOf(hours),
				offDays.filter(({ personId }) => personId === null || personId === id),
			),
			costAMinute: rateToday(rates, today),
		})),
		equipment,
		purchases: purchases.map(({ id, number, orderedDay, leadLowDays, leadLikelyDays, leadHighDays }) => ({
			id,
			number,
			ordered: fromNow(startOfDay(day(orderedDay), timeZone)) + NOON,
			lead:
				leadLowDays === null || leadLikelyDays === null || leadHighDays === null
					? null
					: { low: leadLowDays * DAY_MINUTES, likely: leadLikelyDays * DAY_MINUTES, high: leadHighDays * DAY_MINUTES },
		})),
		machines: machines.map(({ id, promisedDay }) => ({
			id,
			// Until its midnight.
			promised: promisedDay === null ? null : fromNow(startOfDay(addDays(day(promisedDay), 1), timeZone)),
		})),
		outside: outside.map(({ machineId, tag, name, dueDay }) => ({
			machineId,
			tag: tag?.id ?? "",
			name,
			late: dueDay !== null && dueDay < today,
		})),
		steps: steps.map((step) => factStep(step, now, byRecord ? factorOf(record, step.kind) : 1)),
	};
	const asked = shopAskedOf(facts);
	const size = Math.max(1, asked.problem.tasks.length);
	const plans = plansFor(size);
	const plan = shopPlanOf(asked.problem, SEED, plans);
	const costAMinute = plan.tasks.map(({ crew }) => crew.reduce((sum, person) => sum + (asked.costOfPerson[person] ?? 0), 0));
	const runs = Math.min(MOST_RUNS, Math.max(LEAST_RUNS, Math.floor((MOST_RUNS * RUNS_SIZE) / size)));
	return {
		now,
		timeZone,
		machines,
		steps,
		people,
		equipment,
		purchases,
		facts,
		asked,
		plan,
		simulation:
			plan.tasks.length === plan.without.length ? null : simulateShop(asked.problem, plan.tasks, costAMinute, runs, seededRandom(SEED)),
		record,
	};
}

function factStep(step: OpenStep, now: Instant, factor: number): FactStep {
	const { lowMinutes, likelyMinutes, highMinutes, waitMinutes, waitLowMinutes, waitHighMinutes } = step;
	const put = new Map<string, number>();
	for (const { personId, minutes, startedAt } of step.work)
		put.set(personId, (put.get(personId) ?? 0) + (minutes ?? Math.max(0, minutesBetween(instant(startedAt), now))));
	const rests = step.needs.map(({ needs }) => {
		const over =
			needs.state === "done"
				? overAt({ doneAt: needs.doneAt === null ? null : instant(needs.doneAt), waitMinutes: needs.waitMinutes })
				: null;
		return over === null ? 0 : Math.ceil((millisOf(over) - millisOf(now)) / 60_000);
	});
	return {
		id: step.id,
		machineId: step.machineId,
		number: step.number,
		title: step.title,
		estimate: corrected({ low: lowMinutes, likely: likelyMinutes, high: highMinutes }, factor),
		// Time of everybody, shared by those it was planned for: two who take turns at a step for one have done the sum of it.
		spent: Math.floor([...put.values()].reduce((sum, minutes) => sum + minutes, 0) / Math.max(1, step.crew.length)),
		wait: { low: waitLowMinutes ?? waitMinutes, likely: waitMinutes, high: waitHighMinutes ?? waitMinutes },
		needs: step.needs.flatMap(({ needs }) => (needs.state === "planned" || needs.state === "doing" ? [needs.id] : [])),
		rests: Math.max(0, ...rests),
		crew: step.crew.map(({ personId }) => personId),
		skill: step.skill,
		equipment: step.equipment.map(({ equipmentId, count, until }) => ({ id: equipmentId, count, throughWait: until === "wait" })),
		parcels: [...new Set([...step.parcels.map(({ purchaseId }) => purchaseId), ...inThePostFor(step)])],
		notBought: step.wanted.flatMap(({ line, words }) => (line === null ? [words] : [])),
	};
}

/** Purchases that bring what is wanted for the step, as far as it has not come. */
const inThePostFor = ({ wanted }: OpenStep): string[] =>
	wanted.flatMap(({ line }) =>
		line === null || line.deliveries.reduce((sum, { count }) => sum + count, 0) >= line.count ? [] : [line.purchaseId],
	);

/** Parts outside the shop, by themselves or with their bag. */
const partsOut = async (read: Reader) =>
	read.part.findMany({
		where: await partsAway(read),
		orderBy: [{ dueDay: { sort: "asc", nulls: "last" } }, { id: "asc" }],
		take: MOST_OUT,
		select: { machineId: true, name: true, dueDay: true, tag: { select: { id: true } } },
	});

/** Everybody who is here or planned for something open, with hours and rates. */
async function everybody(read: Reader) {
	const here = await hoursOfPeople(read);
	const people = await read.person.findMany({
		where: { OR: [{ state: "here" }, { crews: { some: { stands: "yes", step: { state: { in: ["planned", "doing"] } } } } }] },
		orderBy: [{ name: "asc" }, { id: "asc" }],
		take: 300,
		select: {
			id: true,
			name: true,
			initials: true,
			skills: true,
			state: true,
			rates: { select: { fromDay: true, costMinor: true, chargeMinor: true } },
		},
	});
	return people.map((person) => ({ ...person, hours: here.find(({ id }) => id === person.id)?.hours ?? [] }));
}

function rateToday(rates: readonly { fromDay: string; costMinor: number; chargeMinor: number }[], today: Day): number | null {
	const rate = rateOn(
		rates.map(({ fromDay, costMinor, chargeMinor }) => ({
			from: day(fromDay),
			costPerHour: minor(costMinor),
			chargePerHour: minor(chargeMinor),
		})),
		today,
	);
	return rate.ok ? rate.value.costPerHour / 60 : null;
}
