// Machine 12, SKERRY LIGHT: the acceptance scenario's steps and purchases as plain rows. Everything here is invented.
import { day } from "@/lib/core/days";
import { decimal } from "@/lib/core/decimals";
import type { Rate } from "@/lib/money/labour";
import type { PurchaseToLand } from "@/lib/money/landed";
import { minor } from "@/lib/money/money";

export type Who = "A" | "B" | "C";

/** One step: who does it (two people each count), the estimate in minutes, the minutes it took, the wait after it, and its needs. */
export type StepRow = {
	readonly id: string;
	readonly who: readonly Who[];
	readonly low: number;
	readonly likely: number;
	readonly high: number;
	readonly actual: number;
	readonly wait: number;
	readonly after: readonly string[];
};

const step = (
	id: string,
	who: readonly Who[],
	low: number,
	likely: number,
	high: number,
	actual: number,
	wait: number,
	after: readonly string[],
): StepRow => ({ id, who, low, likely, high, actual, wait, after });

/** All 43 steps as they happened. S41 and S42 were added when the soak failed. */
export const HAPPENED: readonly StepRow[] = [
	step("S01", ["C"], 30, 45, 75, 50, 0, []),
	step("S02", ["A"], 40, 60, 100, 75, 0, ["S01"]),
	step("S03", ["B"], 10, 15, 25, 15, 0, ["S02"]),
	step("S04", ["B"], 20, 30, 50, 35, 0, ["S03"]),
	step("S05", ["A"], 20, 35, 70, 40, 0, ["S04"]),
	step("S06", ["B"], 15, 25, 40, 25, 0, ["S04"]),
	step("S07", ["A"], 30, 45, 80, 60, 4320, ["S05", "S06"]),
	step("S08", ["A"], 25, 40, 70, 45, 10080, ["S07"]),
	step("S09", ["C"], 10, 15, 25, 15, 0, ["S07"]),
	step("S10", ["B"], 40, 60, 110, 85, 0, ["S09"]),
	step("S11", ["A", "C"], 15, 20, 35, 25, 0, ["S10"]),
	step("S12", ["B"], 25, 35, 60, 55, 0, ["S11"]),
	step("S13", ["B"], 10, 15, 25, 15, 0, ["S12"]),
	step("S14", ["A", "C"], 20, 30, 50, 35, 0, ["S11"]),
	step("S15", ["A"], 15, 25, 45, 20, 0, ["S14"]),
	step("S16", ["A"], 20, 30, 55, 45, 0, ["S15"]),
	step("S17", ["A"], 15, 25, 45, 35, 0, ["S16"]),
	step("S18", ["C"], 25, 40, 65, 40, 0, ["S09"]),
	step("S19", ["B"], 10, 15, 25, 15, 0, ["S10"]),
	step("S20", ["C"], 20, 30, 50, 30, 0, ["S13", "S17", "S18", "S19"]),
	step("S21", ["C"], 25, 40, 70, 50, 1440, ["S16"]),
	step("S22", ["A"], 30, 45, 80, 45, 0, ["S21"]),
	step("S23", ["A"], 60, 90, 160, 120, 0, ["S17", "S08"]),
	step("S24", ["C"], 15, 20, 35, 20, 1440, ["S23"]),
	step("S25", ["C"], 30, 45, 75, 45, 0, ["S17"]),
	step("S26", ["C"], 60, 90, 150, 100, 1440, ["S20"]),
	step("S27", ["A"], 20, 30, 55, 25, 0, ["S12"]),
	step("S28", ["A"], 30, 45, 80, 50, 0, ["S24", "S25", "S08"]),
	step("S29", ["B"], 20, 30, 45, 30, 0, ["S28"]),
	step("S30", ["B"], 20, 30, 60, 40, 0, ["S08"]),
	step("S31", ["B"], 30, 45, 75, 45, 0, ["S30"]),
	step("S32", ["B"], 25, 35, 60, 35, 0, ["S12", "S08"]),
	step("S33", ["B"], 25, 40, 70, 45, 0, ["S19", "S08"]),
	step("S34", ["B"], 30, 45, 80, 50, 0, ["S33"]),
	step("S35", ["A"], 25, 40, 70, 40, 0, ["S22", "S29"]),
	step("S36", ["B"], 60, 90, 160, 130, 0, ["S31", "S34", "S35"]),
	step("S37", ["A", "C"], 40, 60, 100, 70, 0, ["S26", "S27", "S32", "S36"]),
	step("S38", ["C"], 20, 35, 60, 45, 0, ["S18", "S36"]),
	step("S39", ["B"], 30, 45, 75, 50, 0, ["S37", "S38"]),
	step("S40", ["C"], 40, 60, 100, 55, 260, ["S39"]),
	step("S41", ["A"], 50, 80, 130, 95, 0, ["S40"]),
	step("S42", ["C"], 30, 40, 60, 35, 260, ["S41"]),
	step("S43", ["A"], 60, 90, 150, 100, 0, ["S42"]),
];

/** The first plan: without the two added steps, S43 follows S40. */
export const PLANNED: readonly StepRow[] = HAPPENED.filter(({ id }) => id !== "S41" && id !== "S42").map((row) =>
	row.id === "S43" ? { ...row, after: ["S40"] } : row,
);

const rate = (costPerHour: number, chargePerHour: number): readonly Rate[] => [
	{ from: day("2026-01-01"), costPerHour: minor(costPerHour), chargePerHour: minor(chargePerHour) },
];

/** A lead, B electrically skilled, C finisher: cost and charge rates an hour. */
export const RATES: Readonly<Record<Who, readonly Rate[]>> = { A: rate(3600, 6600), B: rate(4800, 8400), C: rate(2400, 4800) };

export const RECEIVED = day("2026-03-02");

type Pots = {
	readonly discount?: number;
	readonly freight: number;
	readonly duty?: number;
	readonly handling?: number;
	readonly tax: number;
};

function order(lines: readonly (readonly [string, number])[], pots: Pots, paid: number, abroad = false): PurchaseToLand {
	const pot = (amount: number, where: "purchase" | "shop") => ({ minor: minor(amount), in: where, by: "value" as const });
	return {
		shopCurrency: "EUR",
		currency: abroad ? "USD" : "EUR",
		rate: decimal(abroad ? "0.9240" : "1"),
		lines: lines.map(([id, net]) => ({ id, net: minor(net) })),
		pots: {
			discount: pot(pots.discount ?? 0, "purchase"),
			freight: pot(pots.freight, "purchase"),
			duty: pot(pots.duty ?? 0, "shop"),
			handling: pot(pots.handling ?? 0, "shop"),
			tax: pot(pots.tax, "shop"),
		},
		paid: minor(paid),
	};
}

/** The six orders, each pot spread by net value. Tax is 21 % and a cost: the shop is not registered. */
export const ORDERS = {
	o1: order(
		[
			["motor", 8450],
			["controller", 4600],
			["clamp coupling", 1480],
		],
		{ freight: 990, tax: 3259 },
		18779,
	),
	o2: order(
		[
			["supply", 3120],
			["light bars", 2280],
			["LED lamp", 410],
			["fuse links", 350],
		],
		{ discount: 308, freight: 650, tax: 1365 },
		7867,
	),
	o3: order(
		[
			["flex", 1170],
			["cord grip", 260],
			["GNYE wire", 475],
			["terminals", 690],
			["tags", 820],
		],
		{ freight: 495, tax: 821 },
		4731,
	),
	o4: order(
		[
			["bush set", 1840],
			["period switch", 2700],
		],
		{ freight: 1650, duty: 270, handling: 600, tax: 1258 },
		7848,
		true,
	),
	o5: order(
		[
			["steel plate", 1200],
			["inserts", 950],
			["screws", 420],
		],
		{ freight: 520, tax: 649 },
		3739,
	),
	o6: order([["shaft rod", 780]], { freight: 390, tax: 246 }, 1416),
} as const;

/** The lines of which only some were used: how many were bought and how many went into machine 12. All other lines went in whole. */
export const PARTLY_USED: Readonly<Record<string, { readonly count: number; readonly used: number }>> = {
	"fuse links": { count: 10, used: 1 },
	"GNYE wire": { count: 5, used: 4 },
	terminals: { count: 50, used: 14 },
	tags: { count: 100, used: 62 },
	inserts: { count: 25, used: 4 },
	screws: { count: 10, used: 4 },
};

/** Filler, primer and enamel, varnish and acrylic, cleaners, oil, sleeving, 20 containers and labels at 0.22. */
export const CONSUMABLES = [432, 360, 290, 310, 90, 160, 20 * 22].map(minor);
export const INSPECTION = minor(12000);
export const DISPOSAL = minor(2200);
export const BOUGHT = minor(62000);
export const CARRIAGE_HOME = minor(8500);
export const SOLD = minor(350000);
