import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkCharacterOf } from "@/lib/tags/checkCharacter";
import { nextNumber } from "@/lib/tags/nextNumber";
import { formatTag, usableNumber } from "@/lib/tags/tag";

const machines = fc.integer({ min: 0, max: 9999 });
const numbers = fc.integer({ min: 1, max: 9999 });

describe("giving out tags", () => {
	it("prints machine 12, number 147 as 12-0147-K", () => {
		expect(formatTag(12, 147)).toBe("12-0147-K");
	});

	it("prints the bags of the acceptance scenario with the check characters worked out for them", () => {
		const scenario = (
			"12-0201-3 12-0202-1 12-0204-Y 12-0205-W 12-0206-U 12-0207-S 12-0208-Q 12-0210-1 12-0212-Y 12-0213-W 12-0214-U " +
			"12-0215-S 12-0216-Q 12-0218-M 12-0219-K 12-0220-Y 12-0221-W 12-0222-U 12-0223-S 12-0224-Q"
		).split(" ");
		expect(scenario.map((tag) => formatTag(12, Number(tag.slice(3, 7))))).toEqual(scenario);
	});

	it("skips the numbers between the bags of the acceptance scenario, 203, 209, 211 and 217", () => {
		const given: number[] = [];
		for (let next = nextNumber(200, 12); next.ok && next.value <= 224; next = nextNumber(next.value, 12)) given.push(next.value);
		expect(given).toEqual([201, 202, 204, 205, 206, 207, 208, 210, 212, 213, 214, 215, 216, 218, 219, 220, 221, 222, 223, 224]);
	});

	it("never uses 12-0203, whose check character would be *", () => {
		expect(checkCharacterOf("120203")).toBe("*");
		expect(usableNumber(12, 203)).toBe(false);
		expect(() => formatTag(12, 203)).toThrow(RangeError);
	});

	it("gives the shop's own bags machine 0", () => {
		expect(formatTag(0, 2)).toBe("0-0002-Y");
		expect(nextNumber(0, 0)).toEqual({ ok: true, value: 2 });
	});

	it("skips a number for its check character alone", () => {
		fc.assert(
			fc.property(machines, numbers, (machine, number) => {
				const check = checkCharacterOf(`${machine}${String(number).padStart(4, "0")}`);
				expect(usableNumber(machine, number)).toBe(check !== "I" && check !== "O" && check !== "*");
			}),
			{ seed: 20260302, numRuns: 2000 },
		);
	});

	it("never gives the same number twice, nor passes over a usable one", () => {
		fc.assert(
			fc.property(machines, fc.integer({ min: 0, max: 9990 }), (machine, after) => {
				const next = nextNumber(after, machine);
				if (!next.ok) return;
				expect(next.value).toBeGreaterThan(after);
				for (let between = after + 1; between < next.value; between++) expect(usableNumber(machine, between)).toBe(false);
			}),
			{ seed: 20260302, numRuns: 2000 },
		);
	});

	it("refuses once a machine has used every number, and says which bags to use instead", () => {
		const next = nextNumber(9999, 12);
		expect(next).toMatchObject({ ok: false, error: { code: "tags-used-up", say: expect.stringContaining("machine 0") } });
	});

	it.each([
		[-1, 1],
		[10000, 1],
		[1.5, 1],
		[12, 0],
		[12, 10000],
		[12, 1.5],
		[Number.NaN, 1],
	])("gives out no tag for machine %s, number %s", (machine, number) => {
		expect(usableNumber(machine, number)).toBe(false);
		expect(() => formatTag(machine, number)).toThrow(RangeError);
	});

	it("computes no check character over anything but digits and capitals", () => {
		for (const body of ["12-0147", "k", "12*", " "]) expect(() => checkCharacterOf(body)).toThrow(RangeError);
	});
});
