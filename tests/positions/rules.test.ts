import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FindingState } from "@/lib/generated/prisma/enums";
import { type FoundPosition, mayObstruct, whatFindingMeans } from "@/lib/positions/rules";
import { threePointsField } from "@/lib/positions/threePoints";
import { refused } from "@/tests/machines/aMachine";

const STAMP = "2026-03-02T12:00:00.000Z";
const BEFORE = "2026-03-02T09:00:00.000Z";
const AFTER = "2026-03-05T09:00:00.000Z";
const own = { partId: "own", tag: "12-0001-J", since: BEFORE };
const later = { partId: "later", tag: "12-0050-9", since: AFTER };

const position = (more: Partial<FoundPosition> = {}): FoundPosition => ({
	mark: "k06",
	name: "starter",
	kind: "seat",
	asFoundAt: null,
	last: null,
	holds: null,
	...more,
});
const found = (state: FindingState, more: { at?: string; partId?: string | null } = {}) => ({ state, at: AFTER, partId: null, ...more });

describe("while the as found record is open", () => {
	it("what is there and not in the book yet is entered, fitted from the moment it was seen", () => {
		expect(whatFindingMeans(position(), found("there", { at: BEFORE }))).toMatchObject({ value: { what: "new-part", fromAt: BEFORE } });
	});

	it("what is there speaks of the part that is fitted", () => {
		expect(whatFindingMeans(position({ holds: own }), found("wrong"))).toMatchObject({ value: { what: "of-part", partId: "own" } });
	});

	it("what was entered and is missing after all is struck out", () => {
		expect(whatFindingMeans(position({ holds: own }), found("missing"))).toMatchObject({ value: { what: "strike-out", partId: "own" } });
	});
});

describe("after the stamp", () => {
	const stamped = (more: Partial<FoundPosition> = {}) => position({ asFoundAt: STAMP, ...more });

	it("nothing is dated back into the as found record", () => {
		expect(refused(whatFindingMeans(stamped(), found("there", { at: STAMP })))).toBe("as-found-stands");
	});

	it("what is seen for the first time has been there since the stamp", () => {
		expect(whatFindingMeans(stamped({ last: { state: "unseen", partId: null } }), found("there"))).toMatchObject({
			value: { what: "new-part", fromAt: STAMP },
		});
	});

	it("a part that was only presumed is struck out when it proves missing", () => {
		const presumed = stamped({ holds: own, last: { state: "unseen", partId: "own" } });
		expect(whatFindingMeans(presumed, found("missing"))).toMatchObject({ value: { what: "strike-out", partId: "own" } });
	});

	it("a part that was seen there cannot turn out missing while it is fitted", () => {
		const seen = stamped({ holds: own, last: { state: "there", partId: "own" } });
		expect(refused(whatFindingMeans(seen, found("missing")))).toBe("part-is-there");
	});

	it("a finding never speaks of a part that the shop put in", () => {
		expect(refused(whatFindingMeans(stamped({ holds: later }), found("there")))).toBe("holds-another");
		expect(whatFindingMeans(stamped({ holds: later, last: { state: "there", partId: "own" } }), found("wrong"))).toMatchObject({
			value: { what: "of-part", partId: "own" },
		});
		expect(whatFindingMeans(stamped({ holds: later }), found("missing"))).toMatchObject({ value: { what: "no-part" } });
	});

	it("what has been seen is never unseen again", () => {
		expect(refused(whatFindingMeans(stamped({ last: { state: "missing", partId: null } }), found("unseen")))).toBe("was-seen");
	});
});

it("a place holds no part, so nothing can be found there", () => {
	expect(refused(whatFindingMeans(position({ kind: "place" }), found("there")))).toBe("place-holds-no-part");
});

it("for any position, an accepted finding after the stamp never dates anything before it (seed 7)", () => {
	const state = fc.constantFrom<FindingState>("there", "missing", "wrong", "unseen");
	fc.assert(
		fc.property(
			state,
			fc.option(fc.record({ state, partId: fc.constantFrom("own", null) })),
			fc.constantFrom(own, later, null),
			(said, last, holds) => {
				const ruling = whatFindingMeans(position({ asFoundAt: STAMP, last, holds }), found(said));
				if (ruling.ok && ruling.value.what === "new-part") {
					expect(ruling.value.fromAt).toBe(STAMP);
					expect(holds).toBeNull();
				}
				if (ruling.ok && ruling.value.what === "strike-out") expect(ruling.value.partId).not.toBe(later.partId);
			},
		),
		{ seed: 7, numRuns: 200 },
	);
});

describe("what comes off first", () => {
	const seat = { mark: "k17", name: "optic", hostId: "host", holdsPartId: "optic", sides: ["front", "rear"] };
	const glass = { id: "glass", name: "front glass", sameMachine: true, isVoid: false };

	it("stands in the way from sides which the position has", () => {
		expect(mayObstruct(seat, glass, ["front"]).ok).toBe(true);
		expect(mayObstruct(seat, glass, []).ok).toBe(true);
		expect(refused(mayObstruct(seat, glass, ["top"]))).toBe("no-such-side");
	});

	it("is neither what fills the position nor what carries it", () => {
		expect(refused(mayObstruct(seat, { ...glass, id: "optic" }, []))).toBe("fills-it");
		expect(refused(mayObstruct(seat, { ...glass, id: "host" }, []))).toBe("carries-it");
	});

	it("is in this machine, and was not entered in error", () => {
		expect(refused(mayObstruct(seat, { ...glass, sameMachine: false }, []))).toBe("other-machine");
		expect(refused(mayObstruct(seat, { ...glass, isVoid: true }, []))).toBe("is-void");
	});
});

describe("a time in three points", () => {
	const read = (low: string, likely: string, high: string) => threePointsField.safeParse({ low, likely, high });

	it("is nothing when nothing is written, and fills what is left out from the likely time", () => {
		expect(read("", "", "").data).toBeNull();
		expect(read("", "10", "").data).toEqual({ low: 7, likely: 10, high: 20 });
		expect(read("5", "2 h 35", "4 h").data).toEqual({ low: 5, likely: 155, high: 240 });
	});

	it("wants a likely time, and its points in order", () => {
		expect(read("5", "", "9").error?.issues[0]?.path).toEqual(["likely"]);
		expect(read("9", "5", "20").error?.issues[0]?.message).toBe("Low is at most likely, and likely at most high.");
	});
});
