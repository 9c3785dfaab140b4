// The question of a reversal as the address holds it, so that a plan can be shared, printed again and begun.

import { addDays, type Day, formatDay, instantAt, isDay, startOfDay } from "@/lib/core/days";
import type { Instant } from "@/lib/core/instants";
import type { ReversalFacts } from "@/lib/reversal/queries";
import type { Asked } from "@/lib/reversal/scope";

export type Search = {
	readonly to?: string | string[];
	readonly day?: string | string[];
	readonly time?: string | string[];
	readonly undo?: string | string[];
	readonly pos?: string | string[];
	readonly reason?: string | string[];
};

export type AskedHere = {
	readonly to: "as-found" | "as-made" | "day";
	readonly day: Day | null;
	readonly time: string;
	/** Numbers of conversions. */
	readonly undo: readonly string[];
	/** Marks of positions. */
	readonly positions: readonly string[];
	readonly reason: string;
	/** What the address asks and cannot be answered, by field: then nothing is planned, and never something else instead. */
	readonly wrongs: Readonly<Record<string, string>>;
};

const one = (value: string | string[] | undefined): string => [value ?? ""].flat()[0]?.trim() ?? "";

/** What the address asks. */
export function askedHere(search: Search, facts: ReversalFacts, today: Day, timeZone: string): AskedHere {
	const day = one(search.day);
	const to = one(search.to);
	const time = one(search.time);
	return {
		to: to === "as-made" || to === "day" ? to : "as-found",
		day: isDay(day) ? day : null,
		time: /^\d{2}:\d{2}$/.test(time) ? time : "",
		undo: [search.undo ?? []].flat().filter((number) => facts.conversions.some((conversion) => String(conversion.number) === number)),
		positions: [...new Set([search.pos ?? []].flat())].filter((mark) => facts.positions.some((position) => position.mark === mark)),
		reason: one(search.reason).slice(0, 300),
		wrongs: wrongsIn(search, facts, today, timeZone),
	};
}

function wrongsIn(search: Search, facts: ReversalFacts, today: Day, timeZone: string): Record<string, string> {
	const wrongs: Record<string, string> = {};
	const [day, time] = [one(search.day), one(search.time)];
	if (one(search.to) === "day") {
		if (!isDay(day)) wrongs.day = "Say which day to go back to.";
		else if (day > today) wrongs.day = "That day is still to come. Choose one that has been.";
		else if (time !== "") {
			const at = /^\d{2}:\d{2}$/.test(time) ? instantAt(day, time, timeZone) : null;
			if (at === null || !at.ok) wrongs.time = "Write a time that the clock showed that day, like 14:00.";
		}
	}
	const strange = [
		...[search.undo ?? []].flat().filter((number) => !facts.conversions.some((conversion) => String(conversion.number) === number)),
		...[search.pos ?? []].flat().filter((mark) => !facts.positions.some((position) => position.mark === mark)),
	];
	if (strange.length > 0) wrongs.pos = `This machine has no ${strange.slice(0, 5).join(", ")}. Choose again what is to be taken back.`;
	return wrongs;
}

/** The moment that is meant: a time on that day or, without one, its end, as it stood when the shop closed. Null: it is no moment. */
export function momentOf({ to, day, time }: AskedHere, timeZone: string): Instant | null {
	if (to !== "day" || day === null) return null;
	if (time === "") return startOfDay(addDays(day, 1), timeZone);
	const at = instantAt(day, time, timeZone);
	return at.ok ? at.value : null;
}

/** The question as the planner takes it. */
export function askedOfPlanner(here: AskedHere, facts: ReversalFacts, asFoundAt: Instant | null, timeZone: string): Asked {
	const at = momentOf(here, timeZone);
	return {
		asFoundAt,
		...(at === null ? {} : { at }),
		...(here.to === "as-made" ? { asMade: true } : {}),
		conversions: facts.conversions.filter(({ number }) => here.undo.includes(String(number))).map(({ id }) => id),
		positions: facts.positions.filter(({ mark }) => here.positions.includes(mark)).map(({ id }) => id),
		...(here.reason ? { reason: here.reason } : {}),
	};
}

/** The same question with more positions chosen, as an address. */
export function addressWith(here: AskedHere, more: readonly string[]): string {
	const query = new URLSearchParams();
	if (here.to !== "as-found") query.set("to", here.to);
	if (here.to === "day" && here.day !== null) query.set("day", here.day);
	if (here.to === "day" && here.time) query.set("time", here.time);
	for (const number of here.undo) query.append("undo", number);
	for (const mark of new Set([...here.positions, ...more])) query.append("pos", mark);
	if (here.reason) query.set("reason", here.reason);
	const text = query.toString();
	return text === "" ? "?" : `?${text}`;
}

/** "Back to as found", "Back to 3 March 2026, 14:00". */
export function titleOf({ to, day, time }: AskedHere): string {
	if (to === "as-made") return "Back to as made, as far as it can be";
	if (to === "as-found" || day === null) return "Back to as found";
	return `Back to ${formatDay(day)}${time ? `, ${time}` : ""}`;
}
