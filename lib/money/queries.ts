import { type Day, day, dayOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { type Credited, sentBack, sumOfSentBack, takenOff } from "@/lib/credits/rules";
import type { Reader } from "@/lib/db/store";
import { labourOfMachine, type MachineLabour } from "@/lib/money/labourOfMachine";
import { type MinorUnits, minor, NOTHING, sumMinor } from "@/lib/money/money";
import { COST_KIND_WORDS } from "@/lib/money/schema";
import { type CostRow, type CostSummary, costSummary, inTheBooks, type Margin, marginOf } from "@/lib/money/summary";
import { requireShop } from "@/lib/shop/queries";
import { wantedOf, wantedPart } from "@/lib/wanted/queries";
import { estimatedForParts, partsToCome } from "@/lib/wanted/rules";

/** No machine has more lines of one kind than this on its money page; a machine with more says so (`leftOut`). */
export const MOST_LINES = 5000;

export type MachineMoney = {
	readonly currency: string;
	readonly labour: MachineLabour;
	/** One row a person, one for parts, one for what was sent back and one for what sellers took off (where there is any), one for each kind of other cost, and their sums. */
	readonly summary: CostSummary;
	readonly bought: MinorUnits;
	readonly carriage: MinorUnits;
	/** Bought, carried home, and spent so far. */
	readonly books: MinorUnits;
	/** The same with what is still to come. */
	readonly booksAtCompletion: MinorUnits;
	readonly sale: (Margin & { readonly price: MinorUnits }) | null;
	readonly minutes: number;
	/** Shown, not summed. */
	readonly forgone: readonly { readonly id: string; readonly words: string; readonly amount: MinorUnits }[];
	/** A clock that still runs is not in the sums. */
	readonly clocksRunning: number;
	/** Kinds of which there are more lines than are read: the rest is in no sum. */
	readonly leftOut: readonly string[];
};

/** Every figure of a machine's money, from its lines. `null` when there is no such machine. */
export async function machineMoney(read: Reader, machineId: string, today: Day, most = MOST_LINES): Promise<MachineMoney | null> {
	const machine = await read.machine.findUnique({
		where: { id: machineId },
		select: { receivedDay: true, priceMinor: true, carriageMinor: true, soldMinor: true },
	});
	if (!machine) return null;
	const shop = await requireShop(read);
	const found = await Promise.all([
		read.step.findMany({
			where: { machineId },
			orderBy: { number: "asc" },
			take: most + 1,
			select: {
				id: true,
				lowMinutes: true,
				likelyMinutes: true,
				highMinutes: true,
				state: true,
				addedWhy: true,
				crew: { where: { stands: "yes" }, select: { personId: true } },
			},
		}),
		read.work.findMany({
			where: { machineId, how: { not: "void" } },
			orderBy: [{ startedAt: "asc" }, { id: "asc" }],
			take: most + 1,
			select: { stepId: true, personId: true, minutes: true, startedAt: true },
		}),
		read.person.findMany({
			orderBy: [{ name: "asc" }, { id: "asc" }],
			take: 500,
			select: { id: true, name: true, rates: { select: { fromDay: true, costMinor: true, chargeMinor: true } } },
		}),
		read.lineUse.findMany({
			where: { machineId, kind: { not: "void" } },
			orderBy: [{ day: "asc" }, { id: "asc" }],
			take: most + 1,
			select: { id: true, kind: true, amountMinor: true },
		}),
		read.credit.findMany({
			where: { machineId, stands: "yes" },
			orderBy: [{ day: "asc" }, { id: "asc" }],
			take: most + 1,
			select: { useId: true, amountMinor: true },
		}),
		wantedOf(read, machineId),
		read.wanted.count({ where: { machineId } }),
		read.costLine.findMany({
			where: { machineId, state: { not: "void" } },
			orderBy: [{ day: "asc" }, { id: "asc" }],
			take: most + 1,
			select: { id: true, kind: true, state: true, words: true, estimatedMinor: true, spentMinor: true },
		}),
	]);
	const [, , persons, , , wanted, wantedInAll] = found;
	const leftOut: string[] = wantedInAll > wanted.length ? ["things to be bought"] : [];
	const first = <Row>(rows: Row[], kind: string): Row[] => {
		if (rows.length > most) leftOut.push(kind);
		return rows.slice(0, most);
	};
	const steps = first(found[0], "steps");
	const work = first(found[1], "pieces of time");
	const uses = first(found[3], "uses of what was bought");
	const credits = first(found[4], "credits");
	const costs = first(found[7], "other costs");
	const labour = labourOfMachine({
		steps: steps.map((step) => ({
			id: step.id,
			low: step.lowMinutes,
			likely: step.likelyMinutes,
			high: step.highMinutes,
			state: step.state,
			firstPlan: step.addedWhy === "",
			crew: step.crew.map(({ personId }) => personId),
		})),
		work: work.flatMap(({ stepId, personId, minutes, startedAt }) =>
			minutes === null ? [] : [{ stepId, personId, minutes, day: dayOf(instant(startedAt), shop.timeZone) }],
		),
		persons: persons.map((person) => ({
			id: person.id,
			name: person.name,
			rates: person.rates.map((rate) => ({
				from: day(rate.fromDay),
				costPerHour: minor(rate.costMinor),
				chargePerHour: minor(rate.chargeMinor),
			})),
		})),
		receivedDay: day(machine.receivedDay),
		today,
	});

	const ofKind = (kind: "used" | "returned") => uses.filter((use) => use.kind === kind);
	const given = credits.map((credit): Credited => ({ useId: credit.useId, amount: minor(credit.amountMinor) }));
	const returns = ofKind("returned").map((use) => ({ id: use.id, cost: minor(use.amountMinor) }));
	const off = takenOff(given);
	const parts = wanted.map(wantedPart);
	const counted = costs.filter(({ state }) => state !== "forgone");
	const kinds = [...new Set(counted.map(({ kind }) => kind))];
	const rows: CostRow[] = [
		...labour.persons.map(({ name, estimated, spent, toCome }) => ({ what: `Labour, ${name}`, estimated, spent, toCome })),
		{
			what: "Parts and materials",
			estimated: estimatedForParts(parts),
			spent: sumMinor(ofKind("used").map((use) => minor(use.amountMinor))),
			toCome: partsToCome(parts),
		},
		...(returns.length === 0 ? [] : [{ what: "Sent back, less what was credited", estimated: NOTHING, ...sumOfSentBack(returns, given) }]),
		...(off === 0 ? [] : [{ what: "Taken off the price by sellers", estimated: NOTHING, spent: minor(-off), toCome: NOTHING }]),
		...kinds.map((kind): CostRow => {
			const lines = counted.filter((line) => line.kind === kind);
			const [first = "", ...rest] = COST_KIND_WORDS[kind];
			return {
				what: `${first.toUpperCase()}${rest.join("")}`,
				estimated: sumMinor(lines.map((line) => minor(line.estimatedMinor))),
				spent: sumMinor(lines.map((line) => minor(line.spentMinor))),
				toCome: sumMinor(
					lines.map((line) => (line.state === "planned" ? minor(Math.max(0, line.estimatedMinor - line.spentMinor)) : NOTHING)),
				),
			};
		}),
	];
	const summary = costSummary(rows);
	const bought = minor(machine.priceMinor ?? 0);
	const carriage = minor(machine.carriageMinor ?? 0);
	const books = inTheBooks({ bought, carriage, spent: summary.total.spent });
	const minutes = labour.persons.reduce((sum, person) => sum + person.spentMinutes, 0);
	return {
		currency: shop.currency,
		labour,
		summary,
		bought,
		carriage,
		books,
		booksAtCompletion: inTheBooks({ bought, carriage, spent: summary.total.atCompletion }),
		sale:
			machine.soldMinor === null
				? null
				: {
						price: minor(machine.soldMinor),
						...marginOf({
							price: minor(machine.soldMinor),
							books,
							labour: sumMinor(labour.persons.map((person) => person.spent)),
							minutes,
						}),
					},
		minutes,
		forgone: costs
			.filter(({ state }) => state === "forgone")
			.map(({ id, words, estimatedMinor }) => ({ id, words, amount: minor(estimatedMinor) })),
		clocksRunning: work.filter((piece) => piece.minutes === null).length,
		leftOut,
	};
}

/** What of purchases was used on a machine, by day. */
export const usesOf = (read: Reader, machineId: string) =>
	read.lineUse.findMany({
		where: { machineId, kind: "used" },
		orderBy: [{ day: "asc" }, { entry: "asc" }, { id: "asc" }],
		take: MOST_LINES,
		select: {
			id: true,
			count: true,
			amountMinor: true,
			day: true,
			words: true,
			line: { select: { what: true, purchase: { select: { number: true } } } },
		},
	});

/** What was sent back for a machine, with what sellers gave for it; and what they took off the price of what it kept. */
export async function creditsOf(read: Reader, machineId: string) {
	const [returns, credits] = await Promise.all([
		read.lineUse.findMany({
			where: { machineId, kind: "returned" },
			orderBy: [{ day: "asc" }, { entry: "asc" }, { id: "asc" }],
			take: MOST_LINES,
			select: {
				id: true,
				count: true,
				amountMinor: true,
				day: true,
				words: true,
				line: { select: { what: true, purchase: { select: { number: true } } } },
			},
		}),
		read.credit.findMany({
			where: { machineId, stands: "yes" },
			orderBy: [{ day: "asc" }, { entry: "asc" }, { id: "asc" }],
			take: MOST_LINES,
			select: { id: true, useId: true, day: true, amountMinor: true, words: true, purchase: { select: { number: true } } },
		}),
	]);
	const given = credits.map((credit): Credited => ({ useId: credit.useId, amount: minor(credit.amountMinor) }));
	return {
		returns: returns.map((use) => ({ ...use, ...sentBack({ id: use.id, cost: minor(use.amountMinor) }, given) })),
		offPrice: credits.filter(({ useId }) => useId === null),
		credits,
	};
}

/** Costs that are neither labour nor purchase lines, with those that were taken back. */
export const costLinesOf = (read: Reader, machineId: string) =>
	read.costLine.findMany({
		where: { machineId },
		orderBy: [{ day: "asc" }, { id: "asc" }],
		take: MOST_LINES,
		select: {
			id: true,
			entry: true,
			kind: true,
			state: true,
			words: true,
			day: true,
			partyId: true,
			estimatedMinor: true,
			spentMinor: true,
		},
	});
