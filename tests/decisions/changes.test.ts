import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { ok } from "@/lib/core/result";
import { recordDecision } from "@/lib/decisions/changes";
import { decisionsOf } from "@/lib/decisions/queries";
import { recordDecisionFormSchema, recordDecisionSchema } from "@/lib/decisions/schema";
import { takeOut } from "@/lib/fittings/changes";
import { record } from "@/lib/ledger/record";
import { add, type Draft, deed, type RowChange } from "@/lib/ledger/rows";
import { verifyLedger } from "@/lib/ledger/verify";
import { stampAsFound } from "@/lib/machines/changes";
import { scrapPart } from "@/lib/parts/changes";
import { aMachine, aPosition, got, refused } from "@/tests/machines/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

const schema = recordDecisionSchema("EUR");
const drill = { words: "cross-drill the original shaft", cost: "0", minutes: "30", loses: "its polish", state: "refused" };
const make = { words: "new shaft, the original into its tube", cost: "14.16", minutes: "1 h 35", does: "nothing", state: "chosen" };
const question = "The clamp slips: drill the original, or make a new shaft?";

describe("decisions", () => {
	let shop: FreshShop;
	let machine: Awaited<ReturnType<typeof aMachine>>;
	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, [aPosition("shaft", { mark: "k21" }), aPosition("motor", { mark: "k25" })]);
	});
	afterEach(() => shop.close());

	const decide = (options: readonly object[]) =>
		recordDecision(schema.parse({ machineId: machine.id, question, options, agreedBy: "Mevrouw Example" }), shop.env());
	const options = async () => (await decisionsOf(shop.store.read, machine.id))[0]?.options ?? [];
	const stamp = async () => got(await stampAsFound({ machineId: machine.id }, shop.env()));

	it("options stand side by side in the order typed, with cost, time and what reversal would lose", async () => {
		got(await decide([drill, make]));
		expect((await options()).map(({ words, costMinor, minutes, loses, state }) => [words, costMinor, minutes, loses, state])).toEqual([
			["cross-drill the original shaft", 0, 30, "its polish", "refused"],
			["new shaft, the original into its tube", 1416, 95, "", "chosen"],
		]);
	});

	it("what reversal would lose by each is worked out and kept, in words and in counts", async () => {
		await stamp();
		got(
			await decide([
				{ ...drill, does: "alter", thing: `part:${machine.part("k21")}`, undo: "never" },
				{ ...drill, does: "parting", thing: `part:${machine.part("k25")}` },
				{ ...drill, does: "alter", thing: `position:${machine.position("k25")}`, undo: "trace" },
				make,
			]),
		);
		expect((await options()).map(({ foreseen, positionsLost, statesLost }) => [foreseen, positionsLost, statesLost])).toEqual([
			["1 position can come back, but altered, and that cannot be undone: k21 shaft. The count of originals at best stays 2.", 0, 1],
			["1 position can never be original again: k25 motor. At best 1 position holds its original then; now it is 2.", 1, 0],
			["Reversal loses nothing by it. What comes back shows a trace of it.", 0, 0],
			["Reversal loses nothing by it.", 0, 0],
		]);
	});

	it("what was worked out stays as it was, whatever becomes of the machine", async () => {
		await stamp();
		got(await decide([{ ...drill, does: "parting", thing: `part:${machine.part("k25")}` }, make]));
		const [before] = await options();
		got(await takeOut({ machineId: machine.id, positionId: machine.position("k25") }, shop.env()));
		got(await scrapPart({ partId: machine.part("k25"), why: "sold as a core after all" }, shop.env()));
		expect(before?.foreseen).toContain("k25 motor");
		expect((await options())[0]).toEqual(before);
	});

	it("while as found is open a part that goes is still named, and an alteration says that it could not be worked out", async () => {
		got(
			await decide([
				{ ...drill, does: "parting", thing: `part:${machine.part("k25")}` },
				{ ...drill, does: "alter", thing: `part:${machine.part("k21")}`, undo: "never" },
			]),
		);
		const [parting, alter] = await options();
		expect(parting).toMatchObject({ foreseen: "1 position can never be original again: k25 motor.", positionsLost: 1, statesLost: 0 });
		expect(alter).toMatchObject({ foreseen: expect.stringContaining("while as found is open"), positionsLost: null, statesLost: null });
	});

	it("something else is not worked out: the person's own words stand alone", async () => {
		await stamp();
		got(await decide([drill, make]));
		expect((await options())[0]).toMatchObject({ does: "other", foreseen: null, positionsLost: null, loses: "its polish" });
	});

	it("an option of a thing that is not of this machine is refused at its field, and nothing is written", async () => {
		const other = await aMachine(shop, [aPosition("lamp", { mark: "k01" })]);
		for (const thing of [`part:${other.part("k01")}`, `position:${other.position("k01")}`, "part:nothing-like-it"]) {
			const refusal = await decide([make, { ...drill, does: "alter", thing, undo: "never" }]);
			expect(refused(refusal)).toBe("not-of-machine");
			if (!refusal.ok) expect(Object.keys(refusal.error.fields ?? {})).toEqual(["options.1.thing"]);
		}
		expect(await options()).toEqual([]);
	});

	it("what was refused stands in the history, and no price and no name does", async () => {
		got(await decide([drill, make]));
		const { open, seal } = await shop.store.read.entry.findFirstOrThrow({ where: { action: "decision.recorded" } });
		expect(open).toContain("Refused: cross-drill the original shaft.");
		expect(open).not.toContain("1416");
		expect(open).not.toContain("Mevrouw Example");
		expect(seal).not.toBeNull();
	});

	it("one from before anybody was asked what an option does still verifies, and loses what it said", async () => {
		const decisionId = shop.newId();
		const words = { machineId: machine.id, stepId: null, question, at: shop.now(), agreedBy: null, words: "" };
		const option = { id: shop.newId(), decisionId, number: 1, words: "drill it", costMinor: 0, minutes: 30, loses: "", state: "refused" };
		const rows: RowChange[] = [
			add("Decision", { id: decisionId, ...words }),
			{ how: "add", table: "DecisionOption", id: option.id, image: option },
		];
		got(
			await record(shop.env(), async () =>
				ok(deed(machine.id, "decision.recorded", { table: "Decision", id: decisionId }, { say: "Decided." }, rows, null)),
			),
		);
		expect((await options())[0]).toMatchObject({ does: null, foreseen: null, positionsLost: null, loses: "" });
		expect((await verifyLedger(shop.folder)).flaws).toEqual([]);
	});

	it("the database itself refuses an option that makes no sense", async () => {
		const partId = machine.part("k21");
		const positionId = machine.position("k21");
		const wrong: readonly Partial<Draft<"DecisionOption">>[] = [
			{ costMinor: -1 },
			{ minutes: -1 },
			{ does: "alter", undo: "never" },
			{ does: "alter", undo: "never", partId, positionId },
			{ does: "alter", partId },
			{ does: "parting", positionId },
			{ does: "parting", partId, undo: "never" },
			{ does: "nothing", partId },
			{ does: null, partId },
			{ does: "nothing", foreseen: "nothing", positionsLost: 0 },
			{ does: "nothing", foreseen: "nothing", positionsLost: -1, statesLost: 0 },
			{ does: "nothing", positionsLost: 0, statesLost: 0 },
			{ does: null, foreseen: "nothing" },
		];
		for (const more of wrong) await expect(written(more), JSON.stringify(more)).rejects.toThrow(/CHECK constraint failed/);
		got(await written({ does: "alter", partId, undo: "trace", foreseen: "nothing", positionsLost: 0, statesLost: 0 }));
	});

	/** An option as a hand would write it, past the form and its rules. */
	const written = (more: Partial<Draft<"DecisionOption">>) => {
		const decisionId = shop.newId();
		const decision = { machineId: machine.id, stepId: null, question, at: shop.now(), agreedBy: null, words: "" };
		const option: Draft<"DecisionOption"> = {
			id: shop.newId(),
			decisionId,
			number: 1,
			words: "drill it",
			costMinor: 0,
			minutes: 30,
			loses: "",
			state: "open",
			does: null,
			positionId: null,
			partId: null,
			undo: null,
			foreseen: null,
			positionsLost: null,
			statesLost: null,
			...more,
		};
		const rows = [add("Decision", { id: decisionId, ...decision }), add("DecisionOption", option)];
		return record(shop.env(), async () =>
			ok(deed(machine.id, "decision.recorded", { table: "Decision", id: decisionId }, { say: "Decided." }, rows, null)),
		);
	};

	it("a cost that nobody knows is not nought", async () => {
		got(await decide([{ ...drill, cost: "", minutes: "" }, make]));
		expect((await options())[0]).toMatchObject({ costMinor: null, minutes: null });
	});
});

describe("a decision as it is typed", () => {
	const wrong = (options: readonly object[]) =>
		recordDecisionFormSchema("EUR")
			.safeParse({ machineId: "a-machine", question, options })
			.error?.issues.map(({ path, message }) => `${path.join(".")}: ${message}`);

	it("one option alone is none, and two cannot both be chosen", () => {
		expect(wrong([drill])).toEqual([expect.stringContaining("options: ")]);
		expect(wrong([make, make])).toEqual([expect.stringContaining("options: ")]);
		expect(wrong([drill, make])).toBeUndefined();
	});

	it.each([
		[{ cost: "a lot" }, "cost: Write the amount in figures, like 84.50."],
		[{ cost: "-5" }, "cost: The amount cannot be below zero: write it without the minus."],
		[{ cost: -5 }, "cost: The amount cannot be below zero: write it without the minus."],
		[{ cost: 1.5 }, "cost: Write the amount in figures, like 84.50."],
		[{ minutes: "-30" }, "minutes: A duration cannot be below zero. Write a duration like 35, 2:35, 2h35, 1.5 h or 3 days."],
		[{ minutes: -30 }, "minutes: A duration cannot be below zero. Write a duration like 35, 2:35, 2h35, 1.5 h or 3 days."],
		[{ does: "parting" }, "thing: Choose the part that goes."],
		[{ does: "parting", thing: "position:abc" }, "thing: Choose the part that goes."],
		[{ does: "alter", undo: "never" }, "thing: Choose what it would alter."],
		[{ does: "alter", thing: "part:a b", undo: "never" }, "thing: Choose what it would alter."],
		[{ does: "alter", thing: "part:abc" }, "undo: Say whether it could be undone."],
	])("says in words what is wrong with %j", (typed, message) => {
		expect(wrong([make, { ...drill, ...typed }])).toEqual([`options.1.${message}`]);
	});
});
