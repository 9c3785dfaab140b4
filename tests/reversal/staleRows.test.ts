// A book that was kept for years holds rows that no longer fit each other. None of them makes a machine unplannable.

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { instant } from "@/lib/core/instants";
import { problemOf } from "@/lib/reversal/asked";
import { type Plan, planReversal } from "@/lib/reversal/plan";
import type { Problem } from "@/lib/reversal/problem";
import type { ReversalFacts } from "@/lib/reversal/queries";
import { readProblem } from "@/lib/reversal/readProblem";
import type { Asked } from "@/lib/reversal/scope";
import { aFinding, aFitting, anAlteration, aPartRow, aPositionRow, someFacts } from "@/tests/reversal/someFacts";

const FOUND = instant("2026-01-02T00:00:00.000Z");

/** The plan of a book, or a failed test that says why there is none. */
function planned(facts: ReversalFacts, asked: Partial<Asked> = {}): { readonly problem: Problem; readonly plan: Plan } {
	const problem = readProblem(problemOf(facts, { asFoundAt: FOUND, ...asked }));
	if (!problem.ok) throw new Error(problem.error.say);
	return { problem: problem.value, plan: planReversal(problem.value) };
}

describe("parts that exclude each other", () => {
	const seat = [aPositionRow("a"), aPositionRow("b")];

	it("are left out when one of them was entered in error, or is another machine's", () => {
		const { problem } = planned(
			someFacts({ positions: seat, parts: [aPartRow("x", "a")], exclusions: [{ partId: "x", otherId: "gone" }] }),
		);
		expect(problem.parts.flatMap(({ excludes }) => excludes ?? [])).toEqual([]);
	});

	it("do not keep a modern part at a place that nobody saw, when an original is to stand beside it", () => {
		const { problem, plan } = planned(
			someFacts({
				positions: seat,
				parts: [aPartRow("original"), aPartRow("modern", "b"), aPartRow("other", "a")],
				findings: [aFinding("a", "original"), aFinding("b", null, { state: "unseen" })],
				exclusions: [{ partId: "modern", otherId: "original" }],
			}),
		);
		expect(problem.target).toEqual({ "m-a": "t-original" });
		expect(plan.attains).toEqual({ "m-a": "t-original" });
	});

	it("do keep it there when nothing that was seen stands against it", () => {
		const { plan } = planned(
			someFacts({
				positions: seat,
				parts: [aPartRow("original", "a"), aPartRow("modern", "b"), aPartRow("spare")],
				findings: [aFinding("a", "original"), aFinding("b", null, { state: "unseen" })],
				exclusions: [{ partId: "modern", otherId: "spare" }],
			}),
		);
		expect(plan.operations).toEqual([]);
	});

	it("do not, when both were seen fitted: they can be", () => {
		const { plan } = planned(
			someFacts({
				positions: seat,
				parts: [aPartRow("x", "a"), aPartRow("y")],
				findings: [aFinding("a", "x"), aFinding("b", "y")],
				exclusions: [{ partId: "x", otherId: "y" }],
			}),
		);
		expect(plan.attains).toEqual({ "m-a": "t-x", "m-b": "t-y" });
	});
});

describe("what stood in the way from a side", () => {
	const covered = (sides: string) =>
		planned(
			someFacts({
				positions: [aPositionRow("a", { sides }), aPositionRow("b")],
				parts: [aPartRow("old"), aPartRow("new", "a"), aPartRow("panel", "b")],
				findings: [aFinding("a", "old"), aFinding("b", "panel")],
				obstructions: [{ partId: "panel", positionId: "a", side: "rear" }],
			}),
		).plan.openedOnly;

	it("blocks nothing once the position has other sides", () => {
		expect(covered('["front"]')).toEqual([]);
		expect(covered('["rear"]')).toEqual(["m-b"]);
	});

	it("blocks the one way in that is left when the position has no named sides any more", () => {
		expect(covered("[]")).toEqual(["m-b"]);
	});
});

describe("an alteration", () => {
	it("of a part that was entered in error, or is another machine's, is none of this machine", () => {
		const facts = someFacts({
			positions: [aPositionRow("a")],
			parts: [aPartRow("x", "a")],
			findings: [aFinding("a", "x")],
			alterations: [anAlteration(1, { partId: "gone" }), anAlteration(2, { partId: "x" })],
		});
		expect(planned(facts).problem.alterations?.map(({ id }) => id)).toEqual(["a2"]);
	});
});

describe("a part that was found at two positions", () => {
	const twice = (more: Partial<ReversalFacts>) =>
		planned(
			someFacts({
				positions: [aPositionRow("a"), aPositionRow("b"), aPositionRow("c")],
				parts: [aPartRow("x"), aPartRow("y", "a"), aPartRow("z", "b")],
				findings: [aFinding("a", "x", { at: "2026-01-01T02:00:00.000Z" }), aFinding("b", "x", { at: "2026-01-01T01:00:00.000Z" })].sort(
					(one, other) => (one.at < other.at ? -1 : 1),
				),
				...more,
			}),
		).problem.target;

	it("was where it is fitted, or was last; the other place keeps what it holds", () => {
		const ended = { untilAt: "2026-01-04T00:00:00.000Z" };
		expect(twice({ fittings: [aFitting("x", "b", ended), aFitting("x", "c")] })).toEqual({ "m-a": "t-y", "m-b": "t-x" });
		expect(twice({ fittings: [aFitting("x", "b"), aFitting("x", "a", ended)] })).toEqual({ "m-a": "t-y", "m-b": "t-x" });
		expect(twice({ fittings: [aFitting("x", "b", ended), aFitting("x", "a", ended)] })).toEqual({ "m-a": "t-x", "m-b": "t-z" });
	});

	it("was where the latest finding says, when it was never fitted in either", () => {
		expect(twice({})).toEqual({ "m-a": "t-x", "m-b": "t-z" });
	});
});

describe("any book", () => {
	const place = fc.constantFrom("a", "b", "c", "d", "elsewhere");
	const thing = fc.constantFrom("v", "w", "x", "y", "z", "void");
	const day = fc.integer({ min: 1, max: 9 }).map((n) => `2026-01-0${n}T00:00:00.000Z`);
	const side = fc.constantFrom("", "front", "rear");
	const book = fc
		.record({
			hosts: fc.array(fc.option(thing, { nil: null }), { minLength: 4, maxLength: 4 }),
			sides: fc.array(fc.constantFrom("[]", '["front"]', '["front","front"]', '["rear","",3]', "{}"), { minLength: 4, maxLength: 4 }),
			fitted: fc.array(fc.option(fc.constantFrom("v", "w", "x", "y", "z"), { nil: null }), { minLength: 4, maxLength: 4 }),
			asFound: fc.array(fc.constantFrom("yes" as const, "no" as const), { minLength: 4, maxLength: 4 }),
			findings: fc.array(
				fc.record({
					positionId: place,
					partId: fc.option(thing, { nil: null }),
					at: day,
					state: fc.constantFrom("there" as const, "missing" as const, "unseen" as const, "wrong" as const),
				}),
				{ maxLength: 8 },
			),
			fittings: fc.array(
				fc
					.tuple(thing, place, day, fc.option(day, { nil: null }), fc.constantFrom(null, "C1", "C2"))
					.map(([part, position, fromAt, untilAt, conversionId]) => aFitting(part, position, { fromAt, untilAt, conversionId })),
				{ maxLength: 6 },
			),
			obstructions: fc.array(fc.record({ partId: thing, positionId: place, side }), { maxLength: 6 }),
			exclusions: fc.array(fc.record({ partId: thing, otherId: thing }), { maxLength: 4 }),
			alterations: fc.array(
				fc.record({
					partId: fc.option(thing, { nil: null }),
					positionId: fc.option(place, { nil: null }),
					place: fc.constantFrom(null, "", "rear wall"),
					conversionId: fc.constantFrom(null, "C1", "C2"),
				}),
				{ maxLength: 4 },
			),
		})
		.map(({ hosts, sides, fitted, asFound, findings, fittings, obstructions, exclusions, alterations }): ReversalFacts => {
			const ids = ["a", "b", "c", "d"];
			const seats = new Map<string, string>();
			fitted.forEach((part, n) => {
				if (part !== null && !seats.has(part)) seats.set(part, ids[n] ?? "");
			});
			return someFacts({
				positions: ids.map((id, n) =>
					aPositionRow(id, { hostId: hosts[n] ?? null, sides: sides[n] ?? "[]", asFound: asFound[n] ?? "yes" }),
				),
				parts: ["v", "w", "x", "y", "z"].map((id) => aPartRow(id, seats.get(id) ?? null)),
				findings: [...findings].sort((one, other) => (one.at < other.at ? -1 : 1)),
				fittings: [...fittings].sort((one, other) => (one.fromAt < other.fromAt ? -1 : 1)),
				obstructions,
				exclusions,
				alterations: alterations.map((more, n) => anAlteration(n + 1, more)),
				conversions: [
					{ id: "C1", number: 1, name: "light", purpose: "ordinary" },
					{ id: "C2", number: 2, name: "mains safety", purpose: "safety" },
				],
			});
		})
		// What is fitted now is guarded by the database: no assembly is on itself there.
		.filter((facts) => !hangsOnItself(facts));

	/** Whether a walk from some position up over what its host is fitted in comes to no end. */
	function hangsOnItself({ positions, parts }: ReversalFacts): boolean {
		return positions.some(({ id }) => {
			let at: string | null = id;
			for (let n = 0; n <= positions.length && at !== null; n++) {
				const host: string | null = positions.find((position) => position.id === at)?.hostId ?? null;
				at = parts.find((part) => part.id === host)?.positionId ?? null;
			}
			return at !== null;
		});
	}

	const asked: fc.Arbitrary<Asked> = fc.record(
		{
			asFoundAt: fc.option(day.map(instant), { nil: null }),
			at: day.map(instant),
			conversions: fc.subarray(["C1", "C2"]),
			reason: fc.constant("shown unplugged"),
		},
		{ requiredKeys: ["asFoundAt"] },
	);

	it("can be planned from, whatever stale rows are in it", () => {
		fc.assert(
			fc.property(book, asked, (facts, question) => {
				expect(() => planned(facts, question)).not.toThrow();
			}),
			{ seed: 1845, numRuns: 800 },
		);
	});
});
