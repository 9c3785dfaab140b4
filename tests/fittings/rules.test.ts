import { describe, expect, it } from "vitest";
import type { Result } from "@/lib/core/result";
import type { ReachFacts } from "@/lib/fittings/reach";
import { coversInWords, listed, mayBeFitted, mayHaveBeen, mayHaveComeBefore, mayPutIn, type PutInFacts } from "@/lib/fittings/rules";

const refused = <T>(result: Result<T>) => {
	if (result.ok) throw new Error("it was not refused");
	return result.error;
};
const nowhere: ReachFacts = { positions: new Map(), seatOf: new Map(), covers: [] };
const names = new Map([
	["panel", { name: "Lower rear panel", tag: "12-0001-J" }],
	["glass", { name: "Front glass", tag: null }],
	["choke", { name: "Choke", tag: null }],
]);
const seat = { id: "k25", machineId: "m12", mark: "k25", name: "motor", kind: "seat" as const, sides: [] };
const motor = {
	id: "motor",
	name: "AC gearmotor",
	tag: "12-0026-1",
	machineId: "m12",
	machineNumber: 12,
	origin: "original" as const,
	place: "bag" as const,
	fittedIn: null,
	outIn: null,
};
const facts: PutInFacts = {
	position: seat,
	machineNumber: 12,
	occupant: null,
	part: motor,
	reach: {
		...nowhere,
		positions: new Map([
			["k25", { id: "k25", machineId: "m12", hostId: null, sides: [] }],
			["k01", { id: "k01", machineId: "m12", hostId: null, sides: [] }],
		]),
	},
	names,
	excludes: [],
	carries: [],
	safety: null,
	anyway: false,
	reason: "",
};

describe("what may go in", () => {
	it("a loose original of this machine goes into its empty position", () => {
		expect(mayPutIn(facts)).toEqual({ ok: true, value: { covers: [] } });
	});

	it("an occupied position names what is in it", () => {
		expect(refused(mayPutIn({ ...facts, occupant: { name: "Motor 24 V", tag: "12-0090-1" } })).say).toBe(
			"The motor 24 V (12-0090-1) is in motor (k25). Take it out first.",
		);
	});

	it("a place with no part of its own takes none", () => {
		expect(refused(mayPutIn({ ...facts, position: { ...seat, kind: "place" } })).code).toBe("place-holds-no-part");
	});

	it("an original of another machine needs a reason, and the sentence says which machine loses it", () => {
		const foreign = { ...facts, part: { ...motor, machineId: "m13", machineNumber: 13 } };
		const refusal = refused(mayPutIn(foreign));
		expect(refusal.code).toBe("original-of-another");
		expect(refusal.say).toContain("machine 13 loses it");
		expect(refusal.fields).toHaveProperty("reason");
		expect(mayPutIn({ ...foreign, reason: "13 is the donor" }).ok).toBe(true);
		expect(mayPutIn({ ...foreign, part: { ...foreign.part, origin: "modern" } }).ok).toBe(true);
	});

	it("a part of another machine that carries its original needs the reason as well", () => {
		const foreign = { ...facts, part: { ...motor, machineId: "m13", machineNumber: 13, origin: "modern" as const } };
		const carrying = { ...foreign, carries: [{ name: "Choke", machineNumber: 13 }] };
		expect(refused(mayPutIn(carrying))).toMatchObject({ code: "original-of-another", say: expect.stringContaining("carries the choke") });
		expect(mayPutIn({ ...carrying, reason: "13 is the donor" }).ok).toBe(true);
		expect(mayPutIn({ ...carrying, part: motor }).ok).toBe(true);
	});

	it("what was taken out for safety goes in again only with a reason", () => {
		const foil = { ...facts, safety: "mains safety" };
		expect(refused(mayPutIn(foil)).code).toBe("undoes-safety");
		expect(mayPutIn({ ...foil, reason: "for show, unplugged, in a case" }).ok).toBe(true);
	});

	it("two parts that exclude each other are not fitted together", () => {
		const fitted = { ...facts.reach, seatOf: new Map([["choke", "k01"]]) };
		const clash = { ...facts, reach: fitted, excludes: [{ ofId: "motor", partId: "choke", note: "same holes" }] };
		expect(refused(mayPutIn(clash)).say).toBe(
			"The AC gearmotor and the choke cannot be fitted together (same holes). Take the choke out first.",
		);
		expect(mayPutIn({ ...clash, anyway: true }).ok).toBe(true);
		expect(mayPutIn({ ...clash, reach: facts.reach }).ok).toBe(true);
	});

	it.each([
		["fitted", "part-elsewhere"],
		["out", "part-out"],
		["sold", "part-sold"],
		["lost", "part-lost"],
		["scrapped", "part-scrapped"],
		["void", "part-void"],
	] as const)("a part that is %s does not go in", (place, code) => {
		expect(refused(mayBeFitted({ name: "Lamp", place, fittedIn: null, outIn: null })).code).toBe(code);
	});
});

describe("what is said of covers", () => {
	const cover = (partId: string, side = "") => ({ obstructionId: `${partId}${side}`, partId, positionId: "k25", side });

	it("parts are named once, sides apart", () => {
		expect(coversInWords([cover("panel"), cover("glass")], names)).toBe("the lower rear panel and the front glass");
		expect(coversInWords([cover("glass", "front"), cover("panel", "rear")], names)).toBe(
			"front: the front glass; rear: the lower rear panel",
		);
		expect(coversInWords([cover("panel"), cover("panel")], names)).toBe("the lower rear panel");
		expect(coversInWords([], names)).toBe("");
	});

	it("lists are read aloud as people do", () => {
		expect([[], ["a"], ["a", "b"], ["a", "b", "c"]].map(listed)).toEqual(["", "a", "a and b", "a, b and c"]);
	});
});

describe("when and in what order", () => {
	it("nothing happens in the future, nor before what it follows", () => {
		const [now, earlier, before] = ["2026-03-02T10:00:00.000Z", "2026-03-02T09:00:00.000Z", "2026-03-02T08:00:00.000Z"];
		expect(mayHaveBeen(earlier, now, before, "it went in").ok).toBe(true);
		expect(mayHaveBeen(now, now, now, "it went in").ok).toBe(true);
		expect(refused(mayHaveBeen("2026-03-02T10:00:00.001Z", now, null, "")).code).toBe("not-yet");
		expect(refused(mayHaveBeen(before, now, earlier, "it went in")).say).toContain("before it went in");
	});

	it("a part that is still fitted did not have to come off first", () => {
		const reach: ReachFacts = { ...facts.reach, seatOf: new Map([["panel", "k01"]]) };
		const before = [{ partId: "panel", side: "" }];
		expect(refused(mayHaveComeBefore(seat, before, reach, names)).code).toBe("still-fitted");
		expect(mayHaveComeBefore(seat, before, facts.reach, names).ok).toBe(true);
		expect(refused(mayHaveComeBefore(seat, [{ partId: "who", side: "" }], facts.reach, names)).code).toBe("no-part");
		expect(refused(mayHaveComeBefore(seat, [{ partId: "panel", side: "rear" }], facts.reach, names)).code).toBe("no-such-side");
		const itself: ReachFacts = { ...facts.reach, seatOf: new Map([["panel", "k25"]]) };
		expect(refused(mayHaveComeBefore(seat, before, itself, names)).code).toBe("obstructs-itself");
	});
});
