// An instant: one moment, the same everywhere. Always written in UTC, with milliseconds, so that text order is time order.
import { ok, type Result, refuse } from "@/lib/core/result";

declare const instantMark: unique symbol;

/** A moment as UTC text, `2026-03-02T08:00:00.000Z`. Text order is time order. */
export type Instant = string & { readonly [instantMark]: "Instant" };

const SHAPE = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/;
// RFC 3339 with an offset; what a browser, a camera or another program may send.
const WITH_OFFSET = /^\d{4}-\d{2}-\d{2}[Tt ]\d{2}:\d{2}(:\d{2}(\.\d{1,9})?)?([Zz]|[+-]\d{2}:\d{2})$/;

/** Whether the text is an instant in the one form that is stored. */
export function isInstant(text: string): text is Instant {
	if (!SHAPE.test(text)) return false;
	const millis = Date.parse(text);
	// Comparing with the text refuses 30 February, which Date.parse moves to March.
	return !Number.isNaN(millis) && new Date(millis).toISOString() === text;
}

/** The text as an instant. For text that the program itself wrote: anything else is a bug and throws. */
export function instant(text: string): Instant {
	if (!isInstant(text)) throw new Error(`not an instant: ${JSON.stringify(text)}`);
	return text;
}

/** The instant so many milliseconds after 1970-01-01 UTC. Requires a whole number in the years 0000 to 9999. */
export function instantOf(millis: number): Instant {
	if (!Number.isSafeInteger(millis)) throw new Error(`not whole milliseconds: ${millis}`);
	return instant(new Date(millis).toISOString());
}

/** Milliseconds since 1970-01-01 UTC. */
export const millisOf = (at: Instant): number => Date.parse(at);

/** Reads an instant that a device sent: RFC 3339, with `Z` or an offset. Without an offset it is refused, for nobody knows which zone was meant. */
export function parseInstant(text: string): Result<Instant> {
	const trimmed = text.trim();
	if (isInstant(trimmed)) return ok(trimmed);
	const millis = WITH_OFFSET.test(trimmed) ? Date.parse(trimmed.replace(" ", "T").toUpperCase()) : Number.NaN;
	if (Number.isNaN(millis) || !isInstant(`${trimmed.slice(0, 10)}T00:00:00.000Z`)) {
		return refuse(
			"instant-unreadable",
			`Write the moment with its zone, like 2026-03-02T08:00:00Z; "${shortened(trimmed)}" cannot be read.`,
		);
	}
	return ok(instantOf(millis));
}

/** So many whole minutes later (earlier when negative). */
export function addMinutes(at: Instant, minutes: number): Instant {
	if (!Number.isSafeInteger(minutes)) throw new Error(`not whole minutes: ${minutes}`);
	return instantOf(millisOf(at) + minutes * 60_000);
}

/** Whole minutes from one instant to another, the last begun minute not counted; negative when `until` is earlier. */
export const minutesBetween = (from: Instant, until: Instant): number => Math.trunc((millisOf(until) - millisOf(from)) / 60_000) + 0;

/** For sorting: earlier first. */
export const compareInstants = (a: Instant, b: Instant): number => (a < b ? -1 : a > b ? 1 : 0);

function shortened(text: string): string {
	return text.length > 40 ? `${text.slice(0, 40)}...` : text;
}
