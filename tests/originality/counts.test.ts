import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { EvidenceKind, FindingState, Origin, PlaceKind } from "@/lib/generated/prisma/enums";
import { countOriginality, evidenceInWords, heldInWords, originalityStatement, originalsIn, strongestOf } from "@/lib/originality/counts";
import type { Held, OriginFacts } from "@/lib/originality/facts";
import { stripOf } from "@/lib/originality/strip";
import { skerryLight } from "@/tests/originality/scenario";

const held = (counts: Partial<Record<Held, number>>) => ({
	original: 0,
	period: 0,
	reproduction: 0,
	modern: 0,
	unknown: 0,
	missing: 0,
	unseen: 0,
	empty: 0,
	...counts,
});

describe("machine 12 of the acceptance scenario", () => {
	const found = countOriginality(skerryLight("found"));
	const after = countOriginality(skerryLight("after"));

	it("has 40 positions as found: 32 original, 1 period, 4 modern, 3 unknown", () => {
		expect([found.positions, found.asFound]).toEqual([40, held({ original: 32, period: 1, modern: 4, unknown: 3 })]);
		expect(after.asFound).toEqual(found.asFound);
	});

	it("knows 29 of the 32 originals by sight and 3 by documents", () => {
		expect(found.evidenceAsFound).toEqual({ seen: 29, documented: 3, told: 0, assumed: 0, none: 0 });
	});

	it("holds, of the same 40, 26 original, 2 period, 2 reproduction, 6 modern and 4 empty after the work", () => {
		expect(after.now).toEqual(held({ original: 26, period: 2, reproduction: 2, modern: 6, empty: 4 }));
	});

	it("knows 25 of those 26 by sight and 1 by documents", () => {
		expect(after.evidenceNow).toEqual({ seen: 25, documented: 1, told: 0, assumed: 0, none: 0 });
	});

	it("has 5 new places, all modern", () => {
		expect(after.added).toEqual(held({ modern: 5 }));
	});

	it("has 5 originals kept and 1 gone by law, and can be 31 of 40 at best", () => {
		expect([after.kept, after.gone, after.attainable]).toEqual([5, 1, 31]);
	});

	it("says so in one honest sentence", () => {
		expect(originalityStatement(after)).toBe(
			"26 of 40 recorded positions hold the part they had when the machine was made, as far as we know (25 seen by us, 1 documented).",
		);
		expect(heldInWords(after.now)).toBe("original 26, period 2, reproduction 2, modern 6, empty 4");
		expect(evidenceInWords(after.evidenceNow)).toBe("25 seen by us, 1 documented");
	});

	it("shows every position as one mark: filled, outlined, hatched, crossed, dot", () => {
		const facts = skerryLight("after");
		const states = new Map(stripOf(facts, "now").flatMap((area) => area.positions.map((position) => [position.mark, position.state])));
		expect(["k01", "k08", "k25", "k12", "k07", "k05", "n1"].map((mark) => states.get(mark))).toEqual([
			"original",
			"kept",
			"kept",
			"not-original",
			"lost",
			"empty",
			"not-original",
		]);
		expect(stripOf(facts, "as-found").flatMap((area) => area.positions)).toHaveLength(40);
	});

	it("does not call a part not original whose origin nobody knows", () => {
		const facts = skerryLight("after");
		const unsure = {
			...facts,
			parts: facts.parts.map((part) => (part.origin === "modern" ? { ...part, origin: "unknown" as const } : part)),
		};
		const stateOf = (of: typeof facts) =>
			stripOf(of, "now")
				.flatMap((area) => area.positions)
				.find(({ mark }) => mark === "n1")?.state;
		expect([stateOf(facts), stateOf(unsure)]).toEqual(["not-original", "unknown"]);
	});

	it("falls to 30 at best when the original motor is scrapped", () => {
		const facts = skerryLight("after");
		const without = {
			...facts,
			parts: facts.parts.map((part) => (part.id === "k25-found" ? { ...part, place: "scrapped" as const } : part)),
		};
		expect(countOriginality(without).attainable).toBe(30);
	});
});

describe("evidence", () => {
	it("counts by its strongest piece: seen, documented, told, assumed", () => {
		expect(strongestOf(["assumed", "told", "documented"])).toBe("documented");
		expect(strongestOf(["assumed", "seen"])).toBe("seen");
		expect(strongestOf([])).toBeNull();
	});
});

const KINDS: EvidenceKind[] = ["seen", "documented", "told", "assumed"];
const ORIGINS: Origin[] = ["original", "period", "reproduction", "modern", "unknown"];
const LOOSE: PlaceKind[] = ["bag", "location", "bench", "out", "sold", "lost", "scrapped", "void"];

/** Any machine: parts that came, parts put in since, positions of every kind, without assemblies. */
const anyMachine = (): fc.Arbitrary<OriginFacts> =>
	fc
		.array(
			fc.record({
				place: fc.boolean(),
				made: fc.boolean(),
				state: fc.constantFrom<FindingState>("there", "missing", "wrong", "unseen"),
				came: fc.option(fc.record({ origin: fc.constantFrom(...ORIGINS), at: fc.constantFrom(...LOOSE), evidence: fc.subarray(KINDS) })),
				now: fc.constantFrom("came", "new", "empty"),
				fresh: fc.constantFrom(...ORIGINS),
			}),
			{ maxLength: 30 },
		)
		.map((rows) => {
			const positions: OriginFacts["positions"][number][] = [];
			const parts: OriginFacts["parts"][number][] = [];
			for (const [index, row] of rows.entries()) {
				const id = `p${index}`;
				const came = row.place || row.made || row.came === null || row.state === "missing" ? null : `${id}-came`;
				const fresh = row.place || row.now !== "new" ? null : `${id}-new`;
				const holds = row.now === "came" ? came : fresh;
				positions.push({
					id,
					mark: id,
					name: id,
					area: "",
					kind: row.place ? "place" : "seat",
					asFound: !row.made,
					hostId: null,
					found: row.made || row.place ? null : { state: row.state, partId: came },
					holds,
					held: [came, fresh].filter((part) => part !== null),
				});
				if (came !== null && row.came !== null) {
					parts.push({
						id: came,
						origin: row.came.origin,
						place: holds === came ? "fitted" : row.came.at,
						own: true,
						evidence: row.came.evidence,
					});
				}
				if (fresh !== null) parts.push({ id: fresh, origin: row.fresh, place: "fitted", own: true, evidence: [] });
			}
			return { positions, parts };
		});

const sum = (counts: Readonly<Record<string, number>>): number => Object.values(counts).reduce((total, count) => total + count, 0);

describe("for any machine (seed 418)", () => {
	const settings = { seed: 418, numRuns: 400 };

	it("every counted position is counted once as found and once now", () => {
		fc.assert(
			fc.property(anyMachine(), (facts) => {
				const counts = countOriginality(facts);
				expect(sum(counts.asFound)).toBe(counts.positions);
				expect(sum(counts.now)).toBe(counts.positions);
				expect(counts.positions + sum(counts.added)).toBe(facts.positions.filter((position) => position.kind === "seat").length);
			}),
			settings,
		);
	});

	it("every original counted is counted once by its evidence", () => {
		fc.assert(
			fc.property(anyMachine(), (facts) => {
				const counts = countOriginality(facts);
				expect(sum(counts.evidenceAsFound)).toBe(counts.asFound.original);
				expect(sum(counts.evidenceNow)).toBe(counts.now.original);
			}),
			settings,
		);
	});

	it("the most that can be attained is what is original now and what is kept", () => {
		fc.assert(
			fc.property(anyMachine(), (facts) => {
				const counts = countOriginality(facts);
				expect(counts.attainable).toBe(counts.now.original + counts.kept);
				expect(counts.attainable + counts.gone).toBeLessThanOrEqual(counts.positions);
			}),
			settings,
		);
	});

	it("the strip shows each seat once and its filled marks are the originals that are fitted", () => {
		fc.assert(
			fc.property(anyMachine(), (facts) => {
				const marks = stripOf(facts, "now").flatMap((area) => area.positions);
				const counts = countOriginality(facts);
				expect(marks).toHaveLength(counts.positions + sum(counts.added));
				expect(marks.filter((mark) => mark.state === "original")).toHaveLength(counts.now.original + counts.added.original);
				expect(marks.filter((mark) => mark.state === "lost").length).toBeGreaterThanOrEqual(counts.gone);
				expect(marks.filter((mark) => mark.state === "unseen")).toHaveLength(counts.now.unseen + counts.added.unseen);
			}),
			settings,
		);
	});

	it("losing one more part never raises what can be attained", () => {
		fc.assert(
			fc.property(anyMachine(), fc.nat(), (facts, pick) => {
				const loose = facts.parts.filter((part) => part.place !== "fitted");
				const lost = loose[pick % Math.max(1, loose.length)];
				const fewer = { ...facts, parts: facts.parts.map((part) => (part === lost ? { ...part, place: "lost" as const } : part)) };
				expect(countOriginality(fewer).attainable).toBeLessThanOrEqual(countOriginality(facts).attainable);
			}),
			settings,
		);
	});

	it("the build of now counts as many originals as the machine holds", () => {
		fc.assert(
			fc.property(anyMachine(), (facts) => {
				const holding = new Map(
					facts.positions.flatMap((position) => (position.holds === null ? [] : [[position.id, position.holds] as const])),
				);
				expect(originalsIn(facts, holding)).toBe(countOriginality(facts).now.original);
			}),
			settings,
		);
	});
});

describe("an assembly that is gone", () => {
	it("takes the originals that sit on it along", () => {
		const facts = skerryLight("found");
		// k03, the sign box, carries k04 and k09; k04 carries k05 to k08.
		const sold: OriginFacts = {
			positions: facts.positions.map((position) => (position.id === "k03" ? { ...position, holds: null } : position)),
			parts: facts.parts.map((part) => (part.id === "k03-found" ? { ...part, place: "sold" as const } : part)),
		};
		const states = new Map(stripOf(sold, "now").flatMap((area) => area.positions.map((position) => [position.mark, position.state])));
		expect(states.get("k03")).toBe("lost");
		expect(countOriginality(sold).gone).toBe(1 + 4);
	});
});
