// What was in a position that is empty now.

import { whereIs } from "@/lib/bags/queries";
import { lower } from "@/lib/bags/rules";
import { dayOf, formatDayShort, timeOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import type { Emptied } from "@/lib/fittings/rules";
import { requireShop } from "@/lib/shop/queries";

/** Who took out what was in a position last, when, and where it is now; null where nothing ever was. */
export async function lastEmptied(read: Reader, positionId: string): Promise<Emptied | null> {
	const last = await read.fitting.findFirst({
		where: { positionId, untilAt: { not: null } },
		orderBy: [{ untilAt: "desc" }, { id: "desc" }],
		select: {
			entry: true,
			untilAt: true,
			part: {
				select: { name: true, place: true, bagId: true, locationId: true, position: { select: { mark: true, name: true } } },
			},
		},
	});
	if (!last?.untilAt) return null;
	const { part } = last;
	const [shop, entry] = await Promise.all([
		requireShop(read),
		read.entry.findUnique({ where: { seq: last.entry }, select: { actor: true } }),
	]);
	const person = entry && (await read.person.findUnique({ where: { id: entry.actor }, select: { initials: true } }));
	const at = instant(last.untilAt);
	const lies = part.place === "bag" || part.place === "location" || part.place === "bench";
	const fitted = part.position ? `fitted in ${lower(part.position.name)} (${part.position.mark})` : null;
	return {
		by: person?.initials || "Somebody",
		part: part.name,
		when: `on ${formatDayShort(dayOf(at, shop.timeZone))}, ${timeOf(at, shop.timeZone)}`,
		where: lies
			? placeWords(part.place, (await whereIs(read, part)).words)
			: (fitted ?? (part.place === "void" ? "struck out" : part.place)),
	};
}

const placeWords = (place: string, words: string): string => (place === "location" ? `on ${words}` : words);
