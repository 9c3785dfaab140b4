// What a machine's work, parts and other costs come to for its owner: at charge rates, not at cost. Pure.
//
// Labour is what lib/money/labourOfMachine says of it, with the charge rate in the place of the cost rate: each person and
// step is rounded once and then added, so that sums by step, by person and by kind of step all come to the same.

import type { Day } from "@/lib/core/days";
import { percentOf } from "@/lib/money/exchange";
import { type LabourPerson, type LabourStep, type LabourWork, labourOfMachine, type PersonLabour } from "@/lib/money/labourOfMachine";
import { type MinorUnits, minor, NOTHING, sumMinor } from "@/lib/money/money";
import type { Sixths } from "@/lib/money/pert";
import { percentOfText } from "@/lib/owner/percent";
import type { STEP_KINDS } from "@/lib/steps/schema";

export type OwnerStep = Omit<LabourStep, "firstPlan"> & {
	readonly number: number;
	readonly title: string;
	readonly kind: (typeof STEP_KINDS)[number];
	/** Why it was added after the plan was made; "" when it is of the first plan. */
	readonly addedWhy: string;
};
export type OwnerWanted = {
	readonly id: string;
	readonly words: string;
	readonly estimated: MinorUnits;
	/** What of it is still to come, by the same rule as on the machine's money page (lib/wanted/rules.ts). */
	readonly toCome: MinorUnits;
	/** "used" once what was bought for it is on the machine; until then it is still to come. */
	readonly stands: "to-come" | "used" | "dropped";
	readonly addedWhy: string;
	/** The line that it was bought with; null while it was not, or nobody knows. */
	readonly lineId: string | null;
};
export type OwnerUse = { readonly what: string; readonly count: number; readonly amount: MinorUnits; readonly lineId: string };
/** Something sent back: nothing of it is charged before the seller answers, and then what they did not give back. */
export type OwnerReturn = {
	readonly id: string;
	readonly what: string;
	readonly count: number;
	readonly kept: MinorUnits;
	readonly awaited: MinorUnits;
};
/** What a seller took off the price of something this machine has. */
export type OwnerOffPrice = { readonly id: string; readonly purchase: number; readonly amount: MinorUnits };
export type OwnerCost = {
	readonly id: string;
	readonly words: string;
	readonly kindWords: string;
	readonly state: "planned" | "spent";
	readonly estimated: MinorUnits;
	readonly spent: MinorUnits;
};

/** All of a machine that its owner can be charged for, as the book has it. */
export type Chargeable = {
	readonly steps: readonly OwnerStep[];
	readonly work: readonly LabourWork[];
	/** With what each is charged at. */
	readonly persons: readonly LabourPerson[];
	readonly wanted: readonly OwnerWanted[];
	readonly uses: readonly OwnerUse[];
	readonly returns: readonly OwnerReturn[];
	readonly offPrice: readonly OwnerOffPrice[];
	/** Neither labour nor a purchase line; without what was let go or taken back. */
	readonly costs: readonly OwnerCost[];
	/** Kinds of which there are more rows than are read. */
	readonly leftOut: readonly string[];
};

export type MissingRate = { readonly name: string; readonly day: Day };

/** One step at charge rates. */
export type ChargedStep = {
	readonly step: OwnerStep;
	/** The expected time of those planned for it, at the rates of `ratesOn`. */
	readonly estimated: MinorUnits;
	readonly spent: MinorUnits;
	readonly toCome: MinorUnits;
	readonly minutes: number;
	readonly persons: readonly ChargedPerson[];
};
export type ChargedPerson = {
	readonly personId: string;
	readonly name: string;
	readonly estimated: MinorUnits;
	readonly spent: MinorUnits;
	readonly plannedSixths: Sixths;
	readonly minutes: number;
};

/** Every step at charge rates: estimated at the rates of `ratesOn`, spent at those of the day, still to come at today's. */
export function chargedSteps(
	{ steps, work, persons }: Pick<Chargeable, "steps" | "work" | "persons">,
	{ ratesOn, today }: { readonly ratesOn: Day; readonly today: Day },
): { readonly steps: readonly ChargedStep[]; readonly missingRates: readonly MissingRate[] } {
	const atCharge = persons.map((person) => ({
		...person,
		rates: person.rates.map((rate) => ({ ...rate, costPerHour: rate.chargePerHour })),
	}));
	const missing = new Map<string, MissingRate>();
	const charged = steps.map((step): ChargedStep => {
		const labour = labourOfMachine({
			steps: [{ ...step, firstPlan: true }],
			work: work.filter(({ stepId }) => stepId === step.id),
			persons: atCharge,
			receivedDay: ratesOn,
			today,
		});
		for (const rate of labour.missingRates) missing.set(`${rate.name} ${rate.day}`, rate);
		return {
			step,
			estimated: sumMinor(labour.persons.map((person) => person.estimated)),
			spent: sumMinor(labour.persons.map((person) => person.spent)),
			toCome: sumMinor(labour.persons.map((person) => person.toCome)),
			minutes: labour.persons.reduce((sum, person) => sum + person.spentMinutes, 0),
			persons: labour.persons.map(chargedPerson),
		};
	});
	return { steps: charged, missingRates: [...missing.values()] };
}

const chargedPerson = (person: PersonLabour): ChargedPerson => ({
	personId: person.personId,
	name: person.name,
	estimated: person.estimated,
	spent: person.spent,
	plannedSixths: person.plannedSixths,
	minutes: person.spentMinutes,
});

/** A part with its handling: what it cost landed, and so many per cent of that, rounded half up. */
export const withHandling = (landed: MinorUnits, handling: string): MinorUnits =>
	minor(landed + percentOf(landed, percentOfText(handling)));

/** A line of a purchase as far as the machine used it. */
export type UsedLine = { readonly lineId: string; readonly what: string; readonly count: number; readonly landed: MinorUnits };

/** What was used, a line for each that it was bought with, in the order of the first use. What has handling is rounded here, and then summed. */
export function usedLines(uses: readonly OwnerUse[]): UsedLine[] {
	const lines = new Map<string, UsedLine>();
	for (const { lineId, what, count, amount } of uses) {
		const before = lines.get(lineId) ?? { lineId, what, count: 0, landed: NOTHING };
		lines.set(lineId, { ...before, count: before.count + count, landed: sumMinor([before.landed, amount]) });
	}
	return [...lines.values()];
}

/** What of a planned cost is still to come. */
export const costToCome = (cost: OwnerCost): MinorUnits =>
	cost.state === "planned" ? minor(Math.max(0, cost.estimated - cost.spent)) : NOTHING;
