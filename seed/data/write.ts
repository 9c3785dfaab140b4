// Short ways of writing the tables down, so that one position reads like one line of the restorer's sheet.

import type {
	AsFound,
	Claim,
	Colour,
	Connection,
	Evidence,
	EvidenceKind,
	Fixing,
	Instant,
	Minutes,
	Obstruction,
	Origin,
	PersonKey,
	Position,
	PositionId,
	Session,
	Setting,
	SettingKind,
	SketchKind,
} from "@/seed/data/types";

const SUMMER_TIME_FROM = "2026-03-29"; // in 2026 the shop's clocks go forward at 02:00 on this day, before opening
const SUMMER_TIME_UNTIL = "2026-10-25";

/**
 * The UTC instant of a wall-clock time in the shop in 2026, working hours only (never inside the hour that a clock change
 * skips or repeats).
 *
 * @example at("2026-03-02", "09:00") // "2026-03-02T08:00:00.000Z"
 */
export function at(day: string, time: string): Instant {
	const hoursAhead = day >= SUMMER_TIME_FROM && day < SUMMER_TIME_UNTIL ? 2 : 1;
	return new Date(Date.parse(`${day}T${time}:00.000Z`) - hoursAhead * 3_600_000).toISOString();
}

/** One stretch of work by one person: day and wall-clock time in the shop, whole minutes. */
export const session = (person: PersonKey, day: string, time: string, minutes: number): Session => ({
	person,
	start: at(day, time),
	minutes,
});

/** Two people at the same work: each is timed. */
export const together = (people: readonly PersonKey[], day: string, time: string, minutes: number): Session[] =>
	people.map((person) => session(person, day, time, minutes));

/** Three-point minutes around a likely figure: about 0.7 of it when all goes well, about twice when it does not. */
export function around(likely: number): Minutes {
	return { low: Math.max(1, Math.round((likely * 7) / 10)), likely, high: likely * 2 };
}

/** Minutes out and in as the tables print them. */
export const outIn = (out: number, into: number): { minutesOut: Minutes; minutesIn: Minutes } => ({
	minutesOut: around(out),
	minutesIn: around(into),
});

/** A threaded fixing, or any other counted thing that holds a part. */
export const fix = (count: number, what: string, more: Omit<Fixing, "count" | "what"> = {}): Fixing => ({ count, what, ...more });

export const wire = (
	from: string,
	to: string,
	colours: readonly Colour[],
	more: Omit<Connection, "from" | "to" | "colours"> = {},
): Connection => ({
	from,
	to,
	colours,
	...more,
});

/** Pins of one plug, one connection each, so that none is left unnamed. */
export const pins = (plug: string, to: string, colours: readonly (readonly Colour[])[]): Connection[] =>
	colours.map((colour, index) => wire(`${plug}-${index + 1}`, `${to}-${index + 1}`, colour));

export const setting = (kind: SettingKind, words: string, value?: number, unit?: string): Setting => ({
	kind,
	words,
	...(value === undefined ? {} : { value }),
	...(unit === undefined ? {} : { unit }),
});

export const evidence = (kind: EvidenceKind, how: string, claim: Claim, words: string): Evidence => ({ kind, how, claim, words });

/** "These stand before that one", from all sides or from one. */
export const blocks = (blocked: PositionId, blockers: readonly PositionId[], side?: string): Obstruction[] =>
	blockers.map((blocker) => (side === undefined ? { blocker, blocked } : { blocker, blocked, side }));

type PositionRest = Partial<Omit<Position, "id" | "hostPosition" | "name" | "area" | "sketch" | "minutesOut" | "minutesIn">>;

/** One position of a table: what is not said is one part, no fixings, no wires, no settings. */
export function position(
	id: PositionId,
	hostPosition: PositionId | null,
	name: string,
	area: string,
	sketch: SketchKind,
	[out, into]: readonly [number, number],
	rest: PositionRest = {},
): Position {
	return {
		id,
		hostPosition,
		name,
		area,
		sketch,
		...outIn(out, into),
		count: 1,
		fixings: [],
		connections: [],
		settings: [],
		hazards: [],
		...rest,
	};
}

/** As found: in it when it was made, by our own sight. */
export const originalSeen = (how: string, words: string, more: Partial<AsFound> = {}): AsFound => ({
	state: "present",
	origin: "original",
	evidence: [evidence("seen", how, "made", words)],
	...more,
});

/** As found: in it when it was made, by something that can be read. */
export const originalDocumented = (how: string, words: string, more: Partial<AsFound> = {}): AsFound => ({
	state: "present",
	origin: "original",
	evidence: [evidence("documented", how, "made", words)],
	...more,
});

/** As found: there, and not what it left its maker with (or not known to be). */
export const otherOrigin = (
	origin: Exclude<Origin, "original">,
	kind: EvidenceKind,
	how: string,
	words: string,
	more: Partial<AsFound> = {},
): AsFound => ({
	state: "present",
	origin,
	evidence: [evidence(kind, how, "came", words)],
	...more,
});

/** As found: not looked at yet, and why. */
export const notSeenYet = (why: string): AsFound => ({ state: "not-seen", evidence: [], condition: why });

/** As found: the place is there and empty. */
export const missing = (kind: EvidenceKind, words: string): AsFound => ({
	state: "missing",
	evidence: [evidence(kind, "empty place", "came", words)],
});
