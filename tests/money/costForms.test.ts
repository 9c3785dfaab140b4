import { describe, expect, it } from "vitest";
import { addCostSchema } from "@/lib/money/schema";

describe("a cost of which no amount was typed", () => {
	const wrong = (typed: object) => {
		const cost = { machineId: "m", kind: "consumable", words: "filler", day: "2026-03-04", ...typed };
		const read = addCostSchema("EUR").safeParse(cost);
		return read.success
			? [read.data.estimated, read.data.spent]
			: read.error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`);
	};

	it.each([
		[{ state: "spent", spent: "", estimated: "5" }, ["spent: Write what was spent; 0 if it came free."]],
		[{ state: "planned", spent: " ", estimated: "" }, ["estimated: Write what it will cost, as far as you can say."]],
		[{ state: "forgone", spent: "15" }, ["estimated: Write what was let go."]],
		[{ state: "spent", spent: "five" }, ["spent: Write the amount in figures, like 84.50."]],
	])("%j is asked for, not taken for nothing", (typed, words) => {
		expect(wrong(typed)).toEqual(words);
	});

	it("0 that was typed is 0, and what is not asked for may be left empty", () => {
		expect(wrong({ state: "spent", spent: "0" })).toEqual([0, 0]);
		expect(wrong({ state: "planned", spent: "3" })).toEqual([0, 300]);
		expect(wrong({ state: "forgone", estimated: "15" })).toEqual([1500, 0]);
	});
});
