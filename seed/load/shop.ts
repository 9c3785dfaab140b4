// The shop itself: opened by its lead, with its people, rates, suppliers and places.

import { addDayOff, addEquipment, setHours } from "@/lib/calendar/changes";
import { dayOffSchema, equipmentSchema, hoursSchema } from "@/lib/calendar/schema";
import { WEEKDAYS } from "@/lib/calendar/week";
import { parseCurrency } from "@/lib/money/currency";
import { addParty } from "@/lib/parties/changes";
import { partySchema } from "@/lib/parties/schema";
import { addPerson, setRate } from "@/lib/people/changes";
import { personSchema, rateSchema } from "@/lib/people/schema";
import { openShop } from "@/lib/shop/changes";
import { openShopSchema } from "@/lib/shop/schema";
import { addLocation } from "@/lib/store/changes";
import { equipment, type LocationKind, locations, people, type Supplier, shop, suppliers } from "@/seed/data/shop";
import { at } from "@/seed/data/write";
import type { ShopBook } from "@/seed/load/book";
import { of } from "@/seed/load/book";
import { type Diary, done, later } from "@/seed/load/diary";

const OPENED = at("2026-02-26", "08:30");
export const currency = done(parseCurrency(shop.currency));

/** Minor units as a form would hold them. */
export const asTyped = (minor: number): string =>
	`${minor < 0 ? "-" : ""}${Math.floor(Math.abs(minor) / 100)}.${String(Math.abs(minor) % 100).padStart(2, "0")}`;

const OPEN = `${shop.opens}-${shop.lunch.from} ${shop.lunch.to}-${shop.closes}`;
const FINISHER_DAYS = [
	{ from: "2026-01-01", days: 5 },
	{ from: shop.finisherOffFridaysFrom, days: 4 },
];

/** The book knows rooms, racks, shelves and bins; a bench or a bay is a place like a shelf. */
const KINDS: Readonly<Record<LocationKind, "room" | "rack" | "shelf" | "bin">> = {
	room: "room",
	bench: "shelf",
	rack: "rack",
	shelf: "shelf",
	bin: "bin",
	place: "shelf",
};

const contactOf = ({ town, country, note }: Supplier): string => [`${town}, ${country}`, note].filter(Boolean).join("; ");

/** Opens the shop, as its first page does, and fills the book of its people, suppliers and places. */
export async function openTheShop(diary: Diary, book: ShopBook): Promise<void> {
	const [lead, ...others] = people;
	if (lead === undefined) throw new Error("nobody opens the shop");
	const opened = await openShop(
		openShopSchema.parse({
			name: shop.name,
			timeZone: shop.timeZone,
			currency: shop.currency,
			personName: lead.name,
			initials: lead.initials,
			skills: lead.roleWords,
		}),
		diary.envAt(OPENED, ""),
	);
	const leadId = done(opened);
	book.persons.set(lead.key, leadId);
	let moment = OPENED;
	const next = () => {
		moment = later(moment, 0.5);
		return diary.envAt(moment, leadId);
	};
	for (const person of others) {
		const id = done(
			await addPerson(personSchema.parse({ name: person.name, initials: person.initials, skills: person.roleWords }), next()),
		);
		book.persons.set(person.key, id);
	}
	for (const person of people)
		for (const { from, costMinorPerHour, chargeMinorPerHour } of person.rates) {
			const rate = {
				personId: of(book.persons, person.key),
				fromDay: from,
				cost: asTyped(costMinorPerHour),
				charge: asTyped(chargeMinorPerHour),
			};
			done(await setRate(rateSchema(currency).parse(rate), next()));
		}
	for (const { key } of people) {
		const personId = of(book.persons, key);
		for (const { from, days } of key === "C" ? FINISHER_DAYS : [{ from: "2026-01-01", days: 5 }])
			done(await setHours(hoursSchema.parse({ personId, fromDay: from, week: WEEKDAYS.map((_, at) => (at < days ? OPEN : "")) }), next()));
	}
	for (const closed of shop.closedDays)
		done(await addDayOff(dayOffSchema.parse({ personId: null, fromDay: closed, words: "closed" }), next()));
	for (const { key, name, count } of equipment)
		book.equipment.set(key, done(await addEquipment(equipmentSchema.parse({ name, count }), next())));
	for (const location of locations) {
		const parentId = location.parent === null ? null : of(book.locations, location.parent);
		const { locationId } = done(await addLocation({ parentId, kind: KINDS[location.kind], name: location.name }, next()));
		book.locations.set(location.key, locationId);
	}
	for (const supplier of suppliers) {
		const kind = supplier.kind === "parts" || supplier.kind === "carriage" ? "supplier" : "specialist";
		const id = done(await addParty(partySchema.parse({ kind, name: supplier.name, contact: contactOf(supplier) }), next()));
		book.parties.set(supplier.key, id);
	}
}
