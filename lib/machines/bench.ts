// What is next on the bench of a machine, and what it waits for. Pure.

import { addDays, type Day, dayOf, formatDayShort, timeOf } from "@/lib/core/days";
import { addMinutes, type Instant } from "@/lib/core/instants";
import type { MachineState } from "@/lib/generated/prisma/enums";
import { type Hindrance, hindrances, type NeededStep } from "@/lib/steps/rules";

/** A step that is still to be done, or under way. */
export type StepAhead = {
	readonly number: number;
	readonly title: string;
	readonly state: "planned" | "doing";
	readonly likelyMinutes: number;
	readonly caution: string;
	readonly who: readonly string[];
	/** Somebody's clock runs on it. */
	readonly clockRuns: boolean;
	readonly needs: readonly NeededStep[];
};

export type NextStep = Omit<StepAhead, "needs"> & { readonly hindered: readonly Hindrance[] };

/** Steps in the order in which they can be taken up: running first, then begun, then those that nothing hinders, then by number. */
export function nextSteps(steps: readonly StepAhead[], now: Instant): NextStep[] {
	const rank = (step: NextStep) =>
		step.clockRuns
			? 0
			: step.state === "doing"
				? 1
				: step.hindered.length === 0
					? 2
					: step.hindered.every((one) => one.why === "waits")
						? 3
						: 4;
	return steps
		.map(({ needs, ...step }): NextStep => ({ ...step, hindered: hindrances(needs, now) }))
		.sort((a, b) => rank(a) - rank(b) || a.number - b.number);
}

/** A finished step whose wait is not over. */
export type Wait = { readonly number: number; readonly title: string; readonly why: string; readonly until: Instant };

/** The waits that are still on at `now`, soonest over first. */
export const waitsOn = (
	done: readonly {
		readonly number: number;
		readonly title: string;
		readonly waitWhy: string;
		readonly waitMinutes: number;
		readonly doneAt: Instant;
	}[],
	now: Instant,
): Wait[] =>
	done
		.map((step) => ({
			number: step.number,
			title: step.title,
			why: step.waitWhy || step.title,
			until: addMinutes(step.doneAt, step.waitMinutes),
		}))
		.filter((wait) => wait.until > now)
		.sort((a, b) => (a.until < b.until ? -1 : a.until > b.until ? 1 : a.number - b.number));

/** When, as one says it in the shop: "15:40", "tomorrow 9:30", "9 Apr 2026, 15:40". */
export function soon(at: Instant, now: Instant, timeZone: string): string {
	const on = dayOf(at, timeZone);
	const today = dayOf(now, timeZone);
	const time = timeOf(at, timeZone);
	if (on === today) return time;
	return on === addDays(today, 1) ? `tomorrow ${time}` : `${formatDayShort(on)}, ${time}`;
}

/** Why a step cannot begin, in a few words: "filler, until 15:40"; "step 4: Earth bonds". */
export const hinderedWords = (hindered: readonly Hindrance[], now: Instant, timeZone: string): string =>
	hindered
		.map((one) =>
			one.why === "waits" ? `${one.waitWhy || `step ${one.number}`} until ${soon(one.until, now, timeZone)}` : `step ${one.number}`,
		)
		.join(", ");

export type StateWords = { readonly words: string; readonly means: "original" | "wait" | "plain" };

/** Where the machine is, in words: somebody is at it, something sets, or how far it is. */
export function stateWords(
	machine: { readonly state: MachineState; readonly leftDay: string | null },
	bench: { readonly clockRuns: boolean; readonly anyReady: boolean; readonly firstWait: Wait | null; readonly begun: boolean },
	now: Instant,
	timeZone: string,
): StateWords {
	if (bench.clockRuns) return { words: "on the bench", means: "original" };
	if (machine.state === "work" && !bench.anyReady && bench.firstWait) {
		return { words: `${bench.firstWait.why}, until ${soon(bench.firstWait.until, now, timeZone)}`, means: "wait" };
	}
	switch (machine.state) {
		case "intake":
			return { words: "being taken in", means: "wait" };
		case "waiting":
			return { words: bench.begun ? "begun, nothing in work now" : "as found, not started", means: "plain" };
		case "work":
			return { words: "in work", means: "plain" };
		case "ready":
			return { words: "finished", means: "original" };
		case "left":
			return { words: machine.leftDay === null ? "has left" : `left ${formatDayShort(machine.leftDay as Day)}`, means: "plain" };
	}
}

/** How late something is that was due on a day: "3 days late", "due today", "due 2 Apr 2026". */
export function dueWords(due: Day, today: Day, daysLate: number): { readonly words: string; readonly late: boolean } {
	if (daysLate > 0) return { words: daysLate === 1 ? "1 day late" : `${daysLate} days late`, late: true };
	return { words: due === today ? "due today" : `due ${formatDayShort(due)}`, late: false };
}

export const OWNERSHIP_WORDS = { shop: "shop's own", customer: "customer's", collection: "for the collection" } as const;
