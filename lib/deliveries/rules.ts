// What of a purchase has come, and what may be said to come or to have come in error. Pure.
//
// A purchase whose day of arrival is set has come whole. Until then a line has come as far as its deliveries say.

import type { Day } from "@/lib/core/days";
import { ok, type Result, refuse } from "@/lib/core/result";

export type Delivered = { readonly count: number; readonly stands: "yes" | "no" };

/** How many of a line have come. */
export const cameOf = (line: { readonly count: number }, arrivedDay: string | null, deliveries: readonly Delivered[]): number =>
	arrivedDay === null ? deliveries.reduce((sum, { count, stands }) => (stands === "yes" ? sum + count : sum), 0) : line.count;

export type OrderedLine = { readonly id: string; readonly what: string; readonly count: number; readonly came: number };
export type SaidToCome = { readonly day: Day; readonly lines: readonly { readonly lineId: string; readonly count: number }[] };

/** Whether so much of these lines may be said to have come; gives what came (lines of which nothing came left out), and whether that is all. */
export function mayCome(
	purchase: { readonly orderedDay: string; readonly arrivedDay: string | null },
	lines: readonly OrderedLine[],
	said: SaidToCome,
): Result<{ readonly came: readonly { readonly line: OrderedLine; readonly count: number }[]; readonly whole: boolean }> {
	if (purchase.arrivedDay !== null)
		return refuse("all-came", "All of this purchase has come already. Take a delivery back first if it was entered in error.");
	if (said.day < purchase.orderedDay) {
		const say = "It cannot have come before it was ordered. Check the day.";
		return refuse("came-before-ordered", say, { fields: { day: say } });
	}
	const came: { line: OrderedLine; count: number }[] = [];
	for (const [index, { lineId, count }] of said.lines.entries()) {
		const field = `lines.${index}.count`;
		const line = lines.find(({ id }) => id === lineId);
		if (line === undefined) return refuse("no-such-line", "That line is not in this purchase. Load the page again.");
		const still = line.count - line.came - came.reduce((sum, each) => (each.line.id === lineId ? sum + each.count : sum), 0);
		if (count > still) {
			const say = still === 0 ? `All of ${line.what} has come: write nothing here.` : `Only ${still} of ${line.what} are still to come.`;
			return refuse("more-than-ordered", say, { fields: { [field]: say }, facts: { still, count } });
		}
		if (count > 0) came.push({ line, count });
	}
	if (came.length === 0) {
		const say = "Write how many came, of one line at least.";
		return refuse("nothing-came", say, { fields: { "lines.0.count": say } });
	}
	const cameNow = (line: OrderedLine) => came.reduce((sum, each) => (each.line.id === line.id ? sum + each.count : sum), line.came);
	return ok({ came, whole: lines.every((line) => cameNow(line) === line.count) });
}

export type CameOn = Delivered & { readonly day: string };
export type TakenOn = { readonly day: string; readonly count: number };

/**
 * How many of a line were here on a day and on every day since: what had come by then, less what was taken. A part that is
 * used on a day when it lay in the post, or that a later use needs, was not there.
 */
export function hereSince(
	line: { readonly count: number },
	arrivedDay: string | null,
	deliveries: readonly CameOn[],
	taken: readonly TakenOn[],
	since: string,
): number {
	const standing = deliveries.filter(({ stands }) => stands === "yes");
	const until = (days: readonly TakenOn[], on: string) => days.reduce((sum, { day, count }) => (day <= on ? sum + count : sum), 0);
	// An older book has a day of arrival alone: what no delivery speaks of came on it.
	const unsaid = arrivedDay === null ? [] : [{ day: arrivedDay, count: line.count - until(standing, "9999") }];
	const came = [...standing, ...unsaid];
	const days = [since, ...taken.map(({ day }) => day).filter((day) => day > since)];
	return Math.min(...days.map((on) => until(came, on) - until(taken, on)));
}

/** Whether so many of a line were here on the day on which they are said to have been taken. */
export function mayTakeOn(here: number, taking: number): Result<null> {
	if (taking <= here) return ok(null);
	const say =
		here <= 0
			? "It was still in the post on that day, or is used on a later one. Check the day, or the day on which it came."
			: `Only ${here} of it ${here === 1 ? "was" : "were"} here on that day. Check the day, or the day on which the others came.`;
	return refuse("not-come-then", say, { fields: { day: say }, facts: { here } });
}

/** A delivery entered in error may be taken back as long as what came without it covers what was taken since. */
export function mayTakeBack(
	line: { readonly what: string; readonly came: number; readonly taken: number },
	delivery: Delivered,
): Result<null> {
	if (delivery.stands === "no") return refuse("delivery-void", "That delivery was taken back already.");
	const missing = line.taken - (line.came - delivery.count);
	if (missing <= 0) return ok(null);
	return refuse(
		"taken-since",
		`${missing} of ${line.what} ${missing === 1 ? "was" : "were"} used or sent back since. Take that back first, then this delivery.`,
		{ facts: { missing } },
	);
}

/** Whether so many of a line are here to be taken: what is still in the post cannot be used. */
export function mayTake(line: { readonly count: number; readonly came: number; readonly taken: number }, taking: number): Result<null> {
	const here = line.came - line.taken;
	// More than was bought is another mistake, and has its own sentence.
	if (taking <= here || taking > line.count - line.taken) return ok(null);
	const posted = line.count - line.came;
	const say = `${here === 0 ? "None" : `Only ${here}`} of it ${here === 1 ? "is" : "are"} here, ${posted} ${posted === 1 ? "is" : "are"} still in the post: record that it came first.`;
	return refuse("not-come", say, { fields: { count: say }, facts: { here, posted } });
}
