// Machine 12: the fourteen tests, each with its limit and where that comes from, before and after.

import type { Limit, MachineTest, Measured } from "@/seed/data/types";
import { at } from "@/seed/data/write";

const triage = at("2026-03-02", "12:50"); // inside S04
const final = at("2026-04-08", "09:30"); // inside S39
const firstSoak = at("2026-04-09", "11:20"); // 131 plays of 78 s after the start of S40's machine time
const secondSoak = at("2026-04-16", "13:25");

const own = "the shop's own limit, common practice";

const reading = (what: string, value: number, unit: string, words = `${value} ${unit}`): Measured => ({ what, value, unit, words });
const word = (what: string, words: string): Measured => ({ what, unit: "", words });
const limit = (what: string, unit: string, source: string, bounds: Omit<Limit, "what" | "unit" | "source">): Limit => ({
	what,
	unit,
	source,
	...bounds,
});

export const tests: readonly MachineTest[] = [
	{
		id: "t01",
		what: "two turns by hand, torque",
		limits: [limit("torque at the lantern shaft", "N m", own, { max: 0.25 })],
		limitWords: "0.25 N m",
		runs: [
			{
				when: "before",
				at: at("2026-03-02", "13:20"),
				by: "A",
				step: "S05",
				measured: [word("two turns by hand", "one tight spot")],
				verdict: "noted",
			},
			{
				when: "after",
				at: at("2026-04-01", "09:35"),
				by: "A",
				step: "S35",
				instrument: "torque",
				measured: [reading("torque at the lantern shaft", 0.12, "N m")],
				verdict: "pass",
			},
		],
	},
	{
		id: "t02",
		what: "protective earth, plug pin to door / k23 / k03 / k27",
		limits: [limit("each metal part", "Ω", "VDE 0701-0702 and EN 50678, cord to 5 m; value partly from memory", { max: 0.3 })],
		limitWords: "0.3 Ω, cord to 5 m",
		runs: [
			{ when: "before", at: triage, by: "B", step: "S04", measured: [word("protective earth", "none: two-core flex")], verdict: "fail" },
			{
				when: "after",
				at: final,
				by: "B",
				step: "S39",
				instrument: "appliance",
				measured: [
					reading("coin door", 0.07, "Ω"),
					reading("k23, drive plate", 0.08, "Ω"),
					reading("k03, sign box", 0.09, "Ω"),
					reading("k27, transformer", 0.07, "Ω"),
				],
				verdict: "pass",
			},
		],
	},
	{
		id: "t03",
		what: "insulation, 500 V",
		limits: [limit("insulation", "MΩ", "1 MΩ, class I, as appliance-test guides give it", { min: 1 })],
		limitWords: "1 MΩ",
		runs: [
			{
				when: "before",
				at: triage,
				by: "B",
				step: "S04",
				instrument: "insulation",
				measured: [reading("insulation", 0.4, "MΩ", "0.4 MΩ, at the old flex")],
				verdict: "fail",
			},
			{
				when: "after",
				at: final,
				by: "B",
				step: "S39",
				instrument: "insulation",
				measured: [reading("insulation", 210, "MΩ", "210 MΩ, at the plug, electronics off")],
				verdict: "pass",
			},
		],
	},
	{
		id: "t04",
		what: "polarity: line at fuse",
		limits: [limit("line at the fuse", "", "common practice", { equals: "right" })],
		limitWords: "right",
		runs: [
			{ when: "before", at: triage, by: "B", step: "S04", measured: [word("line at the fuse", "unmarked")], verdict: "noted" },
			{
				when: "after",
				at: final,
				by: "B",
				step: "S39",
				instrument: "multimeter",
				measured: [word("line at the fuse", "right")],
				verdict: "pass",
			},
		],
	},
	{
		id: "t05",
		what: "fuse",
		limits: [limit("rating of the link", "A", own, { max: 1 })],
		limitWords: "1 A",
		runs: [
			{ when: "before", at: triage, by: "B", step: "S04", measured: [word("fuse link", "foil")], verdict: "fail" },
			{ when: "after", at: final, by: "B", step: "S39", measured: [reading("rating of the link", 1, "A", "T1A")], verdict: "pass" },
		],
	},
	{
		id: "t06",
		what: "supply, no load",
		limits: [limit("output", "V", own, { min: 23.5, max: 24.5 })],
		limitWords: "24.0 ± 0.5 V",
		runs: [
			{
				when: "after",
				at: final,
				by: "B",
				step: "S39",
				instrument: "multimeter",
				measured: [reading("output", 24.1, "V")],
				verdict: "pass",
			},
		],
	},
	{
		id: "t07",
		what: "24 V rail, running",
		limits: [limit("running current", "A", "80 % of the supply's 2.5 A, common practice", { max: 2 })],
		limitWords: "2.0 A = 80 % of 2.5",
		runs: [
			{
				when: "after",
				at: final,
				by: "B",
				step: "S39",
				instrument: "multimeter",
				measured: [
					reading("running current", 1.28, "A"),
					reading("of it motor", 0.62, "A"),
					reading("of it light bars", 0.58, "A"),
					reading("of it controller", 0.08, "A"),
					reading("at the start", 1.76, "A"),
				],
				verdict: "pass",
			},
		],
	},
	{
		id: "t08",
		what: "lamp winding, no load / lamp on",
		limits: [limit("no load", "V", own, { max: 7.5 }), limit("lamp on", "V", own, { min: 6, max: 7 })],
		limitWords: "7.5 / 6.0-7.0 V",
		runs: [
			{
				when: "before",
				at: at("2026-03-02", "13:25"),
				by: "B",
				step: "S06",
				instrument: "multimeter",
				measured: [reading("no load", 6.9, "V")],
				verdict: "noted",
				words: "Transformer alone, fed from the bench supply; the machine itself was not plugged in.",
			},
			{
				when: "after",
				at: final,
				by: "B",
				step: "S39",
				instrument: "multimeter",
				measured: [reading("no load", 6.9, "V"), reading("lamp on", 6.7, "V")],
				verdict: "pass",
			},
		],
	},
	{
		id: "t09",
		what: "lantern speed",
		limits: [limit("lantern", "rpm", "as built 28, motor plate", { min: 27, max: 29 })],
		limitWords: "27-29 rpm (as built 28)",
		runs: [
			{
				when: "after",
				at: at("2026-04-09", "08:45"),
				by: "C",
				step: "S40",
				instrument: "tachometer",
				measured: [reading("lantern", 28.3, "rpm")],
				verdict: "pass",
			},
		],
	},
	{
		id: "t10",
		what: "coins: 100 good accepted / 20 wrong rejected",
		limits: [limit("good accepted, of 100", "coins", own, { min: 98 }), limit("wrong rejected, of 20", "coins", own, { min: 19 })],
		limitWords: "98 / 19",
		runs: [
			{ when: "before", at: triage, by: "B", step: "S04", measured: [word("coins", "not tested")], verdict: "not-tested" },
			{
				when: "after",
				at: at("2026-04-09", "09:10"),
				by: "C",
				step: "S40",
				instrument: "coins",
				measured: [reading("good accepted, of 100", 100, "coins"), reading("wrong rejected, of 20", 20, "coins")],
				verdict: "pass",
			},
		],
	},
	{
		id: "t11",
		what: "200 plays of 75 s + 3 s",
		limits: [
			limit("plays", "plays", own, { min: 200 }),
			limit("shortest play", "s", own, { min: 73 }),
			limit("longest play", "s", own, { max: 77 }),
		],
		limitWords: "200, 75 ± 2 s",
		runs: [
			{
				when: "after",
				at: firstSoak,
				by: "C",
				step: "S40",
				instrument: "counter",
				measured: [reading("plays", 131, "plays", "failed at play 131")],
				verdict: "fail",
				words: "Coupling slips: the clamp turns on the worn end of the shaft.",
			},
			{
				when: "after",
				at: secondSoak,
				by: "C",
				step: "S42",
				instrument: "counter",
				measured: [reading("plays", 200, "plays"), reading("shortest play", 74.6, "s"), reading("longest play", 75.3, "s")],
				verdict: "pass",
			},
		],
	},
	{
		id: "t12",
		what: "same run: motor case / supply, ambient 21 °C",
		limits: [limit("rise of the motor case", "K", own, { max: 40 }), limit("supply case", "°C", own, { max: 70 })],
		limitWords: "rise 40 K / 70 °C",
		runs: [
			{
				when: "after",
				at: secondSoak,
				by: "C",
				step: "S42",
				instrument: "thermocouple",
				measured: [
					reading("motor case", 41, "°C"),
					reading("rise of the motor case", 20, "K"),
					reading("supply case", 47, "°C"),
					reading("ambient", 21, "°C"),
				],
				verdict: "pass",
			},
		],
	},
	{
		id: "t13",
		what: "protective conductor current",
		limits: [limit("current", "mA", "3.5 mA, as appliance-test guides give it", { max: 3.5 })],
		limitWords: "3.5 mA",
		runs: [
			{ when: "after", at: final, by: "B", step: "S39", instrument: "clamp", measured: [reading("current", 0.24, "mA")], verdict: "pass" },
		],
	},
	{
		id: "t14",
		what: "cord pull 100 N, 25 times",
		limits: [limit("movement", "mm", "in the manner of IEC 60335-1, from memory", { max: 2 })],
		limitWords: "2 mm",
		runs: [
			{ when: "before", at: triage, by: "B", step: "S04", measured: [word("cord", "cord slid in its clamp")], verdict: "fail" },
			{ when: "after", at: final, by: "B", step: "S39", instrument: "scale", measured: [reading("movement", 0.5, "mm")], verdict: "pass" },
		],
	},
];
