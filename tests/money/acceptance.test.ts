// The acceptance scenario's money and time, computed from its raw rows: machine 12, SKERRY LIGHT.
import { describe, expect, it } from "vitest";
import { decimal } from "@/lib/core/decimals";
import type { Result } from "@/lib/core/result";
import { percentOf } from "@/lib/money/exchange";
import { costOfMinutes, rateOn } from "@/lib/money/labour";
import { type Landed, landed } from "@/lib/money/landed";
import { costOfUse, leftOfLine } from "@/lib/money/lineUse";
import { formatAmount, type MinorUnits, minor, sumMinor } from "@/lib/money/money";
import { costOfExpected, expectedSixths, formatSixths, sigmaOfLabour } from "@/lib/money/pert";
import { costSummary, inTheBooks, marginOf } from "@/lib/money/summary";
import { criticalChains, longestPath } from "@/lib/schedule/longestPath";
import {
	BOUGHT,
	CARRIAGE_HOME,
	CONSUMABLES,
	DISPOSAL,
	HAPPENED,
	INSPECTION,
	ORDERS,
	PARTLY_USED,
	PLANNED,
	RATES,
	RECEIVED,
	SOLD,
	type StepRow,
	type Who,
} from "./machine12";

const shown = (amount: MinorUnits) => formatAmount(amount, "EUR");

function accepted<T>(result: Result<T>): T {
	if (!result.ok) throw new Error(result.error.say);
	return result.value;
}

const rateOf = (who: Who) => accepted(rateOn(RATES[who], RECEIVED));
/** Each step once for each of its people. */
const personSteps = (steps: readonly StepRow[]) => steps.flatMap((step) => step.who.map((who) => ({ who, step })));
const total = (steps: readonly StepRow[], who: Who | "all", of: (step: StepRow) => number) =>
	personSteps(steps)
		.filter((row) => who === "all" || row.who === who)
		.reduce((sum, row) => sum + of(row.step), 0);
const expectedOf = (steps: readonly StepRow[], who: Who | "all") => formatSixths(total(steps, who, expectedSixths));
const expectedCost = (steps: readonly StepRow[]) =>
	sumMinor(personSteps(steps).map(({ who, step }) => costOfExpected(expectedSixths(step), rateOf(who).costPerHour)));
const actualCost = (steps: readonly StepRow[]) =>
	sumMinor(personSteps(steps).map(({ who, step }) => costOfMinutes(step.actual, rateOf(who).costPerHour)));
const done = HAPPENED.filter(({ id }) => id <= "S22");

describe("labour and time of machine 12", () => {
	it("the plan has 41 steps, what happened 43", () => {
		expect([PLANNED.length, HAPPENED.length]).toEqual([41, 43]);
	});

	it.each([
		["A", 465, 710, 1245],
		["B", 370, 555, 960],
		["C", 350, 530, 890],
		["all", 1185, 1795, 3095],
	] as const)("the plan of %s adds up to low %i, likely %i, high %i minutes", (who, low, likely, high) => {
		expect(total(PLANNED, who, (step) => step.low)).toBe(low);
		expect(total(PLANNED, who, (step) => step.likely)).toBe(likely);
		expect(total(PLANNED, who, (step) => step.high)).toBe(high);
	});

	it("the likely plan costs 1,082.00", () => {
		const costs = personSteps(PLANNED).map(({ who, step }) => costOfMinutes(step.likely, rateOf(who).costPerHour));
		expect(shown(sumMinor(costs))).toBe("1,082.00");
	});

	it("the expected plan is 758 1/3, 591 2/3 and 560 minutes, 1,910 in all, and costs 1,152.36", () => {
		expect((["A", "B", "C", "all"] as const).map((who) => expectedOf(PLANNED, who))).toEqual(["758 1/3", "591 2/3", "560", "1910"]);
		expect(shown(expectedCost(PLANNED))).toBe("1,152.36");
	});

	it("with the two added steps it is 841 2/3, 591 2/3 and 601 2/3 minutes, 2,035 in all", () => {
		expect((["A", "B", "C", "all"] as const).map((who) => expectedOf(HAPPENED, who))).toEqual(["841 2/3", "591 2/3", "601 2/3", "2035"]);
	});

	it("the work took 925, 670 and 615 minutes, cost 1,337.00 and is charged at 2,447.50", () => {
		expect((["A", "B", "C", "all"] as const).map((who) => total(HAPPENED, who, (step) => step.actual))).toEqual([925, 670, 615, 2210]);
		expect(shown(actualCost(HAPPENED))).toBe("1,337.00");
		const charged = personSteps(HAPPENED).map(({ who, step }) => costOfMinutes(step.actual, rateOf(who).chargePerHour));
		expect(shown(sumMinor(charged))).toBe("2,447.50");
	});

	it("at the checkpoint 915 minutes were spent for 820 expected, and labour is heading for 1,214.34 instead of 1,152.36", () => {
		expect((["A", "B", "C", "all"] as const).map((who) => total(done, who, (step) => step.actual))).toEqual([425, 245, 245, 915]);
		expect(expectedOf(done, "all")).toBe("820");
		const toCome = PLANNED.filter(({ id }) => id > "S22");
		expect(toCome).toHaveLength(19);
		expect((["A", "B", "C", "all"] as const).map((who) => expectedOf(toCome, who))).toEqual(["378 1/3", "384 1/6", "327 1/2", "1090"]);

		const summary = costSummary([
			{ what: "labour", estimated: expectedCost(PLANNED), spent: actualCost(done), toCome: expectedCost(toCome) },
		]);
		expect([summary.total.estimated, summary.total.spent, summary.total.toCome, summary.total.atCompletion].map(shown)).toEqual([
			"1,152.36",
			"549.00",
			"665.34",
			"1,214.34",
		]);
	});

	it("the plan's labour spreads by 55.9 minutes, a step of two people counting with twice its spread", () => {
		expect(sigmaOfLabour(PLANNED.map((step) => ({ estimate: step, people: step.who.length }))).toFixed(1)).toBe("55.9");
	});

	it("actual over likely is 1.23 with the added steps and 1.16 without", () => {
		const likely = total(PLANNED, "all", (step) => step.likely);
		const planned = new Set(PLANNED.map(({ id }) => id));
		const ofPlan = HAPPENED.filter(({ id }) => planned.has(id));
		expect((total(HAPPENED, "all", (step) => step.actual) / likely).toFixed(2)).toBe("1.23");
		expect((total(ofPlan, "all", (step) => step.actual) / likely).toFixed(2)).toBe("1.16");
	});

	it("waits add up to 18,980 in the plan and 19,240 in all", () => {
		const waits = (steps: readonly StepRow[]) => steps.reduce((sum, { wait }) => sum + wait, 0);
		expect([waits(PLANNED), waits(HAPPENED)]).toEqual([18_980, 19_240]);
	});

	const CHAIN = "S01 S02 S03 S04 S05 S07 S08 S23 S24 S28 S29 S35 S36 S37 S39 S40".split(" ");

	it("precedence alone takes 16,940 minutes as planned, along one critical chain", () => {
		const activities = PLANNED.map(({ id, likely, wait, after }) => ({ id, minutes: likely, wait, after }));
		const path = accepted(longestPath(activities));
		expect(path.makespan).toBe(16_940);
		expect(path.chain).toEqual([...CHAIN, "S43"]);
		expect(criticalChains(path, activities, 10)).toHaveLength(1);
	});

	it("precedence alone takes 17,475 minutes as it happened", () => {
		const path = accepted(longestPath(HAPPENED.map(({ id, actual, wait, after }) => ({ id, minutes: actual, wait, after }))));
		expect(path.makespan).toBe(17_475);
		expect(path.chain).toEqual([...CHAIN, "S41", "S42", "S43"]);
	});
});

const LANDED: Readonly<Record<string, Landed>> = Object.fromEntries(
	Object.entries(ORDERS).map(([id, order]) => [id, accepted(landed(order))]),
);
const landedLines = Object.values(LANDED).flatMap(({ lines }) => lines);

function usedAndLeft(line: { readonly id: string; readonly landed: MinorUnits }): { used: MinorUnits; left: MinorUnits } {
	const { count, used } = PARTLY_USED[line.id] ?? { count: 1, used: 1 };
	const bought = { landed: line.landed, count };
	const charged = accepted(costOfUse(bought, [], used));
	return { used: charged, left: leftOfLine(bought, [{ count: used, charged }]).value };
}

describe("purchases of machine 12", () => {
	it.each([
		["o1", ["109.21", "59.45", "19.13"], "187.79"],
		["o2", ["39.84", "29.12", "5.23", "4.48"], "78.67"],
		["o3", ["16.20", "3.61", "6.58", "9.56", "11.36"], "47.31"],
		["o4", ["31.80", "46.68"], "78.48"],
		["o5", ["17.46", "13.82", "6.11"], "37.39"],
		["o6", ["14.16"], "14.16"],
	])("%s lands at %j, together the %s that was paid", (id, lines, paid) => {
		expect(LANDED[id]?.lines.map((line) => shown(line.landed))).toEqual(lines);
		expect(LANDED[id] && shown(LANDED[id].total.landed)).toBe(paid);
	});

	it("the parcel from abroad is converted line by line: 17.00, 24.95 and freight 15.25", () => {
		expect(LANDED.o4?.lines.map((line) => shown(line.net))).toEqual(["17.00", "24.95"]);
		expect(LANDED.o4 && shown(LANDED.o4.total.freight)).toBe("15.25");
	});

	it("tax is 21 per cent of goods less discount plus freight, and of the duty where there is one", () => {
		for (const { total: sums } of Object.values(LANDED)) {
			const base = minor(sums.net - sums.discount + sums.freight + sums.duty);
			expect(percentOf(base, decimal("21"))).toBe(sums.tax);
		}
	});

	it.each([
		["fuse links", "0.45"],
		["GNYE wire", "5.26"],
		["terminals", "2.68"],
		["tags", "7.04"],
		["inserts", "2.21"],
		["screws", "2.44"],
	])("what was used of the %s costs %s", (id, cost) => {
		const line = landedLines.find((candidate) => candidate.id === id);
		expect(line && shown(usedAndLeft(line).used)).toBe(cost);
	});

	it("443.80 was paid: 411.97 went into the machine and 31.83 to stock", () => {
		expect(shown(sumMinor(landedLines.map((line) => line.landed)))).toBe("443.80");
		expect(shown(sumMinor(landedLines.map((line) => usedAndLeft(line).used)))).toBe("411.97");
		expect(shown(sumMinor(landedLines.map((line) => usedAndLeft(line).left)))).toBe("31.83");
	});
});

describe("the books of machine 12", () => {
	const labour = actualCost(HAPPENED);
	const spentOnly = (what: string, spent: MinorUnits) => ({ what, estimated: minor(0), spent, toCome: minor(0) });
	const summary = costSummary([
		spentOnly("labour", labour),
		spentOnly("parts", sumMinor(landedLines.map((line) => usedAndLeft(line).used))),
		spentOnly("consumables", sumMinor(CONSUMABLES)),
		spentOnly("inspection", INSPECTION),
		spentOnly("disposal", DISPOSAL),
	]);

	it("restoration came to 1,911.79 = 1,337.00 + 411.97 + 20.82 + 120.00 + 22.00", () => {
		expect(summary.lines.map((line) => shown(line.atCompletion))).toEqual(["1,337.00", "411.97", "20.82", "120.00", "22.00"]);
		expect(shown(summary.total.atCompletion)).toBe("1,911.79");
	});

	it("it stands in the books for 2,616.79, and at 3,500.00 leaves 883.21: 23.98 an hour, 60.28 before own labour", () => {
		const books = inTheBooks({ bought: BOUGHT, carriage: CARRIAGE_HOME, spent: summary.total.spent });
		expect(shown(books)).toBe("2,616.79");
		const minutes = total(HAPPENED, "all", (step) => step.actual);
		const { margin, anHour, anHourBeforeLabour } = marginOf({ price: SOLD, books, labour, minutes });
		expect([margin, anHour, anHourBeforeLabour].map((amount) => amount !== null && shown(amount))).toEqual(["883.21", "23.98", "60.28"]);
	});
});
