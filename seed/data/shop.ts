// The demo shop: an invented workshop in an invented harbour town, three people, and the places where things lie.

import type { Minor, PersonKey } from "@/seed/data/types";

export type Rate = { readonly from: string; readonly costMinorPerHour: Minor; readonly chargeMinorPerHour: Minor };

export type Person = {
	readonly key: PersonKey;
	readonly name: string;
	readonly initials: string;
	readonly role: "lead" | "electrical" | "finisher";
	readonly roleWords: string;
	readonly electricallySkilled: boolean;
	readonly rates: readonly Rate[];
};

export type LocationKind = "room" | "bench" | "rack" | "shelf" | "bin" | "place";

export type Location = { readonly key: string; readonly name: string; readonly kind: LocationKind; readonly parent: string | null };

export type Supplier = {
	readonly key: string;
	readonly name: string;
	readonly kind: "parts" | "outside-work" | "inspection" | "disposal" | "carriage";
	readonly town: string;
	readonly country: string;
	readonly note?: string;
};

export type Instrument = {
	readonly key: string;
	readonly name: string;
	readonly serial: string;
	readonly calibrated: string;
	readonly calibrationDue: string;
};

/** The shop itself. Not registered for value added tax: tax is a cost. */
export const shop = {
	name: "Zoutewiel Works",
	town: "Zoutewiel",
	country: "NL",
	address: "Loodsgang 4, Zoutewiel",
	timeZone: "Europe/Amsterdam",
	currency: "EUR",
	taxRegistered: false,
	/** Wall-clock opening, Monday to Friday. */
	opens: "08:00",
	closes: "16:30",
	lunch: { from: "12:00", to: "12:30" },
	/** From this day on the finisher does not come on Fridays. */
	finisherOffFridaysFrom: "2026-06-01",
	/** Days on which nobody worked. */
	closedDays: ["2026-04-03", "2026-04-06", "2026-04-27", "2026-05-05", "2026-05-14", "2026-05-15", "2026-05-25"],
	/** The day on which the demo stands still: nothing in its data is later. */
	today: "2026-05-22",
} as const;

export const people: readonly Person[] = [
	{
		key: "A",
		name: "Marit Oldekamp",
		initials: "MO",
		role: "lead",
		roleWords: "lead, mechanic",
		electricallySkilled: false,
		rates: [{ from: "2026-01-01", costMinorPerHour: 3600, chargeMinorPerHour: 6600 }],
	},
	{
		key: "B",
		name: "Joren Tjaarda",
		initials: "JT",
		role: "electrical",
		roleWords: "electrically skilled",
		electricallySkilled: true,
		rates: [{ from: "2026-01-01", costMinorPerHour: 4800, chargeMinorPerHour: 8400 }],
	},
	{
		key: "C",
		name: "Tessel Wiarda",
		initials: "TW",
		role: "finisher",
		roleWords: "finisher",
		electricallySkilled: false,
		rates: [{ from: "2026-01-01", costMinorPerHour: 2400, chargeMinorPerHour: 4800 }],
	},
];

const place = (key: string, name: string, kind: LocationKind, parent: string | null): Location => ({ key, name, kind, parent });

/** Rooms, racks, shelves and bins, parents before children. */
export const locations: readonly Location[] = [
	place("front", "Front shop", "room", null),
	place("front-window", "Window", "place", "front"),
	place("front-desk", "Desk", "place", "front"),
	place("front-cupboard", "Fire-proof cupboard", "place", "front"),
	place("bench-room", "Bench room", "room", null),
	place("floor-1", "Floor, bay 1", "place", "bench-room"),
	place("floor-2", "Floor, bay 2", "place", "bench-room"),
	place("floor-3", "Floor, bay 3", "place", "bench-room"),
	place("bench-1", "Bench 1", "bench", "bench-room"),
	place("bench-2", "Bench 2", "bench", "bench-room"),
	place("bench-3", "Bench 3, electrical", "bench", "bench-room"),
	place("bench-2-trays", "Trays under bench 2", "bin", "bench-2"),
	place("paint", "Paint room", "room", null),
	place("paint-booth", "Spray booth", "place", "paint"),
	place("paint-rack", "Drying rack", "rack", "paint"),
	place("back", "Back room", "room", null),
	place("rack-a", "Rack A", "rack", "back"),
	place("rack-a-1", "Shelf A1", "shelf", "rack-a"),
	place("rack-a-2", "Shelf A2", "shelf", "rack-a"),
	place("rack-a-3", "Shelf A3", "shelf", "rack-a"),
	place("rack-b", "Rack B", "rack", "back"),
	place("rack-b-1", "Shelf B1", "shelf", "rack-b"),
	place("rack-b-2", "Shelf B2", "shelf", "rack-b"),
	place("rack-b-3", "Shelf B3", "shelf", "rack-b"),
	place("rack-c", "Rack C, large and flat", "rack", "back"),
	place("rack-c-glass", "Glass slots", "shelf", "rack-c"),
	place("rack-c-panels", "Panel slots", "shelf", "rack-c"),
	place("stock", "Stock cabinet", "rack", "back"),
	place("stock-1", "Drawer 1, screws and inserts", "bin", "stock"),
	place("stock-2", "Drawer 2, wire and terminals", "bin", "stock"),
	place("stock-3", "Drawer 3, lamps and fuses", "bin", "stock"),
	place("stock-4", "Drawer 4, tags and bags", "bin", "stock"),
	place("cellar", "Cellar", "room", null),
	place("cellar-long", "Long shelf", "shelf", "cellar"),
	place("cellar-cage", "Locked cage, hazardous", "place", "cellar"),
];

/** What work has to wait for. */
export const equipment: readonly { readonly key: string; readonly name: string; readonly count: number }[] = [
	{ key: "bench", name: "bench", count: 2 },
	{ key: "electrical", name: "electrical bench", count: 1 },
	{ key: "booth", name: "spray booth", count: 1 },
	{ key: "hoist", name: "hoist", count: 1 },
];

export const suppliers: readonly Supplier[] = [
	{ key: "kettelbras", name: "Kettelbras Drives", kind: "parts", town: "Oostwiel", country: "NL", note: "motors, couplings, controllers" },
	{ key: "lichtvat", name: "Lichtvat Supplies", kind: "parts", town: "Oostwiel", country: "NL", note: "supplies, lamps, fuses" },
	{ key: "snoerhal", name: "Snoerhal Cable", kind: "parts", town: "Veenmonde", country: "NL", note: "flex, terminals, tags" },
	{
		key: "oxbow",
		name: "Oxbow Lane Coin Parts",
		kind: "parts",
		town: "Tamarack Bend, Ohio",
		country: "US",
		note: "unused old stock; slow post",
	},
	{ key: "plaatman", name: "Plaatman Cut Metal", kind: "parts", town: "Zoutewiel", country: "NL", note: "plate, inserts, screws" },
	{ key: "stangerij", name: "Stangerij Noordwiel", kind: "parts", town: "Noordwiel", country: "NL", note: "ground rod by the metre" },
	{
		key: "wikkelkamer",
		name: "De Wikkelkamer",
		kind: "outside-work",
		town: "Veenmonde",
		country: "NL",
		note: "rewinds small motors; asks to keep old cores",
	},
	{
		key: "keurhuis",
		name: "Keurhuis Inspections",
		kind: "inspection",
		town: "Oostwiel",
		country: "NL",
		note: "independent electrical inspection",
	},
	{
		key: "stofwacht",
		name: "Stofwacht Licensed Waste",
		kind: "disposal",
		town: "Noordwiel",
		country: "NL",
		note: "PCB, mercury, asbestos",
	},
	{ key: "vrachtschuit", name: "Vrachtschuit Carriers", kind: "carriage", town: "Zoutewiel", country: "NL" },
];

export const instruments: readonly Instrument[] = [
	{ key: "multimeter", name: "Multimeter, CAT III 600 V", serial: "ZW-M03", calibrated: "2025-11-12", calibrationDue: "2026-11-12" },
	{ key: "insulation", name: "Insulation tester, 250/500 V", serial: "ZW-I01", calibrated: "2025-11-12", calibrationDue: "2026-11-12" },
	{
		key: "appliance",
		name: "Appliance tester, 200 mA earth test",
		serial: "ZW-G02",
		calibrated: "2025-10-06",
		calibrationDue: "2026-10-06",
	},
	{ key: "clamp", name: "Clamp meter, leakage range", serial: "ZW-C01", calibrated: "2025-11-12", calibrationDue: "2026-11-12" },
	{ key: "thermocouple", name: "Thermometer, two thermocouples", serial: "ZW-T04", calibrated: "2025-09-30", calibrationDue: "2026-09-30" },
	{ key: "torque", name: "Torque driver, 0.05-1.2 N m", serial: "ZW-N01", calibrated: "2025-09-30", calibrationDue: "2026-09-30" },
	{ key: "tachometer", name: "Tachometer, optical", serial: "ZW-R01", calibrated: "2025-09-30", calibrationDue: "2026-09-30" },
	{ key: "scale", name: "Luggage scale, 0-500 N", serial: "ZW-F01", calibrated: "2025-09-30", calibrationDue: "2026-09-30" },
	{ key: "coins", name: "Coin set, 100 good and 20 wrong", serial: "ZW-K01", calibrated: "2026-01-15", calibrationDue: "2027-01-15" },
	{ key: "counter", name: "Play counter and stopwatch", serial: "ZW-P02", calibrated: "2026-01-15", calibrationDue: "2027-01-15" },
];
