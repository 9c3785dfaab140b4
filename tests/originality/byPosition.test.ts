import { describe, expect, it } from "vitest";
import { byPosition, originalsOf } from "@/lib/originality/byPosition";
import { countOriginality, originalsIn } from "@/lib/originality/counts";
import { skerryLight } from "@/tests/originality/scenario";

describe("machine 12 of the acceptance scenario, position by position", () => {
	const facts = skerryLight("after");
	const counts = countOriginality(facts);
	const found = new Map(facts.positions.flatMap(({ id, found }) => (found?.partId ? [[id, found.partId] as const] : [])));
	const rows = byPosition(facts, found, null);

	it("has a row for each counted position, and the rows add up to the counts", () => {
		expect(rows).toHaveLength(counts.positions);
		expect([originalsOf(rows, "asFound"), originalsOf(rows, "now"), originalsOf(rows, "after"), originalsOf(rows, "atBest")]).toEqual([
			32,
			26,
			originalsIn(facts, found),
			0,
		]);
	});

	it("says of each original how it is known, and of nothing else", () => {
		const known = rows.flatMap(({ now }) => (now.held === "original" ? [now.evidence] : []));
		expect([known.filter((kind) => kind === "seen").length, known.filter((kind) => kind === "documented").length]).toEqual([25, 1]);
		expect(rows.filter(({ now }) => now.held !== "original").map(({ now }) => now.evidence)).not.toContain("seen");
	});

	it("says what became of an original that is not in its place", () => {
		const ballast = rows.find(({ mark }) => mark === "k07");
		expect(ballast?.now).toMatchObject({ mark: "lost", says: "empty; its original is scrapped" });
	});
});
