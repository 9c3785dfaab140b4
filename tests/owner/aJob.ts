// A customer's machine as plain data, with defaults, so that a test shows only what it is about.

import { day } from "@/lib/core/days";
import type { LabourPerson } from "@/lib/money/labourOfMachine";
import { minor } from "@/lib/money/money";
import type { AccountPaper } from "@/lib/owner/account";
import type { Chargeable, OwnerStep } from "@/lib/owner/charged";

export const TODAY = day("2026-05-20");

export const person = (id: string, charge: number, from = "2026-01-01"): LabourPerson => ({
	id,
	name: `Person ${id}`,
	rates: [{ from: day(from), costPerHour: minor(100), chargePerHour: minor(charge) }],
});

export const step = (number: number, more: Partial<OwnerStep> = {}): OwnerStep => ({
	id: `s${number}`,
	number,
	title: `work ${number}`,
	kind: "repair",
	low: 60,
	likely: 60,
	high: 60,
	state: "planned",
	addedWhy: "",
	crew: ["A"],
	...more,
});

export const job = (more: Partial<Chargeable> = {}): Chargeable => ({
	steps: [],
	work: [],
	persons: [person("A", 6000), person("B", 9000)],
	wanted: [],
	uses: [],
	returns: [],
	offPrice: [],
	costs: [],
	leftOut: [],
	...more,
});

let entries = 0;
/** A paper, given after all that were made before it. */
export const paper = (kind: AccountPaper["kind"], net: number, more: Partial<AccountPaper> = {}): AccountPaper => {
	entries += 1;
	return {
		id: `p${entries}`,
		kind,
		number: entries,
		state: "agreed",
		day: day("2026-05-01"),
		givenEntry: entries,
		agreedEntry: more.state === undefined || more.state === "agreed" ? entries : null,
		takesIn: null,
		limit: null,
		lines: [{ net: minor(net), taxPercent: "" }],
		about: [],
		handling: "",
		...more,
	};
};
