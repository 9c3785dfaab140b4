import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { minor } from "@/lib/money/money";
import { accountOf, paidOf } from "@/lib/owner/account";
import { proposedLines, statementBasis } from "@/lib/owner/proposal";
import { job, paper, step, TODAY } from "@/tests/owner/aJob";

const account = (
	of: Parameters<typeof accountOf>[0]["of"],
	papers: Parameters<typeof accountOf>[0]["papers"] = [],
	payments: Parameters<typeof accountOf>[0]["payments"] = [],
) => accountOf({ of, papers, payments, today: TODAY });
const worked = (stepId: string, minutes: number) => ({ stepId, personId: "A", minutes, day: day("2026-05-10") });

describe("agreed in all", () => {
	it("is the last agreed quote, and the more work agreed to after it", () => {
		const [old, lost, quote, more, open, refused] = [
			paper("quote", 1000),
			paper("more", 50),
			paper("quote", 2000, { limit: minor(2500) }),
			paper("more", 300, { limit: minor(2900) }),
			paper("more", 70, { state: "given", limit: minor(9000) }),
			paper("more", 60, { state: "refused" }),
		];
		const { agreed, agreedPapers, limit, waiting } = account(job(), [open, refused, more, quote, lost, old]);
		expect([agreed.net, limit, agreedPapers, waiting]).toEqual([2300, 2900, [quote, more], [open]]);
	});

	it("keeps more work that lay with the owner when the quote was made, and drops what the quote takes in", () => {
		const [first, taken, beside] = [paper("quote", 1000), paper("more", 50), paper("more", 70)];
		const quote = paper("quote", 2000, { takesIn: [first.id, taken.id] });
		expect(account(job(), [first, taken, beside, quote]).agreedPapers).toEqual([beside, quote]);
		// The next quote takes in what stood beside this one; nothing that an earlier one took in comes back.
		const last = paper("quote", 3000, { takesIn: [first.id, taken.id, beside.id, quote.id] });
		expect(account(job(), [first, taken, beside, quote, last]).agreed.net).toBe(3000);
	});

	it("in an older book, which does not say, is without what was agreed to before the quote was given", () => {
		const [before, after] = [paper("more", 50), paper("more", 70)];
		const quote = paper("quote", 2000);
		const late = { ...after, agreedEntry: quote.givenEntry + 1 };
		expect(account(job(), [before, late, quote]).agreedPapers).toEqual([late, quote]);
	});

	it("goes on covering an added step that a later quote takes in: it is no reason why it comes to more", () => {
		const more = paper("more", 6000, { about: ["s1"] });
		const quote = paper("quote", 6000, { takesIn: [more.id], limit: minor(5000) });
		expect(account(job({ steps: [step(1, { addedWhy: "rotten" })] }), [more, quote]).over?.because).toEqual([]);
	});

	it("is nothing while no quote was agreed to", () => {
		expect(account(job(), [paper("quote", 1000, { state: "given" })]).agreed.total).toBe(0);
	});
});

describe("spent and at completion", () => {
	it("are at charge rates, with the handling that was agreed on, and are added up from the same lines", () => {
		const of = job({
			steps: [step(1, { state: "done" }), step(2)],
			work: [worked("s1", 90)],
			uses: [{ lineId: "l1", what: "belt", count: 1, amount: minor(1000) }],
			wanted: [{ id: "w1", words: "seal", estimated: minor(500), toCome: minor(500), stands: "to-come", addedWhy: "", lineId: null }],
			costs: [{ id: "c1", words: "rewinding", kindWords: "outside work", state: "planned", estimated: minor(28_500), spent: minor(1000) }],
		});
		const { spent, toCome, atCompletion } = account(of, [paper("quote", 50_000, { handling: "10" })]);
		expect([spent, toCome, atCompletion]).toEqual([9000 + 1100 + 1000, 6000 + 550 + 27_500, 45_150]);
	});
});

describe("what is spent at charge rates", () => {
	it("rounds handling line by line, as a statement does: 3 lines of 1.05 and a tenth are 3.48", () => {
		const uses = ["l1", "l2", "l3"].map((lineId) => ({ lineId, what: "pin", count: 1, amount: minor(105) }));
		// 1.05 and 0.105 is 1.16, rounded half up: three of them are 3.48, and 3.15 and 0.315 would be 3.47.
		expect(account(job({ uses }), [paper("quote", 0, { handling: "10" })]).spent).toBe(348);
	});

	it("is just what a statement of today would come to, with what was sent back and credited", () => {
		const cents = fc.integer({ min: 1, max: 50_000 }).map(minor);
		const some = <T>(one: fc.Arbitrary<T>) => fc.array(one, { maxLength: 6 });
		const use = fc.record({
			lineId: fc.constantFrom("l1", "l2", "l3"),
			what: fc.constant("pin"),
			count: fc.integer({ min: 1, max: 9 }),
			amount: cents,
		});
		const sent = fc
			.record({ cost: cents, kept: fc.nat(100), answered: fc.boolean() })
			.map(({ cost, kept, answered }) => ({ kept: minor(answered ? Math.min(kept, cost) : 0), awaited: minor(answered ? 0 : cost) }));
		fc.assert(
			fc.property(
				some(use),
				some(sent),
				some(cents),
				some(cents),
				fc.constantFrom("", "7.5", "10", "33"),
				(uses, returns, off, costs, handling) => {
					const of = job({
						steps: [step(1)],
						work: [worked("s1", 37), worked("s1", 8)],
						uses,
						returns: returns.map((each, at) => ({ id: `u${at}`, what: "clip", count: 1, ...each })),
						offPrice: off.map((amount, at) => ({ id: `c${at}`, purchase: at, amount })),
						costs: costs.map((spent, at) => ({ id: `k${at}`, words: "x", kindWords: "x", state: "spent", estimated: minor(0), spent })),
					});
					const lines = proposedLines(statementBasis(of, TODAY), { by: "kind", handling, contingency: "" });
					const stated = lines.reduce((sum, { net }) => sum + (net ?? Number.NaN), 0);
					expect(account(of, [paper("quote", 0, { handling })]).spent).toBe(stated);
				},
			),
			{ seed: 61, numRuns: 200 },
		);
	});

	it("has nothing of what was sent back and no seller has answered for, and names it", () => {
		const sent = { id: "u1", what: "lamp", count: 1, kept: minor(0), awaited: minor(400) };
		const { spent, toCome, awaited } = account(job({ returns: [sent] }));
		expect([spent, toCome, awaited]).toEqual([0, 0, [sent]]);
	});
});

describe("the owner is to be asked before", () => {
	it("when what it will come to passes the limit, and the lines that make it so are named, the largest first", () => {
		const of = job({ steps: [step(1, { state: "done" }), step(2), step(3, { addedWhy: "rotten" })], work: [worked("s1", 100)] });
		const { over } = account(of, [paper("quote", 12_000, { limit: minor(13_000) })]);
		expect(over).toEqual({
			than: "limit",
			by: 10_000 + 6000 + 6000 - 13_000,
			because: [
				{ what: "Step 3, work 3, added: rotten", over: 6000 },
				{ what: "Step 1, work 1", over: 4000 },
			],
		});
	});

	it("not when it just comes to the limit", () => {
		expect(account(job({ steps: [step(1)] }), [paper("quote", 5000, { limit: minor(6000) })]).over).toBeNull();
	});

	it("when it passes what was agreed, where no limit was named", () => {
		expect(account(job({ steps: [step(1)] }), [paper("quote", 5999)]).over).toMatchObject({ than: "agreed", by: 1 });
	});

	it("no longer for a step that was agreed to as more work found", () => {
		const of = job({ steps: [step(1), step(2, { addedWhy: "rotten" })] });
		const quote = paper("quote", 6000, { limit: minor(7000) });
		expect(account(of, [quote]).over).not.toBeNull();
		expect(account(of, [quote, paper("more", 6000, { about: ["s2"], limit: minor(13_000) })]).over).toBeNull();
	});
});

describe("still due", () => {
	it("is the statement with its tax, less what was paid; before there is one, what was agreed less what was paid", () => {
		const quote = paper("quote", 10_000, { lines: [{ net: minor(10_000), taxPercent: "21" }] });
		const deposit = { kind: "deposit", amount: minor(4000) } as const;
		expect(account(job(), [quote], [deposit]).due).toBe(8100);
		const statement = paper("statement", 0, { state: "given", lines: [{ net: minor(9000), taxPercent: "21" }] });
		expect(account(job(), [quote, statement], [deposit]).due).toBe(6890);
	});

	it("goes by the last statement that was not taken back", () => {
		const [first, second] = [paper("statement", 500, { state: "given" }), paper("statement", 700, { state: "withdrawn" })];
		expect(account(job(), [first, second]).due).toBe(500);
	});
});

it("what was paid is deposits and payments less what was given back, in whatever order", () => {
	const some = fc.array(
		fc.record({ kind: fc.constantFrom("deposit", "payment", "refund"), amount: fc.integer({ min: 1, max: 900_000 }).map(minor) }),
	);
	fc.assert(
		fc.property(some, (payments) => {
			let purse = 0;
			for (const { kind, amount } of payments) purse += kind === "refund" ? -amount : amount;
			expect(paidOf(payments)).toBe(purse || 0);
			expect(paidOf([...payments].reverse())).toBe(purse || 0);
		}),
	);
});
