import { describe, expect, it } from "vitest";
import { steppingClock, stoppedClock, systemClock } from "@/lib/core/clock";
import { type Id, id, idMaker, isId, type PartId, type PositionId, uuidv7 } from "@/lib/core/ids";
import { type Instant, instant, instantOf, isInstant } from "@/lib/core/instants";
import { seededBytes } from "@/lib/core/random";

const start = instant("2026-03-02T08:00:00.000Z");

describe("ids", () => {
	it("sort in the order in which they were made, also within one millisecond", () => {
		const next = idMaker(stoppedClock(start), seededBytes(7));
		const made = Array.from({ length: 5000 }, () => next());
		expect(new Set(made).size).toBe(made.length);
		expect([...made].sort()).toEqual(made);
		expect(made.every(isId)).toBe(true);
	});

	it("still sort when the clock is set back", () => {
		const times: Instant[] = [start, instantOf(Date.parse(start) - 3_600_000), start];
		const next = idMaker(() => times.shift() ?? start, seededBytes(8));
		const made = [next(), next(), next(), next()];
		expect([...made].sort()).toEqual(made);
	});

	it("go on into the next millisecond when one is used up", () => {
		const full = () => new Uint8Array(10).fill(0xff);
		const next = idMaker(stoppedClock(start), full);
		const [first, second] = [next(), next()];
		expect(first < second).toBe(true);
		// 0x07 in the top nibble is what a fresh draw of ones leaves; counting from there crosses into it.
		const almost = uuidv7(0, Uint8Array.from([0x0f, 0xff, 0x3f, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff]));
		expect(almost).toBe("00000000-0000-7fff-bfff-ffffffffffff");
	});

	it("do not share the bytes of their source", () => {
		const buffer = new Uint8Array(10);
		const next = idMaker(stoppedClock(start), () => buffer);
		const first = next();
		buffer.fill(0x55);
		const second = next();
		expect(second.slice(0, -1)).toBe(first.slice(0, -1));
	});

	it("come from clocks that are handed in", () => {
		const clock = steppingClock(start, 15);
		expect([clock(), clock(), clock()]).toEqual(["2026-03-02T08:00:00.000Z", "2026-03-02T08:15:00.000Z", "2026-03-02T08:30:00.000Z"]);
		expect(isInstant(systemClock())).toBe(true);
	});

	it("a part's id does not do as a position's", () => {
		const part: PartId = id<"part">(uuidv7(0, new Uint8Array(10)));
		// @ts-expect-error a PartId is not a PositionId
		const position: PositionId = part;
		// @ts-expect-error plain text is no id
		const unread: Id<"part"> = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f";
		expect([isId(position), isId(unread)]).toEqual([true, true]);
	});

	it.each(["", "x", "017F22E2-79B0-7CC3-98C4-DC0C0C07398F", "017f22e279b07cc398c4dc0c0c07398f", "017f22e2-79b0-7cc3-18c4-dc0c0c07398f"])(
		"%s is no id",
		(text) => {
			expect(isId(text)).toBe(false);
			expect(() => id(text)).toThrow("not an id");
		},
	);

	it("need ten random bytes and a time that fits", () => {
		expect(() => uuidv7(0, new Uint8Array(9))).toThrow("10 random bytes");
		expect(() => uuidv7(2 ** 48, new Uint8Array(10))).toThrow("no time for an id");
	});
});
