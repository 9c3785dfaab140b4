// The acceptance scenario's labour, entered through the program's own doors: machine 12, SKERRY LIGHT.
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { addMinutes, instant } from "@/lib/core/instants";
import { formatAmount, sumMinor } from "@/lib/money/money";
import { formatSixths } from "@/lib/money/pert";
import { machineMoney } from "@/lib/money/queries";
import { addTime, finishStep, planSteps } from "@/lib/steps/changes";
import { totalsOf } from "@/lib/steps/progress";
import { workOfMachine } from "@/lib/steps/queries";
import { planStepsSchema } from "@/lib/steps/schema";
import { aMachine } from "@/tests/fittings/aMachine";
import { HAPPENED, PLANNED, RECEIVED, type StepRow, type Who } from "@/tests/money/machine12";
import { aCrew, done } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

const TODAY = day("2026-04-20");

describe("the work of machine 12", () => {
	let shop: FreshShop;
	let machineId: string;
	let crew: Readonly<Record<Who, string>>;
	const idOf = new Map<string, string>();

	const plan = async (rows: readonly StepRow[], addedWhy = "") => {
		const input = planStepsSchema.parse({
			machineId,
			steps: rows.map((row) => ({
				key: row.id,
				kind: "other",
				title: row.id,
				minutes: { low: row.low, likely: row.likely, high: row.high },
				wait: row.wait,
				addedWhy,
				needs: row.after.map((need) => idOf.get(need) ?? need),
				crew: row.who.map((who) => crew[who]),
			})),
		});
		for (const { key, id } of done(await planSteps(input, shop.env()))) idOf.set(key, id);
	};
	const stepId = (key: string) => {
		const id = idOf.get(key);
		if (id === undefined) throw new Error(`no step ${key}`);
		return id;
	};
	const work = async (rows: readonly StepRow[]) => {
		let at = instant("2026-03-02T08:00:00.000Z");
		for (const row of rows) {
			shop.setClock(addMinutes(at, row.actual));
			for (const who of row.who) {
				const piece = { stepId: stepId(row.id), personId: crew[who], minutes: row.actual, startedAt: at, note: "" };
				done(await addTime(piece, shop.env()));
			}
			at = addMinutes(at, row.actual);
			done(await finishStep({ stepId: stepId(row.id), words: "", at }, shop.env()));
		}
	};
	const money = async () => {
		const found = await machineMoney(shop.store.read, machineId, TODAY);
		if (!found) throw new Error("no machine");
		const { estimated, spent, toCome, atCompletion } = found.summary.total;
		return { estimated, spent, toCome, atCompletion, found };
	};
	const eur = (amount: Parameters<typeof formatAmount>[0]) => formatAmount(amount, "EUR");
	const totals = async () => totalsOf(await workOfMachine(shop.store.read, machineId, shop.now()));

	beforeEach(async () => {
		shop = await freshShop();
		idOf.clear();
		machineId = (await aMachine(shop, { k01: {} })).id;
		crew = await aCrew(shop);
		await plan(PLANNED);
	});
	afterEach(() => shop.close());

	it("the machine came in on the day whose rates the plan goes by", async () => {
		const machine = await shop.store.read.machine.findUniqueOrThrow({ where: { id: machineId } });
		expect(machine.receivedDay).toBe(RECEIVED);
	});

	it("the plan of 41 steps is 1,795 likely minutes, 1,910 expected, and costs 1,152.36", async () => {
		const { planLow, planLikely, planHigh, planExpected, toCome, actual } = await totals();
		expect([planLow, planLikely, planHigh, formatSixths(planExpected)]).toEqual([1185, 1795, 3095, "1910"]);
		expect([formatSixths(toCome), actual]).toEqual(["1910", 0]);
		const { estimated, spent } = await money();
		expect([eur(estimated), eur(spent)]).toEqual(["1,152.36", "0.00"]);
	});

	it("with S01 to S22 done, 549.00 is spent, 665.34 to come, and 1,214.34 at completion", async () => {
		await work(HAPPENED.filter(({ id }) => id <= "S22"));
		const { estimated, spent, toCome, atCompletion, found } = await money();
		expect([eur(estimated), eur(spent), eur(toCome), eur(atCompletion)]).toEqual(["1,152.36", "549.00", "665.34", "1,214.34"]);
		expect(found.minutes).toBe(915);
		const work22 = await totals();
		expect([work22.actual, formatSixths(work22.toCome)]).toEqual([915, "1090"]);
	});

	it("with all 43 done, 1,337.00 is spent over 2,210 minutes, and the plan is still 1,152.36", async () => {
		await plan(
			HAPPENED.filter(({ id }) => id === "S41" || id === "S42"),
			"the soak failed",
		);
		await work(HAPPENED);
		const { estimated, spent, toCome, found } = await money();
		expect([eur(estimated), eur(spent), eur(toCome)]).toEqual(["1,152.36", "1,337.00", "0.00"]);
		expect(found.minutes).toBe(2210);
		expect(found.labour.persons.map(({ name, spentMinutes }) => [name, spentMinutes])).toEqual([
			["Person A", 925],
			["Person B", 670],
			["Person C", 615],
		]);
		expect(eur(sumMinor(found.labour.persons.map(({ charged }) => charged)))).toBe("2,447.50");
		const all = await totals();
		expect([formatSixths(all.planExpected), formatSixths(all.allExpected), all.actual]).toEqual(["1910", "2035", 2210]);
	});
});
