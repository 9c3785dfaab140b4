// Machine 12, SKERRY LIGHT: the finished job of the demo shop, whole.

import { bags } from "@/seed/data/skerry/bags";
import { alterations, connectionChanges, conversions, decisions, digitalItems, disposals, newParts } from "@/seed/data/skerry/changes";
import { obstructions, places, positions } from "@/seed/data/skerry/positions";
import { otherCosts, purchases, wantedThings } from "@/seed/data/skerry/purchases";
import { steps } from "@/seed/data/skerry/steps";
import { tests } from "@/seed/data/skerry/tests";
import type { Machine } from "@/seed/data/types";
import { at } from "@/seed/data/write";

export const skerryLight: Machine = {
	number: 12,
	name: "SKERRY LIGHT",
	what: "Coin-operated harbour novelty: a coin turns the lantern of a model lighthouse and rocks a tin ship for 75 s",
	maker: "Holm & Pike, novelty engineers",
	plate: "SKERRY LIGHT No. 0418",
	madeEdtf: "1958",
	supplyVolts: "230 V AC",
	massGrams: 86_000,
	received: at("2026-03-02", "09:00"),
	state: "sold",
	stateWords: "sold, handed over with 14 containers",
	location: "front-window",
	ownership: {
		kind: "shop",
		seller: "Wobbe Hiddinga, from his uncle's ferry café",
		boughtMinor: 62_000,
		carriageMinor: 8_500,
		bought: "2026-02-27",
		story:
			'Stood in the café until the lantern stopped, "about 1990". One side glass was broken and replaced. Stored in a boathouse; one flood.',
	},
	sale: {
		buyer: "Aukelien Postmaat",
		day: "2026-05-08",
		at: at("2026-05-08", "11:00"),
		minor: 350_000,
		bagsCounted: 14,
		words: "Machine, 14 containers and dossier handed over; every container scanned by both sides.",
	},
	hazards: [
		{
			what: "bare mains",
			positions: ["k30", "k31", "k28"],
			caution: "Unplug, tag the plug, prove dead. Local codes and a licensed electrician come first.",
		},
		{
			what: "ballast of 1958",
			positions: ["k07"],
			caution: "Treat as containing PCB: gloves, tub, licensed disposal; photograph the label first.",
		},
		{ what: "mercury in the tube", positions: ["k05"], caution: "Do not break. Sleeve it; licensed waste." },
		{ what: "plain glass", positions: ["k09", "k10", "k11", "k12"], caution: "Gloves, tape, two persons." },
		{ what: "old plaster", positions: ["k15"], caution: "May hold asbestos: do not sand, drill or blow; laboratory." },
	],
	positions,
	places,
	obstructions,
	newParts,
	conversions,
	connectionChanges,
	steps,
	wanted: wantedThings,
	purchases,
	otherCosts,
	alterations,
	decisions,
	bags,
	tests,
	digitalItems,
	loans: [],
	disposals,
	remarks: [
		{ at: at("2026-03-02", "09:55"), by: "A", words: "Seller's story written down as told, not as known." },
		{
			at: at("2026-04-09", "13:45"),
			by: "C",
			words: "Counter stopped at 131: lantern still, motor turning. Coupling slips on the worn end.",
		},
		{ at: at("2026-04-21", "10:00"), by: "B", words: "Independent inspection done, report with the papers." },
	],
};
