import { afterEach, beforeEach, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { addCost } from "@/lib/money/changes";
import { machineMoney } from "@/lib/money/queries";
import { addCostSchema } from "@/lib/money/schema";
import { addTime, planStep } from "@/lib/steps/changes";
import { addTimeSchema, planStepSchema } from "@/lib/steps/schema";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { done } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
let machine: AMachine;
beforeEach(async () => {
	shop = await freshShop();
	shop.setClock("2026-03-20T08:00:00.000Z");
	machine = await aMachine(shop, { k01: {} });
});
afterEach(() => shop.close());

it("a machine with more lines than a page adds up says of which kind; the first are added up, and none is passed over in silence", async () => {
	const { id: stepId } = done(await planStep(planStepSchema.parse({ machineId: machine.id, kind: "repair", title: "sand" }), shop.env()));
	for (const [startedAt, minutes] of [
		["2026-03-04T09:00:00.000Z", 30],
		["2026-03-02T09:00:00.000Z", 10],
		["2026-03-03T09:00:00.000Z", 20],
	] as const)
		done(await addTime(addTimeSchema.parse({ stepId, personId: shop.person, minutes, startedAt }), shop.env()));
	for (const spent of ["1", "2"])
		done(
			await addCost(
				addCostSchema("EUR").parse({
					machineId: machine.id,
					kind: "consumable",
					state: "spent",
					words: "filler",
					day: "2026-03-04",
					spent,
				}),
				shop.env(),
			),
		);
	const money = (most?: number) => machineMoney(shop.store.read, machine.id, day("2026-03-20"), most);
	expect(await money(2)).toMatchObject({ leftOut: ["pieces of time"], minutes: 30 });
	expect((await money(1))?.leftOut).toEqual(["pieces of time", "other costs"]);
	expect(await money()).toMatchObject({ leftOut: [], minutes: 60 });
});
