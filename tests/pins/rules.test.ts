import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fixingNow, heldNow, wireNow } from "@/lib/pins/now";
import { MOST_PINS, mayMark, mayPin, nextNumber, readThing, writeThing } from "@/lib/pins/rules";

describe("what a pin marks", () => {
	it("is a position, a wire, a fixing or nothing on record, and reads as it was written", () => {
		fc.assert(
			fc.property(fc.constantFrom("positionId", "connectionId", "fixingId"), fc.uuid(), (column, id) => {
				const thing = { positionId: null, connectionId: null, fixingId: null, [column]: id };
				expect(readThing(writeThing(thing))).toEqual(thing);
			}),
		);
		expect(readThing("")).toEqual({ positionId: null, connectionId: null, fixingId: null });
	});

	it.each(["bag:1", "position:", "position", "wire:1:2", ":1"])("is not %s", (text) => {
		expect(readThing(text)).toBeNull();
	});

	it("is of the machine that the photo is of, and is not nothing at all", () => {
		expect(mayMark("m12", { machineId: "m12" }, "")).toMatchObject({ ok: true });
		expect(mayMark("m12", null, "a pencil mark")).toMatchObject({ ok: true });
		expect(mayMark("m12", { machineId: "m13" }, "")).toMatchObject({
			error: { code: "of-another-machine", fields: { thing: expect.any(String) } },
		});
		expect(mayMark("m12", "unknown", "words")).toMatchObject({ error: { code: "no-thing" } });
		expect(mayMark("m12", null, "")).toMatchObject({ error: { code: "says-nothing" } });
	});
});

describe("a pin's number", () => {
	it("was never given before", () => {
		fc.assert(
			fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 500 }), { maxLength: 60 }), (given) => {
				const next = nextNumber(given, given.length);
				expect(next.ok && !given.includes(next.value) && given.every((number) => number < next.value)).toBe(true);
			}),
		);
	});

	it("is refused where the photo is full, and not because many were taken off", () => {
		const given = Array.from({ length: MOST_PINS }, (_, at) => at + 1);
		expect(nextNumber(given, MOST_PINS)).toMatchObject({ error: { code: "too-many-pins" } });
		expect(nextNumber(given, 3)).toEqual({ ok: true, value: MOST_PINS + 1 });
	});
});

it("pins go onto pictures of a machine that stand", () => {
	const picture = { stands: "yes", machineId: "m12", mediaType: "image/jpeg" } as const;
	expect(mayPin(picture)).toEqual({ ok: true, value: "m12" });
	expect(mayPin({ ...picture, stands: "no" })).toMatchObject({ error: { code: "capture-withdrawn" } });
	expect(mayPin({ ...picture, mediaType: "application/pdf" })).toMatchObject({ error: { code: "no-picture" } });
	expect(mayPin({ ...picture, mediaType: null })).toMatchObject({ error: { code: "no-picture" } });
	expect(mayPin({ ...picture, machineId: null })).toMatchObject({ error: { code: "no-machine" } });
});

describe("where it is now", () => {
	const lamp = { id: "lamp", where: "in 12-0201-J · on the bench" };
	it("of a part: in its place, elsewhere with its place empty, or with another in its place", () => {
		expect(heldNow(lamp, { id: "lamp", name: "Lamp" }, null)).toEqual({ now: "in its place", gone: false });
		expect(heldNow(lamp, null, null)).toEqual({ now: "in 12-0201-J · on the bench; its place is empty", gone: true });
		expect(heldNow(lamp, { id: "led", name: "LED lamp" }, null)).toEqual({
			now: "in 12-0201-J · on the bench; in its place now: LED lamp",
			gone: true,
		});
		expect(heldNow(null, null, null)).toEqual({ now: "empty", gone: false });
	});

	it("of a place that went away with its assembly", () => {
		expect(heldNow(lamp, { id: "lamp", name: "Lamp" }, { name: "Door", where: "scrapped 3 Mar 2026" })).toEqual({
			now: "in its place; its place is on the Door, scrapped 3 Mar 2026",
			gone: true,
		});
	});

	it("of a wire that was replaced or undone", () => {
		expect(wireNow("connected", "Motor", false, null)).toEqual({ now: "connected at the Motor", gone: false });
		expect(wireNow("parked", "Motor", true, null)).toEqual({ now: "undone at the Motor, both ends kept", gone: false });
		expect(wireNow("removed", "Motor", true, null)).toMatchObject({ gone: true });
		expect(wireNow("connected", "Motor", true, null)).toMatchObject({ gone: true });
	});

	it("of a fixing that is in a bag, or lost", () => {
		expect(fixingNow("bag", "Door", "in 12-0201-J", null)).toEqual({ now: "in 12-0201-J", gone: false });
		expect(fixingNow("lost", "Door", null, null)).toEqual({ now: "lost", gone: true });
	});
});
