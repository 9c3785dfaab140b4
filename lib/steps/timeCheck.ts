// Time of one person that cannot be right: two pieces at once, or a clock that ran over a night. Said, never changed. Pure.

import { dayOf } from "@/lib/core/days";
import { compareInstants, type Instant, instantOf, millisOf, minutesBetween } from "@/lib/core/instants";
import { FORGOTTEN_MINUTES } from "@/lib/steps/rules";

export type PieceOfTime = {
	readonly id: string;
	readonly personId: string;
	readonly how: "timed" | "added";
	readonly startedAt: Instant;
	/** Null while the clock runs. */
	readonly endedAt: Instant | null;
};

/** Two pieces of one person that share minutes; the one that began first comes first. */
export type Overlap = { readonly first: string; readonly second: string; readonly minutes: number };

/**
 * All pairs of one person's pieces that share at least a whole minute, in the order of time. A clock that runs lasts until
 * `now`. Pieces that only touch, one ending as the other begins, do not overlap.
 */
export function overlapsOf(pieces: readonly PieceOfTime[], now: Instant): Overlap[] {
	const inOrder = [...pieces].sort((a, b) => (a.startedAt === b.startedAt ? (a.id < b.id ? -1 : 1) : a.startedAt < b.startedAt ? -1 : 1));
	const overlaps: Overlap[] = [];
	let lasting: PieceOfTime[] = [];
	for (const piece of inOrder) {
		lasting = lasting.filter((earlier) => endOf(earlier, now) > piece.startedAt);
		for (const earlier of lasting) {
			if (earlier.personId !== piece.personId) continue;
			const [until = now] = [endOf(earlier, now), endOf(piece, now)].sort(compareInstants);
			const minutes = minutesBetween(piece.startedAt, until);
			if (minutes >= 1) overlaps.push({ first: earlier.id, second: piece.id, minutes });
		}
		lasting.push(piece);
	}
	return overlaps;
}

const endOf = ({ endedAt, startedAt }: PieceOfTime, now: Instant): Instant => endedAt ?? (now > startedAt ? now : startedAt);

/** Whether a clock ran over a night: past the shop's midnight, or longer than anybody works. What was added from memory was meant. */
export function ranOverNight({ how, startedAt, endedAt }: Omit<PieceOfTime, "id" | "personId">, now: Instant, timeZone: string): boolean {
	if (how !== "timed") return false;
	const end = endedAt ?? (now > startedAt ? now : startedAt);
	// A clock stopped at midnight itself did not run into the next day.
	const last = millisOf(end) > millisOf(startedAt) ? lastMomentBefore(end) : startedAt;
	return minutesBetween(startedAt, end) > FORGOTTEN_MINUTES || dayOf(last, timeZone) !== dayOf(startedAt, timeZone);
}

const lastMomentBefore = (at: Instant): Instant => instantOf(millisOf(at) - 1);

/**
 * What a piece would be without the minutes that it shares with another: what the other leaves of it. Of two that begin
 * alike, or where one lies inside the other, no one can say which is right: null.
 */
export function withoutShared(
	piece: Pick<PieceOfTime, "startedAt" | "endedAt">,
	other: Pick<PieceOfTime, "startedAt" | "endedAt">,
): { readonly startedAt: Instant; readonly minutes: number } | null {
	if (piece.endedAt === null || other.endedAt === null) return null;
	if (piece.startedAt < other.startedAt && piece.endedAt <= other.endedAt && piece.endedAt > other.startedAt)
		return whole(piece.startedAt, other.startedAt);
	if (piece.startedAt > other.startedAt && piece.startedAt < other.endedAt && piece.endedAt > other.endedAt)
		return whole(other.endedAt, piece.endedAt);
	return null;
}

function whole(startedAt: Instant, endedAt: Instant): { readonly startedAt: Instant; readonly minutes: number } | null {
	const minutes = minutesBetween(startedAt, endedAt);
	return minutes >= 1 ? { startedAt, minutes } : null;
}
