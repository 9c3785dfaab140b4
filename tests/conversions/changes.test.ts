import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { recordAlteration } from "@/lib/alterations/changes";
import { recordAlterationSchema } from "@/lib/alterations/schema";
import { joinConversion, nameConversion } from "@/lib/conversions/changes";
import { conversionsOf, possibleMembers } from "@/lib/conversions/queries";
import { joinConversionSchema, nameConversionSchema } from "@/lib/conversions/schema";
import { takeOut } from "@/lib/fittings/changes";
import { planStep } from "@/lib/steps/changes";
import { planStepSchema } from "@/lib/steps/schema";
import { planTest } from "@/lib/tests/changes";
import { planTestSchema } from "@/lib/tests/schema";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("conversions", () => {
	let shop: FreshShop;
	let machine: AMachine;
	const name = async (words: string, purpose: "ordinary" | "safety" = "ordinary") =>
		done(await nameConversion(nameConversionSchema.parse({ machineId: machine.id, name: words, purpose }), shop.env()));
	const join = (conversionId: string, more: object) => joinConversion(joinConversionSchema.parse({ conversionId, ...more }), shop.env());
	const sizes = async () =>
		(await conversionsOf(shop.store.read, machine.id)).map((row) => [
			row.partsIn.length,
			row.partsOut.length,
			row.alterations.length,
			row.connections.length,
			row.steps.length,
			row.tests.length,
		]);

	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, { motor: { wire: "RD" }, lamp: {} });
	});
	afterEach(() => shop.close());

	it("a conversion groups parts in, parts out, alterations, connections, steps and tests under a number", async () => {
		const { id, number } = await name("low-voltage drive");
		done(await takeOut({ machineId: machine.id, positionId: machine.position("motor") }, shop.env()));
		const step = done(await planStep(planStepSchema.parse({ machineId: machine.id, kind: "make", title: "adapter plate" }), shop.env()));
		const alteration = done(
			await recordAlteration(
				recordAlterationSchema.parse({ machineId: machine.id, place: "plate", what: "drilled", undo: "never", reason: "no other way" }),
				shop.env(),
			),
		);
		const test = done(await planTest(planTestSchema.parse({ machineId: machine.id, name: "speed", limit: null }), shop.env()));
		const { fittings, connections } = await possibleMembers(shop.store.read, machine.id);
		const out = fittings.filter(({ untilAt }) => untilAt !== null).map((fitting) => fitting.id);
		const lists = {
			fittingsOut: out,
			connections: connections.map((row) => row.id),
			alterations: [alteration.id],
			steps: [step.id],
			tests: [test.id],
		};
		expect(done(await join(id, lists))).toEqual({ joined: 5, left: 0 });
		expect([number, await sizes()]).toEqual([1, [[0, 1, 1, 1, 1, 1]]]);
	});

	it("what is not named stays with its conversion; what is named as leaving leaves", async () => {
		const [one, two] = [await name("drive"), await name("light")];
		const { fittings } = await possibleMembers(shop.store.read, machine.id);
		const [first, second] = fittings.map((fitting) => fitting.id);
		if (!first || !second) throw new Error("two parts are fitted");
		done(await join(one.id, { fittingsIn: [first] }));
		done(await join(one.id, { fittingsIn: [second] }));
		expect((await sizes()).map(([parts]) => parts)).toEqual([2, 0]);
		expect(done(await join(one.id, { leave: { fittingsIn: [first] } }))).toEqual({ joined: 0, left: 1 });
		done(await join(two.id, { fittingsIn: [second] }));
		expect((await sizes()).map(([parts]) => parts)).toEqual([0, 1]);
	});

	it("what belongs to another conversion does not leave that one by mistake", async () => {
		const [one, two] = [await name("drive"), await name("light")];
		const [first] = (await possibleMembers(shop.store.read, machine.id)).fittings.map((fitting) => fitting.id);
		done(await join(one.id, { fittingsIn: [first] }));
		expect(refused(await join(two.id, { leave: { fittingsIn: [first] } })).code).toBe("nothing-changed");
		expect((await sizes()).map(([parts]) => parts)).toEqual([1, 0]);
	});

	it("nothing ticked, and what stands so already, is said and not written", async () => {
		const { id } = await name("drive");
		const [first] = (await possibleMembers(shop.store.read, machine.id)).fittings.map((fitting) => fitting.id);
		expect(refused(await join(id, {})).code).toBe("nothing-chosen");
		done(await join(id, { fittingsIn: [first] }));
		const before = await shop.store.read.entry.count();
		expect(refused(await join(id, { fittingsIn: [first] })).code).toBe("nothing-changed");
		expect(await shop.store.read.entry.count()).toBe(before);
	});

	it("a conversion for safety says that a reversal leaves it", async () => {
		await name("fuse, earth and flex", "safety");
		const entry = await shop.store.read.entry.findFirstOrThrow({ where: { action: "conversion.named" } });
		expect(entry.open).toContain("a reversal leaves it unless it is named");
	});

	it("rows of another machine do not join", async () => {
		const { id } = await name("drive");
		const other = await aMachine(shop, { motor: {} }, 13);
		const [theirs] = (await possibleMembers(shop.store.read, other.id)).fittings.map((fitting) => fitting.id);
		expect(refused(await join(id, { fittingsIn: [theirs] })).code).toBe("nothing-changed");
	});
});
