import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Cover, hostsOf, isReachable, obstructedBy, type ReachFacts, whatCovers, wholeOf, withoutPart } from "@/lib/fittings/reach";

/** "lamp on tray behind front:door,tray": positions with a part each, named alike; "-lamp" is empty. */
function build(...lines: string[]): ReachFacts {
	const positions = new Map<string, { id: string; machineId: string; hostId: string | null; sides: string[] }>();
	const seatOf = new Map<string, string>();
	const covers: Cover[] = [];
	for (const line of lines) {
		const [, empty, id = "", host, sides, behind] = /^(-?)(\w+)(?: on (\w+))?(?: sides ([\w,]+))?(?: behind ([\w:,]+))?$/.exec(line) ?? [];
		positions.set(id, { id, machineId: "m", hostId: host ?? null, sides: sides?.split(",") ?? [] });
		if (!empty) seatOf.set(id, id);
		for (const cover of behind?.split(",") ?? []) {
			const [part = "", side = ""] = cover.split(":").reverse();
			covers.push({ obstructionId: `${part}>${id}`, partId: part, positionId: id, side });
		}
	}
	return { positions, seatOf, covers };
}
const namesOf = (covers: readonly Cover[]) => covers.map((cover) => cover.partId);

describe("reach", () => {
	it("a lamp behind a door is reached once the door is off", () => {
		const facts = build("door", "lamp behind door");
		expect(namesOf(whatCovers(facts, "lamp"))).toEqual(["door"]);
		expect(isReachable(withoutPart(facts, "door"), "lamp")).toBe(true);
		expect(isReachable(facts, "door")).toBe(true);
	});

	it("one free side is enough, and with none free every side is named", () => {
		const facts = build("glass", "panel", "optic sides front,rear behind front:glass,rear:panel");
		expect(namesOf(whatCovers(facts, "optic"))).toEqual(["glass", "panel"]);
		expect(isReachable(withoutPart(facts, "panel"), "optic")).toBe(true);
		expect(isReachable(withoutPart(facts, "glass"), "optic")).toBe(true);
	});

	it("what covers from every side leaves no side free", () => {
		const facts = build("glass", "scene", "optic sides front,rear behind front:glass,scene");
		expect(namesOf(whatCovers(withoutPart(facts, "glass"), "optic"))).toEqual(["scene"]);
	});

	it("a host on the bench frees its guests from what blocked them in the machine, not from its own parts", () => {
		const facts = build("box", "tray on box", "tube on tray behind box", "cap on tray behind tube", "bulb on tray behind cap");
		expect(namesOf(whatCovers(facts, "tube"))).toEqual(["box"]);
		const onBench = withoutPart(facts, "tray");
		expect(isReachable(onBench, "tube")).toBe(true);
		expect(namesOf(whatCovers(onBench, "bulb"))).toEqual(["cap"]);
		expect(wholeOf(onBench, "tube")).toBe("part:tray");
		expect(wholeOf(facts, "tube")).toBe("machine:m");
	});

	it("a part on the bench covers nothing that is still in the machine", () => {
		const facts = build("plate", "wheel on plate", "belt behind wheel");
		expect(isReachable(facts, "belt")).toBe(false);
		expect(isReachable(withoutPart(facts, "plate"), "belt")).toBe(true);
	});

	it("a part never covers the position that it is in", () => {
		const facts = build("lamp");
		const own = { ...facts, covers: [{ obstructionId: "o", partId: "lamp", positionId: "lamp", side: "" }] };
		expect(isReachable(own, "lamp")).toBe(true);
	});

	it("what covers from a side that the position no longer has covers nothing, unless it has no named sides at all any more", () => {
		expect(isReachable(build("panel", "optic sides front behind rear:panel"), "optic")).toBe(true);
		expect(namesOf(whatCovers(build("panel", "optic behind rear:panel"), "optic"))).toEqual(["panel"]);
	});

	it("the hosts of a position are named from the inside out", () => {
		const facts = build("box", "tray on box", "tube on tray");
		expect(hostsOf(facts, "tube")).toEqual(["tray", "box"]);
	});

	it("a record that goes in a circle is no endless loop", () => {
		const facts: ReachFacts = {
			positions: new Map([
				["a", { id: "a", machineId: "m", hostId: "B", sides: [] }],
				["b", { id: "b", machineId: "m", hostId: "A", sides: [] }],
			]),
			seatOf: new Map([
				["A", "a"],
				["B", "b"],
			]),
			covers: [],
		};
		expect(wholeOf(facts, "a")).toMatch(/^nowhere/);
		expect(hostsOf(facts, "a")).toEqual(["B", "A"]);
	});

	// The definition of reach, written out: reachable if, from at least one of its sides, no part that is fitted in the same
	// whole obstructs it. Slow and obvious.
	const reachableByDefinition = (facts: ReachFacts, id: string): boolean => {
		const root = (at: string): string => {
			const host = facts.positions.get(at)?.hostId ?? null;
			if (host === null) return "machine";
			const seat = facts.seatOf.get(host);
			return seat === undefined ? host : root(seat);
		};
		const sides = facts.positions.get(id)?.sides ?? [];
		return (sides.length === 0 ? [null] : sides).some((side) =>
			facts.covers.every((cover) => {
				const seat = facts.seatOf.get(cover.partId);
				const isInTheWay = cover.positionId === id && (side === null || cover.side === "" || cover.side === side);
				return !isInTheWay || seat === undefined || seat === id || root(seat) !== root(id);
			}),
		);
	};

	const anyBuild = fc
		.array(
			fc.record({
				host: fc.option(fc.nat(7), { nil: null }),
				filled: fc.boolean(),
				sides: fc.constantFrom([], ["front", "rear"]),
			}),
			{ minLength: 1, maxLength: 8 },
		)
		.chain((rows) =>
			fc.record({
				rows: fc.constant(rows),
				covers: fc.array(
					fc.record({ part: fc.nat(rows.length - 1), position: fc.nat(rows.length - 1), side: fc.constantFrom("", "front", "rear") }),
					{ maxLength: 12 },
				),
			}),
		)
		.map(
			({ rows, covers }): ReachFacts => ({
				// A host comes before its guests, so nothing hosts itself.
				positions: new Map(
					rows.map((row, at) => [
						`p${at}`,
						{ id: `p${at}`, machineId: "m", hostId: row.host !== null && row.host < at ? `x${row.host}` : null, sides: row.sides },
					]),
				),
				seatOf: new Map(rows.flatMap((row, at) => (row.filled ? [[`x${at}`, `p${at}`] as const] : []))),
				covers: covers.map((cover, at) => ({
					obstructionId: `o${at}`,
					partId: `x${cover.part}`,
					positionId: `p${cover.position}`,
					side: cover.side,
				})),
			}),
		);

	it("says what the definition says, of any build", () => {
		fc.assert(
			fc.property(anyBuild, (facts) => {
				for (const id of facts.positions.keys()) expect(isReachable(facts, id)).toBe(reachableByDefinition(facts, id));
			}),
			{ seed: 1204, numRuns: 400 },
		);
	});

	it("with everything named out of the way, a position is reached", () => {
		fc.assert(
			fc.property(anyBuild, (facts) => {
				for (const id of facts.positions.keys()) {
					const cleared = whatCovers(facts, id).reduce((left, cover) => withoutPart(left, cover.partId), facts);
					// Taking a host out carries the position along into a whole of its own, where its own parts may still cover it.
					if (wholeOf(cleared, id) === wholeOf(facts, id))
						expect(obstructedBy(cleared, id).filter((c) => whatCovers(facts, id).includes(c))).toEqual([]);
				}
			}),
			{ seed: 1205, numRuns: 200 },
		);
	});
});
