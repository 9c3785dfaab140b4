import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { planTest, runTest } from "@/lib/tests/changes";
import { instrumentsUsed, testOf, testsOf } from "@/lib/tests/queries";
import { planTestSchema, runTestFormSchema, runTestSchema } from "@/lib/tests/schema";
import { flagOfSource, setTestSchema } from "@/lib/tests/setTest";
import { USUAL_LIMITS } from "@/lib/tests/usualLimits";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { done } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("tests of a machine", () => {
	let shop: FreshShop;
	let machine: AMachine;
	const set = async (typed: object) => done(await planTest(setTestSchema.parse({ machineId: machine.id, ...typed }), shop.env()));
	const run = async (testId: string, phase: "before" | "after", value: string, more: object = {}) =>
		done(await runTest(runTestSchema.parse({ testId, phase, value, personId: shop.person, ...more }), shop.env()));
	const own = { name: "insulation, 500 V", kind: "at least", value: "1", unit: "M\u03a9", limitSource: "class I" };

	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, { k01: {} });
	});
	afterEach(() => shop.close());

	it("a failed reading stays, and a later one is held against the same limit", async () => {
		const { id } = await set({ name: "plays", usual: "plays" });
		expect((await run(id, "after", "131 of 132")).verdict).toBe("fail");
		expect((await run(id, "after", "200 of 200")).verdict).toBe("pass");
		const test = await testOf(shop.store.read, machine.id, 1);
		expect(test?.runs.map(({ value, verdict }) => [value, verdict])).toEqual([
			["131 of 132", "fail"],
			["200 of 200", "pass"],
		]);
	});

	it("a reading says what was measured, by whom, with what and whether the limit was kept", async () => {
		const { id } = await set(own);
		const before = await run(id, "before", "0.4", { instrument: "insulation tester" });
		expect(before).toMatchObject({ verdict: "fail", say: "0.4 M\u03a9 does not keep the limit: at least 1 M\u03a9." });
		expect(await instrumentsUsed(shop.store.read)).toEqual(["insulation tester"]);
		const entry = await shop.store.read.entry.findFirstOrThrow({ where: { action: "test.run" } });
		expect(entry.open).toContain("Tester measured test 1, insulation, 500 V: 0.4 M\u03a9. Limit not kept.");
	});

	it("without a limit a value is only recorded", async () => {
		const { id } = await set({ name: "case colour at the soak", kind: "none" });
		expect((await run(id, "after", "unchanged")).verdict).toBe("unjudged");
		expect((await testsOf(shop.store.read, machine.id)).map(({ limit, limitWords }) => [limit, limitWords])).toEqual([[null, null]]);
	});

	it("a limit keeps its source, and says when it was recalled or is a habit of the trade", async () => {
		for (const usual of USUAL_LIMITS) await set({ name: usual.test, usual: usual.id });
		const tests = await testsOf(shop.store.read, machine.id);
		expect(tests.map(({ limitSource }) => flagOfSource(limitSource))).toEqual(
			USUAL_LIMITS.map(({ backing }) =>
				backing === "from memory" ? "from memory" : backing === "common practice, no source" ? "common practice" : null,
			),
		);
		expect(tests.map(({ limit }) => limit)).toEqual(USUAL_LIMITS.map(({ limit }) => limit));
	});

	it("limits that follow from a figure are computed from it", async () => {
		await set({ name: "earth", usual: "earth-by-cord", figure: "6" });
		await set({ name: "rail", usual: "rail-80", figure: "2,5" });
		await set({ name: "fuse", usual: "fuse-as-drawn", figure: "1" });
		expect((await testsOf(shop.store.read, machine.id)).map(({ limitWords }) => limitWords)).toEqual([
			"at most 0.4 \u03a9",
			"at most 2 A",
			"at most 1 A",
		]);
	});

	it.each([
		[{ kind: "at most", value: "0,3", unit: "\u03a9" }, "at most 0.3 \u03a9"],
		[{ kind: "between", low: "27", high: "29", unit: "rpm" }, "27 to 29 rpm"],
		[{ kind: "nominal", value: "24.0", tolerance: "0.5", unit: "V" }, "24.0 \u00b1 0.5 V"],
		[{ kind: "rise", value: "40" }, "at most 40 K above the air around"],
		[{ kind: "words", words: "free or no tight spot" }, '"free" or "no tight spot"'],
		[{ kind: "count", good: "98", tries: "100" }, "at least 98 of 100"],
	])("a limit of one's own as typed: %o", async (typed, words) => {
		await set({ name: "own", limitSource: "own limit", ...typed });
		expect((await testOf(shop.store.read, machine.id, 1))?.limitWords).toBe(words);
	});

	it.each([
		[{ usual: "earth-by-cord", figure: "" }, "figure"],
		[{ usual: "no such" }, "usual"],
		[{ kind: "at most", value: "much", limitSource: "own limit" }, "value"],
		[{ kind: "at most", value: "1" }, "limitSource"],
		[{ kind: "between", low: "29", high: "27", limitSource: "own limit" }, "high"],
		[{ kind: "nominal", value: "24", tolerance: "-1", limitSource: "own limit" }, "tolerance"],
		[{ kind: "words", words: " ", limitSource: "own limit" }, "words"],
		[{ kind: "count", good: "101", tries: "100", limitSource: "own limit" }, "good"],
		[{ kind: "count", good: "1", tries: "0", limitSource: "own limit" }, "tries"],
	])("a limit that cannot be is refused at its field: %o", (typed, field) => {
		const read = setTestSchema.safeParse({ machineId: machine.id, name: "own", ...typed });
		expect(read.error?.issues.map(({ path }) => path.join("."))).toEqual([field]);
	});

	it("a limit without a source is not taken, from a program either", () => {
		const limit = { kind: "at most", value: "1", unit: "A" };
		expect(planTestSchema.safeParse({ machineId: machine.id, name: "fuse", limit }).success).toBe(false);
		expect(runTestFormSchema.safeParse({ testId: "t", phase: "after", value: "", personId: "p" }).success).toBe(false);
	});
});
