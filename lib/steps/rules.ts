// What may be done with a step. Pure.

import { type Day, dayOf, formatDay } from "@/lib/core/days";
import { addMinutes, type Instant, minutesBetween } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";

export type StepState = "planned" | "doing" | "done" | "dropped";

/** A clock that ran longer than this was forgotten overnight; it is kept, and the page says so. */
export const FORGOTTEN_MINUTES = 12 * 60;

/** When a finished step's wait is over, or null when it is not finished. */
export const overAt = (step: { readonly doneAt: Instant | null; readonly waitMinutes: number }): Instant | null =>
	step.doneAt === null ? null : addMinutes(step.doneAt, step.waitMinutes);

export type NeededStep = {
	readonly number: number;
	readonly title: string;
	readonly state: StepState;
	readonly doneAt: Instant | null;
	readonly waitMinutes: number;
	/** What its wait is for, in the shop's words: "filler sets". */
	readonly waitWhy?: string;
};

/** Why a step cannot begin now: a step that is not done, or a wait that is not over. */
export type Hindrance =
	| { readonly why: "not-done"; readonly number: number; readonly title: string }
	| { readonly why: "waits"; readonly number: number; readonly title: string; readonly until: Instant; readonly waitWhy?: string };

/** All that hinders a step at `now`, in the order of the steps; nothing when it can begin. Dropped steps hinder nobody. */
export function hindrances(needs: readonly NeededStep[], now: Instant): Hindrance[] {
	return [...needs]
		.sort((a, b) => a.number - b.number)
		.flatMap((need): Hindrance[] => {
			const { number, title } = need;
			if (need.state === "dropped") return [];
			const over = overAt(need);
			if (need.state !== "done" || over === null) return [{ why: "not-done", number, title }];
			return over > now ? [{ why: "waits", number, title, until: over, ...(need.waitWhy ? { waitWhy: need.waitWhy } : {}) }] : [];
		});
}

/** A clock may start on a step that is not done or dropped. What it still waits for does not stop it: the page warns. */
export function mayStart(step: { readonly state: StepState; readonly title: string }): Result<null> {
	if (step.state === "done") return refuse("step-done", `"${step.title}" is done. Say that it is not done after all, or add a step.`);
	if (step.state === "dropped") return refuse("step-dropped", `"${step.title}" was dropped. Add a step in its place.`);
	return ok(null);
}

/** Whole minutes between start and stop, begun minutes counted. A stop before the start, or still to come, is refused at its field. */
export function minutesTimed(startedAt: Instant, endedAt: Instant, now: Instant): Result<number> {
	const wrong = (code: string, say: string) => refuse(code, say, { fields: { stopped: say } });
	if (endedAt < startedAt) return wrong("stop-before-start", "The clock cannot stop before it started. Check the moment.");
	if (endedAt > now) return wrong("stop-ahead", "That moment is still to come. Write when the work stopped, or leave it empty for now.");
	const whole = minutesBetween(startedAt, endedAt);
	return ok(addMinutes(startedAt, whole) < endedAt ? whole + 1 : whole);
}

/**
 * Whether a piece of time typed from memory can have been: over by now, and not before its machine came in. The words stand at
 * the field that is wrong; where no beginning was typed it is how long it took.
 */
export function mayHaveBeen(
	piece: { readonly startedAt: Instant; readonly endedAt: Instant; readonly beginningTyped: boolean },
	machine: { readonly receivedDay: Day },
	now: Instant,
	timeZone: string,
): Result<null> {
	if (piece.endedAt > now) {
		const say = "So long it cannot have been yet: it would end after now. Write less, or an earlier beginning.";
		return refuse("ends-ahead", say, { fields: { minutes: say } });
	}
	if (dayOf(piece.startedAt, timeZone) >= machine.receivedDay) return ok(null);
	const came = `The machine came in on ${formatDay(machine.receivedDay)}`;
	const [field, say] = piece.beginningTyped
		? ["began", `${came}: write a beginning on that day or later, or correct the day it came in first.`]
		: ["minutes", `${came}, and this would begin before it: write less, or correct the day it came in first.`];
	return refuse("before-it-came", say, { fields: { [field]: say } });
}

/** A step with somebody's clock on it is not finished or dropped over their head. */
export function mayClose(step: { readonly state: StepState; readonly title: string }, clocksOf: readonly string[]): Result<null> {
	const may = mayStart(step);
	if (!may.ok) return may;
	if (clocksOf.length === 0) return ok(null);
	return refuse(
		"clock-runs",
		`${clocksOf.join(" and ")} ${clocksOf.length === 1 ? "has" : "have"} the clock running on it. Stop it first.`,
	);
}

/**
 * The loop that a set of needs would make, step by step, or null. `needsOf` gives what a step needs.
 * Walked without recursion, so that a long chain cannot overflow.
 */
export function loopOfNeeds(ids: Iterable<string>, needsOf: (id: string) => readonly string[]): string[] | null {
	const state = new Map<string, "open" | "closed">();
	for (const start of ids) {
		if (state.has(start)) continue;
		const path: { id: string; next: number }[] = [{ id: start, next: 0 }];
		state.set(start, "open");
		while (path.length > 0) {
			const top = path.at(-1);
			if (!top) break;
			const need = needsOf(top.id)[top.next++];
			if (need === undefined) {
				state.set(top.id, "closed");
				path.pop();
			} else if (state.get(need) === "open") {
				return [...path.slice(path.findIndex(({ id }) => id === need)).map(({ id }) => id), need];
			} else if (!state.has(need)) {
				state.set(need, "open");
				path.push({ id: need, next: 0 });
			}
		}
	}
	return null;
}
