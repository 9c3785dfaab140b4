// Machine 14 of the demo shop, read back through the area's queries: a quote that was agreed, a deposit, and a question that waits.

import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { type OwnerBook, ownerBook, ownerPaper } from "@/lib/owner/queries";
import { totalsOf } from "@/lib/owner/totals";
import { shop } from "@/seed/data/shop";
import { demoCopy } from "@/tests/support/demoCopy";

describe("METEOR MINNOW and its owner", () => {
	let demo: Awaited<ReturnType<typeof demoCopy>>;
	let book: OwnerBook;
	let machineId = "";

	beforeAll(async () => {
		demo = await demoCopy();
		const { store } = demo;
		machineId = (await store.read.machine.findUniqueOrThrow({ where: { number: 14 }, select: { id: true } })).id;
		book = await ownerBook(store.read, machineId, day(shop.today));
	}, 600_000);
	afterAll(() => demo.close());

	it("the quote has labour at charge rates, parts with a tenth more, a contingency, and the motor; it was agreed to", () => {
		const quote = book.papers.find(({ kind }) => kind === "quote");
		// By hand, person by person, from the plan's three points: A 12 h 53 2/3 at 66, B 4 h 32 5/6 at 84, C 6 h 26 1/2 at 48,
		// each person and step rounded, 1,542.20; parts 152.00 and a tenth, 167.20; a twentieth of both, 85.47; the motor 305.00.
		expect(quote && totalsOf(quote.lines).total).toBe(154_220 + 16_720 + 8547 + 30_500);
		expect(quote).toMatchObject({ state: "agreed", number: 1, limit: 220_000, handling: "10" });
	});

	it("the deposit is taken off what is still due", () => {
		expect([book.account.paid, book.account.due]).toEqual([60_000, 209_987 - 60_000]);
	});

	it("what was found is in a paper of its own that waits, with the added step and the cracked gasket", async () => {
		const [more] = book.account.waiting;
		expect(more).toMatchObject({ kind: "more", number: 1, state: "given", limit: 250_000 });
		const paper = await ownerPaper(demo.store.read, machineId, more?.id ?? "");
		// Two persons, 151 2/3 minutes each at 66 and 48: 166.83 and 121.33. The gasket: 9.50 and a tenth.
		expect(paper?.lines.map(({ netMinor }) => netMinor)).toEqual([16_683 + 12_133, 1045]);
		expect(paper?.agreedBy).toBeNull();
	});

	it("with it the job would pass the limit, so the owner is asked before, and the seat board is named first", () => {
		const { over, atCompletion } = book.account;
		expect(over).toMatchObject({ than: "limit", by: atCompletion - 220_000 });
		expect(over?.because[0]).toEqual({ what: expect.stringContaining("seat board"), over: 28_816 });
	});
});
