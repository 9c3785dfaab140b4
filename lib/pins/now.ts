// Where what a pin marks is now, in words. Pure.

import type { ConnectionState, FixingPlace } from "@/lib/generated/prisma/enums";

type Now = { readonly now: string; readonly gone: boolean };
/** The assembly that the place is on, when it is not fitted itself. */
type Away = { readonly name: string; readonly where: string } | null;

const onAway = (away: Away): string => (away === null ? "" : `; its place is on the ${away.name}, ${away.where}`);

/** A position: the part that is meant, what is in the place now, and the assembly that went away with both. */
export function heldNow(
	meant: { readonly id: string; readonly where: string } | null,
	holds: { readonly id: string; readonly name: string } | null,
	away: Away,
): Now {
	if (meant === null)
		return { now: `${holds === null ? "empty" : `empty then; in its place now: ${holds.name}`}${onAway(away)}`, gone: away !== null };
	if (holds?.id === meant.id) return { now: `in its place${onAway(away)}`, gone: away !== null };
	const instead = holds === null ? "its place is empty" : `in its place now: ${holds.name}`;
	return { now: `${meant.where}; ${instead}${onAway(away)}`, gone: true };
}

/** A wire or hose. `replaced`: the part that it was at is no longer there. */
export function wireNow(state: ConnectionState, at: string, replaced: boolean, away: Away): Now {
	const words: Record<ConnectionState, string> = {
		connected: replaced ? `was at the ${at}; what it was on came out` : `connected at the ${at}`,
		parked: `undone at the ${at}, both ends kept`,
		removed: `removed from the ${at}`,
	};
	return { now: `${words[state]}${onAway(away)}`, gone: state === "removed" || (state === "connected" && replaced) || away !== null };
}

/** What holds a part. `lies` is where its bag is. */
export function fixingNow(place: FixingPlace, at: string | null, lies: string | null, away: Away): Now {
	const words: Record<FixingPlace, string> = {
		home: at === null ? "in its place" : `at the ${at}`,
		bag: lies ?? "in a bag",
		bench: "on the bench, not put away",
		left: at === null ? "left in its hole" : `left in its hole at the ${at}`,
		lost: "lost",
		scrapped: "scrapped",
	};
	return { now: `${words[place]}${onAway(away)}`, gone: place === "lost" || place === "scrapped" || away !== null };
}
