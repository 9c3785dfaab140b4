import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { recordDecision } from "@/lib/decisions/changes";
import { decisionsOf } from "@/lib/decisions/queries";
import { recordDecisionFormSchema, recordDecisionSchema } from "@/lib/decisions/schema";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { done } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

const schema = recordDecisionSchema("EUR");
const drill = { words: "cross-drill the original shaft", cost: "0", minutes: "30", loses: "it comes back altered", state: "refused" };
const make = { words: "new shaft, the original into its tube", cost: "14.16", minutes: "1 h 35", loses: "", state: "chosen" };

describe("decisions", () => {
	let shop: FreshShop;
	let machine: AMachine;
	const question = "The clamp slips: drill the original, or make a new shaft?";
	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, { k21: {} });
	});
	afterEach(() => shop.close());

	it("options stand side by side in the order typed, with cost, time and what reversal would lose", async () => {
		done(await recordDecision(schema.parse({ machineId: machine.id, question, options: [drill, make] }), shop.env()));
		const [decision] = await decisionsOf(shop.store.read, machine.id);
		expect(decision?.options.map(({ words, costMinor, minutes, loses, state }) => [words, costMinor, minutes, loses, state])).toEqual([
			["cross-drill the original shaft", 0, 30, "it comes back altered", "refused"],
			["new shaft, the original into its tube", 1416, 95, "", "chosen"],
		]);
	});

	it("what was refused stands in the history, and no price and no name does", async () => {
		const input = schema.parse({ machineId: machine.id, question, options: [drill, make], agreedBy: "Mevrouw Example" });
		done(await recordDecision(input, shop.env()));
		const { open, seal } = await shop.store.read.entry.findFirstOrThrow({ where: { action: "decision.recorded" } });
		expect(open).toContain("Refused: cross-drill the original shaft.");
		expect(open).not.toContain("1416");
		expect(open).not.toContain("Mevrouw Example");
		expect(seal).not.toBeNull();
	});

	it("one option alone is no decision, and two cannot both be chosen", () => {
		const wrong = (options: object[]) =>
			recordDecisionFormSchema("EUR")
				.safeParse({ machineId: machine.id, question, options })
				.error?.issues.map(({ path }) => path.join("."));
		expect(wrong([drill])).toEqual(["options"]);
		expect(wrong([make, make])).toEqual(["options"]);
		expect(wrong([drill, { ...make, cost: "a lot" }])).toEqual(["options.1.cost"]);
		expect(wrong([drill, make])).toBeUndefined();
	});

	it("a cost that nobody knows is not nought", async () => {
		done(
			await recordDecision(
				schema.parse({ machineId: machine.id, question, options: [{ ...drill, cost: "", minutes: "" }, make] }),
				shop.env(),
			),
		);
		const [decision] = await decisionsOf(shop.store.read, machine.id);
		expect(decision?.options[0]).toMatchObject({ costMinor: null, minutes: null });
	});
});
