import { formatMinutes } from "@/lib/core/minutes";
import type { Line } from "@/lib/reversal/checklist";
import type { Plan } from "@/lib/reversal/plan";

/** The estimate, and how much of it nobody has estimated. */
export function timeWords({ minutes }: Plan, lines: readonly Line[]): string {
	const work = lines.filter(({ kind }) => kind === "take-out" || kind === "undo" || kind === "put-in");
	const open = work.filter((line) => line.minutes.high === 0).length;
	if (work.length > 0 && open === work.length) return "no estimate of the time for any of them";
	const likely = `likely ${formatMinutes(minutes.likely)} (${formatMinutes(minutes.low)} to ${formatMinutes(minutes.high)})`;
	return open === 0 ? likely : `${likely}, without ${open} of them that have no estimate`;
}
