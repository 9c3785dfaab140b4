import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { minor } from "@/lib/money/money";
import { machineMoney } from "@/lib/money/queries";
import { drawFromLine } from "@/lib/purchases/changes";
import { drawFromLineSchema } from "@/lib/purchases/schema";
import { planStep } from "@/lib/steps/changes";
import { planStepSchema } from "@/lib/steps/schema";
import { bought, changeWanted, dropWanted, want, wantAgain } from "@/lib/wanted/changes";
import { droppedWords, estimatedForParts, partsToCome, sharesOf, type WantedPart, wordsAgain } from "@/lib/wanted/rules";
import { changeWantedSchema, wantSchema } from "@/lib/wanted/schema";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { aPurchase, HERE } from "@/tests/purchases/aPurchase";
import { done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("what will have to be bought for a machine", () => {
	let shop: FreshShop;
	let machine: AMachine;
	beforeEach(async () => {
		shop = await freshShop();
		shop.setClock("2026-03-20T08:00:00.000Z");
		machine = await aMachine(shop, { k01: {} });
	});
	afterEach(() => shop.close());

	const wish = async (words: string, estimated: string, more: object = {}) =>
		done(await want(wantSchema("EUR").parse({ machineId: machine.id, words, estimated, ...more }), shop.env()));
	/** Estimated, spent, still to come, at completion. */
	const parts = async () => {
		const money = await machineMoney(shop.store.read, machine.id, day("2026-03-20"));
		const row = money?.summary.lines.find(({ what }) => what === "Parts and materials");
		return row && [row.estimated, row.spent, row.toCome, row.atCompletion];
	};
	const rowOf = (id: string) => shop.store.read.wanted.findUniqueOrThrow({ where: { id } });
	const use = async (lineId: string, count: string) =>
		done(await drawFromLine(drawFromLineSchema.parse({ lineId, machineId: machine.id, count }), shop.env()));

	it("is estimated when the first plan has it, and to come when it was found later, too", async () => {
		await wish("motor", "105");
		await wish("shaft rod", "15", { addedWhy: "the shaft is worn" });
		expect(await parts()).toEqual([10_500, 0, 12_000, 12_000]);
	});

	it("bought and not used yet is still to come at what it cost; used, it is spent", async () => {
		const motor = await wish("motor", "105");
		const { lineIds } = await aPurchase(shop, [{ what: "motor", count: "1", net: "109.21" }], HERE);
		done(await bought({ wantedId: motor, lineId: lineIds[0] ?? "" }, shop.env()));
		expect(await parts()).toEqual([10_500, 0, 10_921, 10_921]);
		await use(lineIds[0] ?? "", "1");
		expect(await parts()).toEqual([10_500, 10_921, 0, 10_921]);
	});

	it("of a line of many the machine takes no more than was thought, until it took some", async () => {
		const inserts = await wish("4 inserts", "2.50");
		const { lineIds } = await aPurchase(shop, [{ what: "inserts", count: "25", net: "13.82" }], HERE);
		done(await bought({ wantedId: inserts, lineId: lineIds[0] ?? "" }, shop.env()));
		expect(await parts()).toEqual([250, 0, 250, 250]);
		await use(lineIds[0] ?? "", "4");
		expect(await parts()).toEqual([250, 221, 0, 221]);
	});

	it("that shares a line is still to come for its share: two on a line of two, one used, leaves what one cost", async () => {
		const [left, right] = [await wish("lamp, left", "9"), await wish("lamp, right", "9")];
		const { lineIds } = await aPurchase(shop, [{ what: "lamp", count: "2", net: "20.01" }], HERE);
		const lineId = lineIds[0] ?? "";
		for (const wantedId of [left, right]) done(await bought({ wantedId, lineId }, shop.env()));
		expect(await parts()).toEqual([1800, 0, 2001, 2001]);
		await use(lineId, "1");
		// Half of 20.01 is 10.005: the first piece is charged 10.01, and 10.00 is left.
		expect(await parts()).toEqual([1800, 1001, 1000, 2001]);
		await use(lineId, "1");
		expect(await parts()).toEqual([1800, 2001, 0, 2001]);
	});

	it("is not bought with a line whose pieces are spoken for, be it by another machine", async () => {
		const other = await aMachine(shop, { k01: {} }, 13);
		const elsewhere = done(await want(wantSchema("EUR").parse({ machineId: other.id, words: "belt", estimated: "10" }), shop.env()));
		const here = await wish("belt", "10");
		const { lineIds } = await aPurchase(shop, [{ what: "belt", count: "1", net: "10" }], HERE);
		const lineId = lineIds[0] ?? "";
		done(await bought({ wantedId: elsewhere, lineId }, shop.env()));
		expect(refused(await bought({ wantedId: here, lineId }, shop.env()))).toMatchObject({
			code: "line-spoken-for",
			fields: { lineId: expect.stringMatching(/Choose another line/) },
		});
		done(await wantAgain({ wantedId: elsewhere }, shop.env()));
		done(await bought({ wantedId: here, lineId }, shop.env()));
		expect(await parts()).toEqual([1000, 0, 1000, 1000]);
	});

	it("dropped with its reason is estimated no more, and wanted again it is as before", async () => {
		const belt = await wish("belt", "20");
		done(await dropWanted({ wantedId: belt, why: "the old one will do" }, shop.env()));
		expect(await rowOf(belt)).toMatchObject({ state: "dropped", words: "belt (dropped: the old one will do)" });
		expect(await parts()).toEqual([0, 0, 0, 0]);
		done(await wantAgain({ wantedId: belt }, shop.env()));
		expect(await rowOf(belt)).toMatchObject({ state: "open", words: "belt" });
		expect(await parts()).toEqual([2000, 0, 2000, 2000]);
	});

	it("is bought once, dropped only while it is open, and wanted again only when it is not", async () => {
		const belt = await wish("belt", "20");
		const { lineIds } = await aPurchase(shop, [{ what: "belt", count: "1", net: "18" }]);
		const lineId = lineIds[0] ?? "";
		expect(refused(await wantAgain({ wantedId: belt }, shop.env())).code).toBe("wanted-open");
		expect(refused(await bought({ wantedId: belt, lineId: shop.newId() }, shop.env())).fields).toEqual({
			lineId: "That line is not in the book. Choose again.",
		});
		done(await bought({ wantedId: belt, lineId }, shop.env()));
		expect(refused(await bought({ wantedId: belt, lineId }, shop.env())).code).toBe("wanted-bought");
		expect(refused(await dropWanted({ wantedId: belt, why: "no" }, shop.env())).code).toBe("wanted-bought");
		done(await wantAgain({ wantedId: belt }, shop.env()));
		expect(await rowOf(belt)).toMatchObject({ state: "open", lineId: null });
	});

	it("is for a step of its own machine", async () => {
		const other = await aMachine(shop, { k01: {} }, 13);
		const elsewhere = done(await planStep(planStepSchema.parse({ machineId: other.id, kind: "repair", title: "mend" }), shop.env()));
		const here = done(await planStep(planStepSchema.parse({ machineId: machine.id, kind: "repair", title: "mend" }), shop.env()));
		const stray = wantSchema("EUR").parse({ machineId: machine.id, words: "belt", estimated: "20", stepId: elsewhere.id });
		expect(Object.keys(refused(await want(stray, shop.env())).fields ?? {})).toEqual(["stepId"]);
		const id = await wish("belt", "20", { stepId: here.id });
		done(
			await changeWanted(
				changeWantedSchema("EUR").parse({ wantedId: id, words: "flat belt", estimated: "22.50", stepId: here.id }),
				shop.env(),
			),
		);
		expect(await rowOf(id)).toMatchObject({ words: "flat belt", estimatedMinor: 2250, stepId: here.id });
	});

	it("needs an estimate: nothing typed is not nothing", () => {
		const read = wantSchema("EUR").safeParse({ machineId: "m", words: "belt", estimated: " " });
		expect(read.success ? [] : read.error.issues.map(({ path }) => path.join("."))).toEqual(["estimated"]);
	});
});

describe("what is left of a line", () => {
	const wanted = (id: string, estimated: number, machineId = "12") => ({ id, machineId, estimated: minor(estimated) });

	it("in an older book, where two things were bought with one piece, is shared and not counted twice", () => {
		const shares = sharesOf({ count: 1, left: minor(1000), wanted: [wanted("a", 900), wanted("b", 900)], takings: [] });
		expect([...shares]).toEqual([
			["a", 500],
			["b", 500],
		]);
	});

	it("of many serves one thing with each taking, and what another machine takes serves none", () => {
		const line = { count: 25, left: minor(900), wanted: [wanted("4 inserts", 200), wanted("6 inserts", 300)] };
		const left = (...takings: { machineId: string; count: number }[]) => [...sharesOf({ ...line, takings }).values()];
		expect(left()).toEqual([200, 300]);
		expect(left({ machineId: "12", count: 4 })).toEqual([300]);
		expect(left({ machineId: "13", count: 9 })).toEqual([200, 300]);
	});

	it("is never shared out to more than there is, and where there is a piece for each it is shared out whole", () => {
		const thing = fc.record({ machineId: fc.constantFrom("12", "13"), estimated: fc.nat(5000) });
		const taking = fc.record({ machineId: fc.constantFrom("12", "13", "14"), count: fc.integer({ min: 1, max: 4 }) });
		fc.assert(
			fc.property(
				fc.integer({ min: 1, max: 12 }),
				fc.nat(9000),
				fc.array(thing, { minLength: 1, maxLength: 8 }),
				fc.array(taking, { maxLength: 4 }),
				(count, cents, things, takings) => {
					const shares = sharesOf({
						count,
						left: minor(cents),
						wanted: things.map(({ machineId, estimated }, at) => wanted(String(at), estimated, machineId)),
						takings,
					});
					let sum = 0;
					for (const share of shares.values()) sum += share;
					expect(sum).toBeLessThanOrEqual(cents);
					for (const share of shares.values()) expect(share).toBeGreaterThanOrEqual(0);
					if (count <= things.length && shares.size > 0) expect(sum).toBe(cents);
				},
			),
			{ seed: 53, numRuns: 400 },
		);
	});
});

describe("the list as it is counted", () => {
	const part = fc.record({
		state: fc.constantFrom<WantedPart["state"]>("open", "bought", "dropped"),
		estimated: fc.integer({ min: 0, max: 100_000 }).map(minor),
		firstPlan: fc.boolean(),
		share: fc.constant(minor(0)),
	});

	it("open and bought in one plan make its estimate, and only what is open is still to come, in whatever order", () => {
		fc.assert(
			fc.property(fc.array(part, { maxLength: 30 }), (parts) => {
				let [estimated, toCome] = [0, 0];
				for (const each of parts) {
					if (each.firstPlan && each.state !== "dropped") estimated += each.estimated;
					if (each.state === "open") toCome += each.estimated;
				}
				expect([estimatedForParts(parts), partsToCome(parts)]).toEqual([estimated, toCome]);
				expect([estimatedForParts([...parts].reverse()), partsToCome([...parts].reverse())]).toEqual([estimated, toCome]);
			}),
			{ seed: 51, numRuns: 200 },
		);
	});

	it("a reason given and taken away leaves the words as they were", () => {
		fc.assert(
			fc.property(
				fc.string({ minLength: 1 }),
				fc.string({ minLength: 1 }).filter((why) => !why.includes("(dropped: ")),
				(words, why) => {
					expect(wordsAgain(droppedWords(words, why))).toBe(words);
				},
			),
			{ seed: 52, numRuns: 200 },
		);
	});
});
