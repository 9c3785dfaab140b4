import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { linesNamed, linesOf, offeredNext, reachOf } from "@/lib/fittings/benchList";
import { mostOften, otherSide } from "@/lib/fittings/fixingOffers";
import type { ReachFacts } from "@/lib/fittings/reach";

/** Positions p0.. with parts q0.. in them; `covers` are pairs of a part and the position that it covers. */
function facts(count: number, covers: readonly (readonly [number, number])[]): ReachFacts {
	const ids = Array.from({ length: count }, (_, at) => at);
	return reachOf({
		positions: ids.map((at) => ({ id: `p${at}`, machineId: "m", hostId: null, sides: [] })),
		seatOf: ids.map((at) => [`q${at}`, `p${at}`] as const),
		covers: covers.map(([part, position], at) => ({ obstructionId: `o${at}`, partId: `q${part}`, positionId: `p${position}`, side: "" })),
	});
}
const seats = (count: number) => Array.from({ length: count }, (_, at) => ({ positionId: `p${at}`, partId: `q${at}` }));

describe("what a run of take-outs offers next", () => {
	it("is first what the last part that came out had covered, then what else is free, then what is behind something", () => {
		// The glass (0) covers the reels (2), the door (1) covers the lock (3), the reels cover the motor (4).
		const machine = facts(5, [
			[0, 2],
			[1, 3],
			[2, 4],
		]);
		expect(offeredNext(machine, seats(5), [])).toEqual({
			opened: [],
			free: ["p0", "p1"],
			behind: [
				{ positionId: "p2", parts: ["q0"] },
				{ positionId: "p3", parts: ["q1"] },
				{ positionId: "p4", parts: ["q2"] },
			],
		});
		expect(offeredNext(machine, seats(5), ["q0", "q1"]).opened).toEqual(["p2", "p3"]);
		expect(offeredNext(machine, seats(5), ["q1", "q0"])).toEqual({
			opened: ["p3", "p2"],
			free: [],
			behind: [{ positionId: "p4", parts: ["q2"] }],
		});
	});

	it("offers each occupied position once, and says free of exactly those whose covers are all out", () => {
		const pairs = fc.array(fc.tuple(fc.nat(7), fc.nat(7)), { maxLength: 12 });
		fc.assert(
			fc.property(pairs, fc.uniqueArray(fc.nat(7)), (covers, out) => {
				const machine = facts(8, covers);
				const outIds = out.map((at) => `q${at}`);
				const { opened, free, behind } = offeredNext(machine, seats(8), outIds);
				const offered = [...opened, ...free, ...behind.map(({ positionId }) => positionId)];
				expect(offered.toSorted()).toEqual(seats(8).flatMap(({ positionId, partId }) => (outIds.includes(partId) ? [] : [positionId])));
				const isFree = (at: number) => covers.every(([part, position]) => position !== at || part === at || out.includes(part));
				expect([...opened, ...free].toSorted()).toEqual(
					[0, 1, 2, 3, 4, 5, 6, 7].filter((at) => !out.includes(at) && isFree(at)).map((at) => `p${at}`),
				);
			}),
		);
	});
});

describe("the lists in words", () => {
	const lamp = { position: { id: "p1", name: "Lamp, left", mark: "p01" }, part: { name: "Lamp", tag: "12-0001-4" }, photo: "sha" };
	const other = { position: { id: "p2", name: "Lamp, right", mark: "p02" }, part: { name: "Lamp", tag: null }, photo: null };
	const lines = linesOf(
		[lamp, other],
		{ opened: [], free: ["p1", "gone"], behind: [{ positionId: "p2", parts: ["q1", "q9"] }] },
		new Map([["q1", "glass"]]),
	);
	const all = [...lines.free, ...lines.behind];

	it("say what is in the way, and leave out what is not a seat", () => {
		expect(lines).toEqual({
			opened: [],
			free: [{ positionId: "p1", mark: "p01", position: "Lamp, left", part: "Lamp", tag: "12-0001-4", hasPhoto: true, behind: [] }],
			behind: [
				{ positionId: "p2", mark: "p02", position: "Lamp, right", part: "Lamp", tag: null, hasPhoto: false, behind: ["glass", "a part"] },
			],
		});
	});
	it("are found by words of the name in any order, the mark or the tag", () => {
		expect(linesNamed(all, "right lamp")).toEqual(lines.behind);
		expect(linesNamed(all, "P01")).toEqual(lines.free);
		expect(linesNamed(all, "0001")).toEqual(lines.free);
		expect(linesNamed(all, "bell")).toEqual([]);
	});
});

describe("fixings that are offered", () => {
	it.each([
		["trim, left", "trim, right"],
		["Right hinge", "Left hinge"],
		["brightness dial", null],
		["strap from left to right", null],
	])("%s has its other side %s by its name", (name, other) => {
		expect(otherSide(name)).toBe(other);
		if (other !== null) expect(otherSide(other)).toBe(name);
	});

	const screw = (thread: string, count: number) => ({ count, thread, length: "", head: "", drive: "" });
	it("are those that a machine has most, with their commonest count, and then the shop's that the machine has not", () => {
		const here = [screw("4BA", 4), screw("M4", 2), screw("4BA", 2), screw("4BA", 4), screw("", 1)];
		const shop = [screw("M4", 9), screw("No.8", 3)];
		expect(mostOften(here, shop).map(({ count, thread }) => `${count} ${thread}`)).toEqual(["4 4BA", "2 M4", "3 No.8"]);
	});
});
