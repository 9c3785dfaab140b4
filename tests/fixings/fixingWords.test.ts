import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FixingWords, formatFixing, formatFixings, readFixing, readFixings } from "@/lib/fixings/fixingWords";

const fixing = (count: number, thread: string, length = "", head = "", drive = "", note = ""): FixingWords => ({
	count,
	thread,
	length,
	head,
	drive,
	note,
});

describe("fixings as they are written on a job card", () => {
	// As they stand in the positions of machine 12 and of the demo shop's other machines.
	it.each<[string, FixingWords]>([
		["6 x No.8 x 1 wood, round slotted", fixing(6, "No.8 wood", "1", "round", "slotted")],
		["4 x 4BA x 1/2 cheese", fixing(4, "4BA", "1/2", "cheese")],
		["4BA x 1/2 cheese slotted", fixing(1, "4BA", "1/2", "cheese", "slotted")],
		["4 x 2BA x 1 hex, washers", fixing(4, "2BA", "1", "hex", "", "washers")],
		["5 x 4BA x 1/2 oval", fixing(5, "4BA", "1/2", "oval")],
		["3 x 1/4 BSW x 2, fender washers", fixing(3, "1/4 BSW", "2", "", "", "fender washers")],
		["3 x No.6 x 3/4 wood", fixing(3, "No.6 wood", "3/4")],
		["1 x 4BA x 3/16 grub", fixing(1, "4BA", "3/16", "grub")],
		["4 x No.12 x 1-1/4 wood", fixing(4, "No.12 wood", "1-1/4")],
		["3 x 2BA x 5/8, 3 shakeproof washers", fixing(3, "2BA", "5/8", "", "", "3 shakeproof washers")],
		["6 x 10-32 UNF x 3/4 pan, slotted", fixing(6, "10-32 UNF", "3/4", "pan", "slotted")],
		["4 x 5/16-18 UNC x 1-1/4 hex", fixing(4, "5/16-18 UNC", "1-1/4", "hex")],
		["4 x 3/8-16 UNC x 2 carriage, 4 fender washers, 4 nuts", fixing(4, "3/8-16 UNC", "2", "carriage", "", "4 fender washers, 4 nuts")],
		["2 x M3 x 8", fixing(2, "M3", "8")],
		["4 x M5 x 12 socket cap", fixing(4, "M5", "12", "cap", "socket")],
		["2 x M4 knurled", fixing(2, "M4", "", "knurled")],
		["1 split pin 1/16 x 1/2", fixing(1, "split pin 1/16", "1/2")],
		["cam lock", fixing(1, "cam lock")],
		["2 hinge pins", fixing(2, "hinge pins")],
		["taper pin No.2", fixing(1, "taper pin No.2")],
		["unknown", fixing(1, "unknown")],
	])("%s", (text, read) => {
		expect(readFixing(text)).toEqual(read);
	});

	it("the count is never taken from a size", () => {
		expect(readFixing("4BA x 1/2").count).toBe(1);
		expect(readFixing("1/4 BSW x 2").count).toBe(1);
		expect(readFixing("10-32 x 1/2").count).toBe(1);
		expect(readFixing("2 8 mm spacers").count).toBe(2);
	});

	it("several are read one a line, and none is an empty list", () => {
		expect(readFixings("4 x 4BA x 3/8\n2 x No.4 x 1/2 wood; 1 clamp")).toHaveLength(3);
		expect(readFixings("none")).toEqual([]);
		expect(readFixings("-")).toEqual([]);
		expect(readFixings(" \n ")).toEqual([]);
	});

	it("what is written can be read back", () => {
		const word = fc.constantFrom("4BA", "2BA", "No.8 wood", "M4", "10-32 UNF", "1/4 BSW", "5/16-18 UNC");
		const length = fc.constantFrom("", "1", "1/2", "1-1/4", "8 mm", "3/16");
		const head = fc.constantFrom("", "cheese", "round", "hex", "grub", "pan", "countersunk");
		const drive = fc.constantFrom("", "slotted", "phillips", "socket");
		fc.assert(
			fc.property(fc.integer({ min: 1, max: 9999 }), word, length, head, drive, (count, thread, long, shape, turned) => {
				const written = { count, thread, length: long, head: shape, drive: turned };
				expect(readFixing(formatFixing(written))).toEqual({ ...written, note: "" });
			}),
			{ seed: 47 },
		);
	});

	it("no text is lost: every word that was typed is somewhere in what was read", () => {
		const words = fc.array(fc.constantFrom("4BA", "x", "1/2", "cheese", "left", "brass", "washer", "3", "No.8", "hand", "slotted", "hex"), {
			minLength: 1,
			maxLength: 8,
		});
		fc.assert(
			fc.property(words, (typed) => {
				const read = readFixing(typed.join(" "));
				const kept = `${read.count} ${read.thread} ${read.length} ${read.head} ${read.drive} ${read.note}`;
				for (const word of typed) if (word !== "x") expect(kept).toContain(word);
				expect(read.count).toBeGreaterThan(0);
			}),
			{ seed: 11 },
		);
	});

	it("any text at all is read without an error", () => {
		fc.assert(
			fc.property(fc.string({ unit: "binary" }), (text) => {
				expect(readFixing(text).count).toBeGreaterThan(0);
				expect(Array.isArray(readFixings(text))).toBe(true);
			}),
			{ seed: 5 },
		);
	});

	it("several fixings are said on one line", () => {
		expect(formatFixings([fixing(4, "4BA", "1/2", "cheese", "slotted"), fixing(2, "", "")])).toBe(
			"4 x 4BA x 1/2, cheese slotted; 2 x fixing, size unknown",
		);
	});
});
