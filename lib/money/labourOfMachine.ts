// The labour of one machine: planned, spent, still to come, by person. Pure.
//
// Estimated: the expected time of every step of the first plan, for each person planned to do it, at the rate of the day
// the machine came in. Spent: every piece of work at the rate of its own day. Still to come: for each step that is not
// over, what its expected time leaves after what that person has already put into it, at today's rate. Each person and
// step is rounded half up, then added, so that the lines add up to the total.

import type { Day } from "@/lib/core/days";
import type { Result } from "@/lib/core/result";
import { costOfMinutes, type Rate, rateOn } from "@/lib/money/labour";
import { type MinorUnits, minor, NOTHING, sumMinor } from "@/lib/money/money";
import { costOfExpected, expectedSixths, type Sixths } from "@/lib/money/pert";

export type LabourStep = {
	readonly id: string;
	readonly low: number;
	readonly likely: number;
	readonly high: number;
	readonly state: "planned" | "doing" | "done" | "dropped";
	/** Of the first plan, not added later. */
	readonly firstPlan: boolean;
	/** Persons planned for it. */
	readonly crew: readonly string[];
};

export type LabourWork = { readonly stepId: string; readonly personId: string; readonly minutes: number; readonly day: Day };
export type LabourPerson = { readonly id: string; readonly name: string; readonly rates: readonly Rate[] };

export type PersonLabour = {
	readonly personId: string;
	readonly name: string;
	readonly plannedSixths: Sixths;
	readonly spentMinutes: number;
	readonly toComeSixths: Sixths;
	readonly estimated: MinorUnits;
	readonly spent: MinorUnits;
	readonly toCome: MinorUnits;
	/** What the spent time is charged at. */
	readonly charged: MinorUnits;
};

export type MachineLabour = {
	readonly persons: readonly PersonLabour[];
	/** Days on which somebody worked, or is to work, without a rate: their time is not in the sums. */
	readonly missingRates: readonly { readonly name: string; readonly day: Day }[];
};

/** Adds up a machine's labour by person, in the order given; persons without any part in it are left out. */
export function labourOfMachine(input: {
	readonly steps: readonly LabourStep[];
	readonly work: readonly LabourWork[];
	readonly persons: readonly LabourPerson[];
	readonly receivedDay: Day;
	readonly today: Day;
}): MachineLabour {
	const missing = new Map<string, { name: string; day: Day }>();
	const persons = input.persons.flatMap((person): PersonLabour[] => {
		const rate = (on: Day): Rate | null => {
			const found: Result<Rate> = rateOn(person.rates, on);
			if (found.ok) return found.value;
			missing.set(`${person.id} ${on}`, { name: person.name, day: on });
			return null;
		};
		const mine = input.steps.filter(({ crew }) => crew.includes(person.id));
		const work = input.work.filter(({ personId }) => personId === person.id);
		if (mine.length === 0 && work.length === 0) return [];

		const planned = mine.filter(({ firstPlan }) => firstPlan).map(expectedSixths);
		const open = mine
			.filter(({ state }) => state === "planned" || state === "doing")
			.map((step) => {
				const put = work.reduce((sum, piece) => (piece.stepId === step.id ? sum + piece.minutes : sum), 0);
				return Math.max(0, expectedSixths(step) - 6 * put);
			})
			.filter((sixths) => sixths > 0);
		const atIntake = planned.length > 0 ? rate(input.receivedDay) : null;
		const now = open.length > 0 ? rate(input.today) : null;
		const pieces = work.map((piece) => ({ minutes: piece.minutes, rate: rate(piece.day) }));
		return [
			{
				personId: person.id,
				name: person.name,
				plannedSixths: planned.reduce((sum, sixths) => sum + sixths, 0),
				spentMinutes: work.reduce((sum, { minutes }) => sum + minutes, 0),
				toComeSixths: open.reduce((sum, sixths) => sum + sixths, 0),
				estimated: sumMinor(planned.map((sixths) => (atIntake ? costOfExpected(sixths, atIntake.costPerHour) : NOTHING))),
				spent: sumMinor(pieces.map((piece) => (piece.rate ? costOfMinutes(piece.minutes, piece.rate.costPerHour) : NOTHING))),
				toCome: sumMinor(open.map((sixths) => (now ? costOfExpected(sixths, now.costPerHour) : NOTHING))),
				charged: sumMinor(pieces.map((piece) => (piece.rate ? costOfMinutes(piece.minutes, piece.rate.chargePerHour) : minor(0)))),
			},
		];
	});
	return { persons, missingRates: [...missing.values()] };
}
