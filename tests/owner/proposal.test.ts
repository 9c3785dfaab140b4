import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { minor } from "@/lib/money/money";
import { moreBasis, proposedLines, quoteBasis, statementBasis } from "@/lib/owner/proposal";
import { STEP_KINDS } from "@/lib/steps/schema";
import { job, person, step, TODAY } from "@/tests/owner/aJob";

const NONE = new Set<string>();
const plain = { by: "kind", handling: "", contingency: "" } as const;
const nets = (lines: readonly { readonly net: number | null }[]) => lines.map(({ net }) => net);
const total = (lines: readonly { readonly net: number | null }[]) => lines.reduce((sum, { net }) => sum + (net ?? Number.NaN), 0);

describe("a quote is proposed", () => {
	it("at what each person is charged at, by kind of step or by person", () => {
		const of = job({ steps: [step(1), step(2, { kind: "clean", crew: ["A", "B"] }), step(3, { kind: "clean", crew: ["B"] })] });
		const basis = quoteBasis(of, { today: TODAY, covered: NONE });
		expect(basis.labour.kind.map(({ words, net }) => [words, net])).toEqual([
			["Labour, clean: about 3 h", 24_000],
			["Labour, repair: about 1 h", 6000],
		]);
		expect(basis.labour.person.map(({ words, net }) => [words, net])).toEqual([
			["Labour, Person A: about 2 h", 12_000],
			["Labour, Person B: about 2 h", 18_000],
		]);
	});

	it("to the same total, whichever way labour is grouped", () => {
		const anyStep = fc.record({
			low: fc.nat(90),
			more: fc.nat(90),
			most: fc.nat(400),
			kind: fc.constantFrom(...STEP_KINDS),
			crew: fc.subarray(["A", "B", "C"], { minLength: 1 }),
		});
		fc.assert(
			fc.property(fc.array(anyStep, { minLength: 1, maxLength: 25 }), fc.nat(20_000), (some, charge) => {
				const steps = some.map(({ low, more, most, kind, crew }, at) =>
					step(at + 1, { low, likely: low + more, high: low + more + most, kind, crew }),
				);
				const of = job({ steps, persons: [person("A", 6600), person("B", 8399), person("C", charge)] });
				const { labour } = quoteBasis(of, { today: TODAY, covered: NONE });
				expect(total(labour.kind)).toBe(total(labour.person));
			}),
		);
	});

	it("from the first plan: what was added is in it only once the owner has agreed to it, and what was dropped is not", () => {
		const of = job({ steps: [step(1), step(2, { addedWhy: "rotten" }), step(3, { state: "dropped" })] });
		const hours = (covered: ReadonlySet<string>) => total(quoteBasis(of, { today: TODAY, covered }).labour.kind) / 6000;
		expect([hours(NONE), hours(new Set(["s2"]))]).toEqual([1, 2]);
	});

	it("with parts at what they cost landed and so many per cent more, and with contingency on everything", () => {
		const of = job({
			steps: [step(1)],
			wanted: [
				{ id: "w1", words: "belt", estimated: minor(1157), toCome: minor(1157), stands: "to-come", addedWhy: "", lineId: null },
				{ id: "w2", words: "seal", estimated: minor(753), toCome: minor(0), stands: "used", addedWhy: "", lineId: null },
				{ id: "w3", words: "board", estimated: minor(900), toCome: minor(900), stands: "to-come", addedWhy: "rotten", lineId: null },
			],
			costs: [{ id: "c1", words: "rewinding", kindWords: "outside work", state: "planned", estimated: minor(28_500), spent: minor(0) }],
		});
		const lines = proposedLines(quoteBasis(of, { today: TODAY, covered: NONE }), { by: "kind", handling: "10", contingency: "5" });
		// 11.57 and 1.157 is 12.73; 60.00 + 12.73 + 285.00 is 357.73, of which a twentieth is 17.8865.
		expect(lines.map(({ words, net }) => [words, net])).toEqual([
			["Labour, repair: about 1 h", 6000],
			["belt", 1273],
			["rewinding", 28_500],
			["Contingency, 5 %", 1789],
		]);
	});

	it("of the whole job: a motor that is used already is in it at what it cost, beside the belt that is still to come", () => {
		const of = job({
			uses: [{ lineId: "l1", what: "motor", count: 1, amount: minor(10_000) }],
			wanted: [
				{ id: "w1", words: "motor", estimated: minor(9500), toCome: minor(0), stands: "used", addedWhy: "", lineId: "l1" },
				{ id: "w2", words: "belt", estimated: minor(500), toCome: minor(500), stands: "to-come", addedWhy: "", lineId: null },
			],
		});
		const { parts } = quoteBasis(of, { today: TODAY, covered: NONE });
		expect(parts.map(({ words, net }) => [words, net])).toEqual([
			["1 × motor", 10_000],
			["belt", 500],
		]);
	});

	it("without what was used for work that the owner was not asked about; more work found asks for it", () => {
		const of = job({
			uses: [
				{ lineId: "l1", what: "board", count: 2, amount: minor(800) },
				{ lineId: "l2", what: "screws", count: 8, amount: minor(90) },
			],
			wanted: [{ id: "w1", words: "board", estimated: minor(900), toCome: minor(0), stands: "used", addedWhy: "rotten", lineId: "l1" }],
		});
		const quoted = (covered: ReadonlySet<string>) => quoteBasis(of, { today: TODAY, covered }).parts.map(({ words }) => words);
		expect(quoted(NONE)).toEqual(["8 × screws"]);
		expect(quoted(new Set(["w1"]))).toEqual(["2 × board", "8 × screws"]);
		expect(moreBasis(of, { today: TODAY, covered: NONE }).parts).toEqual([{ words: "board", net: 800, about: "w1" }]);
		expect(moreBasis(of, { today: TODAY, covered: new Set(["w1"]) }).parts).toEqual([]);
	});

	it("never at nothing where a rate is missing: the line is left open, and who and when are named", () => {
		const of = job({
			steps: [step(1), step(2, { kind: "clean", crew: ["B"] })],
			persons: [person("A", 6000), person("B", 9000, "2026-06-01")],
		});
		const basis = quoteBasis(of, { today: TODAY, covered: NONE });
		expect(nets(basis.labour.kind)).toEqual([null, 6000]);
		expect(basis.missingRates).toEqual([{ name: "Person B", day: TODAY }]);
		expect(nets(proposedLines(basis, { ...plain, contingency: "10" })).at(-1)).toBeNull();
	});

	it("and names the steps that are planned for nobody", () => {
		expect(quoteBasis(job({ steps: [step(1), step(2, { crew: [] })] }), { today: TODAY, covered: NONE }).nobody).toEqual([2]);
	});
});

describe("more work found is proposed", () => {
	it("a line for each step and part that was added and is in no paper yet", () => {
		const of = job({
			steps: [step(1), step(2, { addedWhy: "rotten" }), step(3, { addedWhy: "cracked" })],
			wanted: [
				{ id: "w1", words: "board", estimated: minor(900), toCome: minor(900), stands: "to-come", addedWhy: "rotten", lineId: null },
			],
		});
		const lines = proposedLines(moreBasis(of, { today: TODAY, covered: new Set(["s3"]) }), { ...plain, handling: "10" });
		expect(lines).toEqual([
			{ words: "Step 2: work 2", net: 6000, about: "s2" },
			{ words: "board", net: 990, about: "w1" },
		]);
	});
});

describe("a statement is proposed", () => {
	it("from what was really done: time at the rate of its own day, parts used, and what was spent", () => {
		const of = job({
			steps: [step(1), step(2)],
			persons: [
				{
					id: "A",
					name: "Person A",
					rates: [
						{ from: day("2026-01-01"), costPerHour: minor(100), chargePerHour: minor(6000) },
						{ from: day("2026-05-10"), costPerHour: minor(100), chargePerHour: minor(7200) },
					],
				},
			],
			work: [
				{ stepId: "s1", personId: "A", minutes: 30, day: day("2026-05-09") },
				{ stepId: "s1", personId: "A", minutes: 30, day: day("2026-05-10") },
			],
			uses: [
				{ lineId: "l1", what: "screws", count: 4, amount: minor(101) },
				{ lineId: "l1", what: "screws", count: 2, amount: minor(50) },
			],
			costs: [
				{ id: "c1", words: "swabs", kindWords: "consumables", state: "spent", estimated: minor(0), spent: minor(640) },
				{ id: "c2", words: "rewinding", kindWords: "outside work", state: "planned", estimated: minor(28_500), spent: minor(0) },
			],
		});
		expect(proposedLines(statementBasis(of, TODAY), { ...plain, by: "person", handling: "10" })).toEqual([
			{ words: "Labour, Person A: 1 h", net: 6600, about: null },
			{ words: "6 × screws", net: 166, about: null },
			{ words: "swabs", net: 640, about: null },
		]);
	});

	const SOLD_BACK = {
		uses: [{ lineId: "l1", what: "clips", count: 4, amount: minor(1200) }],
		returns: [
			{ id: "u2", what: "clips", count: 6, kept: minor(600), awaited: minor(0) },
			{ id: "u3", what: "lamp", count: 1, kept: minor(0), awaited: minor(400) },
		],
		offPrice: [{ id: "c1", purchase: 7, amount: minor(250) }],
	};

	it("with what a seller kept of what was sent back, without handling, and with what they took off the price, with it", () => {
		const basis = statementBasis(job(SOLD_BACK), TODAY);
		expect(proposedLines(basis, { ...plain, handling: "10" }).map(({ words, net }) => [words, net])).toEqual([
			["4 × clips", 1320],
			["Taken off the price, purchase 7", -275],
			["6 × clips sent back, what the seller kept", 600],
		]);
	});

	it("and what no seller has answered for is in no line, and named", () => {
		const named = (basis: { awaited: readonly { what: string }[] }) => basis.awaited.map(({ what }) => what);
		expect(named(statementBasis(job(SOLD_BACK), TODAY))).toEqual(["lamp"]);
		expect(named(quoteBasis(job(SOLD_BACK), { today: TODAY, covered: NONE }))).toEqual(["lamp"]);
	});

	it("a person's time before their first rate is left open, not given away", () => {
		const of = job({ steps: [step(1)], work: [{ stepId: "s1", personId: "A", minutes: 30, day: day("2025-12-31") }] });
		const basis = statementBasis(of, TODAY);
		expect([nets(basis.labour.person), basis.missingRates]).toEqual([[null], [{ name: "Person A", day: "2025-12-31" }]]);
	});
});
