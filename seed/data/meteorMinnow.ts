// Machine 14, METEOR MINNOW: a child's rocket ride, in work; its motor is out at the rewinder.

import { dealings } from "@/seed/data/minnow/owner";
import { obstructions, positions } from "@/seed/data/minnow/positions";
import { bags, decisions, loans, newParts, otherCosts, purchases, steps, tests, wantedThings } from "@/seed/data/minnow/work";
import type { Machine } from "@/seed/data/types";
import { at } from "@/seed/data/write";

export const meteorMinnow: Machine = {
	number: 14,
	name: "METEOR MINNOW",
	what: "Coin-operated rocket ride for one child, floor standing",
	maker: "Fennimore & Dace Amusement Co.",
	plate: "METEOR MINNOW serial 211",
	madeEdtf: "1956",
	supplyVolts: "115 V AC",
	massGrams: 147_000,
	received: at("2026-04-13", "10:00"),
	state: "in-work",
	stateWords: "in work; motor out at the rewinder, late",
	location: "floor-2",
	ownership: {
		kind: "customer",
		owner: "Duinkamp Zoutewiel, for it Fenna Roskam",
		valueAgreedMinor: 140_000,
		limitMinor: 220_000,
		story: "Stood by the camp shop since 1961, bought second hand. Stopped with smoke in 2009. Repainted at least twice.",
	},
	dealings,
	hazards: [
		{ what: "pinch", positions: ["a19", "a20"], caution: "Block the arm before a hand goes in." },
		{ what: "46 kg body", positions: ["a08"], caution: "Two persons, lifting table." },
		{ what: "start capacitor", positions: ["a27"], caution: "Discharge through a resistor, then measure." },
		{ what: "cord without earth", positions: ["a29"], caution: "Unplug, tag the plug. Local codes and a licensed electrician come first." },
		{
			what: "lead paint likely",
			positions: ["a08", "a14", "a15"],
			caution: "Wet methods; no dry sanding, no heat gun. A child's ride above all.",
		},
		{ what: "celluloid possible", positions: ["a11"], caution: "No heat, no bag with metal; cool, aired, alone." },
	],
	positions,
	places: [
		{ id: "base-frame", name: "base frame", area: "Base" },
		{ id: "cord-hole", name: "cord hole in the base", area: "Wiring" },
	],
	obstructions,
	newParts,
	conversions: [
		{
			id: "C1",
			name: "Mains safety",
			safety: true,
			why: "Two-core cord, no earth on a ride that children touch.",
			partsOut: ["a29"],
			partsIn: ["a29-cord"],
			alterations: [],
			connections: ["a29"],
			steps: ["M18"],
			tests: ["t01", "t02"],
		},
	],
	connectionChanges: [],
	steps,
	wanted: wantedThings,
	purchases,
	otherCosts,
	alterations: [],
	decisions,
	bags,
	tests,
	digitalItems: [],
	loans,
	disposals: [],
	remarks: [
		{ at: at("2026-04-13", "13:55"), by: "B", words: "Capacitor bled through 10 kΩ, 0 V after one minute." },
		{ at: at("2026-05-21", "09:10"), by: "A", words: "Rang the rewinder: wire of the old gauge is late, promised for 29 May." },
	],
};
