// What reversal would lose, as sentences for whoever is about to do it. Pure.

import { formatMinutes } from "@/lib/core/minutes";
import type { Losses } from "@/lib/reversal/beforehand";

type Originals = { readonly now: number; readonly after: number };

type Named = {
	readonly name: string;
	/** False where the part that can no longer come back was in the machine when it came, and is no original of it. */
	readonly original?: boolean;
};

/** Losses with the names of their positions, as the shop calls them. */
export type NamedLosses = Omit<Losses, "lost"> & {
	readonly lost: readonly (Losses["lost"][number] & Named)[];
	/** How many positions could hold their original again, as it stands and after the step. */
	readonly originals?: Originals;
};

/** As much of them as is said. */
type SaidLosses = {
	readonly lost: readonly ({ readonly position: string; readonly of: "part" | "state" } & Named)[];
	readonly minutesMore: number;
	readonly originals?: Originals;
};

/** More than so many positions are counted and not named. */
const MOST_NAMED = 5;

/** "Reversal loses nothing by it." or what it loses: originals, other parts as found, states, minutes. */
export function lossWords({ lost, minutesMore, originals }: SaidLosses): string {
	const parts = lost.filter((loss) => loss.of === "part");
	const [own, others] = [parts.filter(({ original }) => original !== false), parts.filter(({ original }) => original === false)].map(named);
	const states = named(lost.filter((loss) => loss.of === "state"));
	const said = [
		own?.length ? `${counted(own)} can never be original again: ${listed(own)}.` : "",
		others?.length ? `${counted(others)} can never be as found again: ${listed(others)}.` : "",
		states.length === 0 ? "" : `${counted(states)} can come back, but altered, and that cannot be undone: ${listed(states)}.`,
		countWords(originals, lost.length > 0),
		minutesMore > 0 ? `Going back takes ${formatMinutes(minutesMore)} more.` : "",
	].filter(Boolean);
	if (lost.length === 0) said.unshift("Reversal loses nothing by it.");
	return said.join(" ");
}

/** "At best 30 positions hold their original then; now it is 31." Nothing where nothing is lost. */
function countWords(originals: Originals | undefined, loses: boolean): string {
	if (originals === undefined || !loses) return "";
	const { now, after } = originals;
	if (after === now) return `The count of originals at best stays ${now}.`;
	return `At best ${after} ${after === 1 ? "position holds its" : "positions hold their"} original then; now it is ${now}.`;
}

const named = (losses: readonly { readonly position: string; readonly name: string }[]): string[] =>
	losses.map(({ position, name }) => `${position} ${name}`.trim());

const counted = (names: readonly string[]): string => (names.length === 1 ? "1 position" : `${names.length} positions`);

const listed = (names: readonly string[]): string =>
	names.length > MOST_NAMED ? `${names.slice(0, MOST_NAMED).join(", ")} and ${names.length - MOST_NAMED} more` : names.join(", ");
