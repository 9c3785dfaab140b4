import { describe, expect, it } from "vitest";
import type { PlaceKind } from "@/lib/generated/prisma/enums";
import { nextPartNumbers } from "@/lib/parts/numbering";
import { type LeavingPart, mayComeBack, mayGoForGood, mayGoOut, mayLeave, whatIsLost, whatIsMissed } from "@/lib/parts/rules";
import { refused } from "@/tests/machines/aMachine";

const part = (place: PlaceKind, more: Partial<LeavingPart> = {}): LeavingPart => ({
	name: "motor",
	tag: "12-0025-1",
	origin: "original",
	place,
	...more,
});
const motor = { mark: "k25", name: "motor" };

describe("who may leave", () => {
	it("a part that is fitted is taken out first, whatever becomes of it", () => {
		for (const way of ["sold", "lost", "scrapped", "void", "out"] as const)
			expect(refused(mayLeave(part("fitted"), way))).toBe("still-fitted");
	});

	it("a loose part may go", () => {
		for (const place of ["bag", "location", "bench"] as const) expect(mayLeave(part(place), "scrapped").ok).toBe(true);
	});

	it("what is outside can be sold or lost there, but neither sent out again nor struck out", () => {
		expect(mayLeave(part("out"), "sold").ok).toBe(true);
		expect(mayLeave(part("out"), "lost").ok).toBe(true);
		expect(refused(mayLeave(part("out"), "out"))).toBe("not-here");
		expect(refused(mayLeave(part("out"), "void"))).toBe("not-here");
	});

	it("what is gone cannot go again", () => {
		for (const place of ["sold", "lost", "scrapped", "void"] as const) expect(refused(mayLeave(part(place), "scrapped"))).toBe("not-here");
	});
});

describe("an original", () => {
	it("is not scrapped, sold or lost without a reason, and the refusal says how many positions lose by it", () => {
		for (const way of ["sold", "lost", "scrapped"] as const) {
			const ruling = mayGoForGood(part("bag"), way, [motor], "");
			expect(refused(ruling)).toBe("original-needs-reason");
			if (!ruling.ok) {
				expect(ruling.error.say).toContain("1 position can never be original again: k25 motor.");
				expect(ruling.error.facts).toMatchObject({ loses: ["k25"], count: 1 });
			}
			expect(mayGoForGood(part("bag"), way, [motor], "winding open, no rewinder will take it").ok).toBe(true);
		}
	});

	it("that no position is known to miss still needs one", () => {
		expect(refused(mayGoForGood(part("bench"), "sold", [], ""))).toBe("original-needs-reason");
	});

	it("goes out only with a day on which it is due back", () => {
		expect(refused(mayGoOut(part("bag"), null))).toBe("original-needs-due-day");
		expect(mayGoOut(part("bag"), "2026-05-01").ok).toBe(true);
		expect(mayGoOut(part("bag", { origin: "modern" }), null).ok).toBe(true);
	});

	it("is told apart from what was only in it when it came", () => {
		const clock = { mark: "k12", name: "clock", original: false };
		expect(whatIsLost(part("bag", { origin: "modern" }), [clock])).toBe("1 position can never be as found again: k12 clock.");
		expect(whatIsLost(part("bag"), [motor, clock])).toBe(
			"1 position can never be original again: k25 motor. 1 position can never be as found again: k12 clock.",
		);
		const ruling = mayGoForGood(part("bag", { origin: "modern" }), "sold", [clock], "");
		expect(ruling.ok ? "" : ruling.error.say).toContain("was in the machine when it came.");
	});

	it("is only missed while it is lent", () => {
		expect(whatIsMissed([motor])).toBe("1 position cannot be original while it is away: k25 motor.");
		expect(whatIsMissed([])).toBe("");
	});

	it("names at most five of many positions and says how many more", () => {
		const many = Array.from({ length: 8 }, (_, index) => ({ mark: `k0${index}`, name: "reel" }));
		expect(whatIsLost(part("bag"), many)).toBe(
			"8 positions can never be original again: k00 reel, k01 reel, k02 reel, k03 reel, k04 reel and 3 more.",
		);
	});
});

describe("what is not original", () => {
	it("is sold without a word, but lost, scrapped or struck out with one", () => {
		const lamp = part("bench", { origin: "modern" });
		expect(mayGoForGood(lamp, "sold", [], "").ok).toBe(true);
		for (const way of ["lost", "scrapped", "void"] as const) expect(refused(mayGoForGood(lamp, way, [], ""))).toBe("needs-reason");
	});

	it("that carries an original on it needs the reason as well", () => {
		expect(refused(mayGoForGood(part("bench", { origin: "modern" }), "sold", [motor], ""))).toBe("original-needs-reason");
	});
});

describe("coming back", () => {
	it("needs no word after a loan, and one after a sale, a loss or the skip", () => {
		expect(mayComeBack(part("out"), "").ok).toBe(true);
		for (const place of ["sold", "lost", "scrapped"] as const) {
			expect(refused(mayComeBack(part(place), ""))).toBe("needs-reason");
			expect(mayComeBack(part(place), "found behind the bench").ok).toBe(true);
		}
	});

	it("is nothing for what is in the shop, or was never there", () => {
		for (const place of ["bag", "bench", "fitted", "void"] as const) expect(refused(mayComeBack(part(place), "x"))).toBe("is-here");
	});
});

describe("the numbers of a machine's parts", () => {
	const numbers = (given: { number: number; partId: string | null }[], count: number) => {
		const next = nextPartNumbers(12, given, count);
		return next.ok ? next.value : next.error.code;
	};

	it("begin at 1 and go on from the last part's", () => {
		expect(numbers([], 3)).toEqual([1, 2, 3]);
		expect(numbers([{ number: 40, partId: "x" }], 2)).toEqual([41, 42]);
	});

	it("pass over what a bag bears and what is never printed", () => {
		const bags = Array.from({ length: 5 }, (_, index) => ({ number: 201 + index, partId: null }));
		// 12-0203 would end in *, and is skipped for bags and parts alike.
		expect(numbers([{ number: 200, partId: "x" }, ...bags], 2)).toEqual([206, 207]);
		expect(numbers([{ number: 202, partId: "x" }], 1)).toEqual([204]);
	});

	it("do not start behind the bags", () => {
		expect(numbers([{ number: 201, partId: null }], 1)).toEqual([1]);
	});

	it("end at 9999 with a sentence", () => {
		expect(numbers([{ number: 9999, partId: "x" }], 1)).toBe("tags-used-up");
	});
});
