// The plan's numbers as a page says them.

import { formatMoment } from "@/lib/core/days";
import { addMinutes, millisOf } from "@/lib/core/instants";
import { formatMinutes, formatWait } from "@/lib/core/minutes";
import type { Doubt } from "@/lib/schedule/shopFacts";
import type { OpenStep, ShopAhead } from "@/lib/schedule/shopQueries";

/** A moment of the plan, so many minutes from its zero: `Mon 2 Mar, 14:05`. Past everybody's known hours there is none. */
export const momentOf = ({ now, timeZone }: Pick<ShopAhead, "now" | "timeZone">, minutes: number): string =>
	Number.isFinite(minutes) ? formatMoment(addMinutes(now, Math.ceil(minutes)), timeZone) : "later than anybody's hours";

export type Named = {
	readonly step: OpenStep;
	readonly machine: ShopAhead["machines"][number];
	readonly href: string;
	/** `14/20`: machine and step. */
	readonly short: string;
};

/** The step with this id, as it is called; null when it is not open. */
export function named(ahead: Pick<ShopAhead, "steps" | "machines">, stepId: string): Named | null {
	const step = ahead.steps.find(({ id }) => id === stepId);
	const machine = ahead.machines.find(({ id }) => id === step?.machineId);
	if (step === undefined || machine === undefined) return null;
	return { step, machine, href: `/machines/${machine.number}/work/${step.number}`, short: `${machine.number}/${step.number}` };
}

/** What a machine's end leaves out: ", without 2 steps that have no date". */
export function withoutWords(ahead: ShopAhead, machineId: string): string {
	const count = ahead.asked.undated.filter(({ step }) =>
		ahead.steps.some(({ id, machineId: of }) => id === step && of === machineId),
	).length;
	if (count === 0) return "";
	return count === 1 ? ", without one step that has no date" : `, without ${count} steps that have no date`;
}

/** A minute's difference of a plan is none: its zero moves on by itself. */
const MOVED = 2;

/** The machines that one plan has done at another time than the other, in words. */
export function movedWords(before: ShopAhead, after: ShopAhead): string[] {
	const endOf = (ahead: ShopAhead, id: string): string | null => {
		const end = ahead.plan.machines.find((machine) => machine.id === id)?.end ?? null;
		return end === null ? null : momentOf(ahead, end);
	};
	const apart = (id: string): number => {
		const [one, other] = [before, after].map(({ now, plan }) => {
			const end = plan.machines.find((machine) => machine.id === id)?.end ?? null;
			return end === null ? null : millisOf(now) / 60_000 + end;
		});
		return one == null || other == null ? (one === other ? 0 : Number.POSITIVE_INFINITY) : Math.abs(one - other);
	};
	return after.machines
		.filter(({ id }) => apart(id) > MOVED)
		.map(
			({ id, number, name }) =>
				`${number} ${name} is done ${endOf(after, id) ?? "at no known time"}, before it was ${endOf(before, id) ?? "at no known time"}`,
		);
}

const nameOf = (ahead: ShopAhead, task: number): string => {
	const found = named(ahead, ahead.asked.problem.tasks[task]?.id ?? "");
	return found === null ? "a step" : `${found.short} ${found.step.title}`;
};

/** Why a planned step does not begin earlier. */
export function waitedWords(ahead: ShopAhead, task: number): string {
	const reason = ahead.plan.tasks[task]?.waitedFor;
	if (reason === undefined) return "";
	switch (reason.why) {
		case "nothing":
			return "can begin now";
		case "need":
			return `after ${nameOf(ahead, reason.task)}${restOf(ahead, reason.task)}`;
		case "person":
			return `${ahead.people[reason.person]?.name ?? "somebody"} is at ${nameOf(ahead, reason.task)}`;
		case "equipment":
			return `the ${ahead.equipment[reason.equipment]?.name ?? "equipment"} is held by ${nameOf(ahead, reason.task)}`;
		case "parcel":
			return `purchase ${ahead.purchases[reason.parcel]?.number ?? ""} is in the post`;
		case "rest":
			return "what was done has to rest";
		case "hours":
			return "as soon as who does it is in";
	}
}

function restOf(ahead: ShopAhead, task: number): string {
	const wait = ahead.asked.problem.tasks[task]?.wait.likely ?? 0;
	const why = named(ahead, ahead.asked.problem.tasks[task]?.id ?? "")?.step.waitWhy ?? "";
	return wait === 0 ? "" : ` and ${formatWait(wait)}${why === "" ? "" : `: ${why}`}`;
}

/** What hinders the plan, in words, and where it can be mended. */
export function doubtWords(ahead: ShopAhead, doubt: Doubt): { readonly say: string; readonly href: string; readonly mend: string } {
	const step = (id: string) => named(ahead, id);
	const plan = (id: string): string => `${step(id)?.href ?? "/plan"}/plan`;
	const title = (id: string): string => {
		const found = step(id);
		return found === null ? "A step" : `${found.short} ${found.step.title}`;
	};
	switch (doubt.what) {
		case "no-hours":
			return {
				say: `${doubt.name} has no hours: what only ${doubt.name} can do has no date.`,
				href: "/people/hours",
				mend: "Set the hours",
			};
		case "left":
			return { say: `${title(doubt.step)}: ${doubt.name} has left the shop.`, href: plan(doubt.step), mend: "Name somebody else" };
		case "nobody":
			return {
				say: `${title(doubt.step)}: nobody with hours ${doubt.skill === null ? "is here" : `is "${doubt.skill}"`}.`,
				href: doubt.skill === null ? "/people/hours" : "/people",
				mend: doubt.skill === null ? "Set hours" : "See who can do what",
			};
		case "never-together":
			return {
				say: `${title(doubt.step)}: ${doubt.names.join(" and ")} are never in at the same time.`,
				href: "/people/hours",
				mend: "See their hours",
			};
		case "longer-than-thought":
			return {
				say: `${title(doubt.step)} has taken ${formatMinutes(doubt.spent)}, more than was likely. It is planned for ${formatMinutes(doubt.left)} more, what is left of such steps on average.`,
				href: plan(doubt.step),
				mend: "Say anew how long it takes",
			};
		case "too-much-equipment":
			return {
				say: `${title(doubt.step)}: it needs ${doubt.wants} ${doubt.name || "of something that is gone"}, and there ${doubt.has === 1 ? "is" : "are"} ${doubt.has}.`,
				href: plan(doubt.step),
				mend: "Change what it holds",
			};
		case "no-lead":
			return {
				say: `Purchase ${doubt.purchase} is in the post, and nobody said how long it takes: what waits for it has no date.`,
				href: `/buying/${doubt.purchase}`,
				mend: "Say how long",
			};
		case "loop":
			return {
				say: `These steps wait for each other: ${doubt.steps.map(title).join(", which needs ")}. None of them has a date.`,
				href: plan(doubt.steps[0] ?? ""),
				mend: "Take one of these needs away",
			};
		case "overdue":
			return {
				say: `Purchase ${doubt.purchase} is ${formatWait(Math.ceil(doubt.minutes / 1440) * 1440)} later than the most that was thought. It is planned as if it came in a day.`,
				href: `/buying/${doubt.purchase}`,
				mend: "Say anew how long it takes",
			};
		case "unskilled":
			return {
				say: `${title(doubt.step)}: nobody of its crew is said to be "${doubt.skill}".`,
				href: plan(doubt.step),
				mend: "Name somebody who is",
			};
		case "not-bought":
			return {
				say: `${title(doubt.step)}: ${doubt.things.join(", ")} ${doubt.things.length === 1 ? "is" : "are"} not bought yet. It is planned as if it were here.`,
				href: `/machines/${step(doubt.step)?.machine.number ?? ""}/money`,
				mend: "See what is to be bought",
			};
		case "outside":
			return {
				say: `${ahead.machines.find(({ id }) => id === doubt.machineId)?.number ?? ""}: ${doubt.name} is outside the shop${doubt.late ? " and late" : ""}. The plan does not wait for it.`,
				href: doubt.tag === "" ? "/plan" : `/t/${doubt.tag}`,
				mend: "See where it is",
			};
		case "no-estimate":
			return {
				say: `${title(doubt.step)} has no estimate: it counts as no time at all.`,
				href: plan(doubt.step),
				mend: "Say how long it takes",
			};
		case "no-rate":
			return { say: `${doubt.name} has no rate today: that time costs nothing in the figures below.`, href: "/people", mend: "Set a rate" };
	}
}
