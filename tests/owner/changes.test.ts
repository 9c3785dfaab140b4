import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { ok } from "@/lib/core/result";
import { giveCredit } from "@/lib/credits/changes";
import { creditSchema } from "@/lib/credits/schema";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";
import { verifyLedger } from "@/lib/ledger/verify";
import { addPayment, answerPaper, givePaper, takeBackPayment, withdrawPaper } from "@/lib/owner/changes";
import { ownerBook, ownerPaper } from "@/lib/owner/queries";
import { addPaymentSchema, givePaperSchema } from "@/lib/owner/schema";
import { drawFromLine, returnLine } from "@/lib/purchases/changes";
import { drawFromLineSchema, returnLineSchema } from "@/lib/purchases/schema";
import { planStep } from "@/lib/steps/changes";
import { planStepSchema } from "@/lib/steps/schema";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { aPurchase, HERE } from "@/tests/purchases/aPurchase";
import { done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("papers for the owner", () => {
	let shop: FreshShop;
	let machine: AMachine;
	let ownerId: string;
	const TODAY = day("2026-03-02");

	const becomes = async (ownership: "customer" | "shop" | "collection", owner: string | null) => {
		const before = await shop.store.read.machine.findUniqueOrThrow({ where: { id: machine.id } });
		done(
			await record(shop.env(), async () =>
				ok(
					deed(
						machine.id,
						"machine.described",
						{ table: "Machine", id: machine.id },
						{ say: "Said whose it is." },
						[change("Machine", before, { ownership, ownerId: owner })],
						null,
					),
				),
			),
		);
	};
	const give = (more: object = {}) =>
		givePaper(
			givePaperSchema("EUR").parse({
				machineId: machine.id,
				kind: "quote",
				day: TODAY,
				limit: "1200",
				handling: "10",
				lines: [
					{ words: "Labour", net: "1000", tax: "21" },
					{ words: "Discount", net: "-50.00", tax: "21" },
				],
				...more,
			}),
			shop.env(),
		);
	const answer = (paperId: string, said: "agreed" | "refused", at?: string) =>
		answerPaper({ paperId, answer: said, by: "W. Harkema", how: "on the phone", at }, shop.env());
	const pay = (kind: string, amount: string, more: object = {}) =>
		addPayment(addPaymentSchema("EUR").parse({ machineId: machine.id, kind, amount, day: TODAY, words: "bank", ...more }), shop.env());
	const book = () => ownerBook(shop.store.read, machine.id, TODAY);
	const states = async () => (await book()).papers.map(({ kind, number, state }) => `${kind} ${number} ${state}`);

	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, { k01: {} });
		ownerId = shop.newId();
		done(
			await record(shop.env(), async () =>
				ok(
					deed(
						null,
						"party.added",
						{ table: "Party", id: ownerId },
						{ say: "Added an owner." },
						[add("Party", { id: ownerId, kind: "owner", name: "W. Harkema", contact: null })],
						null,
					),
				),
			),
		);
		await becomes("customer", ownerId);
	});
	afterEach(() => shop.close());

	it("are numbered through the shop by kind, without a gap, also when one is refused or given twice by one press", async () => {
		const press = shop.newId();
		const input = givePaperSchema("EUR").parse({
			machineId: machine.id,
			kind: "quote",
			day: TODAY,
			lines: [{ words: "Labour", net: "1" }],
		});
		const first = done(await givePaper(input, shop.env(press)));
		expect(done(await givePaper(input, shop.env(press)))).toEqual(first);
		refused(await give({ day: "2026-03-03" }));
		done(await give({ kind: "more", why: "rotten" }));
		done(await give());
		expect(await states()).toEqual(["quote 1 withdrawn", "more 1 given", "quote 2 given"]);
	});

	it("stay as they were handed over: the database itself refuses to change what one says", async () => {
		const { paperId } = done(await give());
		const before = await shop.store.read.ownerPaper.findUniqueOrThrow({ where: { id: paperId }, include: { lines: true } });
		const { lines, ...paper } = before;
		const [line] = lines;
		if (!line) throw new Error("no line");
		const attempt = (row: ReturnType<typeof change>) =>
			record(shop.env(), async () => ok(deed(machine.id, "forged", { table: "OwnerPaper", id: paperId }, { say: "Forged." }, [row], null)));
		expect(refused(await attempt(change("OwnerPaper", paper, { limitMinor: 999_900 }))).code).toBe("paper-frozen");
		expect(refused(await attempt(change("OwnerPaperLine", line, { netMinor: 1 }))).code).toBe("paper-frozen");
	});

	it("keep who answered, when and how, and an answer can be corrected", async () => {
		const { paperId } = done(await give());
		done(await answer(paperId, "refused"));
		done(await answer(paperId, "agreed", "2026-03-02T07:30:00.000Z"));
		expect(await ownerPaper(shop.store.read, machine.id, paperId)).toMatchObject({
			state: "agreed",
			agreedBy: "W. Harkema",
			answerHow: "on the phone",
			answeredAt: "2026-03-02T07:30:00.000Z",
			owner: "W. Harkema",
		});
		expect((await book()).account).toMatchObject({ agreed: { net: 95_000, tax: 19_950, total: 114_950 }, limit: 120_000 });
	});

	it("are not answered before they were given, nor after they were taken back", async () => {
		const { paperId } = done(await give());
		expect(refused(await answer(paperId, "agreed", "2026-03-01T12:00:00.000Z"))).toMatchObject({
			code: "answered-before",
			fields: { answered: expect.stringMatching(/\.$/) },
		});
		done(await withdrawPaper({ paperId, why: "a wrong line" }, shop.env()));
		expect(refused(await answer(paperId, "agreed")).code).toBe("withdrawn");
		expect(refused(await withdrawPaper({ paperId, why: "again" }, shop.env())).code).toBe("withdrawn");
	});

	it("are not taken back once they are answered", async () => {
		const { paperId } = done(await give());
		done(await answer(paperId, "agreed"));
		expect(refused(await withdrawPaper({ paperId, why: "too cheap" }, shop.env())).code).toBe("answered");
	});

	it("a new quote takes the place of one without an answer, and leaves one that was agreed to", async () => {
		const { paperId } = done(await give());
		done(await answer(paperId, "agreed"));
		done(await give());
		done(await give());
		expect(await states()).toEqual(["quote 1 agreed", "quote 2 withdrawn", "quote 3 given"]);
	});

	it("more work found says which added steps it is about, and after the answer they are agreed to", async () => {
		const { id } = done(
			await planStep(planStepSchema.parse({ machineId: machine.id, kind: "repair", title: "splice", addedWhy: "rotten" }), shop.env()),
		);
		expect(
			givePaperSchema("EUR").safeParse({ machineId: machine.id, kind: "more", day: TODAY, lines: [{ words: "x", net: "1" }] }).success,
		).toBe(false);
		const lines = [{ words: "Step 1: splice", net: "60", about: id }];
		const { paperId } = done(await give({ kind: "more", why: "The board is rotten.", lines }));
		expect((await book()).papers.at(-1)).toMatchObject({ about: [id], state: "given" });
		done(await answer(paperId, "agreed"));
		expect(refused(await give({ kind: "more", why: "x", lines: [{ words: "x", net: "1", about: shop.newId() }] })).code).toBe(
			"not-of-machine",
		);
	});

	it("a statement goes on showing what was paid and agreed when it was given", async () => {
		const quote = done(await give());
		done(await answer(quote.paperId, "agreed"));
		const deposit = done(await pay("deposit", "300"));
		const { paperId } = done(await give({ kind: "statement", untilDay: "2026-03-16" }));
		done(await pay("payment", "500"));
		done(await takeBackPayment({ paymentId: deposit, why: "it was another machine's" }, shop.env()));
		done(await give({ kind: "quote" }));
		const paper = await ownerPaper(shop.store.read, machine.id, paperId);
		expect(paper?.payments.map(({ id, stands }) => [id, stands])).toEqual([[deposit, "no"]]);
		expect(paper?.agreed.map(({ number }) => number)).toEqual([1]);
	});

	it("more work that the owner agrees to beside a quote is added to it; the next quote takes both in", async () => {
		const agreedAfter = async (paperId: string) => {
			done(await answer(paperId, "agreed"));
			return (await book()).account.agreed.net;
		};
		const line = (net: string) => ({ lines: [{ words: "Labour", net }] });
		const more = done(await give({ kind: "more", why: "rotten", ...line("50") }));
		const quote = done(await give(line("1000")));
		expect(await agreedAfter(more.paperId)).toBe(5000);
		expect(await agreedAfter(quote.paperId)).toBe(105_000);
		const next = done(await give(line("1100")));
		expect(await agreedAfter(next.paperId)).toBe(110_000);
	});

	it("a quote takes in what was agreed when its lines were proposed, not what the owner agreed to while it was written", async () => {
		const line = (net: string) => ({ lines: [{ words: "Labour", net }] });
		const more = done(await give({ kind: "more", why: "rotten", ...line("50") }));
		done(await answer(more.paperId, "agreed"));
		const quote = done(await give({ ...line("1000"), takesIn: [] }));
		done(await answer(quote.paperId, "agreed"));
		expect((await book()).account.agreed.net).toBe(105_000);
	});

	it("charge what a seller kept of what was sent back, and less where they took something off the price, as the book has it", async () => {
		shop.setClock("2026-03-20T08:00:00.000Z");
		// 10 clips at 30.00: 4 used for 12.00, 6 sent back for 18.00, of which the seller gives 12.00; and 2.50 off the price.
		const { id: purchaseId, lineIds } = await aPurchase(shop, [{ what: "clips", count: "10", net: "30" }], HERE);
		const taking = { lineId: lineIds[0], machineId: machine.id };
		done(await drawFromLine(drawFromLineSchema.parse({ ...taking, count: "4" }), shop.env()));
		const { useId } = done(await returnLine(returnLineSchema.parse({ ...taking, count: "6", words: "too wide" }), shop.env()));
		const spent = async () => {
			const { account } = await book();
			return [account.spent, account.awaited.map(({ awaited }) => awaited)];
		};
		expect(await spent()).toEqual([1200, [1800]]);
		const credit = { purchaseId, day: "2026-03-20", words: "their note" };
		done(await giveCredit(creditSchema("EUR").parse({ ...credit, useId, amount: "12" }), shop.env()));
		done(await giveCredit(creditSchema("EUR").parse({ ...credit, machineId: machine.id, amount: "2.50" }), shop.env()));
		done(await giveCredit(creditSchema("EUR").parse({ ...credit, amount: "1" }), shop.env()));
		expect(await spent()).toEqual([1200 + 600 - 250, []]);
	});

	it("a paper goes on naming the owner it was given to", async () => {
		const { paperId } = done(await give());
		await becomes("customer", null);
		expect((await ownerPaper(shop.store.read, machine.id, paperId))?.owner).toBe("W. Harkema");
	});

	it("are only for a customer's machine, whose owner is named", async () => {
		await becomes("shop", null);
		expect(refused(await give()).code).toBe("not-a-customers");
		expect(refused(await pay("deposit", "10")).code).toBe("not-a-customers");
		await becomes("customer", null);
		expect(refused(await give()).code).toBe("no-owner");
	});

	it("money is counted once it is there, and what was taken back counts for nothing and stays readable", async () => {
		const paymentId = done(await pay("deposit", "300"));
		expect(refused(await pay("payment", "1", { day: "2026-03-03" })).fields).toHaveProperty("day");
		expect(refused(await pay("refund", "300.01")).fields).toHaveProperty("amount");
		const refund = done(await pay("refund", "100"));
		expect((await book()).account.paid).toBe(20_000);
		expect(refused(await takeBackPayment({ paymentId, why: "wrong" }, shop.env())).code).toBe("refund-left");
		done(await takeBackPayment({ paymentId: refund, why: "it was not sent" }, shop.env()));
		done(await takeBackPayment({ paymentId, why: "wrong" }, shop.env()));
		const { account, payments } = await book();
		expect([account.paid, payments.map(({ words, stands }) => [words, stands])]).toEqual([
			0,
			[
				["bank. Taken back: wrong", "no"],
				["bank. Taken back: it was not sent", "no"],
			],
		]);
		expect(refused(await takeBackPayment({ paymentId, why: "again" }, shop.env())).code).toBe("payment-void");
	});

	it("leave no price and no name of the owner in what the ledger shows, and the ledger verifies", async () => {
		const { paperId } = done(await give({ limit: "1234.56", lines: [{ words: "Labour", net: "987.65" }] }));
		done(await answer(paperId, "agreed"));
		const paymentId = done(await pay("deposit", "456.78", { words: "in cash, from Joukje" }));
		done(await takeBackPayment({ paymentId, why: "Joukje's other bill" }, shop.env()));
		const { paperId: second } = done(await give({ handling: "17.5" }));
		done(
			await answerPaper({ paperId: second, answer: "refused", by: "W. Harkema", how: "on the phone, Joukje", at: undefined }, shop.env()),
		);
		expect((await book()).papers.map(({ handling }) => handling)).toEqual(["10", "17.5"]);
		const open = (await shop.store.read.entry.findMany({ where: { machine: machine.id }, select: { open: true } }))
			.map((entry) => entry.open)
			.join();
		for (const hidden of ["123456", "98765", "45678", "Harkema", "Joukje", "17.5", "handling"]) expect(open).not.toContain(hidden);
		expect((await verifyLedger(shop.folder)).flaws).toEqual([]);
	});
});

describe("what is typed into a paper", () => {
	const fieldsOf = (typed: object) => {
		const read = givePaperSchema("EUR").safeParse({
			machineId: "m",
			kind: "quote",
			day: "2026-03-02",
			lines: [{ words: "x", net: "1" }],
			...typed,
		});
		return read.success ? [] : read.error.issues.map(({ path }) => path.join("."));
	};
	it.each([
		[{ lines: [{ words: "x", net: "" }] }, "lines.0.net"],
		[{ lines: [{ words: "x", net: "1,234" }] }, "lines.0.net"],
		[{ lines: [{ words: "x", net: "abc" }] }, "lines.0.net"],
		[{ lines: [{ words: "x", net: "1", tax: "lots" }] }, "lines.0.tax"],
		[{ lines: [{ words: "", net: "1" }] }, "lines.0.words"],
		[{ lines: [] }, "lines"],
		[{ limit: "-5" }, "limit"],
		[{ handling: "200" }, "handling"],
		[{ untilDay: "2026-03-01" }, "untilDay"],
		[{ day: "soon" }, "day"],
	])("%j is refused at %s", (typed, field) => expect(fieldsOf(typed)).toEqual([field]));
});
