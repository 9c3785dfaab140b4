// From what stands in the book to a problem for the planner: which open steps can be dated, who may do them, and in words what hinders
// the others. Pure. Nothing is counted as nought or left out without being said.

import type { ThreePoint } from "@/lib/money/pert";
import { canDo } from "@/lib/people/skills";
import { plannedMinutes, type ShopProblem, type ShopTask } from "@/lib/schedule/shopProblem";
import { type Windows, WorkingTime } from "@/lib/schedule/workingTime";
import { loopOfNeeds } from "@/lib/steps/rules";

export type FactPerson = {
	readonly id: string;
	readonly name: string;
	readonly skills: string;
	readonly isHere: boolean;
	readonly windows: Windows;
	/** Minor units a minute; null when no rate is in force today. */
	readonly costAMinute: number | null;
};

export type FactPurchase = {
	readonly id: string;
	readonly number: number;
	/** Minutes from now, below nought. */
	readonly ordered: number;
	/** Minutes; null when nobody said how long it takes. */
	readonly lead: ThreePoint | null;
};

/** A step that is not over. */
export type FactStep = {
	readonly id: string;
	readonly machineId: string;
	readonly number: number;
	readonly title: string;
	readonly estimate: ThreePoint;
	readonly spent: number;
	readonly wait: ThreePoint;
	/** Open steps that it needs. */
	readonly needs: readonly string[];
	/** Minutes from now until what it needed and is done has rested; 0 or less when it has. */
	readonly rests: number;
	readonly crew: readonly string[];
	readonly skill: string | null;
	readonly equipment: readonly { readonly id: string; readonly count: number; readonly throughWait: boolean }[];
	/** Purchases that have not come whole. */
	readonly parcels: readonly string[];
	/** What is wanted for it and not bought yet. */
	readonly notBought: readonly string[];
};

export type ShopFacts = {
	readonly people: readonly FactPerson[];
	readonly equipment: readonly { readonly id: string; readonly name: string; readonly count: number }[];
	readonly purchases: readonly FactPurchase[];
	readonly machines: readonly { readonly id: string; readonly promised: number | null }[];
	readonly steps: readonly FactStep[];
	/** Parts of these machines that are outside the shop; `late`: their day is over. */
	readonly outside: readonly { readonly machineId: string; readonly tag: string; readonly name: string; readonly late: boolean }[];
};

/** What hinders a plan, or makes it doubtful. A page says it in words, with a link to where it can be mended. */
export type Doubt =
	/** These have no date. */
	| { readonly what: "no-hours"; readonly person: string; readonly name: string }
	| { readonly what: "left"; readonly person: string; readonly name: string; readonly step: string }
	| { readonly what: "nobody"; readonly step: string; readonly skill: string | null }
	| { readonly what: "never-together"; readonly step: string; readonly names: readonly string[] }
	| { readonly what: "too-much-equipment"; readonly step: string; readonly name: string; readonly wants: number; readonly has: number }
	| { readonly what: "no-lead"; readonly purchase: number }
	| { readonly what: "loop"; readonly steps: readonly string[] }
	/** These have a date that is doubtful. */
	| { readonly what: "overdue"; readonly purchase: number; readonly minutes: number }
	| { readonly what: "longer-than-thought"; readonly step: string; readonly spent: number; readonly left: number }
	| { readonly what: "unskilled"; readonly step: string; readonly skill: string }
	| { readonly what: "not-bought"; readonly step: string; readonly things: readonly string[] }
	| { readonly what: "outside"; readonly machineId: string; readonly tag: string; readonly name: string; readonly late: boolean }
	| { readonly what: "no-estimate"; readonly step: string }
	| { readonly what: "no-rate"; readonly person: string; readonly name: string };

export type ShopAsked = {
	readonly problem: ShopProblem;
	/** Minor units a minute, by person; 0 where no rate is in force, which a doubt says. */
	readonly costOfPerson: readonly number[];
	readonly doubts: readonly Doubt[];
	/** Steps that get no date: with a doubt of their own, or because what they need has none (`after`: that step). */
	readonly undated: readonly { readonly step: string; readonly after: string | null }[];
};

/** A step for which nobody was named is for whoever can do it, alone. */
export function shopAskedOf(facts: ShopFacts): ShopAsked {
	const doubts: Doubt[] = [];
	const personAt = new Map(facts.people.map((person, at) => [person.id, { person, at }]));
	const equipmentAt = new Map(facts.equipment.map((one, at) => [one.id, { one, at }]));
	const purchaseAt = new Map(facts.purchases.map((purchase, at) => [purchase.id, { purchase, at }]));
	const machineAt = new Map(facts.machines.map(({ id }, at) => [id, at]));
	const said = new Set<string>();
	const once = (doubt: Doubt): void => {
		const key = JSON.stringify(doubt);
		if (!said.has(key)) doubts.push(doubt);
		said.add(key);
	};

	/** Null when the step cannot be dated; the doubts say why. */
	const crewsFor = (step: FactStep): number[][] | null => {
		if (step.crew.length === 0) {
			const able = facts.people.flatMap(({ isHere, windows, skills }, at) =>
				isHere && windows.length > 0 && canDo(skills, step.skill) ? [[at]] : [],
			);
			if (able.length > 0) return able;
			once({ what: "nobody", step: step.id, skill: step.skill });
			return null;
		}
		const crew = step.crew.flatMap((id) => personAt.get(id) ?? []);
		let isAble = true;
		for (const { person } of crew) {
			if (!person.isHere) once({ what: "left", person: person.id, name: person.name, step: step.id });
			else if (person.windows.length === 0) once({ what: "no-hours", person: person.id, name: person.name });
			else continue;
			isAble = false;
		}
		if (step.skill !== null && !crew.some(({ person }) => canDo(person.skills, step.skill)))
			once({ what: "unskilled", step: step.id, skill: step.skill });
		if (isAble && crew.length > 1 && new WorkingTime(crew.map(({ person }) => person.windows)).count === 0) {
			once({ what: "never-together", step: step.id, names: crew.map(({ person }) => person.name) });
			isAble = false;
		}
		return isAble ? [crew.map(({ at }) => at)] : null;
	};
	const hasEquipment = (step: FactStep): boolean =>
		step.equipment.every(({ id, count }) => {
			const found = equipmentAt.get(id)?.one;
			if (found !== undefined && count <= found.count) return true;
			once({ what: "too-much-equipment", step: step.id, name: found?.name ?? "", wants: count, has: found?.count ?? 0 });
			return false;
		});
	const hasLeads = (step: FactStep): boolean =>
		step.parcels.every((id) => {
			const purchase = purchaseAt.get(id)?.purchase;
			if (purchase === undefined) return true;
			if (purchase.lead === null) {
				once({ what: "no-lead", purchase: purchase.number });
				return false;
			}
			const late = -(purchase.ordered + purchase.lead.high);
			if (late > 0) once({ what: "overdue", purchase: purchase.number, minutes: late });
			return true;
		});

	const crews = new Map<string, number[][]>();
	const without = new Map<string, string | null>();
	for (const step of facts.steps) {
		const crew = crewsFor(step);
		// All three are asked, so that everything that hinders it is said at once.
		const [equipped, posted] = [hasEquipment(step), hasLeads(step)];
		if (crew === null || !equipped || !posted) without.set(step.id, null);
		else crews.set(step.id, crew);
		if (step.notBought.length > 0) once({ what: "not-bought", step: step.id, things: step.notBought });
		if (step.estimate.high === 0) once({ what: "no-estimate", step: step.id });
		else if (step.spent > step.estimate.likely)
			once({ what: "longer-than-thought", step: step.id, spent: step.spent, left: plannedMinutes(step) });
	}
	withoutFollowers(facts.steps, without);
	for (let loop = loopAmong(facts.steps, without); loop !== null; loop = loopAmong(facts.steps, without)) {
		once({ what: "loop", steps: loop });
		for (const step of loop) without.set(step, null);
		withoutFollowers(facts.steps, without);
	}

	const worked = new Set(facts.steps.map(({ machineId }) => machineId));
	for (const part of facts.outside) if (worked.has(part.machineId)) once({ what: "outside", ...part });
	const dated = facts.steps.filter(({ id }) => !without.has(id));
	const number = new Map(dated.map(({ id }, at) => [id, at]));
	const tasks = dated.map(
		(step): ShopTask => ({
			id: step.id,
			machine: numberOf(machineAt, step.machineId),
			estimate: step.estimate,
			spent: step.spent,
			wait: step.wait,
			after: step.needs.flatMap((need) => number.get(need) ?? []),
			release: Math.max(0, step.rests),
			parcels: step.parcels.flatMap((id) => purchaseAt.get(id)?.at ?? []),
			crews: crews.get(step.id) ?? [],
			holds: step.equipment.flatMap(({ id, count, throughWait }) => {
				const found = equipmentAt.get(id);
				return found === undefined ? [] : [{ equipment: found.at, count, throughWait }];
			}),
		}),
	);
	const busy = new Set(tasks.flatMap(({ crews: able }) => able.flat()));
	for (const [at, { id, name, costAMinute }] of facts.people.entries())
		if (busy.has(at) && costAMinute === null) once({ what: "no-rate", person: id, name });
	return {
		problem: {
			people: facts.people.map(({ id, windows }) => ({ id, windows })),
			equipment: facts.equipment.map(({ id, count }) => ({ id, count })),
			arrivals: facts.purchases.map(({ id, ordered, lead }) => ({ id, ordered, lead: lead ?? { low: 0, likely: 0, high: 0 } })),
			machines: facts.machines,
			tasks,
		},
		costOfPerson: facts.people.map(({ costAMinute }) => costAMinute ?? 0),
		doubts,
		undated: [...without].map(([step, after]) => ({ step, after })),
	};
}

function numberOf(numbers: ReadonlyMap<string, number>, id: string): number {
	const number = numbers.get(id);
	if (number === undefined) throw new Error("a step of a machine that was not read");
	return number;
}

/** Adds every step that needs one without a date, and which that is. */
function withoutFollowers(steps: readonly FactStep[], without: Map<string, string | null>): void {
	for (let before = -1; before !== without.size; ) {
		before = without.size;
		for (const { id, needs } of steps) {
			const undated = needs.find((need) => without.has(need));
			if (undated !== undefined && !without.has(id)) without.set(id, undated);
		}
	}
}

/** A loop of needs among the others, step by step and back to its first; null when there is none. */
function loopAmong(steps: readonly FactStep[], without: ReadonlyMap<string, string | null>): string[] | null {
	const others = new Map(steps.flatMap((step) => (without.has(step.id) ? [] : [[step.id, step] as const])));
	return loopOfNeeds(others.keys(), (id) => (others.get(id)?.needs ?? []).filter((need) => others.has(need)));
}
