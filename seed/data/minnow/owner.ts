// Machine 14: what was agreed with its owner, what was paid, and the paper that waits for an answer.

import type { OwnerDealings } from "@/seed/data/types";
import { at } from "@/seed/data/write";

export const dealings: OwnerDealings = {
	quote: {
		at: at("2026-04-14", "09:45"),
		by: "A",
		until: "2026-05-14",
		handling: "10",
		contingency: "5",
		// The rewinder had named a price on the phone; the book did not know of it yet.
		lines: [{ what: "Motor: start winding rewound by a specialist, carriage there and back", minor: 30_500 }],
		limitMinor: 220_000,
		terms: [
			"Labour is charged by the time it takes, at our rates of the day it is done; what is written here is what we expect. We ask you before the work comes to more than the limit.",
			"The motor is rewound, not exchanged. Every original part stays yours and with the ride.",
			"A deposit is asked for before parts are ordered.",
		],
	},
	answer: { at: at("2026-04-20", "08:40"), by: "Fenna Roskam, for the owner", how: "on the phone; the signed copy came by post" },
	deposit: { day: "2026-04-21", at: at("2026-04-21", "09:05"), minor: 60_000, words: "by bank, for quote 1" },
	more: {
		at: at("2026-05-21", "09:30"),
		by: "A",
		until: "2026-06-04",
		handling: "10",
		limitMinor: 250_000,
		why: "Wet cleaning brought it out: under the cushion the seat board is rotten through at two of its screws, and it carries the child. The gasket of the nose lamp is hard and cracked; without it water gets into the lamp.",
		terms: ["We go on with this only once you have agreed. The rest of the work goes on as it was agreed."],
	},
};
