// What a capture probably shows, by what was going on when it was taken. Pure.

import { writeShows } from "@/lib/captures/shows";
import type { Instant } from "@/lib/core/instants";
import { minutesBetween } from "@/lib/core/instants";
import { formatMinutes } from "@/lib/core/minutes";

/** A step whose clock ran. */
export type RanThen = { readonly stepId: string; readonly number: number; readonly title: string };
/** A part that came out of its position. */
export type CameOut = {
	readonly at: Instant;
	readonly positionId: string;
	readonly mark: string;
	readonly position: string;
	readonly partId: string;
	readonly part: string;
};
export type Offer = { readonly value: string; readonly label: string };

/** A take-out longer ago than this has nothing to do with a photo. */
export const NEAR_MINUTES = 240;

/** The steps that ran then; and of what came out before and after, the nearer first. */
export function offersNear(takenAt: Instant, ran: readonly RanThen[], out: readonly CameOut[]): Offer[] {
	const near = out
		.map((each) => ({ ...each, minutes: minutesBetween(takenAt, each.at) }))
		.filter(({ minutes }) => Math.abs(minutes) <= NEAR_MINUTES)
		.sort((a, b) => Math.abs(a.minutes) - Math.abs(b.minutes));
	return [
		...near.map(({ positionId, partId, mark, position, part, minutes }) => ({
			value: writeShows({ positionId, partId }),
			label: `${part === position ? position : `${part} of the ${position}`} (${mark}), out ${when(minutes)}`,
		})),
		...ran.map(({ stepId, number, title }) => ({ value: writeShows({ stepId }), label: `step ${number} ${title}, under way then` })),
	];
}

function when(minutes: number): string {
	if (minutes === 0) return "then";
	return `${formatMinutes(Math.abs(minutes))} ${minutes > 0 ? "later" : "before"}`;
}
