import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { addDayOff } from "@/lib/calendar/changes";
import { dayOffSchema } from "@/lib/calendar/schema";
import { verifyLedger } from "@/lib/ledger/verify";
import { givenFacts, handlingOf } from "@/lib/owner/given";
import { done } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("what is nobody's business outside the shop", () => {
	let shop: FreshShop;
	beforeEach(async () => {
		shop = await freshShop();
	});
	afterEach(() => shop.close());

	it("why somebody is not in is read on the shop's own pages, and stands in no sentence of the ledger", async () => {
		const off = { personId: shop.person, fromDay: "2026-03-09", untilDay: "2026-03-10", words: "at the dentist's" };
		const id = done(await addDayOff(dayOffSchema.parse(off), shop.env()));
		const { open } = await shop.store.read.entry.findFirstOrThrow({ where: { action: "days.off" }, select: { open: true } });
		expect(open).toContain("Tester is off from 2026-03-09 to 2026-03-10.");
		expect(open).not.toContain("dentist");
		expect((await shop.store.read.dayOff.findUniqueOrThrow({ where: { id } })).words).toBe("at the dentist's");
		expect((await verifyLedger(shop.folder)).flaws).toEqual([]);
	});
});

describe("the handling that a paper was made with", () => {
	const open = (facts: object) =>
		givenFacts(JSON.stringify({ deed: "d", facts: { owner: "o", about: [], payments: [], agreed: [], ...facts }, rows: {} }));

	it("is read from under the seal, and in an older book from what the entry showed", () => {
		expect(handlingOf(open({}), JSON.stringify({ facts: { handling: "12.5" }, rows: {} }))).toBe("12.5");
		expect(handlingOf(open({ handling: "10" }), JSON.stringify({ rows: {} }))).toBe("10");
	});

	it("is none once what was sealed is erased", () => {
		expect(handlingOf(open({}), null)).toBe("");
	});
});
