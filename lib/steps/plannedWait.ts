import { formatWait } from "@/lib/core/minutes";

/** The wait of a step as it was planned: `filler sets, 1 day`, or in three points where the least and the most were said. */
export function plannedWait(step: {
	readonly waitMinutes: number;
	readonly waitLowMinutes: number | null;
	readonly waitHighMinutes: number | null;
	readonly waitWhy: string;
}): string {
	const { waitMinutes: likely, waitLowMinutes: low, waitHighMinutes: high, waitWhy } = step;
	if (likely === 0 && (high ?? 0) === 0) return "";
	const long = low === null || high === null ? formatWait(likely) : [low, likely, high].map(formatWait).join(" / ");
	return waitWhy === "" ? long : `${waitWhy}, ${long}`;
}
