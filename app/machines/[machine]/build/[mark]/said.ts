// What the cards of a position share.

import { dayOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { whereItIs } from "@/lib/parts/whereItIs";
import type { PositionPage } from "@/lib/positions/positionQueries";

export type Part = PositionPage["fittings"][number]["part"];

export type Said = { readonly page: PositionPage; readonly base: string; readonly timeZone: string };

export const whereOf = (part: Part, timeZone: string): string =>
	whereItIs({
		place: part.place,
		placeWhy: part.placeWhy,
		sinceDay: dayOf(instant(part.sinceAt), timeZone),
		dueDay: part.dueDay,
		bagTag: part.bag?.tag?.id ?? null,
		location: part.location?.name ?? null,
		party: part.party?.name ?? null,
		position: null,
	});
