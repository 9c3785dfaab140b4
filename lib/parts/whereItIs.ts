// Where a part is, in words. Pure.

import { type Day, formatDayShort, isDay } from "@/lib/core/days";
import type { PlaceKind } from "@/lib/generated/prisma/enums";

export type Whereabouts = {
	readonly place: PlaceKind;
	readonly placeWhy: string;
	/** The day on which it came there, in the shop's zone. */
	readonly sinceDay: Day;
	readonly dueDay: string | null;
	readonly bagTag: string | null;
	readonly location: string | null;
	readonly party: string | null;
	/** The position that holds it, by mark and name. */
	readonly position: string | null;
};

/** "in bag 12-0208-Q", "lost 12 Mar 2026", "out, with the plater, due back 2 Apr 2026". */
export function whereItIs(part: Whereabouts): string {
	const day = formatDayShort(part.sinceDay);
	const why = part.placeWhy === "" ? "" : `: ${part.placeWhy}`;
	switch (part.place) {
		case "fitted":
			return part.position === null ? "fitted" : `fitted in ${part.position}`;
		case "bag":
			return `in bag ${part.bagTag ?? "without a tag"}`;
		case "location":
			return `on ${part.location ?? "a shelf"}`;
		case "bench":
			return "on the bench, not put away";
		case "out": {
			const due = part.dueDay !== null && isDay(part.dueDay) ? `, due back ${formatDayShort(part.dueDay)}` : "";
			return `out${part.party === null ? "" : `, with ${part.party}`}${due}`;
		}
		case "sold":
			return `sold ${day}${why}`;
		case "lost":
			return `lost ${day}${why}`;
		case "scrapped":
			return `scrapped ${day}${why}`;
		case "void":
			return `struck out ${day}${why}`;
	}
}
