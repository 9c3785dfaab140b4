import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { changeLead } from "@/lib/purchases/changes";
import { leadField, postWords } from "@/lib/purchases/lead";
import { changeLeadSchema } from "@/lib/purchases/schema";
import { aPurchase } from "@/tests/purchases/aPurchase";
import { done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("how long a purchase takes", () => {
	const ordered = day("2026-03-02");
	const lead = { low: 4, likely: 7, high: 14 };

	it.each([
		["2026-03-05", "likely 9 Mar 2026, 16 Mar 2026 at the latest", false],
		["2026-03-09", "likely 9 Mar 2026, 16 Mar 2026 at the latest", false],
		["2026-03-10", "was likely 9 Mar 2026, 16 Mar 2026 at the latest", false],
		["2026-03-16", "was likely 9 Mar 2026, 16 Mar 2026 at the latest", false],
		["2026-03-17", "1 day late: due 16 Mar 2026 at the latest", true],
		["2026-03-30", "14 days late: due 16 Mar 2026 at the latest", true],
	])("ordered on 2 March for 4, 7 or 14 days, on %s it is: %s", (today, words, late) => {
		expect(postWords(ordered, lead, day(today))).toEqual({ words, late });
	});

	it("that nobody guessed is never late", () => {
		expect(postWords(ordered, null, day("2026-12-31"))).toEqual({ words: "ordered 2 Mar 2026", late: false });
	});

	it("with only the likely days reckons 0.7 and twice of them, as a step's time does (common practice, no source)", () => {
		expect(leadField.parse({ low: "", likely: "10", high: "" })).toEqual({ low: 7, likely: 10, high: 20 });
		expect(leadField.parse({ low: " ", likely: "", high: "" })).toBeNull();
	});

	it.each([
		[{ low: "9", likely: "7", high: "" }, "Low is at most likely, and likely at most high."],
		[{ low: "3", likely: "", high: "" }, "Write the likely number of days, too."],
		[{ low: "", likely: "a week", high: "" }, "Write whole days, like 7."],
		[{ low: "", likely: "3651", high: "" }, "Write whole days, like 7."],
	])("%j is refused with words", (typed, words) => {
		const read = leadField.safeParse(typed);
		expect(read.success ? [] : read.error.issues.map(({ message }) => message)).toContain(words);
	});
});

describe("on the purchase's own page", () => {
	let shop: FreshShop;
	beforeEach(async () => {
		shop = await freshShop();
	});
	afterEach(() => shop.close());

	const daysOf = async (id: string) => {
		const { leadLowDays, leadLikelyDays, leadHighDays } = await shop.store.read.purchase.findUniqueOrThrow({ where: { id } });
		return [leadLowDays, leadLikelyDays, leadHighDays];
	};
	const say = (purchaseId: string, low: string, likely: string, high: string) =>
		changeLead(changeLeadSchema.parse({ purchaseId, lead: { low, likely, high } }), shop.env());

	it("the days are kept as they were entered, corrected, and taken away again", async () => {
		const { id } = await aPurchase(shop, [{ what: "wire", count: "5", net: "10" }], { lead: { low: "2", likely: "5", high: "9" } });
		expect(await daysOf(id)).toEqual([2, 5, 9]);
		done(await say(id, "10", "20", "30"));
		expect(await daysOf(id)).toEqual([10, 20, 30]);
		done(await say(id, "", "", ""));
		expect(await daysOf(id)).toEqual([null, null, null]);
		expect(refused(await say(shop.newId(), "", "", "")).code).toBe("no-such-purchase");
	});
});
