// What comes off to get at something, in sentences. Pure.

import { lower } from "@/lib/bags/rules";
import { formatMinutes } from "@/lib/core/minutes";
import { listed } from "@/lib/fittings/rules";
import type { ReachSheet, ReachTime, Seat } from "@/lib/reversal/reachSheet";

/** "the motor"; by the position's name where no part is in it. */
export const thing = ({ name, kind, part }: Seat): string =>
	part !== null ? `the ${lower(part)}` : kind === "place" ? `the ${lower(name)}` : `the empty position ${lower(name)}`;

export const things = (seats: readonly Seat[]): string => listed(seats.map(thing));

/** "14 min out and in (likely)", with how many nobody has estimated: no estimate is never nought. */
export function timeWords({ minutes, of, unknown }: ReachTime): string {
	if (of > 0 && unknown === of && minutes === 0) return "nobody has estimated how long that takes";
	const likely = `${formatMinutes(minutes)} out and in (likely)`;
	if (unknown === 0) return likely;
	return `${likely}, without ${unknown === 1 ? "one" : unknown} of them that ${unknown === 1 ? "has" : "have"} no estimate`;
}

/** "Take off 2 things to get at the motor: 14 min out and in (likely). Then the motor itself: 8 min out and in (likely)." */
export function reachSentence({ wanted, first, firstTime, wantedTime }: ReachSheet): string {
	if (wanted.length === 0) return "No opening reaches it, as the record has it.";
	const goal = things(wanted);
	if (first.length === 0) {
		const reached =
			wantedTime.of === 0
				? wanted.length === 1
					? "it can be reached as it stands"
					: "they can be reached as they stand"
				: timeWords(wantedTime);
		return `Nothing is in the way of ${goal}: ${reached}.`;
	}
	const held = things(wanted.filter(({ part }) => part !== null));
	const self = wantedTime.of === 0 ? "" : ` Then ${held} ${wantedTime.of === 1 ? "itself" : "themselves"}: ${timeWords(wantedTime)}.`;
	return `Take off ${first.length === 1 ? "1 thing" : `${first.length} things`} to get at ${goal}: ${timeWords(firstTime)}.${self}`;
}

/** The next best way, or that there is none. Null where nothing is in the way at all. */
export function nextSentence({ first, next, nextProved }: ReachSheet): string | null {
	if (first.length === 0) return null;
	if (next === null) return nextProved ? "There is no other way: all of these must come off." : "The search for another way was cut short.";
	const stays = `If ${thing(next.without)} (${next.without.mark}) is to stay`;
	const instead = next.instead.length === 0 ? "the others alone will do" : `take off ${things(next.instead)} instead`;
	const dearer =
		next.dearerBy === 0
			? "just as long"
			: next.dearerBy > 0
				? `${formatMinutes(next.dearerBy)} more`
				: `${formatMinutes(-next.dearerBy)} less`;
	const known = next.unknown === 0 ? "" : ", as far as there are estimates";
	return `${stays}, ${instead}: ${dearer}${known}.${nextProved ? "" : " The search was cut short: a quicker one may exist."}`;
}
