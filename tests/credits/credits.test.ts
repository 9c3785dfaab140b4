import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { giveCredit, voidCredit } from "@/lib/credits/changes";
import { type Credited, mayCredit, type Returned, sentBack, sumOfSentBack } from "@/lib/credits/rules";
import { creditSchema } from "@/lib/credits/schema";
import { verifyLedger } from "@/lib/ledger/verify";
import { costOfUse, type LineUse, leftOfLine } from "@/lib/money/lineUse";
import { minor } from "@/lib/money/money";
import { machineMoney } from "@/lib/money/queries";
import { drawFromLine, returnLine, voidUse } from "@/lib/purchases/changes";
import { drawFromLineSchema, returnLineSchema } from "@/lib/purchases/schema";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { aPurchase, HERE } from "@/tests/purchases/aPurchase";
import { done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

const back = (id: string, cost: number): Returned => ({ id, cost: minor(cost) });
const credit = (useId: string | null, amount: number): Credited => ({ useId, amount: minor(amount) });

describe("what was sent back", () => {
	it("is out of the account until the seller answers, and at completion back again", () => {
		expect(sumOfSentBack([back("a", 1200)], [])).toEqual({ spent: 1200, toCome: -1200 });
	});

	it("less than it cost leaves the difference with the shop: of 12.00 sent back 9.50 is credited, 2.50 stays", () => {
		expect(sentBack(back("a", 1200), [credit("a", 950)])).toMatchObject({ credited: 950, awaited: 0, kept: 250 });
		expect(sumOfSentBack([back("a", 1200)], [credit("a", 950)])).toEqual({ spent: 250, toCome: 0 });
	});

	it("for which nothing is given stays a cost whole, and is awaited no more", () => {
		expect(sumOfSentBack([back("a", 1200)], [credit("a", 0)])).toEqual({ spent: 1200, toCome: 0 });
	});

	const cost = fc.integer({ min: 0, max: 100_000 });
	const story = fc.array(fc.record({ cost, credits: fc.array(fc.integer({ min: 0, max: 50_000 }), { maxLength: 3 }) }), { maxLength: 12 });
	const told = (stories: readonly { cost: number; credits: readonly number[] }[]) => ({
		returns: stories.map((each, index) => back(String(index), each.cost)),
		credits: stories.flatMap((each, index) => each.credits.map((amount) => credit(String(index), amount))),
	});

	it("comes to the same in whatever order it is entered", () => {
		fc.assert(
			fc.property(story, fc.infiniteStream(fc.nat()), (stories, keys) => {
				const { returns, credits } = told(stories);
				const shuffled = <T>(list: readonly T[]) =>
					list
						.map((each) => ({ each, key: keys.next().value }))
						.sort((a, b) => a.key - b.key)
						.map(({ each }) => each);
				expect(sumOfSentBack(shuffled(returns), shuffled(credits))).toEqual(sumOfSentBack(returns, credits));
			}),
			{ seed: 41, numRuns: 300 },
		);
	});

	it("loses nothing: what it cost is what was credited, what is awaited, and what stays", () => {
		fc.assert(
			fc.property(story, (stories) => {
				const { returns, credits } = told(stories);
				const { spent, toCome } = sumOfSentBack(returns, credits);
				// By hand, return by return, with plain numbers.
				let [out, awaited] = [0, 0];
				for (const { cost: paid, credits: given } of stories) {
					out += paid - given.reduce((sum, amount) => sum + amount, 0);
					if (given.length === 0) awaited += paid;
				}
				expect([spent, toCome]).toEqual([out, 0 - awaited]);
			}),
			{ seed: 42, numRuns: 300 },
		);
	});

	it("in two parcels or in one, credited in two notes or in one, comes to the same", () => {
		fc.assert(
			fc.property(cost, cost, cost, cost, (a, b, x, y) => {
				const apart = sumOfSentBack([back("1", a), back("2", b)], [credit("1", x), credit("2", y)]);
				expect(sumOfSentBack([back("1", a + b)], [credit("1", x), credit("1", y)])).toEqual(apart);
				expect(sumOfSentBack([back("1", a + b)], [credit("1", x + y)])).toEqual(apart);
				expect(sumOfSentBack([back("1", a), back("2", b)], []).toCome).toBe(sumOfSentBack([back("1", a + b)], []).toCome);
			}),
			{ seed: 43, numRuns: 200 },
		);
	});

	it("is never credited with more than it cost, nor a purchase with more than was paid", () => {
		const returned = back("a", 1000);
		const may = (amount: number, given: readonly Credited[], of: Returned | null = returned) =>
			mayCredit(minor(amount), { returned: of, given, paid: minor(5000) }, "EUR");
		expect(may(1000, []).ok).toBe(true);
		expect(may(400, [credit("a", 600)]).ok).toBe(true);
		expect(refused(may(401, [credit("a", 600)])).fields?.amount).toBe(
			"What was sent back cost 10.00 EUR, and 6.00 EUR of it is credited already: write 4.00 EUR at most. Enter what the seller gave beyond that as off the price.",
		);
		expect(may(4400, [credit("a", 600)], null).ok).toBe(true);
		expect(refused(may(4401, [credit("a", 600)], null)).code).toBe("credit-over-paid");
		expect(refused(may(0, [], null)).code).toBe("credit-of-nothing");
		// All that was paid was taken off the price: nothing of it is left to be given for a return.
		expect(refused(may(1, [credit(null, 5000)]))).toMatchObject({ code: "credit-over-paid", facts: { most: 0 } });
		expect(may(0, [credit(null, 5000)]).ok).toBe(true);
	});

	it("is never given more for, all together, than the purchase cost, whatever is asked in whatever order", () => {
		const asked = fc.record({ useId: fc.constantFrom("a", "b", null), amount: fc.integer({ min: 0, max: 4000 }) });
		fc.assert(
			fc.property(fc.array(asked, { maxLength: 30 }), (all) => {
				const given: Credited[] = [];
				for (const { useId, amount } of all) {
					const of = useId === null ? null : back(useId, 2000);
					if (mayCredit(minor(amount), { returned: of, given, paid: minor(5000) }, "EUR").ok) given.push(credit(useId, amount));
				}
				expect(given.reduce((sum, { amount }) => sum + amount, 0)).toBeLessThanOrEqual(5000);
			}),
			{ seed: 45, numRuns: 300 },
		);
	});
});

describe("a line that is used on several machines, and partly sent back", () => {
	const doing = fc.record({
		kind: fc.constantFrom("used", "returned", "struck"),
		machine: fc.constantFrom("12", "13", "14"),
		count: fc.integer({ min: 1, max: 7 }),
	});

	it("is always used, sent back and in stock for its landed cost, to the last unit", () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 0, max: 5000 }),
				fc.integer({ min: 1, max: 40 }),
				fc.array(doing, { maxLength: 40 }),
				(cents, count, doings) => {
					const line = { landed: minor(cents), count };
					let standing: (LineUse & { kind: string; machine: string })[] = [];
					for (const { kind, machine, count: wanted } of doings) {
						if (kind === "struck") {
							standing = standing.filter((_, index) => index !== wanted);
							continue;
						}
						const taking = Math.min(wanted, leftOfLine(line, standing).count);
						if (taking === 0) continue;
						const charged = costOfUse(line, standing, taking);
						if (!charged.ok) throw new Error(charged.error.say);
						standing.push({ kind, machine, count: taking, charged: charged.value });
					}
					const sumOf = (of: (use: (typeof standing)[number]) => boolean) => standing.filter(of).reduce((sum, use) => sum + use.charged, 0);
					const machines = ["12", "13", "14"].map((machine) => sumOf((use) => use.machine === machine && use.kind === "used"));
					const stock = leftOfLine(line, standing);
					expect(machines.reduce((sum, each) => sum + each, 0) + sumOf((use) => use.kind === "returned") + stock.value).toBe(cents);
					expect(standing.reduce((sum, use) => sum + use.count, 0) + stock.count).toBe(count);
				},
			),
			{ seed: 44, numRuns: 400 },
		);
	});
});

describe("the costs of a machine", () => {
	let shop: FreshShop;
	let machine: AMachine;
	beforeEach(async () => {
		shop = await freshShop();
		shop.setClock("2026-03-20T08:00:00.000Z");
		machine = await aMachine(shop, { k01: {} });
	});
	afterEach(() => shop.close());

	/** 10 clips that landed at 30.00: 20.00 of goods, 5.00 of freight, 5.00 of tax. */
	const clips = () => aPurchase(shop, [{ what: "clips", count: "10", net: "20" }], { ...HERE, freight: "5", tax: "5" });
	const use = async (lineId: string | undefined, count: string) =>
		done(await drawFromLine(drawFromLineSchema.parse({ lineId, machineId: machine.id, count }), shop.env()));
	const sendBack = async (lineId: string | undefined, count: string) =>
		done(await returnLine(returnLineSchema.parse({ lineId, machineId: machine.id, count, words: "too wide" }), shop.env()));
	const give = (said: object) => giveCredit(creditSchema("EUR").parse({ day: "2026-03-20", words: "their note", ...said }), shop.env());
	const rows = async () => {
		const money = await machineMoney(shop.store.read, machine.id, day("2026-03-20"));
		return Object.fromEntries((money?.summary.lines ?? []).map((line) => [line.what, [line.spent, line.toCome, line.atCompletion]]));
	};
	const SENT_BACK = "Sent back, less what was credited";

	it("hold what was sent back until it is credited, and keep the freight and the restocking that the seller did not give back", async () => {
		const { id, lineIds } = await clips();
		await use(lineIds[0], "4");
		const { useId, amountMinor } = await sendBack(lineIds[0], "6");
		expect(amountMinor).toBe(1800);
		expect(await rows()).toMatchObject({ "Parts and materials": [1200, 0, 1200], [SENT_BACK]: [1800, -1800, 0] });
		const creditId = done(await give({ purchaseId: id, useId, amount: "12" }));
		expect((await rows())[SENT_BACK]).toEqual([600, 0, 600]);
		expect((await shop.store.read.credit.findUniqueOrThrow({ where: { id: creditId } })).machineId).toBe(machine.id);
		done(await voidCredit({ creditId, why: "another order's note" }, shop.env()));
		expect((await rows())[SENT_BACK]).toEqual([1800, -1800, 0]);
		expect(refused(await voidCredit({ creditId, why: "again" }, shop.env())).code).toBe("credit-void");
	});

	it("fall by what a seller takes off the price, and a credit of the shop's touches no machine", async () => {
		const { id, lineIds } = await clips();
		await use(lineIds[0], "10");
		done(await give({ purchaseId: id, machineId: machine.id, amount: "2.50" }));
		done(await give({ purchaseId: id, amount: "1" }));
		expect(await rows()).toMatchObject({ "Parts and materials": [3000, 0, 3000], "Taken off the price by sellers": [-250, 0, -250] });
		expect(refused(await give({ purchaseId: id, amount: "26.51" })).code).toBe("credit-over-paid");
	});

	it("know nothing of a return taken back, which stands as long as the seller has answered for it", async () => {
		const { id, lineIds } = await clips();
		const { useId } = await sendBack(lineIds[0], "1");
		const creditId = done(await give({ purchaseId: id, useId, amount: "0" }));
		expect(refused(await voidUse({ useId, why: "a slip" }, shop.env())).code).toBe("return-credited");
		done(await voidCredit({ creditId, why: "a slip" }, shop.env()));
		done(await voidUse({ useId, why: "a slip" }, shop.env()));
		expect((await rows())[SENT_BACK]).toBeUndefined();
		expect(refused(await give({ purchaseId: id, useId, amount: "1" })).fields).toEqual({
			useId: "Nothing of that stands as sent back. Choose again.",
		});
	});

	it("are told no price and no name in the ledger's sentences", async () => {
		const { id, lineIds } = await clips();
		const { useId } = await sendBack(lineIds[0], "6");
		done(await give({ purchaseId: id, useId, amount: "12.34", words: "Joukje keeps 5.66 for restocking" }));
		const offPrice = done(await give({ purchaseId: id, amount: "1", words: "Joukje was late" }));
		done(await voidCredit({ creditId: offPrice, why: "Joukje's other note" }, shop.env()));
		const entries = await shop.store.read.entry.findMany({
			where: { action: { in: ["credit.given", "credit.voided", "line.returned"] } },
			select: { open: true },
		});
		expect(entries).toHaveLength(4);
		for (const { open } of entries) expect(open).not.toMatch(/12[.]?34|1800|A dealer|Joukje|5[.]66/);
		expect((await verifyLedger(shop.folder)).flaws).toEqual([]);
	});

	it("know no credit of a day that is still to come", async () => {
		const { id } = await clips();
		expect(Object.keys(refused(await give({ purchaseId: id, amount: "1", day: "2026-03-21" })).fields ?? {})).toEqual(["day"]);
	});

	it("an amount that is not there or cannot be read is asked for at its field", () => {
		const typed = (amount: string) => {
			const read = creditSchema("EUR").safeParse({ purchaseId: "p", day: "2026-03-20", words: "note", amount });
			return read.success ? "read" : read.error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`).join();
		};
		expect(typed("  ")).toBe("amount: Write what the seller gave; 0 if nothing is given for what was sent back.");
		expect(typed("twelve")).toContain("amount: Write the amount in figures");
		expect(typed("1,234")).toContain("can be read in two ways");
		expect(typed("0")).toBe("read");
	});
});
