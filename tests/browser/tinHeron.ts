// TIN HERON, machine 31 of Quay Lane Works: invented for this test, and worked out here by hand, apart from the program.

import { PROBLEM_FORMAT, type Problem } from "@/lib/reversal/problem";

/** As it is typed when the machine stands on the bench for the first time. */
export const BUILD = `Front:
Glass panel (original)
Coin mechanism (original)
  Coin lever (original)
  Coin chute (original)
Lamp (original)
Inside:
Motor (original)
Fuse holder (original)
Back panel (original)`;

/** Added by the work: there was no such place when it came. */
export const ADDED_BUILD = "Relay seat";

/** What it was bought for and what its carriage cost, euros. */
export const BOUGHT = { price: "340.00", carriage: "45.50" } as const;

/** Euros an hour: what a person costs, and what is charged. */
export const RATES = { wil: { cost: "36.00", charge: "58.00" }, fen: { cost: "27.00", charge: "44.00" } } as const;

/** The motor's order: freight and tax go over the lines by their value. */
export const DRIVE_ORDER = {
	supplier: "Korst Drives",
	freight: "9.75",
	discount: "",
	// 21 % of 64.90 + 23.50 + 9.75 = 98.15 is 20.6115.
	tax: "20.61",
	// 98.15 + 20.61
	paid: "118.76",
	lines: [
		{ what: "Gear motor 24 V", count: "1", unit: "piece", net: "64.90" },
		{ what: "Relay board", count: "1", unit: "piece", net: "23.50" },
	],
	// Value 64.90 of 88.40 and 23.50 of 88.40.
	// Freight 9.75: 7.15810 and 2.59190. Down to 7.15 and 2.59; the cent left goes to .810, not .190: 7.16 and 2.59.
	// Tax 20.61: 15.13111 and 5.47889. Down to 15.13 and 5.47; the cent left goes to .889: 15.13 and 5.48.
	// Motor 64.90 + 7.16 + 15.13 = 87.19; board 23.50 + 2.59 + 5.48 = 31.57; together 118.76, as paid.
	landed: ["87.19", "31.57"],
} as const;

/** The light's order, with a discount. */
export const LIGHT_ORDER = {
	supplier: "Bright Side Supplies",
	freight: "4.95",
	discount: "1.00",
	// 21 % of 7.20 + 6.00 - 1.00 + 4.95 = 17.15 is 3.6015.
	tax: "3.60",
	// 17.15 + 3.60
	paid: "20.75",
	lines: [
		{ what: "LED bulb E10", count: "3", unit: "piece", net: "7.20" },
		{ what: "Flex, black", count: "5", unit: "m", net: "6.00" },
	],
	// Value 7.20 of 13.20 and 6.00 of 13.20.
	// Discount 1.00: 0.54545 and 0.45455. Down to 0.54 and 0.45; the cent left goes to .545: 0.55 and 0.45.
	// Freight 4.95: 2.70 and 2.25, nothing left.
	// Tax 3.60: 1.96364 and 1.63636. Down to 1.96 and 1.63; the two remainders are .364 and .636: 1.96 and 1.64.
	// Bulbs 7.20 - 0.55 + 2.70 + 1.96 = 11.31; flex 6.00 - 0.45 + 2.25 + 1.64 = 9.44; together 20.75, as paid.
	landed: ["11.31", "9.44"],
} as const;

/** One bulb of three is 11.31 / 3 = 3.77; two metres of five are 9.44 * 2 / 5 = 3.776, so 3.78. */
export const USED = { motor: "87.19", board: "31.57", bulb: "3.77", flex: "3.78" } as const;

/** Grease for the gears. */
export const GREASE = "4.40";

/** What the screens must come to. */
export const SUMS = {
	// Wil: a clock stopped within the minute counts 1 minute, 36.00 / 60 = 0.60; 1 h 25 from memory is 85 * 36.00 / 60 = 51.00.
	wilWorked: "1 h 26",
	wil: "51.60",
	// Fen: 50 min are 50 * 27.00 / 60 = 22.50; 35 min are 35 * 27.00 / 60 = 15.75.
	fenWorked: "1 h 25",
	fen: "38.25",
	// At charge rates, each entry rounded: 58.00 / 60 = 0.97 and 85 * 58.00 / 60 = 82.17.
	wilCharged: "83.14",
	// 50 * 44.00 / 60 = 36.67 and 35 * 44.00 / 60 = 25.67.
	fenCharged: "62.34",
	// 87.19 + 31.57 + 3.77 + 3.78
	parts: "126.31",
	// 51.60 + 38.25 + 126.31 + 4.40
	spent: "220.56",
	// 340.00 + 45.50 + 220.56
	books: "606.06",
} as const;

/**
 * The way back as it would be told to a planner by somebody who only watched the work. Positions by their marks in the order
 * of the list, parts by their names.
 *
 * Found: everything original. Now: the motor, the lamp and the coin mechanism are out; a gear motor, a LED bulb and a relay
 * board are in; glass and back panel are in again. The glass covers the lamp, the back panel covers the motor, and holes were
 * drilled at the motor's seat.
 */
export const WAY_BACK: Problem = {
	format: PROBLEM_FORMAT,
	positions: [
		{ id: "p01" },
		{ id: "p02" },
		{ id: "p03", host: "Coin mechanism" },
		{ id: "p04", host: "Coin mechanism" },
		{ id: "p05" },
		{ id: "p06" },
		{ id: "p07" },
		{ id: "p08" },
		{ id: "p09" },
	],
	parts: [
		"Glass panel",
		"Coin mechanism",
		"Coin lever",
		"Coin chute",
		"Lamp",
		"Motor",
		"Fuse holder",
		"Back panel",
		"Gear motor 24 V",
		"LED bulb E10",
		"Relay board",
	].map((id) => ({ id })),
	now: {
		p01: "Glass panel",
		p03: "Coin lever",
		p04: "Coin chute",
		p05: "LED bulb E10",
		p06: "Gear motor 24 V",
		p07: "Fuse holder",
		p08: "Back panel",
		p09: "Relay board",
	},
	target: {
		p01: "Glass panel",
		p02: "Coin mechanism",
		p03: "Coin lever",
		p04: "Coin chute",
		p05: "Lamp",
		p06: "Motor",
		p07: "Fuse holder",
		p08: "Back panel",
	},
	obstructions: [
		{ part: "Glass panel", position: "p05" },
		{ part: "Back panel", position: "p06" },
	],
	alterations: [{ id: "a1", position: "p06", undo: { low: 20, likely: 30, high: 45 }, leavesTrace: true }],
};
