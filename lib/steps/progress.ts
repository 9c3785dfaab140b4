// A machine's steps in the order in which they can be taken up, and what they add up to. Pure.

import type { Instant } from "@/lib/core/instants";
import { expectedSixths, type Sixths } from "@/lib/money/pert";
import type { Hindrance, StepState } from "@/lib/steps/rules";

/** Where a step stands, as the list of work shows it. */
export type Standing = "running" | "begun" | "ready" | "waits" | "needs" | "done" | "dropped";

export const STANDINGS = ["running", "begun", "ready", "waits", "needs", "done", "dropped"] as const satisfies readonly Standing[];

/** The standing in words. */
export const STANDING_WORDS: Readonly<Record<Standing, string>> = {
	running: "clock runs",
	begun: "begun",
	ready: "can be done now",
	waits: "waits",
	needs: "needs others first",
	done: "done",
	dropped: "dropped",
};

/** Where a step stands: what somebody is at comes before what could be begun, and that before what still waits. */
export function standingOf(step: {
	readonly state: StepState;
	readonly clocks: number;
	readonly hindered: readonly Hindrance[];
}): Standing {
	if (step.state === "done" || step.state === "dropped") return step.state;
	if (step.clocks > 0) return "running";
	if (step.state === "doing") return "begun";
	if (step.hindered.length === 0) return "ready";
	return step.hindered.every(({ why }) => why === "waits") ? "waits" : "needs";
}

/** By what can be taken up first, then by number. */
export const inOrderOfWork = <Step extends { readonly standing: Standing; readonly number: number }>(steps: readonly Step[]): Step[] =>
	[...steps].sort((a, b) => STANDINGS.indexOf(a.standing) - STANDINGS.indexOf(b.standing) || a.number - b.number);

/** What hinders a step, in words: "filler sets until 15:40", "needs step 12". `soon` writes an instant as the shop says it. */
export function hindranceWords(hindered: readonly Hindrance[], soon: (at: Instant) => string): string[] {
	const needs = hindered.filter(({ why }) => why === "not-done").map(({ number }) => number);
	const [last, ...others] = [...needs].reverse();
	return [
		...hindered.flatMap((one) =>
			one.why === "waits" ? [`${one.waitWhy || `the wait after step ${one.number}`} until ${soon(one.until)}`] : [],
		),
		...(last === undefined ? [] : [others.length === 0 ? `needs step ${last}` : `needs steps ${others.reverse().join(", ")} and ${last}`]),
	];
}

export type CountedStep = {
	readonly low: number;
	readonly likely: number;
	readonly high: number;
	readonly state: StepState;
	readonly addedWhy: string;
	readonly crew: readonly { readonly id: string }[];
	/** Finished pieces of time, by person. */
	readonly time: readonly { readonly personId: string; readonly minutes: number }[];
};

export type StepTotals = {
	/** The first plan, minutes of people: a step for two counts twice, a step for nobody yet counts for nobody. */
	readonly planLow: number;
	readonly planLikely: number;
	readonly planHigh: number;
	readonly planExpected: Sixths;
	/** With the steps that were added later; dropped steps stay in the plan. */
	readonly allExpected: Sixths;
	readonly actual: number;
	/** What the expected time of every open step leaves after what each person has put into it, in sixths. */
	readonly toCome: Sixths;
	readonly withoutCrew: number;
};

/** What steps add up to, in minutes of people, by the same counting as the machine's money (lib/money/labourOfMachine.ts). */
export function totalsOf(steps: readonly CountedStep[]): StepTotals {
	const sum = (of: (step: CountedStep) => number, among: readonly CountedStep[] = steps) =>
		among.reduce((total, step) => total + of(step), 0);
	const first = steps.filter(({ addedWhy }) => addedWhy === "");
	return {
		planLow: sum((step) => step.low * step.crew.length, first),
		planLikely: sum((step) => step.likely * step.crew.length, first),
		planHigh: sum((step) => step.high * step.crew.length, first),
		planExpected: sum((step) => expectedSixths(step) * step.crew.length, first),
		allExpected: sum((step) => expectedSixths(step) * step.crew.length),
		actual: sum(minutesOn),
		toCome: sum(leftOf),
		withoutCrew: steps.filter(({ crew, state }) => crew.length === 0 && state !== "dropped").length,
	};
}

/** Minutes put into a step, all persons together. */
export const minutesOn = (step: Pick<CountedStep, "time">): number => step.time.reduce((sum, { minutes }) => sum + minutes, 0);

function leftOf(step: CountedStep): Sixths {
	if (step.state === "done" || step.state === "dropped") return 0;
	return step.crew.reduce((left, { id }) => {
		const put = step.time.reduce((sum, { personId, minutes }) => (personId === id ? sum + minutes : sum), 0);
		return left + Math.max(0, expectedSixths(step) - 6 * put);
	}, 0);
}
