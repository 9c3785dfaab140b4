// Durations are whole minutes, typed and shown the way a bench clock is read.
import { ok, type Result, refuse } from "@/lib/core/result";

/** The longest duration that can be typed: ten years. Longer is a slip of the finger. */
export const LONGEST_MINUTES = 10 * 365 * 24 * 60;

/** The number as whole minutes. Anything else is a bug and throws. */
export function wholeMinutes(minutes: number): number {
	if (!Number.isSafeInteger(minutes)) throw new Error(`not whole minutes: ${minutes}`);
	return minutes;
}

/** Labour as it is read aloud: `35 min`, `2 h`, `2 h 35`. */
export function formatMinutes(minutes: number): string {
	wholeMinutes(minutes);
	const size = Math.abs(minutes);
	const sign = minutes < 0 ? "-" : "";
	const hours = Math.floor(size / 60);
	const rest = size % 60;
	if (hours === 0) return `${sign}${rest} min`;
	return rest === 0 ? `${sign}${hours} h` : `${sign}${hours} h ${String(rest).padStart(2, "0")}`;
}

/** A wait as it is read aloud, in days once it is longer than one: `4 h 20`, `1 day`, `7 days`, `3 days 2 h`. */
export function formatWait(minutes: number): string {
	wholeMinutes(minutes);
	if (minutes < 1440) return formatMinutes(minutes);
	const days = Math.floor(minutes / 1440);
	const rest = minutes % 1440;
	const inDays = days === 1 ? "1 day" : `${days} days`;
	return rest === 0 ? inDays : `${inDays} ${formatMinutes(rest)}`;
}

const SEVERAL_UNITS = /^(?:(\d+)\s*(?:d|days?))?\s*(?:(\d+)\s*(?:h|hours?))?\s*(?:(\d+)\s*(?:m|min|mins|minutes?)?)?$/;
const PART_HOURS = /^(\d+)[.,](\d+)\s*(?:h|hours?)$/;
const CLOCK = /^(\d+):(\d{2})$/;
const EXAMPLES = "Write a duration like 35, 2:35, 2h35, 1.5 h or 3 days.";

/** Reads a duration that a person typed: `155`, `2:35`, `2h35`, `2 h 35 min`, `1.5 h`, `3 days`. A bare number is minutes. */
export function parseMinutes(text: string): Result<number> {
	const typed = text.trim().toLowerCase().replace(/\s+/g, " ");
	if (typed === "") return refuse("minutes-missing", EXAMPLES);
	if (/^[-\u2212]/.test(typed)) return refuse("minutes-negative", `A duration cannot be below zero. ${EXAMPLES}`);

	const clock = CLOCK.exec(typed);
	if (clock !== null) {
		if (Number(clock[2]) > 59) return refuse("minutes-over-59", `After the colon there are at most 59 minutes. ${EXAMPLES}`);
		return withinReason(Number(clock[1]) * 60 + Number(clock[2]));
	}
	const part = PART_HOURS.exec(typed);
	if (part !== null) {
		// Counted in whole numbers, so that 1.1 h is 66 minutes and not 66.00000000000001.
		const scale = 10n ** BigInt((part[2] ?? "").length);
		const product = BigInt(`${part[1]}${part[2]}`) * 60n;
		if (product % scale !== 0n) return refuse("minutes-not-whole", `${typed} is not a whole number of minutes. ${EXAMPLES}`);
		return withinReason(Number(product / scale));
	}
	const units = SEVERAL_UNITS.exec(typed);
	if (units === null) return refuse("minutes-unreadable", EXAMPLES);
	const [, days, hours, minutes] = units;
	if ((days ?? hours) !== undefined && minutes !== undefined && Number(minutes) > 59) {
		return refuse("minutes-over-59", `Beside hours there are at most 59 minutes. ${EXAMPLES}`);
	}
	return withinReason(Number(days ?? 0) * 1440 + Number(hours ?? 0) * 60 + Number(minutes ?? 0));
}

function withinReason(minutes: number): Result<number> {
	if (minutes > LONGEST_MINUTES) return refuse("minutes-too-many", "That is longer than ten years: check for a digit too many.");
	return ok(minutes);
}
