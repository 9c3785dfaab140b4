import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Result } from "@/lib/core/result";
import { addStock, correctStock, putAwayStock, sayNudge } from "@/lib/labels/changes";
import { asTyped, correctStockSchema, nudgeInWords, nudgeSchema, ownStockSchema, stockSoFar } from "@/lib/labels/ownStock";
import { FLAG_ROLL, misfitsOf, STOCKS } from "@/lib/labels/stock";
import { nudgeOf, ownStocks, stockById, stocksToUse } from "@/lib/labels/stockQueries";
import { verifyLedger } from "@/lib/ledger/verify";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";
import { good } from "./printed";

/** A sheet of 12 as measured with a rule. */
const TWELVE = {
	kind: "sheet",
	name: "Shipping 12",
	width: "63,5",
	height: "72",
	pageWidth: "210",
	pageHeight: "297",
	columns: "3",
	rows: "4",
	top: "4.5",
	left: "7.2",
	pitchX: "66.05",
	pitchY: "72",
} as const;
const fieldsOf = (said: Record<string, unknown>): string[] => {
	const read = ownStockSchema.safeParse(said);
	return read.success ? [] : read.error.issues.map(({ path }) => path.join("."));
};
const codeOf = (result: Result<unknown>): string => (result.ok ? "done" : result.error.code);

describe("stock of the shop's own, as typed", () => {
	it("is read in millimetres, with a comma or a point", () => {
		expect(ownStockSchema.parse(TWELVE)).toMatchObject({ kind: "sheet", width: 63.5, pitchX: 66.05, columns: 3, rows: 4 });
		expect(ownStockSchema.parse({ kind: "roll", name: "Small", width: "40", height: "30" })).toMatchObject({
			kind: "roll",
			width: 40,
			height: 30,
		});
		expect(ownStockSchema.parse({ kind: "continuous", name: "Long", width: "62", height: "25", longest: "120" })).toMatchObject({
			shortest: 25,
			longest: 120,
		});
	});

	it.each([
		["a figure that is none", { width: "wide" }, "width"],
		["no figure", { pitchY: "" }, "pitchY"],
		["half a column", { columns: "2.5" }, "columns"],
		["a column too many for its page", { columns: "4" }, "columns"],
		["labels that overlap", { pitchX: "60" }, "pitchX"],
		["a label that holds no code", { width: "30" }, "width"],
		["no name", { name: " " }, "name"],
	])("is refused with %s, at that field", (_, change, field) => {
		expect(fieldsOf({ ...TWELVE, ...change })).toContain(field);
	});

	it("leaves aside what its kind has no use for", () => {
		expect(fieldsOf({ ...TWELVE, kind: "roll", columns: "many", pitchX: "x" })).toEqual([]);
	});

	it("is the same when it is typed again as a form shows it, to the thousandth of a millimetre", () => {
		const mm = (least: number, most: number) => fc.integer({ min: least * 1000, max: most * 1000 }).map((value) => value / 1000);
		const sheets = fc
			.record({
				kind: fc.constant("sheet" as const),
				id: fc.constant("own"),
				name: fc.constant("Own"),
				width: mm(38, 70),
				height: mm(21, 60),
				top: mm(0, 10),
				left: mm(0, 10),
				pitchX: mm(70, 90),
				pitchY: mm(60, 90),
				columns: fc.integer({ min: 1, max: 3 }),
				rows: fc.integer({ min: 1, max: 4 }),
				pageWidth: mm(260, 300),
				pageHeight: mm(340, 400),
			})
			.filter((sheet) => misfitsOf(sheet).length === 0);
		fc.assert(
			fc.property(sheets, (sheet) => {
				expect(ownStockSchema.parse(asTyped(sheet))).toEqual(sheet);
			}),
			{ seed: 60757, numRuns: 60 },
		);
		for (const stock of STOCKS.filter(({ id }) => id !== "letter-30" && id !== "letter-10")) {
			expect({ ...ownStockSchema.parse(asTyped(stock)), id: stock.id }).toEqual(stock);
		}
	});

	it("is drawn while it is typed, fitting or not, and not while a figure is missing", () => {
		expect(stockSoFar({ ...TWELVE, name: "" })).toMatchObject({ columns: 3, width: 63.5 });
		expect(stockSoFar({ ...TWELVE, columns: "5" })).toMatchObject({ columns: 5 });
		expect(stockSoFar({ ...TWELVE, columns: "" })).toBeNull();
		expect(stockSoFar({ ...TWELVE, kind: "" })).toBeNull();
	});
});

describe("a nudge, as typed", () => {
	it.each([
		["0.4", 4],
		["-0,4", -4],
		["−1.2", -12],
		["+3", 30],
		["", 0],
		["10", 100],
	])("%j is that many tenths of a millimetre: %i", (typed, tenths) => {
		expect(nudgeSchema.parse({ stock: "a4-21", right: typed, down: "0" }).right).toBe(tenths);
	});
	it.each(["a little", "0.45", "10.1", "-11", "1 mm"])("%j is refused at its field", (typed) => {
		const read = nudgeSchema.safeParse({ stock: "a4-21", right: "0", down: typed });
		expect(read.error?.issues.map(({ path }) => path.join("."))).toEqual(["down"]);
	});
	it("is said as the way that prints go", () => {
		expect(nudgeInWords({ right: 4, down: -12 })).toBe("0.4 mm right, 1.2 mm up");
		expect(nudgeInWords({ right: 0, down: 0 })).toBe("as drawn");
	});
});

describe("the shop's stock", () => {
	let shop: FreshShop;
	beforeEach(async () => {
		shop = await freshShop();
	});
	afterEach(() => shop.close());
	const twelve = () => ownStockSchema.parse(TWELVE);
	const said = async () =>
		(await shop.store.read.entry.findMany({ orderBy: { seq: "asc" }, select: { open: true } })).map(
			({ open }) => (JSON.parse(String(open)) as { facts: { say: string } }).facts.say,
		);

	it("is offered before the common ones, corrected, put away and taken up again, each in an entry", async () => {
		const { stockId } = good(await addStock(twelve(), shop.env()));
		expect((await stocksToUse(shop.store.read))[0]).toEqual({ ...twelve(), id: stockId });
		good(await correctStock({ stockId, stock: { ...twelve(), name: "Parcels 12" } }, shop.env()));
		good(await putAwayStock({ stockId, stands: "no" }, shop.env()));
		expect(await stocksToUse(shop.store.read)).toEqual([...STOCKS]);
		expect(await stockById(shop.store.read, stockId)).toMatchObject({ stock: { name: "Parcels 12" }, own: { stands: "no" } });
		expect(codeOf(await putAwayStock({ stockId, stands: "no" }, shop.env()))).toBe("stands-so");
		good(await putAwayStock({ stockId, stands: "yes" }, shop.env()));
		expect((await ownStocks(shop.store.read)).map(({ stands }) => stands)).toEqual(["yes"]);
		expect((await said()).slice(1)).toEqual([
			"Label stock: Shipping 12, 12 of 63.5 x 72 mm on a sheet of 210 x 297.",
			"Corrected the label stock Parcels 12: 12 of 63.5 x 72 mm on a sheet of 210 x 297.",
			"Put the label stock Parcels 12 away.",
			"The label stock Parcels 12 is in use again.",
		]);
		expect(await verifyLedger(shop.folder)).toMatchObject({ flaws: [] });
	});

	it("has one stock of a name, so that a list can be read", async () => {
		const { stockId } = good(await addStock(twelve(), shop.env()));
		expect(await addStock({ ...twelve(), name: "shipping 12" }, shop.env())).toMatchObject({
			ok: false,
			error: { code: "name-taken", fields: { name: expect.any(String) } },
		});
		expect(codeOf(await addStock({ ...twelve(), name: STOCKS[0]?.name ?? "" }, shop.env()))).toBe("name-taken");
		expect(codeOf(await correctStock({ stockId, stock: twelve() }, shop.env()))).toBe("done");
	});

	it("keeps what somebody else corrected while a page was open, and asks at the field where both did", async () => {
		const { stockId } = good(await addStock(twelve(), shop.env()));
		const seen = (await shop.store.read.labelStock.findUniqueOrThrow({ where: { id: stockId } })).entry;
		good(await correctStock({ stockId, stock: { ...twelve(), name: "Renamed" } }, shop.env()));
		const page = { ...shop.env(), seen: { seen, told: null } };
		const moved = correctStockSchema.parse({ ...TWELVE, top: "5", stockId });
		good(await correctStock(moved, page));
		expect(await stockById(shop.store.read, stockId)).toMatchObject({ stock: { name: "Renamed", top: 5 } });
		const again = { ...shop.env(), seen: { seen, told: null } };
		expect(await correctStock(correctStockSchema.parse({ ...TWELVE, top: "6", stockId }), again)).toMatchObject({
			ok: false,
			error: { code: "changed-meanwhile", fields: { top: expect.any(String) } },
		});
	});

	it("is moved by its nudge from then on, each nudge in one entry, and only by another", async () => {
		const nudge = (right: string, down: string, stock = "a4-21") => sayNudge(nudgeSchema.parse({ stock, right, down }), shop.env());
		expect(await nudgeOf(shop.store.read, "a4-21")).toEqual({ nudgeX: 0, nudgeY: 0 });
		good(await nudge("0.4", "-0.2"));
		good(await nudge("0.5", "-0.2"));
		good(await nudge("1", "0", FLAG_ROLL.id));
		expect(await nudgeOf(shop.store.read, "a4-21")).toEqual({ nudgeX: 0.5, nudgeY: -0.2 });
		expect(await nudgeOf(shop.store.read, "roll-62x29")).toEqual({ nudgeX: 0, nudgeY: 0 });
		expect(codeOf(await nudge("0.5", "-0.2"))).toBe("nudged-so");
		expect(codeOf(await nudge("0.5", "0", "gone"))).toBe("no-such-stock");
		expect((await said()).slice(1)).toEqual([
			"Prints on A4 sheet, 21 of 63.5 x 38.1 mm go 0.4 mm right, 0.2 mm up.",
			"Prints on A4 sheet, 21 of 63.5 x 38.1 mm go 0.5 mm right, 0.2 mm up.",
			"Prints on Flag roll, 25 x 75 mm (wires) go 1 mm right.",
		]);
		expect(await verifyLedger(shop.folder)).toMatchObject({ flaws: [] });
	});
});
