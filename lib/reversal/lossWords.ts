// What reversal would lose, as sentences for whoever is about to do it. Pure.

import { formatMinutes } from "@/lib/core/minutes";
import type { Losses } from "@/lib/reversal/beforehand";

/** Losses with the names of their positions, as the shop calls them. */
export type NamedLosses = Omit<Losses, "lost"> & { readonly lost: readonly (Losses["lost"][number] & { readonly name: string })[] };

/** More than so many positions are counted and not named. */
const MOST_NAMED = 5;

/** "Reversal loses nothing by it." or what it loses: originals, states, minutes. */
export function lossWords({ lost, minutesMore }: NamedLosses): string {
	const of = (kind: "part" | "state") => lost.filter((loss) => loss.of === kind).map(({ position, name }) => `${position} ${name}`.trim());
	const [parts, states] = [of("part"), of("state")];
	const said = [
		parts.length === 0 ? "" : `${counted(parts)} can never be original again: ${listed(parts)}.`,
		states.length === 0 ? "" : `${counted(states)} can come back, but altered, and that cannot be undone: ${listed(states)}.`,
		minutesMore > 0 ? `Going back takes ${formatMinutes(minutesMore)} more.` : "",
	].filter(Boolean);
	if (parts.length + states.length === 0) said.unshift("Reversal loses nothing by it.");
	return said.join(" ");
}

const counted = (names: readonly string[]): string => (names.length === 1 ? "1 position" : `${names.length} positions`);

const listed = (names: readonly string[]): string =>
	names.length > MOST_NAMED ? `${names.slice(0, MOST_NAMED).join(", ")} and ${names.length - MOST_NAMED} more` : names.join(", ");
