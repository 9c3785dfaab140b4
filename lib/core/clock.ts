// The clock is handed in. Only the edge (a request, the command line, a script) holds the real one.
import { addMinutes, type Instant, instantOf } from "@/lib/core/instants";

/** Says what time it is. */
export type Clock = () => Instant;

/** The real clock, for the edge of the program; nothing that computes may call it. */
export const systemClock: Clock = () => instantOf(Date.now());

/** A clock that stands still. */
export const stoppedClock =
	(at: Instant): Clock =>
	() =>
		at;

/** A clock that shows `start` first and then moves on by so many minutes each time it is read: for the demo shop and for tests. */
export function steppingClock(start: Instant, minutes: number): Clock {
	let next = start;
	return () => {
		const now = next;
		next = addMinutes(next, minutes);
		return now;
	};
}
